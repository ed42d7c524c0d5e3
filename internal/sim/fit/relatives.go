package fit

import (
	"iter"
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

// relatives is the family of swings of one player with one club, reduced once to
// what does not change when the tee or the room moves: how far each member
// reaches along every direction that a flat surface of the room faces, and where
// they all are at any time, for boxes. A swing is the same wherever it is swung, so
// moving a tee costs a few comparisons.
//
// What is found along one direction does not depend on which others there are:
// the corners of the upright walls and the level ceiling are always there, those
// of any other direction count for that one alone.
//
// Everything is in the golfer frame of a right-hander.
type relatives struct {
	family *swing.Family
	notes  []string

	dirs    []geom.Vec     // unit normals of flat surfaces, into the room
	central *reach         // of the central swing
	sample  []*reach       // the low-discrepancy sample, on which shares are counted
	singles []*reach       // each trait alone, at −1 then +1 standard deviation
	own     [][]*reach     // per direction: its corners, unless they are in far
	least   []float64      // per direction, over all of the above, m
	loosest []*reach       // who reaches that far
	fine    *sweep.Track   // of the central swing, within fineTolerance
	times   []float64      // at which the family is looked over, within coarseTolerance
	far     []*reach       // the central swing and the corners along the axes
	tracks  []*sweep.Track // of far, at times
	swath   *sweep.Swath   // nil until a box is asked
	maps    *atlas         // nil until asked for
	where   spread         // nil until asked for
	poses   []swing.Pose   // scratch for members of the sample
	track   *sweep.Track   // scratch
}

// reach is one member of a family: its swing, and how far it reaches.
type reach struct {
	variation swing.Variation
	swing     *swing.Swing
	least     []float64 // per direction: smallest N·p over golfer and club, m
}

// newRelatives models and reduces a family. dirs are the unit normals of the
// flat surfaces it will meet, sample the variations that are sampled.
func newRelatives(player plan.Player, club plan.Club, dirs []geom.Vec, sample []swing.Variation) (*relatives, error) {
	b := body.New(player)
	family, err := swing.NewFamily(b, swing.NewClub(club), swing.StyleOf(player))
	if err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	r := &relatives{family: family, notes: b.Notes, dirs: dirs}
	if err := r.reduce(sample); err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return r, nil
}

// reduce looks over the family: coarsely at the central swing and, from what
// each trait does to it, at the farthest-reaching members; then at every member
// near the moments at which one of them may reach farthest.
func (r *relatives) reduce(sample []swing.Variation) error {
	r.fine = sweep.Sample(r.family.Central, fineTolerance)
	r.times = coarseTimes(r.fine, coarseTolerance)
	r.family.SetTimes(r.times)
	for t := range swing.NumTraits {
		for _, z := range []float64{-1, 1} {
			m, err := r.member(swing.Single(t, z))
			if err != nil {
				return err
			}
			r.singles = append(r.singles, m)
		}
	}
	if err := r.follow(swing.Variation{}); err != nil {
		return err
	}
	r.central = r.far[0]
	for _, n := range axes {
		for _, m := range r.corners(n) {
			r.keep(m)
		}
	}
	r.own = make([][]*reach, len(r.dirs))
	for k, n := range r.dirs {
		if !slices.Contains(axes, n) {
			r.own[k] = r.corners(n)
		}
	}
	for _, v := range sample {
		m, err := r.member(v)
		if err != nil {
			return err
		}
		r.sample = append(r.sample, m)
	}
	r.measure()
	return nil
}

// follow adds a member to those whose tracks are kept.
func (r *relatives) follow(v swing.Variation) error {
	m, err := r.member(v)
	if err != nil {
		return err
	}
	r.keep(m)
	return nil
}

// keep adds a member to those whose tracks are kept.
func (r *relatives) keep(m *reach) { r.far, r.tracks = append(r.far, m), append(r.tracks, r.coarse(m)) }

// around returns a member's track at the coarse times about a moment, valid until
// the next call.
func (r *relatives) around(m *reach, at float64) *sweep.Track {
	const around = 0.08 // s
	times := stretch(r.times, at-around, at+around)
	r.poses = slices.Grow(r.poses[:0], len(times))[:len(times)]
	r.family.SetTimes(times)
	r.family.Poses(m.swing, r.poses)
	if r.track == nil {
		r.track = &sweep.Track{}
	}
	r.track.Reset(times, r.poses)
	return r.track
}

// coarse returns a member's track at the times of the coarse look.
func (r *relatives) coarse(m *reach) *sweep.Track { return r.trackAt(m, r.times) }

// closely returns a member's track at the times of the fine one.
func (r *relatives) closely(m *reach) *sweep.Track {
	times, _ := r.fine.Samples()
	return r.trackAt(m, times)
}

func (r *relatives) trackAt(m *reach, times []float64) *sweep.Track {
	poses := make([]swing.Pose, len(times))
	r.family.SetTimes(times)
	r.family.Poses(m.swing, poses)
	return sweep.NewTrack(times, poses)
}

// axes are the directions that the upright walls and the level ceiling face.
var axes = []geom.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: -1}}

// all yields every member that counts whatever is asked.
func (r *relatives) all() iter.Seq[*reach] {
	return func(yield func(*reach) bool) {
		for _, list := range [][]*reach{r.far, r.sample, r.singles} {
			for _, m := range list {
				if !yield(m) {
					return
				}
			}
		}
	}
}

// towards yields every member that counts for direction k.
func (r *relatives) towards(k int) iter.Seq[*reach] {
	return func(yield func(*reach) bool) {
		for m := range r.all() {
			if !yield(m) {
				return
			}
		}
		for _, m := range r.own[k] {
			if !yield(m) {
				return
			}
		}
	}
}

// slopes returns how the reach along direction k changes per standard deviation
// of each trait.
func (r *relatives) slopes(k int) (slope [swing.NumTraits]float64) {
	for t := range slope {
		slope[t] = r.perDeviation(t, r.singles[2*t].least[k], r.singles[2*t+1].least[k])
	}
	return slope
}
