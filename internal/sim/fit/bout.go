package fit

import (
	"fmt"

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

// familyTolerance is the chord deviation (m) at which the members of a family
// are sampled in time; what it costs is taken off every clearance.
const familyTolerance = 0.0015

// member is one swing of a family, reduced to what does not change when the tee
// moves: how far it reaches against each flat surface's direction, and its
// nearest approach to each box of the room.
type member struct {
	variation swing.Variation
	flat      []sweep.Extreme
	boxes     []sweep.Contact
}

// bout is one player with one club: the family and its reduction.
type bout struct {
	player plan.Player
	club   plan.Club
	family *swing.Family
	notes  []string

	sample  []member // the low-discrepancy sample, on which shares are counted
	singles []member // each trait alone at −1 and +1 standard deviation
	corners []member // where each surface's clearance is expected least
	central member
}

// room is the surfaces in the golfer frame of one placement, flat ones first
// by direction.
type room struct {
	place    sweep.Placement
	surfaces []sweep.Surface // room frame
	local    []sweep.Surface // golfer frame
	flat     []int           // which of them are half-spaces
	boxes    []int           // which of them are boxes
	normals  []geom.Vec      // of the flat ones, golfer frame
}

func newRoom(p plan.Plan, surfaces []sweep.Surface, tee plan.Tee, player plan.Player) room {
	r := room{place: sweep.Place(p, tee, player), surfaces: surfaces}
	r.local = r.place.Surfaces(surfaces)
	for i, s := range r.local {
		if s.Kind.Flat() {
			r.flat = append(r.flat, i)
			r.normals = append(r.normals, s.Plane.N)
		} else {
			r.boxes = append(r.boxes, i)
		}
	}
	return r
}

// newBout models the family of a player with a club.
func newBout(player plan.Player, club plan.Club) (*bout, error) {
	b := body.New(player)
	family, err := swing.NewFamily(b, swing.NewClub(club), swing.StyleOf(player))
	if err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return &bout{player: player, club: club, family: family, notes: b.Notes}, nil
}

// run reduces the family against a room.
func (b *bout) run(r room) error {
	times, _ := sweep.Sample(b.family.Central, familyTolerance).Samples()
	b.family.SetTimes(times)
	poses := make([]swing.Pose, len(times))
	track := &sweep.Track{}

	reduce := func(v swing.Variation) (member, error) {
		s, err := b.family.Member(v)
		if err != nil {
			return member{}, err
		}
		b.family.Poses(s, poses)
		track.Reset(times, poses)
		m := member{variation: v, flat: make([]sweep.Extreme, len(r.flat)), boxes: make([]sweep.Contact, len(r.boxes))}
		track.Support(r.normals, m.flat)
		for k, i := range r.boxes {
			m.boxes[k] = track.Clearance(r.local[i])
		}
		return m, nil
	}
	var err error
	add := func(list *[]member, v swing.Variation) {
		m, e := reduce(v)
		if e != nil {
			err = e
			return
		}
		*list = append(*list, m)
	}

	if b.central, err = reduce(swing.Variation{}); err != nil {
		return err
	}
	b.sample, b.singles, b.corners = b.sample[:0], b.singles[:0], b.corners[:0]
	for _, v := range swing.Variations(Sampled, seed) {
		add(&b.sample, v)
	}
	for t := range swing.NumTraits {
		add(&b.singles, swing.Single(t, -1))
		add(&b.singles, swing.Single(t, 1))
	}
	if err != nil {
		return err
	}
	for i := range r.local {
		add(&b.corners, swing.Corner(b.slopes(r, i)))
	}
	return err
}

// slopes returns how the clearance to surface i changes per standard deviation
// of each trait.
func (b *bout) slopes(r room, i int) (slope [swing.NumTraits]float64) {
	for t := range slope {
		slope[t] = (r.clearance(&b.singles[2*t+1], i) - r.clearance(&b.singles[2*t], i)) / 2
	}
	return slope
}

// clearance returns a member's clearance to surface i.
func (r *room) clearance(m *member, i int) float64 {
	for k, f := range r.flat {
		if f == i {
			return m.flat[k].Value - r.local[i].Plane.D
		}
	}
	for k, f := range r.boxes {
		if f == i {
			return m.boxes[k].Clearance
		}
	}
	return 0
}
