package plan

import (
	"math"
	"reflect"
	"testing"

	"wideberth/internal/units"
)

func TestWithDefaults(t *testing.T) {
	p := Plan{
		Room:    Room{Length: 6.4, Width: 4.4, Height: 2.9},
		Floor:   Floor{Mat: &Mat{Thickness: 0.03}},
		Screen:  &Screen{X: 6, Centre: 2.2, Width: 3.5, Height: 2},
		Clubs:   []Club{{Name: "driver", Kind: KindDriver, Length: 1.2}},
		Players: []Player{{Name: "Host", Height: 1.78, Hand: HandLeft}},
		Seats:   []Seat{{Name: "stool", X: 1, Y: 1}},
	}
	before := string(p.JSON())
	got := p.WithDefaults()
	want := Plan{
		Version: 2, Units: units.Imperial, Margin: 0.1524,
		Room:    p.Room,
		Floor:   Floor{Mat: &Mat{Thickness: 0.03, Length: 1.524, Width: 1.524}},
		Screen:  p.Screen,
		Tees:    []Tee{{Name: "middle", X: 2.95, Y: 2.2}},
		Clubs:   []Club{{Name: "driver", Kind: KindDriver, Length: 1.2, Lie: 58, Loft: 10.5, Ball: &Ball{Speed: 62, Launch: 12.5, Spin: 2700}}},
		Players: []Player{{Name: "Host", Height: 1.78, Hand: HandLeft, Shoe: 0.025, Turn: TurnFull, Plane: PlaneNeutral, Follow: FollowFull, Skill: SkillAverage}},
		Seats:   []Seat{{Name: "stool", X: 1, Y: 1, Radius: 0.3556}},
		Air:     &Air{Temperature: 20},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("WithDefaults() = %s, want %s", got.JSON(), want.JSON())
	}
	if again := got.WithDefaults(); !reflect.DeepEqual(again, got) {
		t.Errorf("WithDefaults() twice = %s, want %s", again.JSON(), got.JSON())
	}
	got.Floor.Mat.Length, got.Screen.X, got.Clubs[0].Length, got.Players[0].Height, got.Seats[0].X = 9, 9, 9, 9, 9
	if after := string(p.JSON()); after != before {
		t.Errorf("changing the copy changed the plan to %s, want %s", after, before)
	}
}

// Defaults of lengths read as round figures in the plan's units, and a link leaves
// them out.
func TestDefaultsAreRound(t *testing.T) {
	for system, want := range map[string][4]string{
		units.Imperial: {"6 in", "1 ft 2 in", "5 ft 0 in", "1 in"},
		units.Metric:   {"150 mm", "350 mm", "1.500 m", "25 mm"},
	} {
		p := Plan{
			Units: system, Room: Room{Length: 6, Width: 5, Height: 3}, Floor: Floor{Mat: &Mat{Thickness: 0.03}},
			Seats: []Seat{{Name: "stool", X: 1, Y: 1}}, Players: []Player{{Name: "Host", Height: 1.8}},
		}.WithDefaults()
		for i, m := range [4]float64{p.Margin, p.Seats[0].Radius, p.Floor.Mat.Width, p.Players[0].Shoe} {
			if got := units.Label(m, system); got != want[i] {
				t.Errorf("%s: default %d reads %q, want %q", system, i, got, want[i])
			}
		}
		if q := p.Sparse(); q.Margin != 0 || q.Seats[0].Radius != 0 || q.Floor.Mat.Length != 0 {
			t.Errorf("%s: a link keeps defaults: %s", system, q.JSON())
		}
	}
	// Shown in other units a plan keeps its margin.
	p := Demo()
	p.Units = units.Metric
	if got := p.Sparse().WithDefaults().Margin; got != 0.1524 {
		t.Errorf("the margin of 6 in, shown in metres, is kept as %v m", got)
	}
}

func TestDefaultTee(t *testing.T) {
	for _, tc := range []struct {
		name string
		p    Plan
		want float64
	}{
		{"ten feet from the screen", Plan{Room: Room{Length: 7, Width: 4}, Screen: &Screen{X: 6.5}}, 3.45},
		{"no screen: from the front wall", Plan{Room: Room{Length: 7, Width: 4}}, 3.95},
		{"short room keeps the back clear", Plan{Room: Room{Length: 4.6, Width: 4}, Screen: &Screen{X: 4.4}}, 2},
		{"very short room: half way", Plan{Room: Room{Length: 3.2, Width: 4}, Screen: &Screen{X: 3}}, 1.5},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got := tc.p.WithDefaults().Tees
			want := []Tee{{Name: "middle", X: tc.want, Y: 2}}
			if !reflect.DeepEqual(got, want) {
				t.Errorf("default tees = %v, want %v", got, want)
			}
		})
	}
}

