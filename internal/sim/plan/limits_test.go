package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wideberth/internal/units"
)

// hall is a roomy plan in metres with one of everything, in which one figure can
// be moved from limit to limit without running into another.
func hall() Plan {
	return Plan{
		Version: Version, Units: units.Metric, Margin: 0.15,
		Room: Room{Length: 12, Width: 8, Height: 5,
			Slopes: []Slope{{Name: "roof", Wall: WallLeft, KneeHeight: 4, Run: 1}},
			Solids: []Solid{{Name: "beam", Min: [3]float64{1, 1, 4}, Max: [3]float64{2, 2, 5}}}},
		Floor:   Floor{Layers: []Layer{{Name: "turf", Thickness: 0.02}}, Mat: &Mat{Thickness: 0.02, Length: 1.5, Width: 1.5, Inset: true}},
		Screen:  &Screen{X: 9, Centre: 4, Bottom: 0.1, Width: 4, Height: 3, SideReturn: 0.5, TopReturn: 0.5},
		Tees:    []Tee{{Name: "tee", X: 5, Y: 4}},
		Clubs:   []Club{{Name: "iron", Kind: KindIron, Length: 0.95, Lie: 62, Loft: 34, Ball: &Ball{Speed: 44, Launch: 18, Spin: 6500}}},
		Players: []Player{{Name: "one", Height: 1.8, Hand: HandRight, Shoe: 0.02, Turn: TurnFull, Plane: PlaneNeutral, Follow: FollowFull, Skill: SkillAverage}},
		Hung:    []Hung{{Name: "lamp", Min: [3]float64{1, 1, 3}, Max: [3]float64{2, 2, 4}}},
		Seats:   []Seat{{Name: "chair", X: 1, Y: 1, Radius: 0.35}},
		Sensor:  &Sensor{Name: "sensor", Min: [2]float64{1, 1}, Max: [2]float64{2, 2}},
		Air:     &Air{Temperature: 20},
	}
}

func TestHall(t *testing.T) {
	if all := hall().Problems(); all != nil {
		t.Fatalf("Problems() = %v, want none", all[0])
	}
	if all := hall().Notes(); all != nil {
		t.Errorf("Notes() = %q, want none", all)
	}
}

