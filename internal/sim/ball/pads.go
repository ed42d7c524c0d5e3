package ball

import (
	"cmp"
	"slices"

	"wideberth/internal/sim/plan"
)

// Pad is a bare hard surface that balls meet: cover it there.
type Pad struct {
	Surface string     `json:"surface"`
	Kind    Kind       `json:"kind"`
	Share   float64    `json:"share"`   // of ordinary balls, of the pair with the most; 0: only mishits
	Mishits []string   `json:"mishits"` // the named mishits that meet it
	Fastest float64    `json:"fastest"` // m/s on arrival
	From    [3]float64 `json:"from"`    // box around the points, m
	To      [3]float64 `json:"to"`      //
	Bare    Return     `json:"bare"`    // the worst way back as it is
	Padded  *Return    `json:"padded"`  // and with foam over it
}

// Pads gathers the bare hard surfaces from outcomes, most often met first.
func Pads(outcomes []Outcome) []Pad {
	pads := []Pad{}
	at := func(surface string, k Kind, p [3]float64) *Pad {
		if k == KindGap {
			k = KindWall // what the ball met behind the screen is as hard as in front
		}
		for i := range pads {
			if pads[i].Surface == surface {
				return &pads[i]
			}
		}
		pads = append(pads, Pad{Surface: surface, Kind: k, From: p, To: p, Mishits: []string{}})
		return &pads[len(pads)-1]
	}
	for _, o := range outcomes {
		for _, s := range o.Shares {
			if s.Padded == nil { // only bare hard surfaces have it
				continue
			}
			p := at(s.Surface, s.Kind, s.From)
			p.Share = max(p.Share, s.Share)
			p.grow(s.From, s.To, s.Fastest, s.Back)
			p.Padded = worseOf(p.Padded, s.Padded)
		}
		for _, m := range o.Misses {
			if m.Contact.Material != Hard {
				continue
			}
			c := m.Contact
			p := at(c.Surface, c.Kind, c.Point)
			p.grow(c.Point, c.Point, c.Speed, m.Back)
			p.Padded = worseOf(p.Padded, m.Padded)
			if !slices.Contains(p.Mishits, m.Name) {
				p.Mishits = append(p.Mishits, m.Name)
			}
		}
	}
	slices.SortStableFunc(pads, func(a, b Pad) int {
		return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.Surface, b.Surface))
	})
	return pads
}

func (p *Pad) grow(from, to [3]float64, speed float64, back Return) {
	for j := range 3 {
		p.From[j], p.To[j] = min(p.From[j], from[j]), max(p.To[j], to[j])
	}
	p.Fastest = max(p.Fastest, speed)
	p.Bare = p.Bare.worse(back)
}

// Ray is one launch angle of a fan, for drawing.
type Ray struct {
	Launch float64      `json:"launch"` // degrees
	Own    bool         `json:"own"`    // the club's own launch
	Points [][3]float64 `json:"points"` // the ball's centre, room frame, m, from tee to first contact
	End    Contact      `json:"end"`
}

// Fan flies a club's ball straight at the target at 5° to 60° in steps of 5°,
// and at its own launch, which comes last.
func Fan(p plan.Plan, tee plan.Tee, c plan.Club, headSpeed float64) []Ray {
	s, l := NewScene(p), FromClub(c, headSpeed)
	own := l.Elevation / degree
	var rays []Ray
	for i := 1; i <= 13; i++ {
		angle := 5 * float64(i)
		if i == 13 {
			angle = own
		}
		l.Elevation = angle * degree
		path := s.Fly(l.At(p, tee).State(), true)
		r := Ray{Launch: angle, Own: i == 13, End: path.End}
		for _, at := range path.Trail {
			r.Points = append(r.Points, [3]float64{at.P.X, at.P.Y, at.P.Z})
		}
		rays = append(rays, r)
	}
	return rays
}
