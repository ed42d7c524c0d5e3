package projector

import (
	"wideberth/internal/sim/family"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Rate is how many moments of a swing are looked at in a second.
const Rate = 240

// The meshes of a search for the darkest moment and of what is said of it. Frames
// are gone through coarsely first: a shadow changes little in a sixtieth of a second.
const (
	searchMesh = 64
	saidMesh   = 240
	coarse     = 4
)

// Shadow is what golfer and club cut out of the image in a player's usual swing, from
// the tee where they cut most.
type Shadow struct {
	Player  string  `json:"player"`
	Club    string  `json:"club"`
	Tee     string  `json:"tee"`
	Hand    string  `json:"hand"`
	Address float64 `json:"address"` // share of the image, standing to the ball
	Worst   float64 `json:"worst"`   // share, at the darkest moment of the swing
	Time    float64 `json:"time"`    // of that moment, s from the start
	Phase   string  `json:"phase"`   // in which it falls
}

// Film is one golfer's usual swing on one tee, seen from the lens.
type Film struct {
	swing *swing.Swing
	place sweep.Placement
}

// FilmOf puts the usual swing of a cast on a tee.
func FilmOf(p plan.Plan, c fit.Cast, tee plan.Tee) Film {
	return Film{c.Kin.Family.Central, sweep.Place(p, tee, c.Player)}
}

// MemberFilm is that of one member of a player's family with a club; the zero variation
// is the usual swing. It swings nobody else.
func MemberFilm(p plan.Plan, pl plan.Player, c plan.Club, tee plan.Tee, v swing.Variation) (Film, error) {
	s, err := family.SwingOf(pl, c, v)
	return Film{s, sweep.Place(p, tee, pl)}, err
}

// Frames is how many moments it has.
func (f Film) Frames() int { return int(f.swing.Duration()*Rate) + 1 }

// Duration is how long the swing takes, s.
func (f Film) Duration() float64 { return f.swing.Duration() }

// Dark darkens what golfer and club cut out at a time (s).
func (f Film) Dark(s *Shade, p Pyramid, t float64) {
	pose := f.swing.PoseAt(t)
	for i := range pose {
		s.Capsule(p, f.place.Capsule(pose[i]))
	}
}

// share is the share that is dark at a moment.
func (f Film) share(s *Shade, p Pyramid, frame int) float64 {
	s.Clear()
	f.Dark(s, p, float64(frame)/Rate)
	return s.Share()
}

// darkest finds the frame in which most is dark.
func (f Film) darkest(s *Shade, p Pyramid) (frame int, share float64) {
	n := f.Frames()
	look := func(k int) {
		if k < 0 || k >= n {
			return
		}
		if v := f.share(s, p, k); v > share {
			frame, share = k, v
		}
	}
	for k := 0; k < n; k += coarse {
		look(k)
	}
	at := frame
	for k := at - coarse + 1; k < at+coarse; k++ {
		look(k)
	}
	return frame, share
}

// Shadows judges every player with each of their clubs.
func Shadows(p plan.Plan, casts []fit.Cast, light Pyramid) []Shadow {
	out := []Shadow{}
	search, said := NewShade(MeshOf(searchMesh, light.Image)), NewShade(MeshOf(saidMesh, light.Image))
	for _, c := range casts {
		best := Shadow{Player: c.Player.Name, Club: c.Club.Name, Hand: string(c.Player.Hand)}
		for k, tee := range p.TeesOf(c.Player) {
			f := FilmOf(p, c, tee)
			frame, _ := f.darkest(search, light)
			one := best
			one.Tee, one.Time = tee.Name, float64(frame)/Rate
			one.Worst, one.Address = f.share(said, light, frame), f.share(said, light, 0)
			one.Worst = max(one.Worst, one.Address)
			one.Phase = string(f.swing.PhaseAt(one.Time))
			if k == 0 || one.Worst > best.Worst {
				best = one
			}
		}
		out = append(out, best)
	}
	return out
}

// Blocked is a thing that stands in the light, and how much of the image it takes.
type Blocked struct {
	Name  string  `json:"name"`
	Share float64 `json:"share"`
}

// InTheWay lists the built-in and hung things and the returns of the screen that the
// light meets, but for the projector itself, which holds the lens.
func InTheWay(p plan.Plan, light Pyramid, itself string) []Blocked {
	out := []Blocked{}
	s := NewShade(MeshOf(saidMesh, light.Image))
	for _, f := range standing(p, itself) {
		s.Clear()
		s.Box(light, f.Box)
		if v := s.Share(); v > 0 {
			out = append(out, Blocked{f.Name, v})
		}
	}
	return out
}

// standing are the boxes of a plan that can stand in the light.
func standing(p plan.Plan, itself string) (out []sweep.Surface) {
	for _, f := range sweep.Surfaces(p) {
		if !f.Kind.Flat() && f.Name != itself {
			out = append(out, f)
		}
	}
	return out
}

// Point is a place as a vector.
func Point(v [3]float64) geom.Vec { return geom.Vec{X: v[0], Y: v[1], Z: v[2]} }

// Mat is where the mat lies under the golfer.
func (f Film) Mat(p plan.Plan) (geom.Box, bool) { return f.place.Mat(p, f.swing.PoseAt(0)) }
