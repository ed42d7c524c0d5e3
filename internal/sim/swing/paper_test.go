package swing

import (
	"math"
	"testing"
)

// paperSwing is the golfer as two levers on paper: a hub between the shoulders,
// an arm, a club, and planes through them. It shares no code with the model and
// none of its constants: body fractions are the handbook's (Drillis & Contini
// 1966, hip 0.53, shoulder 0.82 of stature), the rest are round figures of common
// practice. They were picked knowing about how large the model's swing is, so
// the agreement shows that its extremes follow from plain geometry, and guards
// them; it is no measurement.
type paperSwing struct {
	stature, club  float64 // m
	lie            float64 // of the club's plane going back and up, rad
	tilt           float64 // of the trunk, rad
	ahead, distant float64 // ball ahead of mid-stance; ball to the hub along y, m
}

const (
	paperSole = 0.025 // m under the feet
	paperHead = 0.05  // m that the head sticks out past the end of the shaft's axis
)

func paper(stature float64, club string, length float64) paperSwing {
	p := paperSwing{stature: stature, club: length}
	switch club {
	case "driver":
		p.lie, p.tilt, p.ahead = 58*degree, 25*degree, 0.10*stature
	case "7-iron":
		p.lie, p.tilt, p.ahead = 62*degree, 33*degree, 0.02*stature
	default:
		p.lie, p.tilt, p.ahead = 64*degree, 36*degree, 0
	}
	// The shaft lies flatter than the plane at address, by 5° as common practice has
	// it, a driver's by 14° as recorded; the hub is above the toes, a twentieth of the
	// stature behind the hands.
	flatter := 5 * degree
	if club == "driver" {
		flatter = 14 * degree
	}
	p.distant = p.shaft()*math.Cos(p.lie-flatter) + 0.05*stature
	return p
}

// shaft is the club from the middle of the hands, m.
func (p paperSwing) shaft() float64 { return p.club - 0.10 }

func (p paperSwing) hub() float64 {
	return paperSole + 0.53*p.stature*math.Cos(10*degree) + 0.29*p.stature*math.Cos(p.tilt)
}

// high: the shaft square to the arm, both swinging up in their planes (the arm
// close to upright, the club at its lie). The head is highest where the sum of
// r sin a and L cos a is greatest over the arm's angle a above level.
func (p paperSwing) high() float64 {
	arm := 0.30 * p.stature * math.Sin(78*degree)
	club := (p.shaft() + paperHead) * math.Sin(p.lie)
	return p.hub() + math.Hypot(arm, club)
}

// target: just after impact, the arm half-way between down and level, the shaft level.
func (p paperSwing) target() float64 {
	return -p.ahead + 0.35*p.stature*math.Sin(45*degree) + p.shaft() + paperHead
}

// trail: in the takeaway, the hands by the trail thigh, the shaft level.
func (p paperSwing) trail() float64 {
	return p.ahead + 0.34*p.stature*math.Sin(40*degree) + p.shaft() + paperHead
}

// behind: in the follow-through, the hands high above the hub and the shaft
// going round the shoulders at 35°.
func (p paperSwing) behind() float64 {
	return p.distant + 0.05*p.stature + (p.shaft()+paperHead)*math.Cos(35*degree)
}

// paperTol is how far model and paper may be apart, m.
const paperTol = 0.15

// TestPaperGeometry holds the model's highest and widest points against two
// levers on paper. Where they differ, and why: highest, within 3 cm, the model
// below paper for short golfers with irons, whose arms fold more than the
// paper's one radius; to the target and to the trail side the model is wider by
// up to 7 cm, the more so the taller the golfer, because sway, the shift towards
// the target and the longer reach of straight arms grow with stature and the
// paper leaves them out; behind, it is up to 14 cm wider for a short golfer with a
// driver, who has to stand farther off with a flatter shaft than the paper's one
// lie has it.
func TestPaperGeometry(t *testing.T) {
	for _, stature := range []float64{1.60, 1.70, 1.80, 1.90, 2.00} {
		for _, club := range []string{"driver", "7-iron", "wedge"} {
			c := clubNamed(club)
			s, err := New(golfer(stature), c, Style{})
			if err != nil {
				t.Fatal(err)
			}
			e, p := ExtentOf(s, 0.004).Box, paper(stature, club, c.Length)
			for _, far := range []struct {
				what         string
				model, paper float64
			}{
				{"highest", e.Max.Z, p.high()},
				{"farthest to the target", e.Max.X, p.target()},
				{"farthest to the trail side", -e.Min.X, p.trail()},
				{"farthest behind", e.Max.Y, p.behind()},
			} {
				t.Logf("%.2f m, %s: %s: model %.3f m, paper %.3f m (%+.3f)", stature, club, far.what, far.model, far.paper, far.model-far.paper)
				if math.Abs(far.model-far.paper) > paperTol {
					t.Errorf("%.2f m, %s: %s = %.3f m, on paper %.3f m (± %g)", stature, club, far.what, far.model, far.paper, paperTol)
				}
			}
		}
	}
}
