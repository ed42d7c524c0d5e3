package fit

import (
	"math"
	"slices"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Contact is the first touch in time of a swing, or of the member of a family
// that touches soonest, with anything. Until then no modelled swing is past any
// surface by more than sweep.Tolerance, and then its part is within as much of
// the surface.
type Contact struct {
	Nearest
	// AfterImpact is how long after the clubhead is back at the ball, s: negative
	// when the touch comes sooner, as in the backswing.
	AfterImpact float64 `json:"afterImpact"`
}

const (
	// glance is how many of the family's steps are looked at together for a touch:
	// few, because nothing after the first touch is worth a look.
	glance = 4
	// touchStep (s) is the step in which a member that seems to touch is followed. A
	// clubhead of 60 m/s on an arc of 1 m strays 0.7 mm from its chord over it.
	touchStep = 0.001
)

// firstTouch returns the first touch in time of any of the members with any of
// the struck surfaces, which are given by their number in the room; false when
// there is none.
//
// It goes forward through those steps of the family's times in which any member
// may be at a struck surface at all, a few at a time, and stops at the first few
// in which one touches. A coarse look, which may take a near miss for a touch but
// never the other way round, says who must be followed closely.
func (t *trial) firstTouch(struck []int, members []*family.Member) (first Contact, touches bool) {
	r := t.kin
	best, surface, who := sweep.Contact{Time: math.Inf(1)}, 0, r.Central
	track := &sweep.Track{}
	for _, w := range t.glances(struck) {
		if r.Times[w.from] >= best.Time {
			break
		}
		// One more moment on either side, for the curvature there.
		times := r.Times[max(0, w.from-1):min(len(r.Times), w.to+2)]
		poses := make([]swing.Pose, len(times))
		r.Family.SetTimes(times)
		wanted := swing.AllParts &^ (w.part.Set() - 1)
		for _, m := range members {
			if !t.mayTouch(m, w.surfaces) {
				continue
			}
			r.Family.Poses(m.Swing, wanted, poses)
			track.ResetParts(wanted, times, poses)
			for _, i := range w.surfaces {
				c, near := track.FirstContactBefore(t.local[i], best.Time)
				if !near {
					continue
				}
				closely := sweep.Between(m.Swing, c.Time-touchStep, times[len(times)-1], touchStep)
				if c, ok := closely.FirstContactBefore(t.local[i], best.Time); ok {
					best, surface, who = c, i, m
				}
			}
		}
	}
	if math.IsInf(best.Time, 1) {
		return Contact{}, false
	}
	return contactOf(t.meeting(surface, who, best), who), true
}

// contactOf is a meeting of a member as a first touch.
func contactOf(n Nearest, m *family.Member) Contact {
	return Contact{n, n.Time - m.Swing.ImpactTime()}
}

// glanceAt is a few steps of the family's times, the surfaces that somebody may
// be at in them, and the first part that may.
type glanceAt struct {
	from, to int // first and last step
	surfaces []int
	part     swing.Part
}

// glances returns the steps in which any member may be at one of the struck
// surfaces, in order.
func (t *trial) glances(struck []int) (out []glanceAt) {
	for j, boxes := range t.kin.Spread() {
		w := glanceAt{from: j, to: j, part: swing.NumParts}
		for _, i := range struck {
			for p := range boxes {
				if t.local[i].Gap(boxes[p]) < 0 {
					w.surfaces = append(w.surfaces, i)
					w.part = min(w.part, swing.Part(p))
					break
				}
			}
		}
		if w.surfaces == nil {
			continue
		}
		if k := len(out) - 1; k >= 0 && out[k].to == j-1 && j-out[k].from < glance && slices.Equal(out[k].surfaces, w.surfaces) {
			out[k].to, out[k].part = j, min(out[k].part, w.part)
			continue
		}
		out = append(out, w)
	}
	return out
}

// mayTouch reports whether a member may touch any of the surfaces.
func (t *trial) mayTouch(m *family.Member, surfaces []int) bool {
	return slices.ContainsFunc(surfaces, func(i int) bool { return t.kin.MayTouch(m, t.local[i]) })
}

// contacts returns the first touch of the family with the struck surfaces, and
// that of the central swing where it touches. touched marks the members of the
// sample that touch anything, deep are the members that come deepest into each
// surface, and deepest is the meeting that sets the clearance: where a clearance
// is negative only by the caution in it, that is the touch.
func (t *trial) contacts(struck []int, touched []bool, deep []*family.Member, deepest Nearest, typical bool) (soonest, central *Contact) {
	r := t.kin
	members := slices.Concat(r.Far, r.Singles)
	for i, m := range r.Sample {
		if touched[i] {
			members = append(members, m)
		}
	}
	for _, m := range deep {
		if !slices.Contains(members, m) {
			members = append(members, m)
		}
	}
	c, ok := t.firstTouch(struck, members)
	if !ok {
		c = contactOf(deepest, r.Central)
	}
	if !typical {
		return &c, nil
	}
	own, ok := t.firstTouch(struck, []*family.Member{r.Central})
	if !ok {
		return &c, nil
	}
	return &c, &own
}
