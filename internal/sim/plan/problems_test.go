package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/units"
)

func fields(all []*FieldError) []string {
	var out []string
	for _, e := range all {
		out = append(out, e.Field)
	}
	return out
}

// TestProblems breaks the demo in one place at a time.
func TestProblems(t *testing.T) {
	for _, tc := range []struct {
		name    string
		change  func(*Plan)
		field   string
		message string
	}{
		{"title of two lines", func(p *Plan) { p.Title = "a\nb" }, "title", "one line"},
		{"units", func(p *Plan) { p.Units = "cubits" }, "units", `"cubits" is not one of imperial, metric`},
		{"negative margin", func(p *Plan) { p.Margin = -0.1 }, "margin", "margin -0.1 m is outside 0.01–1 m"},
		{"NaN", func(p *Plan) { p.Margin = math.NaN() }, "margin", "margin NaN m is outside"},
		{"infinite room", func(p *Plan) { p.Room.Length = math.Inf(1) }, "room.length", "length +Inf m is outside"},
		{"slope without a name", func(p *Plan) { p.Room.Slopes[0].Name = " " }, "room.slopes[0].name", "slope 1 needs a name"},
		{"slope on no wall", func(p *Plan) { p.Room.Slopes[0].Wall = "north" }, "room.slopes[0].wall", `"north" is not one of left, right, front, back`},
		{"knee above the ceiling", func(p *Plan) { p.Room.Slopes[0].KneeHeight = 3.5 }, "room.slopes[0].kneeHeight", "knee height 3.5 m is outside 0–3.2004 m"},
		{"run wider than the room", func(p *Plan) { p.Room.Slopes[0].Run = 5.5 }, "room.slopes[0].run", "run 5.5 m is outside 0.01–5.4864 m"},
		{"solid inside out", func(p *Plan) { p.Room.Solids[0].Max[2] = 2.5 }, "room.solids[0].max[2]", "greatest z 8 ft 2 3/8 in (2.5 m) must be more than least z 9 ft 6 in (2.8956 m)"},
		{"solid of unknown cover", func(p *Plan) { p.Room.Solids[0].Cover = "fur" }, "room.solids[0].cover", `solid "boxed beam": cover "fur" is not one of foam, cloth`},
		{"solid far away", func(p *Plan) { p.Room.Solids[0].Max[0] = 1e9 }, "room.solids[0].max[0]", "greatest x 1e+09 m is outside"},
		{"solid and projector of one name", func(p *Plan) { p.Hung[0].Name = "Boxed beam" }, "hung[0].name", "already used by solid 1"},
		{"layer too thick", func(p *Plan) { p.Floor.Layers[1].Thickness = 0.6 }, "floor.layers[1].thickness", `floor layer "rubber": thickness 0.6 m`},
		{"two layers of one name", func(p *Plan) { p.Floor.Layers[1].Name = "plywood" }, "floor.layers[1].name", "already used by floor layer 1"},
		{"mat of negative thickness", func(p *Plan) { p.Floor.Mat.Thickness = -0.01 }, "floor.mat.thickness", "mat: thickness"},
		{"screen beyond the room", func(p *Plan) { p.Screen.X = 7 }, "screen.x", "screen: x 7 m is outside"},
		{"screen through the left wall", func(p *Plan) { p.Screen.Centre = 4 }, "screen.centre", "left edge is 1 ft 1 1/2 in (0.3424 m) beyond the left wall"},
		{"screen through the right wall", func(p *Plan) { p.Screen.Centre = 1.5 }, "screen.centre", "right edge is 1 ft 1 in (0.3288 m) beyond the right wall"},
		{"screen through the ceiling", func(p *Plan) { p.Screen.Bottom = 1 }, "screen.height", "top at 10 ft 9 3/8 in (3.286 m) is above the ceiling"},
		{"return too deep", func(p *Plan) { p.Screen.TopReturn = 50 }, "screen.topReturn", "top return"},
		{"tee on the back wall", func(p *Plan) { p.Tees[0].X = 0 }, "tees[0].x", `tee "middle": x 0 in (0 m) is outside the room, which is 21 ft 0 in (6.4008 m) long`},
		{"tee of NaN", func(p *Plan) { p.Tees[0].Y = math.NaN() }, "tees[0].y", "y NaN m is outside the room"},
		{"tee under the rafters", func(p *Plan) { p.Room.Slopes[0].KneeHeight, p.Tees[0].Y = 0, 5.48 }, "tees[0].y", "leaves no room for a ball"},
		{"club of unknown kind", func(p *Plan) { p.Clubs[0].Kind = "" }, "clubs[0].kind", `kind "" is not one of driver`},
		{"club too short", func(p *Plan) { p.Clubs[1].Length = 0.3 }, "clubs[1].length", `club "7-iron": length 0.3 m is outside 0.45–1.6 m`},
		{"lie", func(p *Plan) { p.Clubs[1].Lie = 20 }, "clubs[1].lie", "lie 20° is outside"},
		{"loft", func(p *Plan) { p.Clubs[1].Loft = 80 }, "clubs[1].loft", "loft 80° is outside"},
		{"ball speed", func(p *Plan) { p.Clubs[0].Ball.Speed = 200 }, "clubs[0].ball.speed", "ball speed 200 m/s is outside"},
		{"launch", func(p *Plan) { p.Clubs[0].Ball.Launch = -3 }, "clubs[0].ball.launch", "launch angle -3°"},
		{"spin", func(p *Plan) { p.Clubs[0].Ball.Spin = math.Inf(-1) }, "clubs[0].ball.spin", "spin -Inf rev/min"},
		{"child's height", func(p *Plan) { p.Players[0].Height = 0.5 }, "players[0].height", "height 0.5 m is outside 0.9–2.4 m"},
		{"no height", func(p *Plan) { p.Players[0].Height = 0 }, "players[0].height", "height 0 m is outside"},
		{"no headroom", func(p *Plan) { p.Players[1].Height = 2.4; p.Room.Height, p.Room.Slopes, p.Screen = 2.42, nil, nil }, "players[1].height", "which is 7 ft 9 5/8 in (2.3787 m) above"},
		{"hand", func(p *Plan) { p.Players[0].Hand = "both" }, "players[0].hand", `hand "both"`},
		{"sex", func(p *Plan) { p.Players[0].Sex = "m" }, "players[0].sex", "not one of man, woman"},
		{"span", func(p *Plan) { p.Players[0].Span = 18 }, "players[0].span", "span 18 m"},
		{"arm", func(p *Plan) { p.Players[0].Arm = math.NaN() }, "players[0].arm", "arm NaN m"},
		{"ball to toes in feet", func(p *Plan) { p.Players[0].BallToToes = 2.6 }, "players[0].ballToToes", `player "Host": ball to toes 2.6 m is outside 0.35–1.2 m (1 ft 1 3/4 in to 3 ft 11 1/4 in)`},
		{"negative ball to toes", func(p *Plan) { p.Players[0].BallToToes = -0.8 }, "players[0].ballToToes", "ball to toes -0.8 m"},
		{"ball to hands past the club", func(p *Plan) { p.Players[0].BallToHands = 1.1 }, "players[0].ballToHands", `player "Host": ball to hands 1.1 m is outside 0.35–1.05 m`},
		{"hands over the ball", func(p *Plan) { p.Players[0].BallToHands = 0.2 }, "players[0].ballToHands", "ball to hands 0.2 m"},
		{"shoe", func(p *Plan) { p.Players[0].Shoe = 0.2 }, "players[0].shoe", "shoe 0.2 m"},
		{"turn", func(p *Plan) { p.Players[0].Turn = "big" }, "players[0].turn", "not one of compact, full, long"},
		{"plane", func(p *Plan) { p.Players[0].Plane = "x" }, "players[0].plane", "not one of upright, neutral, flat"},
		{"follow", func(p *Plan) { p.Players[0].Follow = "x" }, "players[0].follow", "not one of held, full, loose"},
		{"skill", func(p *Plan) { p.Players[0].Skill = "x" }, "players[0].skill", "not one of steady, average, wild"},
		{"unknown tee", func(p *Plan) { p.Players[0].Tees = []string{"middle", "far"} }, "players[0].tees[1]", `there is no tee called "far"`},
		{"club listed twice", func(p *Plan) { p.Players[2].Clubs[1] = "driver" }, "players[2].clubs[1]", `club "driver" is listed twice`},
		{"throw ratio", func(p *Plan) { p.Hung[0].ThrowRatio = 100 }, "hung[0].throwRatio", "throw ratio 100 is outside"},
		{"lens", func(p *Plan) { p.Hung[0].LensHeight = -1 }, "hung[0].lensHeight", "lens height -1 m"},
		{"lumens", func(p *Plan) { p.Hung[0].Lumens = 1 }, "hung[0].lumens", "light 1 lumens"},
		{"seat outside", func(p *Plan) { p.Seats[0].Y = 9 }, "seats[0].y", `seat "stool": y 9 m is outside 0–5.4864 m`},
		{"seat too wide", func(p *Plan) { p.Seats[1].Radius = 3 }, "seats[1].radius", "radius 3 m"},
		{"sensor without a name", func(p *Plan) { p.Sensor = &Sensor{Max: [2]float64{1, 1}} }, "sensor.name", "sensor: it needs a name"},
		{"sensor inside out", func(p *Plan) {
			p.Sensor = &Sensor{Name: "sensor", Min: [2]float64{2, 1}, Max: [2]float64{1, 2}}
		}, "sensor.max[0]", "greatest x 3 ft 3 3/8 in (1 m) must be more than least x 6 ft 6 3/4 in (2 m)"},
		{"cold", func(p *Plan) { p.Air.Temperature = -300 }, "air.temperature", "temperature -300 °C"},
		{"altitude", func(p *Plan) { p.Air.Altitude = 1e5 }, "air.altitude", "altitude 100000 m"},
		{"too many players", func(p *Plan) { p.Players = many(MaxPlayers+1, p.Players[0], namePlayer) }, "players", "players: 13 are too many; a plan holds at most 12"},
		{"too many clubs", func(p *Plan) {
			p.Players[2].Clubs = nil
			p.Clubs = many(MaxClubs+1, p.Clubs[0], func(c *Club, n string) { c.Name = n })
		}, "clubs", "15 are too many"},
		{"too many tees", func(p *Plan) { p.Tees = many(MaxTees+1, p.Tees[0], func(v *Tee, n string) { v.Name = n }) }, "tees", "7 are too many"},
		{"too many solids", func(p *Plan) {
			p.Room.Solids = many(MaxSolids+1, p.Room.Solids[0], func(v *Solid, n string) { v.Name = n })
		}, "room.solids", "41 are too many"},
		{"name too long", func(p *Plan) { p.Players[0].Name = strings.Repeat("é", maxName+1) }, "players[0].name", "more than 40 characters"},
		{"name on two lines", func(p *Plan) { p.Players[0].Name = "a\nb" }, "players[0].name", "plain text on one line"},
		{"name of what nobody sees", func(p *Plan) { p.Players[0].Name = "\u200b" }, "players[0].name", `the name "\u200b" holds a character that nobody sees`},
		{"name of joiners", func(p *Plan) { p.Players[0].Name = "\u200d\ufe0f" }, "players[0].name", "player 1 needs a name"},
		{"name that turns the text", func(p *Plan) { p.Players[0].Name = "Ho\u202est" }, "players[0].name", `"Ho\u202est" holds a character`},
		{"soft hyphen", func(p *Plan) { p.Hung[0].Name = "pro\u00adjector" }, "hung[0].name", "nobody sees"},
		{"byte-order mark in a name", func(p *Plan) { p.Tees[0].Name = "\ufeffmiddle" }, "tees[0].name", "nobody sees"},
		{"twins by a joiner", func(p *Plan) { p.Players[1].Name = "Ho\u200dst" }, "players[1].name", "already used by player 1"},
		{"mat longer than the room", func(p *Plan) { p.Room.Length, p.Screen, p.Floor.Mat.Length = 5.5, nil, 5.6 }, "floor.mat.length", "mat: its length 18 ft 4 1/2 in (5.6 m) is more than the room's"},
		{"mat wider than the room", func(p *Plan) { p.Floor.Mat.Width = 5.6 }, "floor.mat.width", "mat: its width"},
		{"floor to the ceiling", func(p *Plan) {
			p.Floor.Layers = many(7, Layer{Thickness: 0.5}, func(l *Layer, n string) { l.Name = n })
			p.Screen, p.Players = nil, p.Players[:1]
		}, "floor", "floor: what lies on it is 11 ft 5 3/4 in (3.5 m) thick and leaves no room under the ceiling at 10 ft 6 in (3.2004 m)"},
		{"screen below the floor", func(p *Plan) {
			p.Floor.Layers[0].Thickness, p.Screen.Bottom, p.Screen.Height, p.Players = 0.5, 0, 0.5, p.Players[:1]
		}, "screen.height", "screen: its top at 1 ft 7 5/8 in (0.5 m) is below the surface to stand on"},
		{"seat on the ball", func(p *Plan) { p.Seats[0].X, p.Seats[0].Y = p.Tees[0].X, p.Tees[0].Y+0.2 }, "seats[0].x", `seat "stool": it stands on the ball of tee "middle"`},
		{"seat inside a column", func(p *Plan) {
			p.Room.Solids[0] = Solid{Name: "column", Min: [3]float64{0.5, 0.5, 0}, Max: [3]float64{0.7, 0.7, 3}}
		}, "seats[0].x", `seat "stool": it lies inside solid "column"`},
		{"sensor behind the wall", func(p *Plan) {
			p.Sensor = &Sensor{Name: "sensor", Min: [2]float64{6.5, 1}, Max: [2]float64{7, 2}}
		}, "sensor.min[0]", "sensor: it lies outside the room: x from 21 ft 3 7/8 in (6.5 m)"},
		{"sensor beside the room", func(p *Plan) {
			p.Sensor = &Sensor{Name: "sensor", Min: [2]float64{1, -0.5}, Max: [2]float64{2, 0}}
		}, "sensor.min[1]", "outside the room: y from"},
		{"too many families", func(p *Plan) {
			p.Players = many(MaxPlayers, p.Players[0], namePlayer)
			p.Clubs = many(6, p.Clubs[0], func(c *Club, n string) { c.Name = n })
		}, "players", "they make 72 families of swings; a plan holds at most 48"},
		{"too many checks", func(p *Plan) {
			p.Players = many(MaxPlayers, p.Players[0], namePlayer)
			p.Tees = many(4, p.Tees[0], func(v *Tee, n string) { v.Name = n })
		}, "players", "they make 144 checks; a plan holds at most 120"},
		{"version", func(p *Plan) { p.Version = 9 }, "version", "version 9"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p := Demo()
			tc.change(&p)
			all := p.Problems()
			if got, want := fields(all), []string{tc.field}; !slices.Equal(got, want) {
				t.Fatalf("fields of Problems() = %q, want %q", got, want)
			}
			if !strings.Contains(all[0].Message, tc.message) {
				t.Errorf("Problems()[0] = %q, want %q in it", all[0], tc.message)
			}
			if err, same := p.Validate().(*FieldError); !same || err.Field != all[0].Field || err.Message != all[0].Message {
				t.Errorf("Validate() = %v, want %v", err, all[0])
			}
			if _, err := parsed(p.JSON()); err == nil {
				t.Error("Parse(p.JSON()) = a plan, want an error")
			}
		})
	}
}