// TestLimits: every number of a plan is taken at its least and its most and is
// refused by its path a hair outside, with the limits for whoever says them in
// other units. A field for which zero means "not given" is taken at zero too.
func TestLimits(t *testing.T) {
	type at = func(p *Plan) *float64
	for _, c := range []struct {
		field       string
		at          at
		least, most float64
		unit        string
		who         string
		zero        bool // means "not given"
	}{
		{"margin", func(p *Plan) *float64 { return &p.Margin }, 0.01, 1, " m", "", true},
		{"room.length", func(p *Plan) *float64 { p.Screen, p.Tees = nil, nil; return &p.Room.Length }, 2, 60, " m", "room: ", false},
		{"room.width", func(p *Plan) *float64 {
			p.Screen, p.Tees, p.Seats[0].Y = nil, nil, 0
			return &p.Room.Width
		}, 1.5, 60, " m", "room: ", false},
		{"room.height", func(p *Plan) *float64 {
			p.Screen, p.Room.Slopes, p.Players[0].Height = nil, nil, 1
			return &p.Room.Height
		}, 1.5, 20, " m", "room: ", false},
		{"room.slopes[0].kneeHeight", func(p *Plan) *float64 { return &p.Room.Slopes[0].KneeHeight }, 0, 5, " m", `slope "roof": `, true},
		{"room.slopes[0].run", func(p *Plan) *float64 { return &p.Room.Slopes[0].Run }, 0.01, 8, " m", `slope "roof": `, false},
		{"room.slopes[0].run", func(p *Plan) *float64 { p.Room.Slopes[0].Wall = WallRight; return &p.Room.Slopes[0].Run }, 0.01, 8, " m", `slope "roof": `, false},
		{"room.slopes[0].run", func(p *Plan) *float64 { p.Room.Slopes[0].Wall = WallFront; return &p.Room.Slopes[0].Run }, 0.01, 12, " m", `slope "roof": `, false},
		{"room.slopes[0].run", func(p *Plan) *float64 { p.Room.Slopes[0].Wall = WallBack; return &p.Room.Slopes[0].Run }, 0.01, 12, " m", `slope "roof": `, false},
		{"room.solids[0].min[0]", func(p *Plan) *float64 { return &p.Room.Solids[0].Min[0] }, -1, math.NaN(), " m", `solid "beam": `, false},
		{"room.solids[0].max[0]", func(p *Plan) *float64 { return &p.Room.Solids[0].Max[0] }, math.NaN(), 61, " m", `solid "beam": `, false},
		{"room.solids[0].min[2]", func(p *Plan) *float64 { return &p.Room.Solids[0].Min[2] }, -1, math.NaN(), " m", `solid "beam": `, false},
		{"room.solids[0].max[2]", func(p *Plan) *float64 { return &p.Room.Solids[0].Max[2] }, math.NaN(), 61, " m", `solid "beam": `, false},
		{"floor.layers[0].thickness", func(p *Plan) *float64 { return &p.Floor.Layers[0].Thickness }, 0, 0.5, " m", `floor layer "turf": `, true},
		{"floor.mat.thickness", func(p *Plan) *float64 { return &p.Floor.Mat.Thickness }, 0, 0.5, " m", "mat: ", true},
		{"floor.mat.length", func(p *Plan) *float64 { return &p.Floor.Mat.Length }, 0.3, 6, " m", "mat: ", true},
		{"floor.mat.width", func(p *Plan) *float64 { return &p.Floor.Mat.Width }, 0.3, 6, " m", "mat: ", true},
		{"screen.x", func(p *Plan) *float64 { p.Tees[0].X = 0.1; return &p.Screen.X }, 0.5, 12, " m", "screen: ", false},
		{"screen.centre", func(p *Plan) *float64 { p.Screen.Width = 0; return &p.Screen.Centre }, 0, 8, " m", "screen: ", false},
		{"screen.bottom", func(p *Plan) *float64 { p.Screen.Height = 0; return &p.Screen.Bottom }, 0, 5, " m", "screen: ", false},
		{"screen.width", func(p *Plan) *float64 { p.Room.Width, p.Screen.Centre = 20, 10; return &p.Screen.Width }, 0.5, 20, " m", "screen: ", false},
		{"screen.height", func(p *Plan) *float64 { p.Room.Height, p.Screen.Bottom = 20, 0; return &p.Screen.Height }, 0.5, 20, " m", "screen: ", false},
		{"screen.sideReturn", func(p *Plan) *float64 { return &p.Screen.SideReturn }, 0, 5, " m", "screen: ", true},
		{"screen.topReturn", func(p *Plan) *float64 { return &p.Screen.TopReturn }, 0, 5, " m", "screen: ", true},
		{"clubs[0].length", func(p *Plan) *float64 { return &p.Clubs[0].Length }, 0.45, 1.6, " m", `club "iron": `, true},
		{"clubs[0].lie", func(p *Plan) *float64 { return &p.Clubs[0].Lie }, 40, 80, "°", `club "iron": `, true},
		{"clubs[0].loft", func(p *Plan) *float64 { return &p.Clubs[0].Loft }, 4, 70, "°", `club "iron": `, true},
		{"clubs[0].ball.speed", func(p *Plan) *float64 { return &p.Clubs[0].Ball.Speed }, 5, 95, " m/s", `club "iron": `, true},
		{"clubs[0].ball.launch", func(p *Plan) *float64 { return &p.Clubs[0].Ball.Launch }, 0, 70, "°", `club "iron": `, true},
		{"clubs[0].ball.spin", func(p *Plan) *float64 { return &p.Clubs[0].Ball.Spin }, 0, 15000, " rev/min", `club "iron": `, true},
		{"players[0].height", func(p *Plan) *float64 { return &p.Players[0].Height }, 0.9, 2.4, " m", `player "one": `, false},
		{"players[0].span", func(p *Plan) *float64 { return &p.Players[0].Span }, 0.7, 2.8, " m", `player "one": `, true},
		{"players[0].arm", func(p *Plan) *float64 { return &p.Players[0].Arm }, 0.25, 1.1, " m", `player "one": `, true},
		{"players[0].ballToToes", func(p *Plan) *float64 { return &p.Players[0].BallToToes }, 0.35, 1.2, " m", `player "one": `, true},
		{"players[0].ballToHands", func(p *Plan) *float64 { return &p.Players[0].BallToHands }, 0.35, 1.05, " m", `player "one": `, true},
		{"players[0].shoe", func(p *Plan) *float64 { return &p.Players[0].Shoe }, 0, 0.1, " m", `player "one": `, true},
		{"hung[0].min[1]", func(p *Plan) *float64 { return &p.Hung[0].Min[1] }, -1, math.NaN(), " m", `hung thing "lamp": `, false},
		{"hung[0].max[1]", func(p *Plan) *float64 { return &p.Hung[0].Max[1] }, math.NaN(), 61, " m", `hung thing "lamp": `, false},
		{"hung[0].throwRatio", func(p *Plan) *float64 { return &p.Hung[0].ThrowRatio }, 0.1, 10, "", `hung thing "lamp": `, true},
		{"hung[0].lensHeight", func(p *Plan) *float64 { return &p.Hung[0].LensHeight }, 0, 20, " m", `hung thing "lamp": `, true},
		{"hung[0].lumens", func(p *Plan) *float64 { return &p.Hung[0].Lumens }, 50, 100000, " lumens", `hung thing "lamp": `, true},
		{"seats[0].x", func(p *Plan) *float64 { return &p.Seats[0].X }, 0, 12, " m", `seat "chair": `, true},
		{"seats[0].y", func(p *Plan) *float64 { return &p.Seats[0].Y }, 0, 8, " m", `seat "chair": `, true},
		{"seats[0].radius", func(p *Plan) *float64 { return &p.Seats[0].Radius }, 0.1, 2, " m", `seat "chair": `, true},
		{"sensor.min[0]", func(p *Plan) *float64 { return &p.Sensor.Min[0] }, -1, math.NaN(), " m", "sensor: ", false},
		{"sensor.min[1]", func(p *Plan) *float64 { return &p.Sensor.Min[1] }, -1, math.NaN(), " m", "sensor: ", false},
		{"sensor.max[0]", func(p *Plan) *float64 { return &p.Sensor.Max[0] }, math.NaN(), 61, " m", "sensor: ", false},
		{"sensor.max[1]", func(p *Plan) *float64 { return &p.Sensor.Max[1] }, math.NaN(), 61, " m", "sensor: ", false},
		{"air.temperature", func(p *Plan) *float64 { return &p.Air.Temperature }, -40, 55, " °C", "air: ", true},
		{"air.altitude", func(p *Plan) *float64 { return &p.Air.Altitude }, -450, 6000, " m", "air: ", true},
	} {
		t.Run(c.field, func(t *testing.T) {
			// of returns the problem of the field alone when it has this value.
			of := func(v float64) *FieldError {
				p := hall()
				*c.at(&p) = v
				for _, e := range p.Problems() {
					if e.Field == c.field {
						return e
					}
				}
				return nil
			}
			hair := 1e-6 * max(1, math.Abs(c.least), math.Abs(c.most))
			if math.IsNaN(hair) {
				hair = 1e-6
			}
			refused := func(v float64) {
				t.Helper()
				e := of(v)
				if e == nil {
					t.Errorf("%v is taken", v)
					return
				}
				if !strings.HasPrefix(e.Message, c.who) || !strings.Contains(e.Message, c.unit+" is outside ") {
					t.Errorf("%v: %q, want it to begin with %q and give %q", v, e.Message, c.who, c.unit)
				}
				r := e.Range
				if r == nil || r.Who != c.who || r.Value != v ||
					!math.IsNaN(c.least) && r.Least != c.least || !math.IsNaN(c.most) && r.Most != c.most {
					t.Errorf("%v: its range is %+v, want %v to %v of %q", v, r, c.least, c.most, c.who)
				}
			}
			taken := func(v float64) {
				t.Helper()
				if e := of(v); e != nil {
					t.Errorf("%v is refused: %v", v, e)
				}
			}
			if !math.IsNaN(c.least) {
				taken(c.least)
				if c.least != 0 || !c.zero { // at zero the other side is told below
					refused(c.least - hair)
				} else {
					refused(-1e-6)
				}
			}
			if !math.IsNaN(c.most) {
				taken(c.most)
				refused(c.most + hair)
			}
			if c.zero {
				taken(0)
			} else if !math.IsNaN(c.least) && c.least > 0 {
				refused(0)
			}
		})
	}
}

