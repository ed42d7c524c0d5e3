package fit

import (
	"iter"
	"math"
	"slices"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Sampled is how many members of a family are sampled.
const Sampled = 256

// seed fixes the sample, so that the same plan gives the same report.
const seed = 20

// relatives is the family of swings of one player with one club, reduced once to
// what does not change when the tee or the room moves: how far each member
// reaches along every direction that a flat surface of the room faces, and a
// tree over the farthest-reaching members for boxes. A swing is the same
// wherever it is swung, so moving a tee costs a few comparisons.
//
// Everything is in the golfer frame of a right-hander.
type relatives struct {
	family *swing.Family
	notes  []string

	dirs    []geom.Vec     // unit normals of flat surfaces, into the room
	central *reach         // of the central swing
	sample  []*reach       // the low-discrepancy sample, on which shares are counted
	singles []*reach       // each trait alone, at −1 then +1 standard deviation
	least   []float64      // per direction, over all of the above, m
	loosest []*reach       // who reaches that far
	fine    *sweep.Track   // of the central swing, within fineTolerance
	times   []float64      // at which the family is looked over, within coarseTolerance
	tree    *sweep.Tree    // over the central swing, the corners and the cover, at times
	far     []*reach       // whose tracks are in the tree, by its index
	tracks  []*sweep.Track // theirs; the first is the central swing's
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
		return nil, say.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	r := &relatives{family: family, notes: b.Notes, dirs: dirs}
	if err := r.reduce(sample); err != nil {
		return nil, say.Errorf("player %q with %q: %w", player.Name, club.Name, err)
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
	for _, v := range r.corners() {
		if err := r.follow(v); err != nil {
			return err
		}
	}
	for _, v := range sample {
		m, err := r.member(v)
		if err != nil {
			return err
		}
		r.sample = append(r.sample, m)
	}
	r.tree = sweep.NewTree(r.tracks...)
	r.measure()
	return nil
}

// member models a member of the family.
func (r *relatives) member(v swing.Variation) (*reach, error) {
	s, err := r.family.Member(v)
	if err != nil {
		return nil, err
	}
	return &reach{variation: v, swing: s}, nil
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

// keep adds a member's track to those that are kept.
func (r *relatives) keep(m *reach) {
	track := r.coarse(m)
	extremes := make([]sweep.Extreme, len(r.dirs))
	track.Support(r.dirs, extremes)
	m.least = make([]float64, len(r.dirs))
	for k, e := range extremes {
		m.least[k] = e.Value
	}
	r.far, r.tracks = append(r.far, m), append(r.tracks, track)
}

// coarse returns a member's track at the times of the coarse look.
func (r *relatives) coarse(m *reach) *sweep.Track {
	poses := make([]swing.Pose, len(r.times))
	r.family.SetTimes(r.times)
	r.family.Poses(m.swing, poses)
	return sweep.NewTrack(r.times, poses)
}

// corners returns, for each direction of the family and for spokes all round and
// upwards, the member expected to reach farthest: whatever box hangs or stands
// somewhere, one of them comes nearly straight at it.
func (r *relatives) corners() (out []swing.Variation) {
	towards := slices.Clone(r.dirs)
	for x := -1.0; x <= 1; x++ {
		for y := -1.0; y <= 1; y++ {
			for z := 0.0; z <= 1; z++ {
				if n := math.Sqrt(x*x + y*y + z*z); n > 0 {
					spoke := geom.Vec{X: -x / n, Y: -y / n, Z: -z / n}
					if !slices.Contains(towards, spoke) {
						towards = append(towards, spoke)
					}
				}
			}
		}
	}
	extremes := make([]sweep.Extreme, len(towards))
	r.tracks[0].Support(towards, extremes)
	for k, e := range extremes {
		// What a trait does to the least reach is what it does to the part that
		// reaches farthest, when it does (the envelope theorem).
		at := func(m *reach) float64 { return m.swing.PoseAt(e.Time)[e.Part].Reach(towards[k]) }
		var slope [swing.NumTraits]float64
		for t := range slope {
			slope[t] = (at(r.singles[2*t+1]) - at(r.singles[2*t])) / 2
		}
		out = append(out, swing.Corner(slope))
	}
	return out
}

// all yields every member.
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

// slopes returns how the reach along direction k changes per standard deviation
// of each trait.
func (r *relatives) slopes(k int) (slope [swing.NumTraits]float64) {
	for t := range slope {
		slope[t] = (r.singles[2*t+1].least[k] - r.singles[2*t].least[k]) / 2
	}
	return slope
}
