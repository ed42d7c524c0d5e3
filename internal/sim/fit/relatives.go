package fit

import (
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
	central reach          // of the central swing
	sample  []reach        // the low-discrepancy sample, on which shares are counted
	singles []reach        // each trait alone, at −1 then +1 standard deviation
	corners []reach        // for each of dirs and of spokes, the member expected to reach farthest
	least   []float64      // per direction, over all of the above, m
	loosest []*reach       // who reaches that far
	tree    *sweep.Tree    // over the central swing and the corners
	far     []*reach       // whose tracks are in the tree, by its index
	tracks  []*sweep.Track // theirs; the first is the central swing's
	extent  geom.Box       // around all of the tracks, with hollow to spare
	print   *footprint     // nil until asked for
	poses   []swing.Pose   // scratch for members of the sample
	track   *sweep.Track   // scratch
}

// reach is one member of a family: its swing, and how far it reaches.
type reach struct {
	variation swing.Variation
	swing     *swing.Swing
	least     []float64 // per direction: smallest N·p over golfer and club, m
}

// How finely the members' swings are cut in time, as the largest distance (m)
// by which a part may stray from its chord: it is taken off every clearance.
const familyTolerance = 0.0015

// newRelatives models and reduces a family. dirs are the unit normals of the
// flat surfaces it will meet.
func newRelatives(player plan.Player, club plan.Club, dirs []geom.Vec) (*relatives, error) {
	b := body.New(player)
	family, err := swing.NewFamily(b, swing.NewClub(club), swing.StyleOf(player))
	if err != nil {
		return nil, say.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	r := &relatives{family: family, notes: b.Notes, dirs: dirs}
	if err := r.reduce(); err != nil {
		return nil, say.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return r, nil
}

// spokes are directions all round and upwards, along which the members for the
// tree are sought: whatever box hangs or stands somewhere, one of them comes
// nearly straight at it.
func spokes() (out []geom.Vec) {
	for x := -1.0; x <= 1; x++ {
		for y := -1.0; y <= 1; y++ {
			for z := 0.0; z <= 1; z++ {
				if n := math.Sqrt(x*x + y*y + z*z); n > 0 {
					out = append(out, geom.Vec{X: -x / n, Y: -y / n, Z: -z / n})
				}
			}
		}
	}
	return out
}

func (r *relatives) reduce() error {
	times, _ := sweep.Sample(r.family.Central, familyTolerance).Samples()
	times = slices.Clone(times)
	r.family.SetTimes(times)
	towards := append(slices.Clone(r.dirs), spokes()...)

	// The central swing and each trait alone, against every direction.
	track := &sweep.Track{}
	poses := make([]swing.Pose, len(times))
	full := func(v swing.Variation) (*reach, error) {
		s, err := r.family.Member(v)
		if err != nil {
			return nil, err
		}
		r.family.Poses(s, poses)
		track.Reset(times, poses)
		return &reach{v, s, supports(track, towards)}, nil
	}
	central, err := full(swing.Variation{})
	if err != nil {
		return err
	}
	for t := range swing.NumTraits {
		for _, z := range []float64{-1, 1} {
			m, err := full(swing.Single(t, z))
			if err != nil {
				return err
			}
			r.singles = append(r.singles, *m)
		}
	}

	// The corners: the members that each direction's slopes point at, and those
	// that stray most to either side of the club's path along the way.
	r.far = []*reach{central}
	tracks := []*sweep.Track{nil}
	r.family.Poses(central.swing, poses)
	tracks[0] = sweep.NewTrack(times, slices.Clone(poses))
	var ends []swing.Variation
	for k := range towards {
		ends = append(ends, swing.Corner(r.slopes(k)))
	}
	ends = append(ends, r.strays(times)...)
	for _, v := range ends {
		s, err := r.family.Member(v)
		if err != nil {
			return err
		}
		own := make([]swing.Pose, len(times))
		r.family.Poses(s, own)
		t := sweep.NewTrack(times, own)
		m := &reach{v, s, supports(t, towards)}
		r.corners = append(r.corners, *m)
		r.far = append(r.far, m)
		tracks = append(tracks, t)
	}
	r.central = *central
	r.tracks, r.tree = tracks, sweep.NewTree(tracks...)
	r.extent = geom.EmptyBox()
	for _, t := range tracks {
		for part := range swing.NumParts {
			r.extent = r.extent.Union(t.Bounds(part))
		}
	}
	r.extent = r.extent.Grown(hollow)

	if err := r.drawSample(times); err != nil {
		return err
	}
	r.least, r.loosest = make([]float64, len(r.dirs)), make([]*reach, len(r.dirs))
	for k := range r.dirs {
		r.least[k] = math.Inf(1)
		for m := range r.all() {
			if m.least[k] < r.least[k] {
				r.least[k], r.loosest[k] = m.least[k], m
			}
		}
	}
	return nil
}

// all yields every member.
func (r *relatives) all() func(func(*reach) bool) {
	return func(yield func(*reach) bool) {
		if !yield(&r.central) {
			return
		}
		for _, list := range [][]reach{r.sample, r.singles, r.corners} {
			for i := range list {
				if !yield(&list[i]) {
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

func supports(t *sweep.Track, dirs []geom.Vec) []float64 {
	extremes := make([]sweep.Extreme, len(dirs))
	t.Support(dirs, extremes)
	out := make([]float64, len(dirs))
	for k := range out {
		out[k] = extremes[k].Value
	}
	return out
}