// TestMost: as many as may be are taken, one more is refused.
func TestMost(t *testing.T) {
	names := func(n int) (out []string) {
		for i := range n {
			out = append(out, "no. "+strconv.Itoa(i))
		}
		return out
	}
	for _, c := range []struct {
		field string
		most  int
		fill  func(p *Plan, names []string)
	}{
		{"room.slopes", 8, func(p *Plan, names []string) {
			p.Room.Slopes = nil
			for _, n := range names {
				p.Room.Slopes = append(p.Room.Slopes, Slope{n, WallLeft, 4, 1})
			}
		}},
		{"room.solids", 40, func(p *Plan, names []string) {
			p.Room.Solids = nil
			for _, n := range names {
				p.Room.Solids = append(p.Room.Solids, Solid{n, [3]float64{}, [3]float64{1, 1, 1}, ""})
			}
		}},
		{"floor.layers", 12, func(p *Plan, names []string) {
			p.Floor.Layers = nil
			for _, n := range names {
				p.Floor.Layers = append(p.Floor.Layers, Layer{n, 0.01})
			}
		}},
		{"tees", 6, func(p *Plan, names []string) {
			p.Tees = nil
			for _, n := range names {
				p.Tees = append(p.Tees, Tee{n, 5, 4})
			}
		}},
		{"clubs", 14, func(p *Plan, names []string) {
			p.Clubs = nil
			for _, n := range names {
				p.Clubs = append(p.Clubs, Club{Name: n, Kind: KindDriver})
			}
		}},
		{"players", 12, func(p *Plan, names []string) {
			p.Players = nil
			for _, n := range names {
				p.Players = append(p.Players, Player{Name: n, Height: 1.8})
			}
		}},
		{"hung", 20, func(p *Plan, names []string) {
			p.Hung = nil
			for _, n := range names {
				p.Hung = append(p.Hung, Hung{Name: n, Max: [3]float64{1, 1, 1}})
			}
		}},
		{"seats", 12, func(p *Plan, names []string) {
			p.Seats = nil
			for _, n := range names {
				p.Seats = append(p.Seats, Seat{Name: n})
			}
		}},
	} {
		for _, n := range []int{c.most, c.most + 1} {
			p := hall()
			c.fill(&p, names(n))
			got := p.Problems()
			if n == c.most && got != nil {
				t.Errorf("%d %s: %v, want no problem", n, c.field, got[0])
			}
			if want := fmt.Sprintf("%s: %d are too many; a plan holds at most %d", c.field, n, c.most); n > c.most &&
				(len(got) != 1 || got[0].Message != want || got[0].Field != c.field) {
				t.Errorf("%d %s: %v, want %q", n, c.field, got, want)
			}
		}
	}
}

