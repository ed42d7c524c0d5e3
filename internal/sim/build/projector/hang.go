package projector

import (
	"errors"
	"math"

	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/family"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
)

// DefaultName is what a projector is called that the plan has only as such.
const DefaultName = "projector"

// lensInside (m) is how far outside a hung box a lens may be and still be its own.
const lensInside = 0.03

// Itself is the hung thing of the plan that holds the lens, or else the case about
// the lens as it would hang: the lens in the middle of the side that faces the screen.
func Itself(p plan.Plan, j spec.Projector) (h plan.Hung, inPlan bool) {
	for _, h := range p.Hung {
		inside := true
		for k := range 3 {
			inside = inside && j.Lens[k] >= h.Min[k]-lensInside && j.Lens[k] <= h.Max[k]+lensInside
		}
		if inside {
			return h, true
		}
	}
	return CaseAt(j, j.Lens), false
}

// CaseAt is the case with the lens at a place.
func CaseAt(j spec.Projector, lens [3]float64) plan.Hung {
	b := j.Body
	x0, x1 := lens[0]-b[0], lens[0]
	if j.Mount == spec.MountRear {
		x0, x1 = lens[0], lens[0]+b[0]
	}
	return plan.Hung{
		Name: DefaultName,
		Min:  [3]float64{x0, lens[1] - b[1]/2, lens[2] - b[2]/2},
		Max:  [3]float64{x1, lens[1] + b[1]/2, lens[2] + b[2]/2},
	}
}

// Column is where the lens may hang at one distance from the screen, at its own
// place across the room.
type Column struct {
	Throw float64 `json:"throw"` // m
	X     float64 `json:"x"`     // of the lens, m
	// Swept is the lowest lens height (m) at which the case is the margin away from
	// every swing and every ordinary ball, cautiously; Shade the lowest at which nobody's
	// usual swing reaches the light, which need not be under the ceiling.
	Swept float64 `json:"swept"`
	Shade float64 `json:"shade"`
	// Free is the greatest height (m) at which nothing that is built in or hangs cuts
	// the light's top edge, and the case stays under the ceiling.
	Free float64 `json:"free"`
	Low  float64 `json:"low"` // the heights that the offset allows, m; 0 and the ceiling where it is not known
	High float64 `json:"high"`
	From float64 `json:"from"` // it may hang from here, m: Swept and Low
	To   float64 `json:"to"`   // to here: Free and High; less than From where it may not hang at all
}

// columns is how many distances are tried.
const columns = 13

// Region finds where a lens may hang between the least and the most throw.
func Region(l *fit.Lab, given plan.Checked, casts []fit.Cast, j spec.Projector, i screen.Image) ([]Column, error) {
	p := given.Plan()
	out := []Column{}
	if j.Mount != spec.MountCeiling {
		return out, nil
	}
	itself, _ := Itself(p, j)
	tops := usual(p, casts)
	least, most := j.ThrowRatio[0]*i.Width, min(j.ThrowRatio[1]*i.Width, i.X-0.01)
	for k := range columns {
		throw := least + (most-least)*float64(k)/(columns-1)
		c := Column{Throw: throw, X: i.X - throw}
		if c.X-j.Body[0] < 0 || throw <= 0 {
			continue
		}
		spot, err := maps.HangThing(l, given, maps.Hanging{Name: DefaultName + " on trial", X: c.X - j.Body[0]/2, Y: j.Lens[1], Length: j.Body[0], Width: j.Body[1], Drop: j.Body[2]})
		if _, wrong := errors.AsType[*plan.FieldError](err); wrong {
			continue // the case is too large for the ceiling there
		}
		if err != nil {
			return nil, err
		}
		c.Swept = spot.Spot.Lowest + j.Body[2]/2
		c.Shade = shadeless(tops, i, c.X, j.Lens[1])
		c.Free = min(spot.Spot.Ceiling-j.Body[2]/2, unbeamed(p, i, c.X, j.Lens[1], itself.Name))
		c.Low, c.High = heights(j, i, p.Room.Height)
		c.From, c.To = max(c.Swept, c.Low), min(c.Free, c.High)
		out = append(out, c)
	}
	return out, nil
}

