package plan

import "testing"

// TestNamed: a player, a club and a tee of theirs by name, or the first of each.
func TestNamed(t *testing.T) {
	p := hall()
	p.Clubs = []Club{{Name: "driver"}, {Name: "iron"}, {Name: "wedge"}}
	p.Tees = []Tee{{Name: "near"}, {Name: "far"}}
	p.Players = []Player{{Name: "one"}, {Name: "two", Clubs: []string{"wedge", "iron"}, Tees: []string{"far"}}}
	for _, c := range []struct {
		name, player, club, tee string
		want                    [3]string
		err                     string
	}{
		{"nothing named", "", "", "", [3]string{"one", "driver", "near"}, ""},
		{"all named", "one", "wedge", "far", [3]string{"one", "wedge", "far"}, ""},
		{"the first of theirs", "two", "", "", [3]string{"two", "iron", "far"}, ""},
		{"no such player", "three", "", "", [3]string{}, `player "three" is not in the plan`},
		{"not a club of theirs", "two", "driver", "", [3]string{"two"}, `player "two" has no club "driver"`},
		{"no such club", "", "putter", "", [3]string{"one"}, `player "one" has no club "putter"`},
		{"not a tee of theirs", "two", "wedge", "near", [3]string{"two", "wedge"}, `player "two" has no tee "near"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			pl, club, tee, err := p.Named(c.player, c.club, c.tee)
			said := ""
			if err != nil {
				said = err.Error()
			}
			if got := [3]string{pl.Name, club.Name, tee.Name}; got != c.want || said != c.err {
				t.Errorf("Named = %q, error %q, want %q, %q", got, said, c.want, c.err)
			}
		})
	}
	if _, _, _, err := (Plan{}).Named("", "", ""); err == nil {
		t.Error("a plan of nobody has a first player")
	}
}

func TestSideWalls(t *testing.T) {
	for w, want := range map[Wall]bool{WallLeft: true, WallRight: true, WallFront: false, WallBack: false, "": false} {
		if got := w.Side(); got != want {
			t.Errorf("%q.Side() = %v, want %v", w, got, want)
		}
	}
}

// TestShortNumber: at most four decimals, and three figures of what would be a row
// of noughts.
func TestShortNumber(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 3: "3", -2.5: "-2.5", 1.23456: "1.2346", 10: "10", 100: "100", 0.0001: "0.0001", -0.0001: "-0.0001",
		0.00009: "9e-05", -0.00002345: "-2.35e-05", 9999999: "9999999", 1e7: "1e+07", -12345678: "-1.23e+07", 9999999.5: "9999999.5",
	} {
		if got := shortNumber(v); got != want {
			t.Errorf("shortNumber(%v) = %q, want %q", v, got, want)
		}
	}
}

// TestPosition: line and column of what stands at an offset, from 1.
func TestPosition(t *testing.T) {
	text := []byte("ab\ncd\n\ne")
	for offset, want := range []string{"1, column 1", "1, column 1", "1, column 2", "2, column 1", "2, column 1", "2, column 2", "3, column 1", "4, column 1", "4, column 1"} {
		if got := position(text, offset); got != "at line "+want {
			t.Errorf("after %d bytes: %q, want line %s", offset, got, want)
		}
	}
}

// TestSparseKeeps: of a plan in which everything is usual only what has no default
// is kept; whatever is not usual is kept alone.
func TestSparseKeeps(t *testing.T) {
	usual := Plan{
		Units: "imperial", Margin: Plan{}.defaultMargin(),
		Room: Room{Length: 7, Width: 4, Height: 3}, Floor: Floor{Mat: &Mat{Thickness: 0.03, Length: Plan{}.defaultMatSide(), Width: Plan{}.defaultMatSide()}},
		Tees:    []Tee{{Name: "middle", X: 3.95, Y: 2}},
		Clubs:   []Club{DefaultClub(KindIron, "7-iron")},
		Players: []Player{{Name: "one", Height: 1.80004}},
		Seats:   []Seat{{Name: "chair", X: 1, Y: 1, Radius: Plan{}.defaultSeatRadius()}},
	}
	const club = `{"name":"7-iron","kind":"iron"}`
	const player = `{"name":"one","height":1.8}`
	sparse := func(mat, tees, club, player, seat, air string) string {
		return `{"version":2,"room":{"length":7,"width":4,"height":3},"floor":{"mat":{"thickness":0.03` + mat + `}},"tees":` + tees +
			`,"clubs":[` + club + `],"players":[` + player + `],"seats":[{"name":"chair","x":1,"y":1` + seat + `}]` + air + `}`
	}
	for _, c := range []struct {
		name   string
		change func(p *Plan)
		want   string
	}{
		{"all usual", func(p *Plan) {}, sparse("", "null", club, player, "", "")},
		{"mat", func(p *Plan) { p.Floor.Mat.Width = 1 }, sparse(`,"width":1`, "null", club, player, "", "")},
		{"tee", func(p *Plan) { p.Tees[0].X = 4 }, sparse("", `[{"name":"middle","x":4,"y":2}]`, club, player, "", "")},
		{"club length", func(p *Plan) { p.Clubs[0].Length = 0.9 }, sparse("", "null", `{"name":"7-iron","kind":"iron","length":0.9}`, player, "", "")},
		{"lie", func(p *Plan) { p.Clubs[0].Lie = 61 }, sparse("", "null", `{"name":"7-iron","kind":"iron","lie":61}`, player, "", "")},
		{"loft", func(p *Plan) { p.Clubs[0].Loft = 33 }, sparse("", "null", `{"name":"7-iron","kind":"iron","loft":33}`, player, "", "")},
		{"ball", func(p *Plan) { p.Clubs[0].Ball.Launch = 20 }, sparse("", "null", `{"name":"7-iron","kind":"iron","ball":{"launch":20,"spin":6500}}`, player, "", "")},
		{"ball speed", func(p *Plan) { p.Clubs[0].Ball.Speed = 50 }, sparse("", "null", `{"name":"7-iron","kind":"iron","ball":{"speed":50,"launch":18,"spin":6500}}`, player, "", "")},
		{"manner", func(p *Plan) {
			v := &p.Players[0]
			v.Hand, v.Turn, v.Plane, v.Follow, v.Skill, v.Shoe = HandLeft, TurnLong, PlaneFlat, FollowHeld, SkillWild, 0.03
		}, sparse("", "null", club, `{"name":"one","height":1.8,"hand":"left","shoe":0.03,"turn":"long","plane":"flat","follow":"held","skill":"wild"}`, "", "")},
		{"seat", func(p *Plan) { p.Seats[0].Radius = 0.5 }, sparse("", "null", club, player, `,"radius":0.5`, "")},
		{"air", func(p *Plan) { p.Air = &Air{Temperature: 20, Altitude: 5} }, sparse("", "null", club, player, "", `,"air":{"temperature":20,"altitude":5}`)},
	} {
		p := usual.WithDefaults()
		c.change(&p)
		if got := string(p.Sparse().JSON()); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}