func namePlayer(v *Player, n string) { v.Name = n }

// many repeats a thing under different names.
func many[T any](n int, v T, name func(*T, string)) []T {
	var out []T
	for i := range n {
		name(&v, fmt.Sprint("no. ", i))
		out = append(out, v)
	}
	return out
}

func TestProblemsOrder(t *testing.T) {
	p := Demo()
	p.Air.Altitude = -1000
	p.Players[1].Height = 7
	p.Clubs[2].Loft = 99
	p.Tees[0].X = -1
	p.Room.Width = 900
	want := []string{"room.width", "tees[0].x", "clubs[2].loft", "players[1].height", "air.altitude"}
	if got := fields(p.Problems()); !slices.Equal(got, want) {
		t.Errorf("fields of Problems() = %q, want %q", got, want)
	}
}

// TestTeeNearScreen: a ball too near the screen for the follow-through is for
// the swing to judge, not an error.
func TestTeeNearScreen(t *testing.T) {
	p := Demo()
	p.Tees[0].X = p.Screen.X - 0.3
	if err := p.Validate(); err != nil {
		t.Errorf("Validate() with the tee 0.3 m from the screen = %v, want nil", err)
	}
}

// TestTeeUnderBeam: a solid takes away the tees inside it, not those below it.
func TestTeeUnderBeam(t *testing.T) {
	p := Demo()
	p.Tees[0].X = 3.7
	if err := p.Validate(); err != nil {
		t.Errorf("Validate() with the tee under the beam = %v, want nil", err)
	}
}

