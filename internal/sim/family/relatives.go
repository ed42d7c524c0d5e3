// Package family reduces the family of swings of one golfer with one club to what
// is asked of it wherever it is swung: how far anybody reaches in a direction, how
// near anybody comes to a box, where anybody may be when.
package family

import (
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Sampled is how many members of a family are sampled.
const Sampled = 256

// seed fixes the sample, so that the same plan gives the same report.
const seed = 20

// Relatives is the family of swings of one player with one club, reduced once to
// what does not change when the tee or the room moves: how far each member
// reaches along every direction that a flat surface of the room faces, and where
// they all are at any time, for boxes. A swing is the same wherever it is swung, so
// moving a tee costs a few comparisons.
//
// The corners of the upright walls and the level ceiling are always there, those of
// other directions where the room has them. Every member counts for everything: whoever
// goes farthest along a slope may pass a beam or the ceiling too.
//
// Everything is in the golfer frame of a right-hander.
type Relatives struct {
	Family *swing.Family
	Notes  []string // what was assumed of the body

	Central *Member   // of the central swing
	Sample  []*Member // the low-discrepancy sample, on which shares are counted
	Singles []*Member // each trait alone, at −1 then +1 standard deviation
	Far     []*Member // the central swing and the corners along the directions
	Times   []float64 // at which the family is looked over, within coarseTolerance, s

	dirs    []geom.Vec     // unit normals of flat surfaces, into the room
	least   []float64      // per direction, over all of the above, m
	close   *lookout       // for whoever is looked at closely
	rougher []float64      // times within roughTolerance, s
	loosest []*Member      // who reaches that far
	fine    *sweep.Track   // of the central swing, within fineTolerance
	coarse  *sweep.Track   // the same at Times
	tracks  []*sweep.Track // of Far, at Times, until the family is reduced
	maps    *Atlas         // nil until asked for

	spreads Spread      // nil until asked for
	where   whereabouts // the same: until a box is asked
	scratch *scratch
}

// scratch is room to look at members in, for one family after another.
type scratch struct {
	poses []swing.Pose
	reach []float64 // of a scout: end by end, and the second derivative of one
	track sweep.Track
	kept  []*seen // of a family that is being reduced
}

// posesFor returns room for n poses.
func (s *scratch) posesFor(n int) []swing.Pose {
	s.poses = slices.Grow(s.poses[:0], n)[:n]
	return s.poses
}

// seen is a track with its own poses.
type seen struct {
	poses []swing.Pose
	track sweep.Track
}

// Member is one member of a family: its swing, and how far it reaches.
type Member struct {
	Variation swing.Variation // its place in the family
	Swing     *swing.Swing
	least     []float64 // per direction: smallest N·p over golfer and club, m
	look      []uint8   // how closely that was looked at
}

// New models and reduces a family. dirs are the unit normals of the flat surfaces
// it will meet, as Directions lists them.
func New(player plan.Player, club plan.Club, dirs []geom.Vec) (*Relatives, error) {
	return newRelatives(player, club, dirs, swing.Variations(Sampled, seed), &scratch{})
}

// newRelatives is New with the sample drawn already, which is the same for everybody,
// and with room that others have used.
func newRelatives(player plan.Player, club plan.Club, dirs []geom.Vec, sample []swing.Variation, room *scratch) (*Relatives, error) {
	f, err := model(player, club)
	if err != nil {
		return nil, err
	}
	r := &Relatives{Family: f, Notes: body.New(player).Notes, dirs: dirs, scratch: room}
	if note := f.Note(); note != "" {
		r.Notes = append(r.Notes, note)
	}
	if err := r.reduce(sample); err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return r, nil
}

// reduce looks over the family: coarsely at the central swing and, from what
// each trait does to it, at the farthest-reaching members; then at every member
// near the moments at which one of them may reach farthest.
func (r *Relatives) reduce(sample []swing.Variation) error {
	r.fine = sweep.Sample(r.Family.Central, fineTolerance)
	r.Times, r.rougher = coarseTimes(r.fine, coarseTolerance), coarseTimes(r.fine, roughTolerance)
	for t := range swing.NumTraits {
		for _, z := range []float64{-1, 1} {
			m, err := r.member(swing.Single(t, z))
			if err != nil {
				return err
			}
			r.Singles = append(r.Singles, m)
		}
	}
	central, err := r.member(swing.Variation{})
	if err != nil {
		return err
	}
	r.Central, r.coarse = central, r.Coarse(central)
	r.Far, r.tracks = append(r.Far, central), append(r.tracks, r.coarse)
	for _, n := range r.dirs {
		for _, m := range r.corners(n) {
			r.keep(m)
		}
	}
	for _, v := range sample {
		m, err := r.member(v)
		if err != nil {
			return err
		}
		r.Sample = append(r.Sample, m)
	}
	r.measure()
	r.tracks = nil
	return nil
}

// keep adds a member to those whose tracks are kept.
func (r *Relatives) keep(m *Member) {
	r.Far, r.tracks = append(r.Far, m), append(r.tracks, r.seen(len(r.tracks), m))
}

// seen returns a member's track at the times of the coarse look, in the i-th place of
// the scratch.
func (r *Relatives) seen(i int, m *Member) *sweep.Track {
	s := r.scratch
	for len(s.kept) <= i {
		s.kept = append(s.kept, &seen{})
	}
	at := s.kept[i]
	at.poses = slices.Grow(at.poses[:0], len(r.Times))[:len(r.Times)]
	r.Family.SetTimes(r.Times)
	r.Family.Poses(m.Swing, swing.AllParts, at.poses)
	at.track.Reset(r.Times, at.poses)
	return &at.track
}

// around returns a member's track at the coarse times about a moment, valid until
// the next call of glance.
func (r *Relatives) around(m *Member, at float64) *sweep.Track {
	const around = 0.08 // s
	return r.glance(m, swing.AllParts, stretch(r.Times, at-around, at+around))
}

// glance returns the track of some parts of a member at some times, valid until the
// next call.
func (r *Relatives) glance(m *Member, parts swing.Parts, times []float64) *sweep.Track {
	r.Family.SetTimes(times)
	poses := r.scratch.posesFor(len(times))
	r.Family.Poses(m.Swing, parts, poses)
	r.scratch.track.ResetParts(parts, times, poses)
	return &r.scratch.track
}

// Coarse returns a member's track at the times of the coarse look.
func (r *Relatives) Coarse(m *Member) *sweep.Track {
	poses := make([]swing.Pose, len(r.Times))
	r.Family.SetTimes(r.Times)
	r.Family.Poses(m.Swing, swing.AllParts, poses)
	return sweep.NewTrack(r.Times, poses)
}

// axes are the directions that the upright walls and the level ceiling face.
var axes = []geom.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: -1}}

