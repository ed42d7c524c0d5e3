package build

import (
	"flag"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	leanjson "wideberth/internal/lean/json"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/build/figures"
	"wideberth/internal/sim/build/floor"
	"wideberth/internal/sim/build/quantity"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/units"
)

// one is the demo with one player and one club, which is quick to swing, and members
// of its own.
func one(projector, build string) plan.Plan {
	p := plan.Demo()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	var err error
	if p.Projector, err = tree(projector); err != nil {
		panic(err)
	}
	if p.Build, err = tree(build); err != nil {
		panic(err)
	}
	return p
}

// tree is a member of a plan as it is carried; none for no text.
func tree(text string) (any, error) {
	if text == "" {
		return nil, nil
	}
	return leanjson.Decode([]byte(text))
}

var lab fit.Lab // keeps the families of this package's tests, which answer alike without

func answer(t *testing.T, p plan.Plan, of Part) Report {
	t.Helper()
	r, err := Room(&lab, plantest.Checked(p), of)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestDemo: what the demonstration room says of its projector and floor, for the drivers
// (the command line's golden file has all clubs): the projector is clear and throws far
// enough, nothing stands in its light, and the floor meets the mat. Each part is the same
// alone.
func TestDemo(t *testing.T) {
	p := plan.Demo()
	p.Clubs, p.Players[2].Clubs = p.Clubs[:1], nil
	r := answer(t, p, All)
	j := r.Projector
	if j == nil || j.Verdict != fit.Clear || !j.InPlan || !j.Inside || !j.Throw.Fits || j.OffsetFits == nil || !*j.OffsetFits || len(j.Blocked) != 0 {
		t.Fatalf("%+v", j)
	}
	pairs := 0
	for _, pl := range p.Players {
		pairs += len(p.ClubsOf(pl))
	}
	if len(j.Shadow) != pairs {
		t.Errorf("%d shadows for %d players with clubs", len(j.Shadow), pairs)
	}
	for _, s := range j.Shadow {
		if s.Worst > 0.02 || s.Worst < s.Address {
			t.Errorf("%+v", s)
		}
	}
	if math.Abs(r.Floor.Error) > r.Floor.Wanted+1e-4 || len(r.Floor.Stacks) == 0 || !r.Floor.Stacks[0].Level {
		t.Errorf("floor %+v", r.Floor)
	}
	if len(r.Putting.Cups) != 2 || r.Putting.Longest < 3 || r.Putting.OneSeam < r.Putting.Longest {
		t.Errorf("putting %+v", r.Putting)
	}
	if len(r.Quantities) < 8 || r.Unpriced != len(r.Quantities) {
		t.Errorf("%d quantities, %d without a price", len(r.Quantities), r.Unpriced)
	}
	if f := answer(t, p, Floors); f.Projector != nil || !reflect.DeepEqual(f.Floor, r.Floor) {
		t.Error("the floor alone is another one")
	}
	if l := answer(t, p, Light); !reflect.DeepEqual(l.Projector, r.Projector) || len(l.Quantities) != 0 {
		t.Error("the projector alone is another one")
	}
}

var update = flag.Bool("update", false, "rewrite the golden files")

// TestGoldenRooms holds whole answers: of a room with everything that a plan can say of
// building, and of a bare one in metres whose floor is still to be chosen.
func TestGoldenRooms(t *testing.T) {
	full := one(`{"lens":[1.4,2.6,2.2],"throwRatio":[0.9,1.4],"offset":[0.1,0.3],"sideShift":0.05,"gain":1.2,"roomLight":30,"image":{"width":3,"bottom":0.3}}`, `{
		"floor":{"covers":[0.5,0.4,6,5],"panels":"width","turf":"width","turfRoll":2,"gap":0.004},
		"cups":[{"x":4.8,"y":0.9},{"x":1.2,"y":4.4},{"x":2.9,"y":2.7}],
		"enclosure":{"padding":0.05,"sill":0.08,"border":0.03},
		"sensor":{"place":"beside","body":{"min":[2.7,1.2,0],"max":[3,1.5,0.3]},"keepOut":[{"min":[2.5,2,0],"max":[3.2,2.6,0.6]},{"min":[0.1,0.1,2.7],"max":[6,5,3.1]}]},
		"finish":{"absorber":6,"coats":3,"coverage":8,"walls":"concrete"},
		"wiring":{"source":[0.6,0.3,0.7],"receptacles":3,"slack":2},
		"walls":{"feet":[{"wall":"left","height":0.3,"depth":0.1},{"wall":"front","height":0.02}],"doors":[{"name":"way in","wall":"right","from":0.5,"width":0.8}],"garage":{"wall":"back","from":1,"width":3,"height":2.13},"slab":{"towards":"left","fall":0.002}},
		"prices":[{"item":"paint","price":30}],
		"stock":[{"name":"plywood","kind":"panel","least":0.018,"most":0.020,"long":2.5,"wide":1.25,"price":40},{"name":"rubber","kind":"rubber","least":0.009,"most":0.010},{"name":"turf","kind":"turf","least":0.012,"most":0.014,"price":9}]}`)
	full.Sensor = &plan.Sensor{Name: "eye", Min: [2]float64{2.5, 2.5}, Max: [2]float64{3.2, 3}}
	full.Players = append(full.Players, plan.Player{Name: "left", Height: 1.7, Hand: plan.HandLeft})
	full.Tees = append(full.Tees, plan.Tee{Name: "other", X: 2.6, Y: 2.5})
	full.Room.Solids = append(full.Room.Solids, plan.Solid{Name: "pad", Min: [3]float64{1, 5.4, 0.2}, Max: [3]float64{3, 5.48, 2}, Cover: plan.CoverFoam},
		plan.Solid{Name: "net", Min: [3]float64{5.9, 0.2, 0}, Max: [3]float64{5.95, 0.6, 2}, Cover: plan.CoverCloth})
	bare := one(``, `{"walls":{"garage":{"wall":"back","from":1,"width":3,"height":2.13,"open":true}}}`)
	bare.Units, bare.Projector, bare.Hung, bare.Floor.Layers = units.Metric, nil, nil, nil
	bare.Floor.Mat.Inset = false
	bare.Screen.SideReturn, bare.Screen.TopReturn = 0, 0.4
	for name, p := range map[string]plan.Plan{"full": full, "bare": bare} {
		r := answer(t, p, All)
		r.Cautions, r.Rules = nil, nil // they are the same for every plan
		if err := figures.Held(name+".golden.json", r, *update); err != nil {
			t.Error(err)
		}
	}
}

// TestMatDecides: a mat set in is cut out of the panels, one on top of them is not, and
// without a mat the floor has nothing to meet.
func TestMatDecides(t *testing.T) {
	p := one(``, ``)
	inset := answer(t, p, Amounts).Floor
	lying := *p.Floor.Mat
	lying.Inset = false
	p.Floor.Mat = &lying
	on := answer(t, p, Amounts).Floor
	if whole := p.Room.Length * p.Room.Width; math.Abs(on.Panels.Area-whole) > 1e-6 || inset.Panels.Area > whole-1 || len(on.Mats) != 1 {
		t.Errorf("panels %v m² under a mat, %v m² around it, of %v", on.Panels.Area, inset.Panels.Area, whole)
	}
	p.Floor.Mat = nil
	if none := answer(t, p, Amounts).Floor; none.Error != 0 || none.Target != p.Floor.Top() || len(none.Mats) != 0 {
		t.Errorf("without a mat: %+v", none)
	}
}

// TestInside: a case is in the room or not, by each side of the room and by a slope.
func TestInside(t *testing.T) {
	p := plan.Demo()
	size := [3]float64{p.Room.Length, p.Room.Width, p.Room.Height}
	box := func() plan.Hung { return plan.Hung{Min: [3]float64{2, 2, 2}, Max: [3]float64{2.4, 2.4, 2.2}} }
	if !inside(p, box()) {
		t.Error("in the middle of the room it is outside")
	}
	for axis := range 3 {
		low, high := box(), box()
		low.Min[axis] = -0.01
		high.Max[axis] = size[axis] + 0.01
		touching := box()
		touching.Min[axis], touching.Max[axis] = 0, size[axis]
		if axis == 1 { // the rafters on the left come down to 2.13 m
			touching.Min[2], touching.Max[2] = 1, 2
		}
		if inside(p, low) || inside(p, high) || !inside(p, touching) {
			t.Errorf("axis %d: below %v, above %v, between the walls %v", axis, inside(p, low), inside(p, high), inside(p, touching))
		}
	}
	under := box()
	under.Min[1], under.Max[1], under.Max[2] = size[1]-0.4, size[1], 2.5
	if inside(p, under) {
		t.Error("through the rafters it is inside")
	}
}

// TestBiggerThrow: farther back at the same ratio the reach of the throw stays, and an
// image of less width needs less of it; more light is brighter, a larger image darker.
func TestBiggerThrow(t *testing.T) {
	lastMost, lastLight := 0.0, math.Inf(1)
	for _, width := range []string{"1.5", "2.2", "3.0", "3.6"} {
		r := answer(t, one(`{"lens":[2.5146,2.7432,2.8702],"throwRatio":[0.9,1.1],"image":{"width":`+width+`}}`, ``), Light)
		j := r.Projector
		if j.Throw.Most <= lastMost || j.Luminance >= lastLight || math.Abs(j.Throw.Most/r.Image.Width-1.1) > 1e-9 || math.Abs(j.Throw.Least/r.Image.Width-0.9) > 1e-9 {
			t.Errorf("%s m: %+v after %v and %v", width, j.Throw, lastMost, lastLight)
		}
		lastMost, lastLight = j.Throw.Most, j.Luminance
	}
}

// TestRear: from behind the screen nobody cuts the light.
func TestRear(t *testing.T) {
	r := answer(t, one(`{"lens":[6.3,2.7432,1.2],"throwRatio":[0.1,0.3],"mount":"rear"}`, ``), Light)
	if j := r.Projector; j.Shadow[0].Worst != 0 || !j.Unshaded {
		t.Errorf("somebody cuts it: %+v", j.Shadow)
	}
}

// TestBlocked: the top return of the cloth cuts the light of an image that fills the
// screen, and a beam before the lens is named.
func TestBlocked(t *testing.T) {
	r := answer(t, one(`{"lens":[2.5146,2.7432,2.8702],"throwRatio":[0.9,1.1],"aspect":1.6}`, ``), Light)
	if b := r.Projector.Blocked; len(b) != 1 || b[0].Name != "top return" || b[0].Share < 0.05 || b[0].Share > 0.12 {
		t.Errorf("blocked %+v, want a twelfth by the top return", b)
	}
	p := one(`{"lens":[2.5146,2.7432,2.8702],"throwRatio":[0.9,1.1],"aspect":1.7778,"image":{"bottom":0.0508}}`, ``)
	p.Room.Solids[0].Min[2] = 2.4
	if b := answer(t, p, Light).Projector.Blocked; len(b) != 1 || b[0].Name != "boxed beam" {
		t.Errorf("blocked %+v, want the beam", b)
	}
}

// TestEnclosureTakes: padding and sill make the image smaller, and too much of them is
// a mistake.
func TestEnclosureTakes(t *testing.T) {
	bare, padded := answer(t, one(``, ``), Floors), answer(t, one(``, `{"enclosure":{"padding":0.1,"sill":0.1}}`), Floors)
	if padded.Image.Width >= bare.Image.Width || padded.Image.Bottom <= bare.Image.Bottom {
		t.Errorf("%+v is no smaller than %+v", padded.Image, bare.Image)
	}
	p := one(``, `{"enclosure":{"padding":0.5,"border":1}}`)
	p.Screen.Height = 1
	if _, err := Room(&lab, plantest.Checked(p), Floors); err == nil || !strings.Contains(err.Error(), "leave nothing of the screen") {
		t.Errorf("%v", err)
	}
}

// TestStackHeadroom: a stack is judged by the check with every layer at its thickest:
// the clearance is that of the plan with that floor.
func TestStackHeadroom(t *testing.T) {
	p := one(``, ``)
	s := answer(t, p, Floors).Floor.Stacks[0]
	p.Floor.Layers = []plan.Layer{{Name: "all", Thickness: s.Most}}
	report, err := lab.Check(plantest.Checked(p))
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(report.Checks[0].Clearance-s.Clearance) > 1e-6 || math.Abs(s.Headroom-plantest.Checked(p).Plan().Headroom()) > 1e-9 {
		t.Errorf("clearance %v, headroom %v; the check finds %v", s.Clearance, s.Headroom, report.Checks[0].Clearance)
	}
}

// TestSeamsThatCount: with turf on top its seams count, without it those of the panels.
func TestSeamsThatCount(t *testing.T) {
	cups := `{"cups":[{"x":4.8,"y":0.9}]}`
	p := one(``, cups)
	turf := answer(t, p, Floors).Putting
	p.Floor.Layers = []plan.Layer{{Name: "plywood", Thickness: 0.0381}}
	if bare := answer(t, p, Floors).Putting; bare.Longest >= turf.Longest {
		t.Errorf("on panels %v, on turf %v: panels have more seams", bare.Longest, turf.Longest)
	}
}

// TestCupDepth: a floor as deep as a hole gives one, a thinner one does not.
func TestCupDepth(t *testing.T) {
	p := one(``, `{"cups":[{"x":4.8,"y":0.9}]}`)
	if r := answer(t, p, Floors).Putting; r.Deep || math.Abs(r.Depth-p.Floor.Top()) > 1e-12 {
		t.Errorf("%+v", r)
	}
	p.Floor.Layers = []plan.Layer{{Name: "deck", Thickness: floor.CupDepth}}
	if r := answer(t, p, Floors).Putting; !r.Deep {
		t.Errorf("%+v", r)
	}
}

// TestWallsAsTheyAre: each thing found takes the box it should, and is judged.
func TestWallsAsTheyAre(t *testing.T) {
	r := answer(t, one(``, `{"walls":{
		"feet":[{"wall":"left","height":0.3,"depth":0.1},{"wall":"back","height":0.1}],
		"doors":[{"name":"way in","wall":"back","from":0.5,"width":0.8},{"name":"closet","wall":"left","from":2.5,"width":0.9,"gap":0.06}],
		"garage":{"wall":"back","from":1,"width":3,"height":2.13,"open":true},
		"slab":{"towards":"back","fall":0.0104}}}`), Floors)
	got := map[string]Found{}
	for _, f := range r.Walls {
		got[f.What+" "+f.Name] = f
	}
	ledge := got["ledge left wall"]
	if ledge.Box == nil || math.Abs(ledge.Box.Min[1]-5.3864) > 1e-9 || ledge.Box.Max[2] != 0.3 || ledge.Box.Max[0] != 6.4008 || ledge.Verdict != fit.Clear {
		t.Errorf("ledge %+v", ledge)
	}
	// A gap of 100 mm under a wall leaves 59 mm over a floor of 41: a ball rolls through.
	if gap := got["gap back wall"]; !gap.Bad || math.Abs(gap.Amount-0.0587) > 1e-9 {
		t.Errorf("gap %+v", gap)
	}
	// A door with 19 mm under it stops at a floor of 41 mm.
	if d := got["door way in"]; !d.Bad || d.Amount >= 0 || d.Box.Max[0] != 0.8 || d.Box.Min[1] != 0.5 {
		t.Errorf("door %+v", d)
	}
	if d := got["door closet"]; d.Amount < 0 || math.Abs(d.Box.Min[1]-(5.4864-0.9)) > 1e-9 || d.Box.Min[0] != 2.5 {
		t.Errorf("door %+v", d)
	}
	// The open door lies over the golfer's head, and low.
	if g := got["garage door open"]; g.Box == nil || math.Abs(g.Box.Min[2]-2.156) > 1e-9 || g.Box.Max[0] < 2.7 || g.Verdict != fit.Strikes || !g.Bad {
		t.Errorf("garage door %+v", g)
	}
	if s := got["slab towards the back wall"]; math.Abs(s.Amount-0.0104*6.4008) > 1e-9 || !s.Bad {
		t.Errorf("slab %+v", s)
	}
}

// TestSensor: a case in the swing is struck, one in front of the tee is flown at, one
// in the corner is neither; a tee is read in the strip only.
func TestSensor(t *testing.T) {
	p := one(``, ``)
	p.Sensor = &plan.Sensor{Name: "eye", Min: [2]float64{2.5, 2.5}, Max: [2]float64{3.2, 3}}
	p.Tees = append(p.Tees, plan.Tee{Name: "other", X: 2, Y: 2})
	for _, c := range []struct {
		name, box      string
		verdict        fit.Verdict
		inFlight, held bool
	}{
		{"in the corner", `{"min":[0.1,0.1,0],"max":[0.3,0.3,0.3]}`, fit.Clear, false, false},
		{"where the club comes down", `{"min":[2.2,2.6,0.05],"max":[2.4,2.9,0.4]}`, fit.Strikes, false, false},
		{"in the line of the ball", `{"min":[5.0,2.6,0.1],"max":[5.2,2.9,1.2]}`, fit.Clear, true, false},
	} {
		var err error
		if p.Build, err = tree(`{"sensor":{"place":"behind","body":` + c.box + `,"keepOut":[{"min":[2,2,0],"max":[3,3,2]},{"min":[3.7,0,2.9],"max":[3.8,1,3.1]}]}}`); err != nil {
			t.Fatal(err)
		}
		s := answer(t, p, Floors).Sensor
		if s.Verdict != c.verdict || s.InFlight != c.inFlight {
			t.Errorf("%s: %s, in flight %v", c.name, s.Verdict, s.InFlight)
		}
		if len(s.Reads) != 2 || !s.Reads[0].Reads || s.Reads[1].Reads || len(s.Reads[0].Hands) != 1 || s.Reads[0].Hands[0] != "right" {
			t.Errorf("reads %+v", s.Reads)
		}
		if !s.KeepOut[0].Swept || len(s.KeepOut[0].Holds) > 1 || len(s.KeepOut[1].Holds) != 1 || s.KeepOut[1].Holds[0] != "boxed beam" || s.KeepOut[1].Swept {
			t.Errorf("keep-outs %+v", s.KeepOut)
		}
	}
}

// TestPrices: a price of the owner's makes a cost, and the total is the sum.
func TestPrices(t *testing.T) {
	r := answer(t, one(``, `{"prices":[{"item":"putting cup","price":12.5},{"item":"paint","price":30}],"cups":[{"x":1,"y":1},{"x":2,"y":1}]}`), Floors)
	sum := 0.0
	for _, l := range r.Quantities {
		sum += l.Cost
		if l.Item == "putting cup" && (l.Count != 2 || l.Cost != 25) {
			t.Errorf("%+v", l)
		}
		if l.Rule == "" || l.Unit == "" || l.Count <= 0 {
			t.Errorf("%+v says not how it was counted", l)
		}
	}
	if math.Abs(sum-r.Total) > 1e-9 || r.Unpriced != len(r.Quantities)-2 || !strings.Contains(r.CSV, "putting cup,2,piece,12.5,25,") {
		t.Errorf("total %v of %v, %d without a price", r.Total, sum, r.Unpriced)
	}
}

// TestPadding: foam over a bare hard wall lies against it where balls met it, is bought
// by its area, and balls then meet foam there.
func TestPadding(t *testing.T) {
	p := one(``, ``)
	p.Tees = []plan.Tee{{Name: "askew", X: 2.9, Y: 4.9}}
	p.Screen.SideReturn = 0
	hard := answer(t, p, Floors).Screen.Hard
	n := slices.IndexFunc(hard, func(h ball.Pad) bool { return h.Surface == "left wall" })
	if n < 0 {
		t.Fatalf("no ball met the left wall: %+v", hard)
	}
	pad, ok := Padding(p, hard[n])
	if !ok || pad.Max[1] != p.Room.Width || math.Abs(pad.Max[1]-pad.Min[1]-padThick) > 1e-4 || pad.Min[0] > hard[n].From[0] || pad.Max[0] < min(p.Room.Length, hard[n].To[0]) {
		t.Fatalf("%+v for %+v", pad, hard[n])
	}
	p.Room.Solids = append(slices.Clone(p.Room.Solids), pad)
	r := answer(t, p, Floors)
	if !slices.ContainsFunc(r.Quantities, func(l quantity.Line) bool { return l.Item == "foam padding" && l.Count > 0 }) {
		t.Error("the foam is not on the list")
	}
	for _, h := range r.Screen.Hard {
		if h.Surface == pad.Name {
			t.Errorf("the padding is called bare and hard: %+v", h)
		}
	}
	if _, ok := Padding(p, ball.Pad{Surface: "boxed beam"}); ok {
		t.Error("a beam is padded like a wall")
	}
}

// TestCautions: every one says where it comes from and how that is known, and none
// promises anything.
func TestCautions(t *testing.T) {
	for _, c := range cautions {
		if c.Code == "" || c.Line == "" || c.Status != AsRead && c.Status != FromMemory && c.Status != Practice {
			t.Errorf("%+v", c)
		}
		if strings.Contains(strings.ToLower(c.Line), "compl") {
			t.Errorf("%q speaks for the building department", c.Line)
		}
		if strings.HasPrefix(c.Code, "IRC") || strings.HasPrefix(c.Code, "NEC") {
			if !strings.Contains(c.Line, "ask the building department") {
				t.Errorf("%q does not send to the building department", c.Line)
			}
		}
	}
	seen := map[string]bool{}
	for _, r := range rules {
		if seen[r.ID] || r.Says == "" || r.Source == "" || r.Status == "" {
			t.Errorf("rule %+v", r)
		}
		seen[r.ID] = true
	}
}

// TestNoScreen: without a screen the image is on the front wall.
func TestNoScreen(t *testing.T) {
	p := one(``, ``)
	p.Screen = nil
	r := answer(t, p, Floors)
	if r.Image.X != p.Room.Length || r.Screen.Around != nil || len(r.Notes) == 0 {
		t.Errorf("%+v, %v", r.Image, r.Notes)
	}
}