// TestNames: a name and a title may be as long as they may, and no longer; names
// differ in more than case and in lists of their own they need not.
func TestNames(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Plan)
		want   string // the message; "" for none
	}{
		{"longest title", func(p *Plan) { p.Title = strings.Repeat("é", 80) }, ""},
		{"title too long", func(p *Plan) { p.Title = strings.Repeat("é", 81) }, "title must be one line of at most 80 characters, none of them hidden"},
		{"longest name", func(p *Plan) { p.Tees[0].Name = strings.Repeat("é", 40) }, ""},
		{"longest sensor", func(p *Plan) { p.Sensor.Name = strings.Repeat("é", 40) }, ""},
		{"sensor too long", func(p *Plan) { p.Sensor.Name = strings.Repeat("é", 41) }, "sensor: the name must be one line of at most 40 characters, none of them hidden"},
		{"sensor on two lines", func(p *Plan) { p.Sensor.Name = "a\nb" }, "sensor: the name must be one line of at most 40 characters, none of them hidden"},
		{"sensor of spaces", func(p *Plan) { p.Sensor.Name = "  " }, "sensor: it needs a name"},
		{"the second of two lacks one", func(p *Plan) { p.Seats = append(p.Seats, Seat{X: 1, Y: 1}) }, "seat 2 needs a name"},
		{"case apart", func(p *Plan) { p.Clubs = append(p.Clubs, Club{Name: "IRON ", Kind: KindIron}) }, `club 2: the name "IRON " is already used by club 1`},
		{"lists apart", func(p *Plan) { p.Tees[0].Name, p.Clubs[0].Name, p.Seats[0].Name = "lamp", "lamp", "lamp" }, ""},
		{"slope and solid", func(p *Plan) { p.Room.Solids[0].Name = "roof" }, `solid 1: the name "roof" is already used by slope 1`},
		{"slope named as a wall", func(p *Plan) { p.Room.Slopes[0].Name = "Back Wall" }, `slope 1: the name "Back Wall" is already used by the room itself`},
		{"hung named as the screen", func(p *Plan) { p.Hung[0].Name = "screen" }, `hung thing 1: the name "screen" is already used by the room itself`},
		{"a tee may be called so", func(p *Plan) { p.Tees[0].Name = "screen" }, ""},
		{"a club that is not there", func(p *Plan) { p.Players[0].Clubs = []string{"iron", "wood"} }, `player "one": there is no club called "wood"`},
		{"a tee twice", func(p *Plan) { p.Players[0].Tees = []string{"tee", "tee"} }, `player "one": tee "tee" is listed twice`},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := hall()
			c.change(&p)
			var got []string
			for _, e := range p.Problems() {
				got = append(got, e.Message)
			}
			var want []string
			if c.want != "" {
				want = []string{c.want}
			}
			if !slices.Equal(got, want) {
				t.Errorf("Problems() = %q, want %q", got, want)
			}
		})
	}
}

