package plan

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"wideberth/internal/units"
)

// with adds the one player that a plan needs.
func with(p Plan, height float64) Plan {
	p.Players = []Player{{Name: "Player", Height: height}}
	return p
}

func TestForRoom(t *testing.T) {
	const in = units.MetresPerInch
	for _, c := range []struct {
		name   string
		walls  Walls
		system string
		screen Screen
		tee    Tee
	}{
		{"a garage bay, metric", Walls{6.4, 3.6, 2.9}, units.Metric,
			Screen{X: 6, Centre: 1.8, Bottom: 0.05, Width: 3.4, Height: 2.4}, Tee{"middle", 2.95, 1.8}},
		{"the same in feet", Walls{252 * in, 144 * in, 114 * in}, units.Imperial,
			Screen{X: 236 * in, Centre: 72 * in, Bottom: 2 * in, Width: 136 * in, Height: 96 * in}, Tee{"middle", 115 * in, 72 * in}},
		{"a hall", Walls{12, 9, 5}, units.Metric,
			Screen{X: 11.6, Centre: 4.5, Bottom: 0.05, Width: 3.6, Height: 2.4}, Tee{"middle", 8.55, 4.5}},
		{"a closet", Walls{2.1, 2.1, 2.1}, units.Metric,
			Screen{X: 1.7, Centre: 1.05, Bottom: 0.05, Width: 1.9, Height: 1.95}, Tee{"middle", 0.85, 1.05}},
		{"walls that are not round", Walls{6.4037, 3.6051, 2.5555}, units.Metric,
			Screen{X: 6, Centre: 1.8026, Bottom: 0.05, Width: 3.4, Height: 2.4}, Tee{"middle", 2.95, 1.8026}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := ForRoom(c.walls, c.system)
			near := func(a, b float64) bool { return math.Abs(a-b) < fitTolerance }
			s := *p.Screen
			if !near(s.X, c.screen.X) || !near(s.Centre, c.screen.Centre) || !near(s.Bottom, c.screen.Bottom) || !near(s.Width, c.screen.Width) || !near(s.Height, c.screen.Height) {
				t.Errorf("screen = %+v, want %+v", s, c.screen)
			}
			if len(p.Tees) != 1 || !near(p.Tees[0].X, c.tee.X) || !near(p.Tees[0].Y, c.tee.Y) {
				t.Errorf("tees = %v, want %v", p.Tees, c.tee)
			}
			if len(p.Clubs) != 3 || p.Floor.Mat == nil || p.Margin < 0.14 || len(p.Players) != 0 {
				t.Errorf("clubs %v, mat %v, margin %v, players %v; want three clubs, a mat, a margin and nobody", p.Clubs, p.Floor.Mat, p.Margin, p.Players)
			}
		})
	}
}

// Every sensible room gives a plan that passes, with screen and tee inside it and
// the ball before the screen; what hangs off no wall reads round; and a link keeps
// it, so that it goes on following.
func TestEverySensibleRoom(t *testing.T) {
	draw := rand.New(rand.NewPCG(1, 2))
	side := func() float64 { return roundTenthMM(2.1 + 9.9*draw.Float64()) }
	for i := range 3000 {
		walls := Walls{side(), side(), side()}
		system := [...]string{units.Imperial, units.Metric}[i%2]
		p := with(ForRoom(walls, system), 1.78)
		c, err := Check(p)
		if err != nil {
			t.Fatalf("%v, %s: %v", walls, system, err)
		}
		if notes := p.Notes(); len(notes) > 0 {
			t.Errorf("%v, %s: %q, want nothing odd", walls, system, notes)
		}
		s, tee := p.Screen, p.Tees[0]
		if s.X <= 0 || s.X >= walls.Length || s.Centre-s.Width/2 < 0 || s.Centre+s.Width/2 > walls.Width || s.Bottom+s.Height >= walls.Height {
			t.Errorf("%v: screen %+v is not inside", walls, s)
		}
		if tee.X <= 0 || tee.X >= s.X || math.Abs(tee.Y-walls.Width/2) > fitTolerance {
			t.Errorf("%v: tee %+v is not before the screen, in the middle", walls, tee)
		}
		step := map[string]float64{units.Metric: 0.01, units.Imperial: units.MetresPerInch}[system]
		for _, m := range []float64{s.X, s.Bottom, s.Width, s.Height, tee.X} {
			if n := m / step; math.Abs(n-math.Round(n))*step > fitTolerance {
				t.Errorf("%v, %s: %v m is not round", walls, system, m)
			}
		}
		kept := c.Plan().Sparse().WithDefaults()
		moved := kept
		moved.Room.Length += 1
		if got := moved.Follow(kept.Room.Walls()); got.Screen.X <= kept.Screen.X+0.9 {
			t.Errorf("%v: through a link the screen at %v no longer follows", walls, got.Screen.X)
		}
	}
}

