// Package plantest holds plans for the tests of the packages that answer them.
package plantest

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"

	"wideberth/internal/sim/plan"
)

// Checked is a plan that a test made, which must be valid.
func Checked(p plan.Plan) plan.Checked {
	c, err := plan.Check(p)
	if err != nil {
		panic(err)
	}
	return c
}

// Loft is a loft in which half of the checks strike and the others are tight, at
// the rafters, the beam and both walls.
func Loft() plan.Plan {
	c, err := plan.Parse([]byte(loftJSON))
	if err != nil {
		panic(err)
	}
	return c.Plan()
}

const loftJSON = `{
  "version": 1,
  "title": "Tight loft",
  "units": "imperial",
  "margin": 0.15,
  "room": {
    "length": 6.40, "width": 4.42, "height": 2.87,
    "slopes": [{"name": "rafters, left", "wall": "left", "kneeHeight": 2.10, "run": 0.90}],
    "solids": [{"name": "boxed beam", "min": [3.0, 0.0, 2.62], "max": [3.2, 4.42, 2.87]}]
  },
  "floor": {
    "layers": [
      {"name": "plywood", "thickness": 0.018},
      {"name": "rubber", "thickness": 0.010},
      {"name": "turf", "thickness": 0.012}
    ],
    "mat": {"thickness": 0.040, "length": 1.50, "width": 1.50, "inset": true}
  },
  "screen": {"x": 6.00, "centre": 2.21, "bottom": 0.05, "width": 3.56, "height": 2.00, "sideReturn": 1.0, "topReturn": 0.9},
  "tees": [{"name": "middle", "x": 2.90, "y": 2.21}],
  "clubs": [
    {"name": "driver", "kind": "driver", "length": 1.156, "lie": 58, "loft": 10.5, "ball": {"speed": 62, "launch": 12.5, "spin": 2700}},
    {"name": "7-iron", "kind": "iron"},
    {"name": "pitching wedge", "kind": "wedge"}
  ],
  "players": [
    {"name": "Host", "height": 1.78, "hand": "right"},
    {"name": "Tall guest", "height": 1.92, "hand": "right", "span": 2.01, "follow": "loose"},
    {"name": "Left-handed friend", "height": 1.70, "hand": "left", "clubs": ["driver", "7-iron"]}
  ],
  "hung": [{"name": "projector", "min": [2.1, 2.0, 2.45], "max": [2.5, 2.45, 2.80], "throwRatio": 0.80, "lensHeight": 2.50, "lumens": 3500}],
  "seats": [
    {"name": "stool", "x": 0.50, "y": 0.60},
    {"name": "bench", "x": 0.50, "y": 3.80}
  ]
}
`

// OneClub is the loft with fewer swings to model.
func OneClub(clubs ...string) plan.Plan {
	p := Loft()
	p.Clubs = slices.DeleteFunc(p.Clubs, func(c plan.Club) bool { return !slices.Contains(clubs, c.Name) })
	for i := range p.Players {
		p.Players[i].Clubs = nil
	}
	return p.WithDefaults()
}

// Rooms are rooms in which different things decide.
func Rooms() map[string]plan.Plan {
	high := OneClub("driver", "7-iron")
	high.Room.Height = 3.6
	high.Room.Slopes[0].KneeHeight = 3.0
	high.Room.Solids = []plan.Solid{
		{Name: "column", Min: [3]float64{1.0, 1.0, 0}, Max: [3]float64{1.2, 1.2, 3.6}},
		{Name: "duct along the wall", Min: [3]float64{0, 0, 2.3}, Max: [3]float64{6.4, 0.5, 3.6}},
	}
	cellar := OneClub("7-iron")
	cellar.Players = cellar.Players[:1]
	cellar.Room.Slopes, cellar.Room.Solids = nil, nil
	cellar.Hung = []plan.Hung{{Name: "lamp", Min: [3]float64{2.9, 2.1, 2.30}, Max: [3]float64{3.1, 2.3, 2.87}}}
	return map[string]plan.Plan{"loft": OneClub("driver"), "high with a duct": high, "lamp": cellar}
}