// inchTol is what rounding a length to 0.1 mm may cost, in inches.
const inchTol = 0.05e-3/units.MetresPerInch + 1e-9

func TestDefaultClub(t *testing.T) {
	for _, tc := range []struct {
		kind, name        string
		inches, lie, loft float64
	}{
		{KindDriver, "driver", 45.5, 58, 10.5},
		{KindDriver, "460 driver", 45.5, 58, 10.5},
		{KindWood, "3-wood", 43, 57, 15},
		{KindWood, "fairway wood", 43, 57, 15},
		{KindWood, "7 wood", 42, 58, 21},
		{KindHybrid, "hybrid", 40.5, 59.5, 22},
		// The 3- to 8-iron rows of the traditional progression (component-trade
		// article, 2007, read): 1/2 in and 1° a club.
		{KindIron, "3-iron", 39, 58, 20},
		{KindIron, "4-iron", 38.5, 59, 23.5},
		{KindIron, "5 iron", 38, 60, 27},
		{KindIron, "6-iron", 37.5, 61, 30.5},
		{KindIron, "7-iron", 37, 62, 34},
		{KindIron, "8-iron", 36.5, 63, 37.5},
		{KindIron, "iron", 37, 62, 34},
		{KindWedge, "wedge", 35.75, 64, 46},
		{KindWedge, "Pitching wedge", 35.75, 64, 46},
		{KindWedge, "sand wedge", 35.35, 64, 56},
		{KindWedge, "SW", 35.35, 64, 56},
		{KindWedge, "60° wedge", 35.19, 64, 60},
	} {
		t.Run(tc.kind+" "+tc.name, func(t *testing.T) {
			c := DefaultClub(tc.kind, tc.name)
			if got := c.Length / units.MetresPerInch; math.Abs(got-tc.inches) > inchTol {
				t.Errorf("DefaultClub length = %v in, want %v in (%g)", got, tc.inches, inchTol)
			}
			if c.Lie != tc.lie || c.Loft != tc.loft {
				t.Errorf("DefaultClub lie, loft = %v, %v, want %v, %v", c.Lie, c.Loft, tc.lie, tc.loft)
			}
			if c.Ball == nil {
				t.Fatal("DefaultClub ball = nil, want a ball")
			}
		})
	}
}

// TestDefaultClubsInRange: whatever number a name holds, the figures pass the
// checks, and through a set shorter clubs send the ball off slower and higher.
func TestDefaultClubsInRange(t *testing.T) {
	for _, kind := range []string{KindDriver, KindWood, KindHybrid, KindIron, KindWedge} {
		for _, name := range []string{"", "0", "1", "2", "9", "11", "99", "99999999999999999999", "lob"} {
			p := Demo()
			p.Players[2].Clubs = nil
			p.Clubs = []Club{DefaultClub(kind, "x"+name)}
			if err := p.Validate(); err != nil {
				t.Errorf("Validate() with DefaultClub(%q, %q) = %v, want nil", kind, "x"+name, err)
			}
		}
	}
	set := []Club{
		DefaultClub(KindDriver, "driver"), DefaultClub(KindWood, "3-wood"), DefaultClub(KindHybrid, "4-hybrid"),
		DefaultClub(KindIron, "5-iron"), DefaultClub(KindIron, "6-iron"), DefaultClub(KindIron, "7-iron"), DefaultClub(KindIron, "8-iron"), DefaultClub(KindIron, "9-iron"),
		DefaultClub(KindWedge, "pitching"), DefaultClub(KindWedge, "gap"), DefaultClub(KindWedge, "sand"), DefaultClub(KindWedge, "lob"),
	}
	for i := range len(set) - 1 {
		a, b := set[i], set[i+1]
		if !(b.Length < a.Length && b.Loft > a.Loft && b.Ball.Speed < a.Ball.Speed && b.Ball.Spin > a.Ball.Spin) {
			t.Errorf("%s %+v %+v then %s %+v %+v: want shorter, more loft, slower, more spin", a.Name, a, *a.Ball, b.Name, b, *b.Ball)
		}
	}
	if c := DefaultClub("putter", "putter"); c.Length != 0 || c.Ball != nil {
		t.Errorf("DefaultClub(putter) = %+v, want no figures", c)
	}
}