// All returns every member.
func (r *Relatives) All() []*Member { return slices.Concat(r.Far, r.Sample, r.Singles) }

// Directions returns the normals of the flat ones among surfaces of the golfer
// frame, each once. The upright walls come first and in one order for both hands,
// so that players of either hand share families in a room without slopes.
func Directions(surfaces []sweep.Surface) []geom.Vec {
	dirs := slices.Clone(axes)
	for _, s := range surfaces {
		if s.Kind.Flat() && !slices.Contains(dirs, s.Plane.N) {
			dirs = append(dirs, s.Plane.N)
		}
	}
	return dirs
}

// Reach returns how far the family reaches against one of its directions: the
// smallest N·p over golfer and club (m) of any member, that of the central swing,
// and whose the smallest is.
func (r *Relatives) Reach(n geom.Vec) (least, typical float64, who *Member) {
	k := slices.Index(r.dirs, n)
	return r.least[k], r.Central.least[k], r.loosest[k]
}

// Against returns the least clearance (m) of any member to a surface of the golfer
// frame, that of the central swing, and which member it is; it marks in touched
// the members of the sample that touch the surface.
func (r *Relatives) Against(s sweep.Surface, touched []bool) (least, typical float64, who *Member) {
	if !s.Kind.Flat() {
		return r.againstBox(s, touched)
	}
	k := slices.Index(r.dirs, s.Plane.N)
	for i := range r.Sample {
		touched[i] = touched[i] || r.beyond(r.Sample[i], k, s.Plane.D)
	}
	return r.least[k] - s.Plane.D, r.Central.least[k] - s.Plane.D, r.loosest[k]
}

// MayTouch reports whether a member may touch a surface, by what is known of how
// far it reaches.
func (r *Relatives) MayTouch(m *Member, s sweep.Surface) bool {
	return !s.Kind.Flat() || m.least == nil || m.least[slices.Index(r.dirs, s.Plane.N)] < s.Plane.D
}

// Costs returns how much clearance to a surface (m) one standard deviation of
// each trait takes away.
func (r *Relatives) Costs(s sweep.Surface) (cost [swing.NumTraits]float64) {
	if s.Kind.Flat() {
		for t, slope := range r.slopes(slices.Index(r.dirs, s.Plane.N)) {
			cost[t] = 0 - slope // no negative zeros in reports
		}
		return cost
	}
	at := r.singleClearances(s)
	for t := range cost {
		cost[t] = (at[2*t] - at[2*t+1]) / 2
	}
	return cost
}

// slopes returns how the reach along direction k changes per standard deviation
// of each trait.
func (r *Relatives) slopes(k int) (slope [swing.NumTraits]float64) {
	for t := range slope {
		slope[t] = r.perDeviation(t, r.Singles[2*t].least[k], r.Singles[2*t+1].least[k])
	}
	return slope
}