// Random makes a plan out of a seed, often an odd one; it may be invalid.
func Random(seed uint64) plan.Plan { return random(seed, 9, 7) }

// Small is Random with a small room, which is answered fast, and when others were
// answered before even more so: there is one golfer of either hand with one club, and
// slopes have one direction.
func Small(seed uint64) plan.Plan {
	p := random(seed, 4, 3)
	for i := range p.Room.Slopes {
		s := &p.Room.Slopes[i]
		s.Wall, s.KneeHeight, s.Run = plan.WallFront, p.Room.Height-0.5, 0.5
	}
	p.Clubs[0], p.Players[0].Height = plan.DefaultClub(plan.KindIron, "club"), 1.75
	return p
}

// random makes a plan with a room up to a length and a width.
func random(seed uint64, length, width float64) plan.Plan {
	rnd := rand.New(rand.NewPCG(seed, 21))
	in := func(lo, hi float64) float64 { return lo + (hi-lo)*rnd.Float64() }
	p := plan.Plan{Title: "seed " + strconv.FormatUint(seed, 10), Margin: in(0.02, 0.6)}
	l, w, h := in(3, length), in(2.2, width), in(2.2, 4)
	p.Room = plan.Room{Length: l, Width: w, Height: h}
	for i := range rnd.IntN(3) {
		p.Room.Slopes = append(p.Room.Slopes, plan.Slope{Name: fmt.Sprint("slope ", i), Wall: []plan.Wall{plan.WallLeft, plan.WallRight, plan.WallFront, plan.WallBack}[rnd.IntN(4)],
			KneeHeight: in(0.5, h), Run: in(0.2, min(l, w))})
	}
	box := func() (lo, hi [3]float64) {
		for i, size := range [3]float64{l, w, h} {
			lo[i] = in(0, size-0.1)
			hi[i] = min(size, lo[i]+in(0.02, 1.5))
			if rnd.IntN(3) == 0 {
				hi[i] = size
			}
			if rnd.IntN(4) == 0 {
				lo[i] = 0
			}
		}
		return lo, hi
	}
	for i := range rnd.IntN(4) {
		lo, hi := box()
		lo[2] = max(lo[2], 0.3)
		hi[2] = max(hi[2], lo[2]+0.1)
		p.Room.Solids = append(p.Room.Solids, plan.Solid{Name: fmt.Sprint("solid ", i), Min: lo, Max: hi})
	}
	for i := range rnd.IntN(3) {
		lo, hi := box()
		p.Hung = append(p.Hung, plan.Hung{Name: fmt.Sprint("thing ", i), Min: lo, Max: hi})
	}
	if rnd.IntN(3) > 0 {
		p.Screen = &plan.Screen{X: in(l/2, l), Centre: w / 2, Width: in(1, w), Height: in(1, h), SideReturn: in(0, 1), TopReturn: in(0, 1)}
	}
	if rnd.IntN(3) == 0 {
		p.Sensor = &plan.Sensor{Name: "sensor", Min: [2]float64{in(0, l/2), in(0, w/2)}, Max: [2]float64{in(l/2, l), in(w/2, w)}}
	}
	p.Floor.Mat = &plan.Mat{Thickness: in(0, 0.06), Inset: rnd.IntN(2) == 0}
	p.Floor.Layers = []plan.Layer{{Name: "layer", Thickness: in(0, 0.1)}}
	p.Tees = []plan.Tee{{Name: "tee", X: in(0.2, l-0.2), Y: in(0.2, w-0.2)}}
	p.Clubs = []plan.Club{plan.DefaultClub([]string{"driver", "iron", "wedge"}[rnd.IntN(3)], "club")}
	p.Players = []plan.Player{{Name: "player", Height: in(1.4, 2.05), Hand: []plan.Hand{plan.HandRight, plan.HandLeft}[rnd.IntN(2)]}}
	p.Seats = []plan.Seat{{Name: "seat", X: in(0, l), Y: in(0, w)}}
	return p.WithDefaults()
}