// TestFitting: what must fit into something else fits up to 0.1 mm, and is told
// apart from what does not.
func TestFitting(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Plan)
		want   string // the message; "" for none
	}{
		{"the screen from wall to wall", func(p *Plan) { p.Screen.Width = 8 }, ""},
		{"the screen from wall to wall, rounded", func(p *Plan) { p.Screen.Width, p.Screen.Centre = 8, 4.00009 }, ""},
		{"beyond the left wall", func(p *Plan) { p.Screen.Centre = 6.25 }, "screen: its left edge is 0.25 m beyond the left wall"},
		{"just beyond the left wall", func(p *Plan) { p.Screen.Centre = 6.0002 }, "screen: its left edge is 0.0002 m beyond the left wall"},
		{"beyond the right wall", func(p *Plan) { p.Screen.Centre = 1.5 }, "screen: its right edge is 0.5 m beyond the right wall"},
		{"up to the right wall, rounded", func(p *Plan) { p.Screen.Centre = 1.99991 }, ""},
		{"wider than the room", func(p *Plan) { p.Screen.Width = 9 }, "screen: width 9 m is more than the room's 8 m"},
		{"up to the ceiling", func(p *Plan) { p.Screen.Bottom = 2 }, ""},
		{"up to the ceiling, rounded", func(p *Plan) { p.Screen.Bottom = 2.00009 }, ""},
		{"through the ceiling", func(p *Plan) { p.Screen.Bottom = 2.5 }, "screen: its top at 5.5 m is above the ceiling at 5 m"},
		{"a player up to the ceiling", func(p *Plan) {
			p.Screen, p.Room.Slopes, p.Room.Height, p.Players[0].Height, p.Players[0].Shoe, p.Floor = nil, nil, 2, 1.75, 0.0625, Floor{Layers: []Layer{{"turf", 0.1875}}}
		}, ""},
		{"a player and their shoes do not", func(p *Plan) {
			p.Screen, p.Room.Slopes, p.Room.Height, p.Players[0].Height, p.Players[0].Shoe, p.Floor = nil, nil, 2, 1.75, 0.07, Floor{Layers: []Layer{{"turf", 0.1875}}}
		}, `player "one": height 1.75 m and 0.07 m of shoe do not fit under the ceiling, which is 1.8125 m above the surface to stand on`},
		{"a solid of no thickness", func(p *Plan) { p.Room.Solids[0].Max[1] = 1 }, `solid "beam": greatest y 1 m must be more than least y 1 m`},
		{"a sensor of no length", func(p *Plan) { p.Sensor.Max[1] = 1 }, `sensor: greatest y 1 m must be more than least y 1 m`},
		{"a ball that touches the screen", func(p *Plan) { p.Tees[0].X = 9 - 0.0213 }, `tee "tee": 8.9787 m from the back wall is beyond the screen, which hangs at 9 m`},
		{"a ball just before the screen", func(p *Plan) { p.Tees[0].X = 9 - 0.0214 }, ""},
		{"a tee at the right wall", func(p *Plan) { p.Tees[0].Y = 0 }, `tee "tee": y 0 m is outside the room, which is 8 m wide`},
		{"a tee at the left wall", func(p *Plan) { p.Tees[0].Y = 8 }, `tee "tee": y 8 m is outside the room, which is 8 m wide`},
		{"a tee at the front wall", func(p *Plan) { p.Screen, p.Tees[0].X = nil, 12 }, `tee "tee": x 12 m is outside the room, which is 12 m long`},
		// The roof is 0.06 m up 0.01 m from the wall, and the floor 0.02 m.
		{"a ball under a low slope", func(p *Plan) {
			p.Room.Slopes[0].KneeHeight, p.Tees[0].Y = 0.02, 7.99
		}, ""},
		{"no ball under a low slope", func(p *Plan) {
			p.Room.Slopes[0].KneeHeight, p.Tees[0].Y = 0.01, 7.99
		}, `tee "tee": the slope above it leaves no room for a ball`},
		{"in a column", func(p *Plan) {
			p.Room.Solids[0] = Solid{"column", [3]float64{4.9, 3.9, 0}, [3]float64{5.1, 4.1, 5}, ""}
		}, `tee "tee": it lies inside solid "column"`},
		{"behind a column", func(p *Plan) {
			p.Room.Solids[0] = Solid{"column", [3]float64{5, 3.9, 0}, [3]float64{5.1, 4.1, 5}, ""}
		}, ""},
		{"before a column", func(p *Plan) {
			p.Room.Solids[0] = Solid{"column", [3]float64{4.9, 3.9, 0}, [3]float64{5, 4.1, 5}, ""}
		}, ""},
		{"beside a column", func(p *Plan) {
			p.Room.Solids[0] = Solid{"column", [3]float64{4.9, 4, 0}, [3]float64{5.1, 4.1, 5}, ""}
		}, ""},
		{"on the other side of it", func(p *Plan) {
			p.Room.Solids[0] = Solid{"column", [3]float64{4.9, 3.9, 0}, [3]float64{5.1, 4, 5}, ""}
		}, ""},
		{"on a plinth that ends in the floor", func(p *Plan) {
			p.Room.Solids[0] = Solid{"plinth", [3]float64{4.9, 3.9, 0}, [3]float64{5.1, 4.1, 0.02}, ""}
		}, ""},
		{"on a plinth that does not", func(p *Plan) {
			p.Room.Solids[0] = Solid{"plinth", [3]float64{4.9, 3.9, 0}, [3]float64{5.1, 4.1, 0.03}, ""}
		}, `tee "tee": it lies inside solid "plinth"`},
		{"under a shelf as high as a ball", func(p *Plan) {
			p.Room.Solids[0] = Solid{"shelf", [3]float64{4.9, 3.9, 0.0627}, [3]float64{5.1, 4.1, 1}, ""}
		}, ""},
		{"under a lower shelf", func(p *Plan) {
			p.Room.Solids[0] = Solid{"shelf", [3]float64{4.9, 3.9, 0.0626}, [3]float64{5.1, 4.1, 1}, ""}
		}, `tee "tee": it lies inside solid "shelf"`},
		{"an inside of two solids is told once", func(p *Plan) {
			one := Solid{"one", [3]float64{4.9, 3.9, 0}, [3]float64{5.1, 4.1, 5}, ""}
			two := one
			two.Name = "two"
			p.Room.Solids = []Solid{one, two}
		}, `tee "tee": it lies inside solid "one"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := hall()
			c.change(&p)
			var got []string
			for _, e := range p.Problems() {
				got = append(got, e.Message)
			}
			if c.want == "" && got != nil || c.want != "" && !slices.Equal(got, []string{c.want}) {
				t.Errorf("Problems() = %q, want %q", got, c.want)
			}
		})
	}
}

// TestRangesToTell: who says a problem in the reader's words is told the numbers.
func TestRangesToTell(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Plan)
		want   Range
	}{
		{"a tee outside", func(p *Plan) { p.Tees[0].X = 13 }, Range{`tee "tee": `, 13, 0, 12}},
		{"a solid that ends before it starts", func(p *Plan) { p.Room.Solids[0].Max[0] = 0.5 }, Range{`solid "beam": `, 0.5, 1, 61}},
		{"a sensor that does", func(p *Plan) { p.Sensor.Max[1] = 0.5 }, Range{"sensor: ", 0.5, 1, 61}},
	} {
		p := hall()
		c.change(&p)
		all := p.Problems()
		if len(all) != 1 || all[0].Range == nil || *all[0].Range != c.want {
			t.Errorf("%s: %+v, want one problem with %+v", c.name, all, c.want)
		}
	}
}

// TestFits: which bare numbers are sensible, at the edge of it.
func TestFits(t *testing.T) {
	for _, c := range []struct {
		pattern     string
		least, most float64
	}{
		{"players[].height", 0.9, 2.4}, {"clubs[].length", 0.45, 1.6},
		{"room.length", 2, 60}, {"room.width", 1.5, 60}, {"room.height", 1.5, 20},
	} {
		for v, want := range map[float64]bool{c.least: true, c.most: true, c.least - 0.001: false, c.most + 0.001: false} {
			if got, ok := Fits(c.pattern, v); got != want || !ok {
				t.Errorf("Fits(%s, %v) = %v, %v, want %v, true", c.pattern, v, got, ok, want)
			}
		}
	}
	if _, ok := Fits("room.solids[].min", 1); ok {
		t.Error("Fits(room.solids[].min) tells, want nothing to tell by")
	}
}

// TestNotesEdges: what is allowed but odd is noted from the limit on and not at it.
func TestNotesEdges(t *testing.T) {
	outside := func(kind string) string { return kind + " lies outside the room and counts for nothing." }
	for _, c := range []struct {
		name   string
		change func(p *Plan)
		want   string // "" for none
	}{
		{"a margin of 0.1 m", func(p *Plan) { p.Margin = 0.1 }, ""},
		{"a margin under it", func(p *Plan) { p.Margin = 0.0999 }, "The margin of 100 mm is under 100 mm: real swings differ from one to the next by more than that."},
		{"a mat as thick as the floor, rounded", func(p *Plan) { p.Floor.Mat.Thickness = 0.02009 }, ""},
		{"a thicker mat", func(p *Plan) { p.Floor.Mat.Thickness = 0.025 }, "The inset mat is thicker than the floor layers around it: it stands 5 mm proud of them."},
		{"a thick mat that is not let in", func(p *Plan) { p.Floor.Mat.Thickness, p.Floor.Mat.Inset = 0.1, false }, ""},
		{"the longest club, rounded", func(p *Plan) { p.Clubs[0].Length = 1.21929 }, ""},
		{"a longer one", func(p *Plan) { p.Clubs[0].Length = 1.222 }, `Club "iron" is 1.222 m long, over the 48 in (1.219 m) limit of the Equipment Rules, Part 2, 1c.`},
		{"the shortest who was measured", func(p *Plan) { p.Players[0].Height = 1.41 }, ""},
		{"a shorter one", func(p *Plan) { p.Players[0].Height = 1.409 }, `Player "one": height 1.409 m is outside the measured people (ANSUR II), extrapolated.`},
		{"the tallest who was measured", func(p *Plan) { p.Players[0].Height = 2 }, ""},
		{"a taller one", func(p *Plan) { p.Players[0].Height = 2.001 }, `Player "one": height 2.001 m is outside the measured people (ANSUR II), extrapolated.`},
		{"a beam within the back wall", func(p *Plan) { p.Room.Solids[0].Min[0], p.Room.Solids[0].Max[0] = -0.5, 0 }, outside(`Solid "beam"`)},
		{"one that comes through it", func(p *Plan) { p.Room.Solids[0].Min[0], p.Room.Solids[0].Max[0] = -0.5, 0.01 }, ""},
		{"within the right wall", func(p *Plan) { p.Hung[0].Min[1], p.Hung[0].Max[1] = -0.5, 0 }, outside(`Hung thing "lamp"`)},
		{"through the right wall", func(p *Plan) { p.Hung[0].Min[1], p.Hung[0].Max[1] = -0.5, 0.01 }, ""},
		{"below the floor", func(p *Plan) { p.Hung[0].Min[2], p.Hung[0].Max[2] = -0.5, 0 }, outside(`Hung thing "lamp"`)},
		{"through the floor", func(p *Plan) { p.Hung[0].Min[2], p.Hung[0].Max[2] = -0.5, 0.01 }, ""},
		{"within the front wall", func(p *Plan) { p.Hung[0].Min[0], p.Hung[0].Max[0] = 12, 13 }, outside(`Hung thing "lamp"`)},
		{"through the front wall", func(p *Plan) { p.Hung[0].Min[0], p.Hung[0].Max[0] = 11.99, 13 }, ""},
		{"within the left wall", func(p *Plan) { p.Hung[0].Min[1], p.Hung[0].Max[1] = 8, 9 }, outside(`Hung thing "lamp"`)},
		{"through the left wall", func(p *Plan) { p.Hung[0].Min[1], p.Hung[0].Max[1] = 7.99, 9 }, ""},
		{"above the ceiling", func(p *Plan) { p.Hung[0].Min[2], p.Hung[0].Max[2] = 5, 6 }, outside(`Hung thing "lamp"`)},
		{"through the ceiling", func(p *Plan) { p.Hung[0].Min[2], p.Hung[0].Max[2] = 4.99, 6 }, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := hall()
			c.change(&p)
			got := p.Notes()
			if c.want == "" && got != nil || c.want != "" && !slices.Equal(got, []string{c.want}) {
				t.Errorf("Notes() = %q, want %q", got, c.want)
			}
		})
	}
}