func TestFollow(t *testing.T) {
	old, now := Walls{6.4, 4, 2.8}, Walls{7, 4.4, 2.5}
	for _, c := range []struct {
		name    string
		touch   func(*Plan)
		follows bool
	}{
		{"nothing touched", func(*Plan) {}, true},
		{"shown in other units", func(p *Plan) { p.Units = units.Imperial }, true},
		{"another club, player and mat", func(p *Plan) {
			p.Clubs, p.Floor.Mat = p.Clubs[:1], nil
			p.Players[0].Height = 1.9
		}, true},
		{"the screen moved", func(p *Plan) { p.Screen.X -= 0.05 }, false},
		{"the screen made wider", func(p *Plan) { p.Screen.Width += 0.05 }, false},
		{"a side return", func(p *Plan) { p.Screen.SideReturn = 0.5 }, false},
		{"no screen", func(p *Plan) { p.Screen = nil }, false},
		{"the tee moved", func(p *Plan) { p.Tees[0].X += 0.01 }, false},
		{"another tee", func(p *Plan) { p.Tees = append(p.Tees, Tee{"second", 1, 1}) }, false},
		{"no tee", func(p *Plan) { p.Tees = nil }, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := with(ForRoom(old, units.Metric), 1.78)
			c.touch(&p)
			p.Room.Length, p.Room.Width, p.Room.Height = now.Length, now.Width, now.Height
			want := p
			if c.follows {
				fits := ForRoom(now, p.Units)
				want.Screen, want.Tees = fits.Screen, fits.Tees
			}
			if got := p.Follow(old); !reflect.DeepEqual(got, want) {
				t.Errorf("Follow = %s, want %s", got.JSON(), want.JSON())
			}
		})
	}
	p := with(ForRoom(now, units.Metric), 1.78)
	if got := p.Follow(Walls{}); !reflect.DeepEqual(got, p) {
		t.Error("without walls before, screen and tee are moved")
	}
	p.Units = units.Imperial
	if got := p.Follow(now); !reflect.DeepEqual(got, p) {
		t.Error("where no wall was moved, another unit moves screen and tee")
	}
}

// A wall that is a whole number of steps is taken for just that, whatever the last
// bit of the division says.
func TestWholeStepsStay(t *testing.T) {
	for system, s := range map[string]struct {
		step float64
		gap  int
	}{units.Imperial: {units.MetresPerInch, 16}, units.Metric: {0.01, 40}} {
		for n := int(2.1/s.step) + 1; float64(n)*s.step < 12; n++ {
			length := roundTenthMM(float64(n) * s.step)
			want := roundTenthMM(float64(n-s.gap) * s.step)
			if got := ForRoom(Walls{length, 4, 2.8}, system).Screen.X; got != want {
				t.Errorf("%s: in a room of %v m the screen hangs at %v, want %v", system, length, got, want)
			}
		}
	}
}
