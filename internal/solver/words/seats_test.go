package words

import (
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/units"
)

// The seats' sentence is of the worst of them, by name, and forgets nobody.
func TestSeatsSummary(t *testing.T) {
	w := Words{Units: units.Metric, Margin: 0.15}
	of := func(verdicts ...fit.Verdict) (out []maps.SeatCheck) {
		for i, v := range verdicts {
			out = append(out, maps.SeatCheck{Name: string(rune('a' + i)), Verdict: v})
		}
		return out
	}
	const s, n, c = fit.Strikes, fit.Tight, fit.Clear
	for _, tt := range []struct {
		name  string
		seats []maps.SeatCheck
		want  string
	}{
		{"none", nil, ""},
		{"one clear", of(c), "The seat is clear of clubs and of balls on their first flight."},
		{"one hit", of(s), "The seat can be hit."},
		{"one tight", of(n), "The seat is closer than your 150 mm margin to a club or a ball."},
		{"two clear", of(c, c), "Both seats are clear of clubs and of balls on their first flight."},
		{"two hit", of(s, s), "Both seats can be hit."},
		{"three clear", of(c, c, c), "All 3 seats are clear of clubs and of balls on their first flight."},
		{"one of two hit", of(c, s), "1 of 2 seats can be hit: b."},
		{"the worst of three", of(n, s, c), "1 of 3 seats can be hit: b."},
		{"two of three tight", of(n, c, n), "2 of 3 seats are closer than your 150 mm margin to a club or a ball: a and c."},
		{"one of two tight", of(n, c), "1 of 2 seats is closer than your 150 mm margin to a club or a ball: a."},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := w.SeatsSummary(tt.seats); got != tt.want {
				t.Errorf("\n got %s\nwant %s", got, tt.want)
			}
		})
	}
}

// In few words a check is told by its club and its surface.
func TestBrief(t *testing.T) {
	w := Words{Units: units.Metric, Margin: 0.15}
	c := fit.Check{Player: "Ann", Club: "driver", Verdict: fit.Strikes, Clearance: -0.0412, Nearest: fit.Nearest{Surface: "ceiling"}}
	if got, want := w.Brief(c), "The driver strikes the ceiling, 42 mm past it"; got != want {
		t.Errorf("Brief = %q, want %q", got, want)
	}
	c.Club, c.Verdict, c.Clearance = "Ann's driver", fit.Tight, 0.0829
	if got, want := w.Brief(c), "Ann's driver passes the ceiling by 82 mm, tighter than your 150 mm margin"; got != want {
		t.Errorf("Brief = %q, want %q", got, want)
	}
}
