package protocol

import (
	"math"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/sim/swing"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

var inMetres = words.Words{Units: units.Metric, Margin: 0.15}

// around is the box around all rings of a shape.
func around(s shape) (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, ring := range s.Rings {
		for _, p := range ring {
			for k := range p {
				lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
			}
		}
	}
	return lo, hi
}

// floorGrid is a map of 10 by 8 cells of half a metre over a floor of 5 by 4 m.
func floorGrid(value func(x, y float64) int16) maps.Grid {
	g := maps.Grid{NX: 10, NY: 8, Cell: [2]float64{0.5, 0.5}, Origin: [2]float64{0.25, 0.25}}
	for k := range g.NX * g.NY {
		g.Values = append(g.Values, value(g.Origin[0]+float64(k%g.NX)*0.5, g.Origin[1]+float64(k/g.NX)*0.5))
	}
	return g
}

// TestStandOf: what the map of where to stand becomes for the page.
func TestStandOf(t *testing.T) {
	best := maps.Best{Found: true, X: 2.5, Y: 2, Clearance: 0.2, Verdict: fit.Clear, Surface: "ceiling", Player: "Ann", Club: "driver"}
	other := best
	other.X = 3.5
	m := maps.StandMap{
		Grid: floorGrid(func(x, y float64) int16 { return 0 }), Mask: make([]int16, 80), Reasons: make([]string, 6), Nearest: 2.4, Farthest: 3.7,
		Contours: []maps.Contour{{Name: "strike", Rings: [][][2]float64{{{1, 1}, {2, 1}, {2, 3}}}}, {Name: "margin"}, {Name: "comfort"}},
		Best:     best, Players: []maps.PlayerBest{{Player: "Ann", Best: other}, {Player: "Bob"}},
		Hands:   []maps.HandBest{{Hand: plan.HandRight, Players: []string{"Ann"}, Best: other}, {Hand: plan.HandLeft, Players: []string{"Bob"}}},
		Sharing: maps.Sharing{Both: true, Apart: 1, Loses: 0.1},
	}
	for k := range m.Mask {
		if k%10 >= 6 { // from x = 3 m on
			m.Mask[k] = 1
		}
	}
	p := plan.Plan{Margin: 0.15}
	got := standOf(inMetres, p, &m, "")
	said(t, "summary", got.Summary, inMetres.BestPlace(best, "everybody"))
	said(t, "sharing", got.Sharing, inMetres.Sharing(m.Sharing))
	if !slices.Equal(got.Limits, inMetres.Limits(&m)) || len(got.Limits) != 1 || got.Grid != [2]float64{0.5, 0.5} {
		t.Errorf("limits %q, cells %v", got.Limits, got.Grid)
	}
	var names, labels []string
	for _, s := range got.Shapes {
		names, labels = append(names, s.Name), append(labels, s.Label)
	}
	if !slices.Equal(names, []string{"strike", "margin", "comfort", "barred"}) ||
		!slices.Equal(labels, []string{"touches outside this line", "clear by 150 mm", "clear by " + units.LabelShort(maps.Comfort, units.Metric), "no place for a tee"}) {
		t.Errorf("shapes %q, labels %q", names, labels)
	}
	if !slices.Equal(got.Shapes[0].Rings[0], []drawing.Point{{1, 1}, {2, 1}, {2, 3}}) {
		t.Errorf("the ring became %v", got.Shapes[0].Rings)
	}
	// Half way between the cells, and up to the walls.
	if lo, hi := around(got.Shapes[3]); lo != [2]float64{3, 0} || hi != [2]float64{5, 4} {
		t.Errorf("no tee may be from %v to %v, want x = 3 to 5", lo, hi)
	}
	if got.Best == nil || got.Best.X != 2.5 || got.Best.Y != 2 || got.Best.Name != "everybody" || got.Best.Verdict != fit.Clear || got.Best.Lead != "Best for everybody" || !strings.Contains(got.Best.Text, "2.500 m") {
		t.Errorf("best = %+v", got.Best)
	}
	if len(got.Players) != 1 || got.Players[0].Name != "Ann" || got.Players[0].X != 3.5 {
		t.Errorf("players = %+v, want Ann's place alone: Bob has none", got.Players)
	}
	if len(got.Hands) != 1 || got.Hands[0].Name != "right-handers" || !slices.Equal(got.Hands[0].Players, []string{"Ann"}) {
		t.Errorf("hands = %+v, want the right-handers' alone", got.Hands)
	}
	m.Sharing.One, m.Best.Found = true, false
	p.Margin = 9
	got = standOf(inMetres, p, &m, "Ann")
	if len(got.Hands) != 0 || got.Best != nil || got.Shapes[2].Label != "clear by 9.000 m" {
		t.Errorf("one tee, no place: hands %v, best %v, comfort %q", got.Hands, got.Best, got.Shapes[2].Label)
	}
	m.Sharing.One, m.Sharing.Both, m.Best.Found = false, false, true
	if got = standOf(inMetres, p, &m, "Ann"); len(got.Hands) != 0 || got.Best.Name != "Ann" {
		t.Errorf("one hand: hands %v, best of %q", got.Hands, got.Best.Name)
	}
}

// TestHangOf: levels between the lowest and the highest at which something passes,
// and where nothing may hang at all.
func TestHangOf(t *testing.T) {
	p := plan.Plan{Room: plan.Room{Length: 5, Width: 4, Height: 3}}
	m := maps.HangMap{Grid: floorGrid(func(x, y float64) int16 {
		switch {
		case x > 4:
			return 3100 // above the ceiling
		case x > 2:
			return 2300
		case x > 1:
			return 2000
		}
		return 0
	}), Things: []remedy.HungCheck{{Name: "lamp", Verdict: fit.Tight, Clearance: 0.08, Player: "Ann", Club: "driver",
		Remedies: []remedy.Remedy{{Kind: remedy.KindRemove, Subject: "lamp", Clearance: 0.2}}}}}
	got := hangOf(inMetres, p, &m)
	said(t, "summary", got.Summary, inMetres.HangSummary(2.3, 1))
	var names []string
	for _, s := range got.Shapes {
		names = append(names, s.Name+" "+s.Label)
	}
	if want := []string{"level 2.000 m", "level 2.250 m", "swept something passes", "closed nothing may hang"}; !slices.Equal(names, want) {
		t.Errorf("shapes %q, want %q", names, want)
	}
	if lo, hi := around(got.Shapes[2]); lo[0] != 1 || hi[0] != 5 {
		t.Errorf("something passes from x = %v to %v, want 1 to 5", lo[0], hi[0])
	}
	// In proportion between a cell 0.7 m below the ceiling and one 0.1 m above it.
	if lo, hi := around(got.Shapes[3]); math.Abs(lo[0]-4.1875) > 0.001 || hi[0] < 4.75 {
		t.Errorf("nothing may hang from x = %v to %v, want 4.19 to 5", lo[0], hi[0])
	}
	// In proportion between what passes 2 m up and what passes at 2.3 m.
	if lo, hi := around(got.Shapes[1]); math.Abs(lo[0]-2.1667) > 0.001 || hi[0] < 4.75 {
		t.Errorf("above 2.25 m something passes from x = %v to %v, want 2.17 to 5", lo[0], hi[0])
	}
	if len(got.Things) != 1 || got.Things[0].Name != "lamp" || got.Things[0].Verdict != fit.Tight || got.Things[0].Text != inMetres.HungThing(m.Things[0]) ||
		len(got.Things[0].Remedies) != 1 || got.Things[0].Remedies[0].Text != "Take the lamp away" {
		t.Errorf("things = %+v", got.Things)
	}
	m = maps.HangMap{Grid: floorGrid(func(x, y float64) int16 { return 0 })}
	got = hangOf(inMetres, p, &m)
	said(t, "nothing passes", got.Summary, "Nothing passes under this ceiling.")
	if got.Things == nil || len(got.Shapes) != 2 {
		t.Errorf("nothing passes: things %#v, %d shapes", got.Things, len(got.Shapes))
	}
}

func TestWatchOf(t *testing.T) {
	m := maps.OnlookMap{Grid: floorGrid(func(x, y float64) int16 { return 0 }), Reasons: []string{"club", "ball"},
		Mask: floorGrid(func(x, y float64) int16 {
			if x < 2 {
				return 1 // a club comes near there
			}
			return 0
		}).Values, Area: 2, Region: maps.Contour{Rings: [][][2]float64{{{1, 1}, {2, 1}, {2, 3}}, {{5, 5}, {6, 5}, {6, 6}}}},
		Seats: []maps.SeatCheck{{Name: "sofa", Verdict: fit.Tight, Club: 0.1, Ball: 1}}}
	got := watchOf(inMetres, &m)
	said(t, "summary", got.Summary, inMetres.SeatsSummary(m.Seats))
	said(t, "note", got.Note, inMetres.WatchSummary(&m))
	if len(got.Shapes[1].Rings) == 0 || len(got.Shapes[2].Rings) != 0 {
		t.Errorf("%d outlines of clubs and %d of balls, want some and none", len(got.Shapes[1].Rings), len(got.Shapes[2].Rings))
	}
	if len(got.Shapes) != 3 || got.Shapes[0].Name != "region" || got.Shapes[0].Label != "others may be here" || len(got.Shapes[0].Rings) != 2 || !slices.Equal(got.Shapes[0].Rings[1], []drawing.Point{{5, 5}, {6, 5}, {6, 6}}) {
		t.Errorf("shapes = %+v", got.Shapes)
	}
	if !slices.Equal(got.Seats, []seatWords{{"sofa", fit.Tight, inMetres.Seat(m.Seats[0])}}) {
		t.Errorf("seats = %+v", got.Seats)
	}
}

func TestRemedyOf(t *testing.T) {
	edits := []remedy.Edit{{Path: "clubs[0].length", Value: 1.17}}
	got := remedyOf(inMetres, plan.Plan{}, remedy.Remedy{Kind: remedy.KindClub, Subject: "driver", Amount: 0.02, Value: 1.17, Edits: edits, Clearance: 0.16, Verdict: fit.Clear, PlanVerdict: fit.Tight})
	if got.Kind != remedy.KindClub || got.Text != "Longest driver that would do: 1.170 m" || got.After != "clear by 160 mm; elsewhere in the plan something is still tight" ||
		!got.Spare || got.Clearance != 0.16 || got.Verdict != fit.Clear || !slices.Equal(got.Edits, edits) {
		t.Errorf("remedyOf = %+v", got)
	}
}

// TestChosen: what a focus leaves to be drawn.
func TestChosen(t *testing.T) {
	p := plan.Plan{Clubs: []plan.Club{{Name: "driver"}, {Name: "iron"}}, Players: []plan.Player{{Name: "Ann", Clubs: []string{"iron"}}}}
	for _, c := range []struct {
		focus          Focus
		players, clubs []string
	}{
		{Focus{}, nil, nil},
		{Focus{Player: "Ann"}, []string{"Ann"}, nil},
		{Focus{Player: "Ann", Club: "iron"}, []string{"Ann"}, []string{"iron"}},
		{Focus{Player: "Ann", Club: "driver"}, []string{"Ann"}, nil},
		{Focus{Player: "Cy", Club: "driver"}, nil, []string{"driver"}},
		{Focus{Club: "putter"}, nil, nil},
	} {
		players, clubs := chosen(p, c.focus)
		if !slices.Equal(players, c.players) || !slices.Equal(clubs, c.clubs) {
			t.Errorf("chosen(%+v) = %q, %q, want %q, %q", c.focus, players, clubs, c.players, c.clubs)
		}
	}
}

// TestToldInWords: a reading of a tee on its way, beside what the other tees have.
func TestToldInWords(t *testing.T) {
	near := fit.QuickCheck{Player: "Ann", Club: "driver", Verdict: fit.Tight, Clearance: 0.08, Surface: "beam", Caution: 0.0801}
	far := fit.QuickCheck{Player: "Ann", Club: "iron", Verdict: fit.Clear, Clearance: 0.3, Surface: "ceiling"}
	struck := fit.QuickCheck{Player: "Bob", Club: "driver", Verdict: fit.Strikes, Clearance: -0.1, Surface: "ceiling"}
	all := []fit.QuickCheck{far, near}
	for _, c := range []struct {
		name      string
		r         fit.Reading
		everybody []fit.QuickCheck
		verdict   fit.Verdict
		want      string
	}{
		{"alone", fit.Reading{Free: true, Tee: "middle", Checks: all}, all, fit.Tight, "Tight: 1 of 2. Ann with the driver passes the beam by 80 mm, tighter than your 150 mm margin. The full check may find up to 81 mm more."},
		{"at flat surfaces", fit.Reading{Free: true, Tee: "middle", Checks: all[:1]}, all[:1], fit.Clear, "Clear. Ann with the iron keeps 300 mm from the ceiling."},
		{"one of two tees", fit.Reading{Free: true, Tee: "middle", Checks: all[:1]}, []fit.QuickCheck{far, struck}, fit.Strikes, "Strikes: 1 of 2. From the middle tee, Ann with the iron keeps 300 mm from the ceiling."},
		{"no ball", fit.Reading{Tee: "middle", Checks: all}, all, fit.Strikes, "No ball can lie here."},
		{"nobody", fit.Reading{Free: true, Tee: "middle"}, []fit.QuickCheck{struck}, fit.Strikes, "Nobody plays from the middle tee."},
	} {
		verdict, text := told(inMetres, c.r, c.everybody)
		said(t, c.name, text, c.want)
		if verdict != c.verdict {
			t.Errorf("%s: %s, want %s", c.name, verdict, c.verdict)
		}
	}
}

func TestNotesOfAnAnswer(t *testing.T) {
	p := plan.Plan{Units: units.Metric, Margin: 0.05}
	own := p.Notes()
	r := fit.Report{Checks: []fit.Check{{Notes: []string{"a", "b"}}, {Notes: []string{"b", "c"}}}}
	if got := notes(p, r); len(own) != 1 || !slices.Equal(got, []string{own[0], "a", "b", "c"}) {
		t.Errorf("notes = %q, want the plan's and each of the checks' once", got)
	}
	if got := notes(plan.Plan{Margin: 0.15}, fit.Report{}); got == nil || len(got) != 0 {
		t.Errorf("no notes are %#v, want an empty list", got)
	}
}

func TestCastOf(t *testing.T) {
	p := plan.Plan{Players: []plan.Player{{Name: "Ann"}}, Clubs: []plan.Club{{Name: "driver"}}, Tees: []plan.Tee{{Name: "middle"}}}
	for _, c := range []struct {
		player, club, tee string
		ok                bool
	}{{"Ann", "driver", "middle", true}, {"Bob", "driver", "middle", false}, {"Ann", "iron", "middle", false}, {"Ann", "driver", "far", false}} {
		who, err := castOf(p, fit.Check{Player: c.player, Club: c.club, Tee: c.tee})
		if c.ok && (err != nil || who.player.Name != "Ann" || who.club.Name != "driver" || who.tee.Name != "middle") {
			t.Errorf("castOf = %+v, %v", who, err)
		}
		if want := "the report names " + c.player + ", " + c.club + ", " + c.tee + " tee, which the plan has not got"; !c.ok && (err == nil || !strings.HasSuffix(err.Error(), want)) {
			t.Errorf("castOf = %v, want %q", err, want)
		}
	}
}

func TestFirstTouchOfAScene(t *testing.T) {
	if got := firstTouch(fit.Check{}); got != nil {
		t.Errorf("nothing is struck: %+v", got)
	}
	got := firstTouch(fit.Check{Contact: &fit.Contact{Nearest: fit.Nearest{Surface: "ceiling", Part: "shaft", Time: 1.2, At: [3]float64{1, 2, 3}}}})
	if got == nil || got.Time != 1.2 || got.At != (geom.Vec{X: 1, Y: 2, Z: 3}) || got.Surface != "ceiling" || got.Part != "shaft" {
		t.Errorf("firstTouch = %+v", got)
	}
}

// TestMotionsKept: a swing that was made is made once, and only so many are kept.
func TestMotionsKept(t *testing.T) {
	var c cache
	who := cast{player: plan.Player{Name: "Ann", Height: 1.7}, club: plan.DefaultClub(plan.KindIron, "7-iron")}
	first, err := c.motion(who, swing.Variation{})
	if err != nil {
		t.Fatal(err)
	}
	who.player.Name = "Bob"
	if again, err := c.motion(who, swing.Variation{}); err != nil || again != first || len(c.motions) != 1 {
		t.Errorf("the same swing is another, or kept twice: %d, %v", len(c.motions), err)
	}
	for i := range maxMotions {
		c.motions[swingKey{height: float64(i)}] = motion{}
	}
	if _, err := c.motion(who, swing.Variation{0.1}); err != nil || len(c.motions) != 1 {
		t.Errorf("%d swings kept after the most, want the new one alone (%v)", len(c.motions), err)
	}
}

// TestMostCauses: five causes of a millimetre or more are shown, no more.
func TestMostCauses(t *testing.T) {
	c := fit.Check{Causes: []fit.Cause{{Trait: "a", Cost: 0.001}, {Trait: "b", Cost: -0.001}, {Trait: "c", Cost: 0.00099}, {Trait: "d", Cost: 1}, {Trait: "e", Cost: 1}, {Trait: "f", Cost: 1}, {Trait: "g", Cost: 1}}}
	var names []string
	for _, one := range figuresOf(plan.Plan{}, fit.Report{}, c, drawing.Set{}).Causes {
		names = append(names, one.Trait)
	}
	if want := []string{"a", "b", "d", "e", "f"}; !slices.Equal(names, want) {
		t.Errorf("causes %q, want %q", names, want)
	}
}