// heights are the lens heights from which a projector that hangs upside down can
// reach the image, by its offset.
func heights(j spec.Projector, i screen.Image, ceiling float64) (low, high float64) {
	if len(j.Offset) != 2 {
		return 0, ceiling
	}
	top := i.Bottom + i.Height
	return top + j.Offset[0]*i.Height, top + j.Offset[1]*i.Height
}

// reach is a place over the floor and how high a swing gets there, room frame, m.
type reach struct{ x, y, side, top float64 }

// usual gathers how high golfer and club get in everybody's usual swing, at points
// along every part.
func usual(p plan.Plan, casts []fit.Cast) []reach {
	const points = 4 // spaces between them
	var out []reach
	for _, c := range casts {
		for _, tee := range p.TeesOf(c.Player) {
			f := FilmOf(p, c, tee)
			for k := 0; k < f.Frames(); k += coarse {
				pose := f.swing.PoseAt(float64(k) / Rate)
				for i := range pose {
					part := f.place.Capsule(pose[i])
					for n := range points + 1 {
						at := geom.Lerp(part.A, part.B, float64(n)/points)
						out = append(out, reach{at.X, at.Y, part.R, at.Z + part.R})
					}
				}
			}
		}
	}
	return out
}

// reaches gathers what all swings from all tees sweep, in pieces of some centimetres.
func reaches(p plan.Plan, casts []fit.Cast) []reach {
	const bins = 5 // of a footprint along each side of a piece
	var out []reach
	for k := range casts {
		c := &casts[k]
		f := c.Kin.Footprint()
		type piece struct{ top, radius float64 }
		nx, ny := f.NX/bins+1, f.NY/bins+1
		best := make([]piece, nx*ny)
		for _, l := range f.Layers {
			for at, top := range l.Top {
				if math.IsInf(float64(top), -1) {
					continue
				}
				b := &best[(at/f.NX/bins)*nx+at%f.NX/bins]
				b.top, b.radius = max(b.top, float64(top)+l.Radius), max(b.radius, l.Radius)
			}
		}
		for at, b := range best {
			if b.radius == 0 {
				continue
			}
			x, y := f.X0+(float64(at%nx)+0.5)*bins*family.Bin, f.Y0+(float64(at/nx)+0.5)*bins*family.Bin
			if c.At.Left {
				y = -y
			}
			for _, tee := range p.TeesOf(c.Player) {
				out = append(out, reach{tee.X + x, tee.Y + y, b.radius + bins*family.Bin/2, c.At.Ball.Z + b.top})
			}
		}
	}
	return out
}

// shadeless is the least lens height (m) at x, y from which no swing is in the light.
func shadeless(all []reach, i screen.Image, x, y float64) float64 {
	need, d := 0.0, i.X-x
	for _, r := range all {
		if r.top <= i.Bottom || r.x+r.side <= x {
			continue
		}
		// The light is lowest over its far end, and widest there too.
		end := min(r.x+r.side, i.X-1e-3)
		t := (end - x) / d
		middle, half := y+(i.Centre-y)*t, i.Width/2*t
		if math.Abs(r.y-middle) > half+r.side+math.Abs(i.Centre-y)*2*r.side/d {
			continue
		}
		need = max(need, i.Bottom+(r.top-i.Bottom)*d/(i.X-end))
	}
	return need
}

// unbeamed is the greatest lens height (m) at x, y from which the light's top edge
// passes under everything that hangs or is built in before it, top return included.
func unbeamed(p plan.Plan, i screen.Image, x, y float64, itself string) float64 {
	high := math.Inf(1)
	top, d := i.Bottom+i.Height, i.X-x
	for _, f := range standing(p, itself) {
		b := f.Box
		from, to := max(b.Min.X, x), min(b.Max.X, i.X)
		if from >= to || b.Max.Z < top {
			continue // it comes from below: InTheWay tells of it
		}
		for _, at := range [2]float64{from, to} {
			t := (at - x) / d
			middle, half := y+(i.Centre-y)*t, i.Width/2*t
			if b.Max.Y < middle-half || b.Min.Y > middle+half || t >= 1 {
				continue
			}
			high = min(high, top+(b.Min.Z-top)/(1-t))
		}
	}
	return high
}

// Unshaded is whether no part of any modelled swing reaches the light of a lens that
// is above it, cautiously.
func Unshaded(p plan.Plan, casts []fit.Cast, light Pyramid) bool {
	return light.Lens.Z >= shadeless(reaches(p, casts), light.Image, light.Lens.X, light.Lens.Y)
}
