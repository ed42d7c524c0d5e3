package enclosure

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// curve tabulates depth against the share missed, to the depth that misses none.
func curve(needs []depths, n int) []DepthPoint {
	deepest := 0.0
	for _, d := range needs {
		for _, a := range [2][]float64{d.side, d.top} {
			if len(a) > 0 {
				deepest = max(deepest, a[len(a)-1])
			}
		}
	}
	past := func(sorted []float64, depth float64) float64 {
		i, _ := slices.BinarySearchFunc(sorted, depth, func(a, b float64) int {
			if a > b {
				return 1
			}
			return -1
		})
		return float64(len(sorted)-i) / float64(n)
	}
	var out []DepthPoint
	for i := range int(math.Ceil(deepest/curveStep)) + 1 {
		at := DepthPoint{Depth: float64(i) * curveStep}
		for _, d := range needs {
			side, top := past(d.side, at.Depth), past(d.top, at.Depth)
			at.Side += side / float64(len(needs))
			at.Top += top / float64(len(needs))
			at.SideWorst = max(at.SideWorst, side)
			at.TopWorst = max(at.TopWorst, top)
		}
		out = append(out, at)
	}
	return out
}

func sortLost(l []Lost) {
	slices.SortStableFunc(l, func(a, b Lost) int {
		return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.Player, b.Player),
			cmp.Compare(a.Club, b.Club), cmp.Compare(a.Tee, b.Tee), cmp.Compare(a.Surface, b.Surface))
	})
}

// HighestLoft is how high a ball of a pair's speed and spin, struck straight at
// the target, may start.
type HighestLoft struct {
	Player  string  `json:"player"`
	Club    string  `json:"club"`
	Tee     string  `json:"tee"`
	Own     float64 `json:"own"`               // the club's launch angle, degrees
	Screen  float64 `json:"screen"`            // steepest that still meets the screen, degrees; -1 when none does
	Next    string  `json:"next,omitempty"`    // what a ball just steeper meets
	Caught  float64 `json:"caught"`            // steepest that screen or top return catch; -1 when none is
	Beyond  string  `json:"beyond,omitempty"`  // what a ball just steeper than that meets
	Spare   float64 `json:"spare"`             // Screen less Own, degrees
	Blocked string  `json:"blocked,omitempty"` // what the club's own launch meets when that is not the screen
}

// degree is one degree in radians.
const degree = math.Pi / 180

const (
	// launchScan (rad) is the spacing at which launches are tried; a gap between
	// two obstacles that is narrower is not looked for.
	launchScan = 0.5 * degree
	// launchTol (rad) is how finely the steepest launch is found.
	launchTol = 0.005 * degree
	// steepest (rad) launch tried: no club sends a ball higher on purpose.
	steepest = 80 * degree
)

// highest finds a pair's steepest launches, going up from the club's own.
func highest(s *ball.Scene, q ball.Pair) HighestLoft {
	l := q.Launch()
	first := func(e float64) ball.Contact {
		m := l
		m.Elevation = e
		return s.First(q.Tee, m)
	}
	// The last launch that ok allows, going up from the club's own; when its own
	// is not allowed, going down from it.
	search := func(ok func(ball.Contact) bool) (float64, string) {
		good, bad := -1.0, -1.0
		if ok(first(l.Elevation)) {
			good = l.Elevation
			for bad = good + launchScan; bad < steepest && ok(first(bad)); bad += launchScan {
				good = bad
			}
		} else {
			bad = l.Elevation
			for good = bad - launchScan; good > 0 && !ok(first(good)); good -= launchScan {
				bad = good
			}
			if good <= 0 {
				return -1, ""
			}
		}
		for bad-good > launchTol {
			if mid := (good + bad) / 2; ok(first(mid)) {
				good = mid
			} else {
				bad = mid
			}
		}
		return good / degree, first(bad).Surface
	}
	h := HighestLoft{Player: q.Player.Name, Club: q.Club.Name, Tee: q.Tee.Name, Own: l.Elevation / degree}
	h.Screen, h.Next = search(func(c ball.Contact) bool { return c.Kind == ball.KindScreen })
	h.Caught, h.Beyond = search(func(c ball.Contact) bool { return c.Caught })
	h.Spare = h.Screen - h.Own
	if c := first(l.Elevation); c.Kind != ball.KindScreen {
		h.Blocked = c.Surface
	}
	return h
}

// StandOff is how far the screen hangs from the wall behind it, and should, m.
type StandOff struct {
	Have    float64     `json:"have"`
	Low     float64     `json:"low"`     // a tight cloth
	High    float64     `json:"high"`    // a slack one
	Verdict fit.Verdict `json:"verdict"` // tight between the two, clear above, strikes below
}

// How far (m) a screen's cloth stretches under a driver's ball at StretchSpeed (m/s):
// common practice, no source.
const (
	StretchLeast = 0.15
	StretchMost  = 0.30
	StretchSpeed = 70
)

// standOff takes the stretch of the cloth in proportion for a faster ball as a
// spring's would be, not less for a slower one, since slack does not depend on
// speed; the ball that pushes it is its own diameter thick.
func standOff(p plan.Plan, pairs []ball.Pair) StandOff {
	factor := 1.0
	for _, q := range pairs {
		factor = max(factor, q.Launch().Speed/StretchSpeed)
	}
	s := StandOff{Have: p.Room.Length - p.Screen.X, Low: StretchLeast*factor + ball.Diameter, High: StretchMost*factor + ball.Diameter}
	s.Verdict = fit.VerdictOf(s.Have-s.Low, s.High-s.Low)
	return s
}
