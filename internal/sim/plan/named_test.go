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