func TestNotes(t *testing.T) {
	for _, tc := range []struct {
		name   string
		change func(*Plan)
		want   []string
	}{
		{"nothing odd", func(*Plan) {}, nil},
		{"club at the limit", func(p *Plan) { p.Clubs[0].Length = LongestClub }, nil},
		{"club over the limit", func(p *Plan) { p.Clubs[0].Length = 1.25 },
			[]string{`Club "driver" is 4 ft 1 1/4 in long, over the 48 in (1.219 m) limit of the Equipment Rules, Part 2, 1c.`}},
		{"short and tall", func(p *Plan) { p.Units = units.Metric; p.Players[0].Height, p.Players[1].Height = 1.35, 2.05 },
			[]string{
				`Player "Host": height 1.350 m is outside the measured people (ANSUR II), extrapolated.`,
				`Player "Tall guest": height 2.050 m is outside the measured people (ANSUR II), extrapolated.`}},
		{"small margin", func(p *Plan) { p.Units = units.Metric; p.Margin = 0.05 },
			[]string{"The margin of 50 mm is under 100 mm: real swings differ from one to the next by more than that."}},
		{"things outside", func(p *Plan) {
			p.Room.Solids[0].Min[2], p.Room.Solids[0].Max[2] = 3.3, 3.4
			p.Hung[0].Min[1], p.Hung[0].Max[1] = -0.5, -0.1
		},
			[]string{
				`Solid "boxed beam" lies outside the room and counts for nothing.`,
				`Hung thing "projector" lies outside the room and counts for nothing.`}},
		{"proud mat", func(p *Plan) { p.Units = units.Metric; p.Floor.Mat.Thickness = 0.05 },
			[]string{"The inset mat is thicker than the floor layers around it: it stands 9 mm proud of them."}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p := Demo()
			tc.change(&p)
			if err := p.Validate(); err != nil {
				t.Fatalf("Validate() = %v, want nil: notes are for allowed values", err)
			}
			if got := p.Notes(); !slices.Equal(got, tc.want) {
				t.Errorf("Notes() = %q, want %q", got, tc.want)
			}
		})
	}
}
