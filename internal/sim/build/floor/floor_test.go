package floor

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"wideberth/internal/sim/build/figures"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/units"
)

const inch = units.MetresPerInch

// TestUsualPanels: the stock is the published table.
func TestUsualPanels(t *testing.T) {
	stock := spec.UsualStock()
	rows := figures.Read("panels.csv")
	for i, r := range rows {
		got := stock[i]
		if got.Name != r["category"]+" panel" || math.Abs(got.Least/inch-r.Number("least")) > 1e-9 || math.Abs(got.Most/inch-r.Number("most")) > 1e-9 {
			t.Errorf("stock %d is %+v, the table has %v", i, got, r)
		}
	}
	if stock[len(rows)].Kind == spec.Panel {
		t.Error("the stock has panels that the table has not")
	}
}

// TestStackUp is the worked example of two layers of 23/32 in: they may be 1.376 to
// 1.500 in.
func TestStackUp(t *testing.T) {
	var panel spec.Stock
	for _, s := range spec.UsualStock() {
		if s.Name == "23/32 panel" {
			panel = s
		}
	}
	s := NewStack([]spec.Stock{panel, panel}, 1.5*inch, inch/8)
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"least", s.Least, 1.376}, {"most", s.Most, 1.500}, {"height", s.Height, 1.438}, {"error", s.Error, -0.062}, {"tolerance", s.Tolerance, 0.062}} {
		if math.Abs(c.got/inch-c.want) > 1e-9 {
			t.Errorf("%s %v in, want %v", c.what, c.got/inch, c.want)
		}
	}
	if !s.Level || !s.Sure {
		t.Errorf("level %v, sure %v: 1/16 in out and 1/16 in to either side are within 1/8 in", s.Level, s.Sure)
	}
	if s := NewStack([]spec.Stock{panel, panel}, 1.5*inch, inch*0.1); !s.Level || s.Sure {
		t.Errorf("level %v, sure %v: within 0.1 in as a rule, but not at worst", s.Level, s.Sure)
	}
}

// TestStacksBest tries every pile of up to three of a small stock: none that keeps to
// the order of kinds is better than the first.
func TestStacksBest(t *testing.T) {
	all := spec.UsualStock()
	stock := append(all[2:7:7], all[10:]...)
	rank := map[string]int{spec.Panel: 0, spec.Foam: 1, spec.Rubber: 2, spec.Turf: 3}
	for _, target := range []float64{0.020, 0.0254, 0.0381, 0.050} {
		best := math.Inf(1)
		var pile func(layers []spec.Stock)
		pile = func(layers []spec.Stock) {
			if n := len(layers); n > 0 && layers[n-1].Kind == spec.Turf {
				best = min(best, math.Abs(NewStack(layers, target, 0).Error))
			}
			if len(layers) == 3 {
				return
			}
			for _, s := range stock {
				if n := len(layers); n > 0 {
					last := layers[n-1]
					if rank[s.Kind] < rank[last.Kind] || s.Kind == last.Kind && s.Kind != spec.Panel {
						continue
					}
				}
				pile(append(layers[:len(layers):len(layers)], s))
			}
		}
		pile(nil)
		got := Stacks(stock, target, 0.003, 3)
		if len(got) == 0 || math.Abs(math.Abs(got[0].Error)-best) > 1e-4 {
			t.Fatalf("%v m: best %+v, want an error of %v", target, got, best)
		}
		for k := 1; k < len(got); k++ {
			if better(got[k], got[k-1]) < 0 {
				t.Errorf("%v m: stack %d is better than the one before it", target, k)
			}
		}
	}
}

// TestStackPrice: a square metre of a sheet costs its share, a layer without a price
// leaves the stack without one, and of two stacks as near the cheaper comes first.
func TestStackPrice(t *testing.T) {
	dear := spec.Stock{Name: "a dear board", Kind: spec.Panel, Least: 0.010, Most: 0.012, Long: 2, Wide: 1, Price: 30}
	cheap := dear
	cheap.Name, cheap.Price = "b cheap board", 20
	turf := spec.Stock{Name: "turf", Kind: spec.Turf, Least: 0.010, Most: 0.010, Price: 7}
	if got := NewStack([]spec.Stock{dear, turf}, 0.021, 0.001).Price; got != 15+7 {
		t.Errorf("price %v of a square metre, want 22", got)
	}
	if got := Stacks([]spec.Stock{dear, cheap, turf}, 0.021, 0.001, 2)[0]; got.Layers[0] != cheap.Name {
		t.Errorf("first of two as near is %v, want the cheaper", got.Layers)
	}
	turf.Price = 0
	if got := NewStack([]spec.Stock{dear, turf}, 0.021, 0.001).Price; got != 0 {
		t.Errorf("price %v with a layer that has none", got)
	}
}

// fewest is the fewest sheets that hold all pieces, found by trying every straight cut:
// which pieces go into one sheet together, and whether a sheet holds a set at all.
func fewest(pieces []Size, sheet Size) int {
	n := len(pieces)
	type key struct {
		set        int
		long, wide float64
	}
	seen := map[key]bool{}
	var holds func(set int, long, wide float64) bool
	holds = func(set int, long, wide float64) bool {
		if set == 0 {
			return true
		}
		k := key{set, math.Round(long * 1e6), math.Round(wide * 1e6)}
		if v, ok := seen[k]; ok {
			return v
		}
		if set&(set-1) == 0 {
			for i := range n {
				if set == 1<<i {
					p := pieces[i]
					seen[k] = fits(p, long, wide) || fits(turnedSize(p), long, wide)
				}
			}
			return seen[k]
		}
		ok := false
		// A cut can be pushed back to the pieces of one side: its place is a sum of sides.
		for part := (set - 1) & set; part > 0 && !ok; part = (part - 1) & set {
			for _, at := range sums(pieces, part, long) {
				ok = ok || holds(part, at, wide) && holds(set&^part, long-at, wide)
			}
			for _, at := range sums(pieces, part, wide) {
				ok = ok || holds(part, long, at) && holds(set&^part, long, wide-at)
			}
		}
		seen[k] = ok
		return ok
	}
	best := make([]int, 1<<n)
	for set := 1; set < 1<<n; set++ {
		best[set] = n + 1
		for part := set; part > 0; part = (part - 1) & set {
			if best[set&^part]+1 < best[set] && holds(part, sheet.Long, sheet.Wide) {
				best[set] = best[set&^part] + 1
			}
		}
	}
	return best[1<<n-1]
}

func sums(pieces []Size, set int, most float64) []float64 {
	out := []float64{0}
	for i, p := range pieces {
		if set&(1<<i) == 0 {
			continue
		}
		for _, s := range out {
			for _, side := range [2]float64{p.Long, p.Wide} {
				if s+side <= most+slack {
					out = append(out, s+side)
				}
			}
		}
	}
	return out[1:]
}

// TestNestAgainstEveryCut: few pieces are cut from as few sheets as can be.
func TestNestAgainstEveryCut(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	sheet := Size{8, 4}
	more := 0
	const trials = 150
	for range trials {
		pieces := make([]Size, 2+rng.IntN(4))
		for i := range pieces {
			pieces[i] = Size{0.5 * float64(1+rng.IntN(15)), 0.5 * float64(1+rng.IntN(8))}
		}
		from, got := Nest(pieces, sheet, 0)
		want := fewest(pieces, sheet)
		if got < want {
			t.Fatalf("%v: %d sheets, fewer than can be (%d)", pieces, got, want)
		}
		if got > want {
			more++
		}
		sheetsHold(t, pieces, from, got, sheet)
	}
	if more > 0 {
		t.Errorf("%d of %d cost a sheet too many", more, trials)
	}
}

// sheetsHold checks that what is cut from one sheet can be cut from it.
func sheetsHold(t *testing.T, pieces []Size, from []int, sheets int, sheet Size) {
	t.Helper()
	for k := range sheets {
		var together []Size
		for i, s := range from {
			if s == k {
				together = append(together, pieces[i])
			}
		}
		if len(together) == 0 || fewest(together, sheet) != 1 {
			t.Fatalf("%v cannot be cut from one sheet of %v", together, sheet)
		}
	}
}

func TestNestOdd(t *testing.T) {
	if from, n := Nest(nil, Size{8, 4}, 0.003); n != 0 || len(from) != 0 {
		t.Errorf("nothing: %v, %d", from, n)
	}
	if from, n := Nest([]Size{{9, 1}, {1, 1}}, Size{8, 4}, 0.003); n != 1 || from[0] != -1 || from[1] != 0 {
		t.Errorf("a piece too long: %v, %d; want −1 and one sheet", from, n)
	}
	// Without a saw cut two halves make a sheet, with one they do not.
	halves := []Size{{4, 4}, {4, 4}}
	if _, n := Nest(halves, Size{8, 4}, 0); n != 1 {
		t.Errorf("two halves of a sheet take %d", n)
	}
	if _, n := Nest(halves, Size{8, 4}, 0.003); n != 2 {
		t.Errorf("two halves and a saw cut take %d sheets, want 2", n)
	}
}

// TestLayCovers: over many floors the pieces cover all that is to be covered, lie on one
// another nowhere, and need no more area than is bought.
func TestLayCovers(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for range 60 {
		c := Rect{0, 0, 1 + 6*rng.Float64(), 1 + 6*rng.Float64()}
		var cut []Rect
		for range rng.IntN(3) {
			x, y := rng.Float64()*c.X1, rng.Float64()*c.Y1
			cut = append(cut, Rect{x, y, x + 1.5, y + 1.5})
		}
		for _, way := range []string{"length", "width", ""} {
			l := Lay(c, cut, 2.4384, 1.2192, 0, way)
			var pieces []Rect
			for i, p := range l.Pieces {
				pieces = append(pieces, p.Rect)
				for _, q := range l.Pieces[:i] {
					if !p.meet(q.Rect).empty() {
						t.Fatalf("pieces %v and %v lie on one another", p.Rect, q.Rect)
					}
				}
				if p.Sheet < 1 || p.Sheet > l.Sheets {
					t.Fatalf("piece of sheet %d of %d", p.Sheet, l.Sheets)
				}
			}
			if left := areaOf(c.without(append(cut, pieces...))); left > 1e-6 {
				t.Fatalf("%v m² of %v less %v are not covered", left, c, cut)
			}
			if bought := float64(l.Sheets) * 2.4384 * 1.2192; l.Area > bought+1e-9 || math.Abs(l.Area-bought*(1-l.Waste)) > 1e-6 {
				t.Fatalf("%v m² from %v m² with a waste of %v", l.Area, bought, l.Waste)
			}
			for _, s := range l.Seams {
				middle := Rect{(s.X0+s.X1)/2 - 1e-4, (s.Y0+s.Y1)/2 - 1e-4, (s.X0+s.X1)/2 + 1e-4, (s.Y0+s.Y1)/2 + 1e-4}
				if len(middle.without(cut)) == 0 {
					t.Fatalf("seam %v runs through a cut-out", s)
				}
			}
		}
	}
}

// TestLayKnown is a floor that anybody can lay: 16 × 8 ft are four sheets and a seam of
// each kind; along the room or across it.
func TestLayKnown(t *testing.T) {
	const ft = units.MetresPerFoot
	l := Lay(Rect{0, 0, 16 * ft, 8 * ft}, nil, 8*ft, 4*ft, 0, "length")
	// The second course starts with half a sheet and ends with the other half.
	if l.Sheets != 5 || len(l.Pieces) != 5 || len(l.Seams) != 4 {
		t.Errorf("%d sheets, %d pieces, %d seams; want 5 (a half each needs a saw cut), 5, 4", l.Sheets, len(l.Pieces), len(l.Seams))
	}
	one := Lay(Rect{0, 0, 8 * ft, 4 * ft}, nil, 8*ft, 4*ft, 0, "")
	if one.Sheets != 1 || !one.Pieces[0].Whole || len(one.Seams) != 0 || one.Waste > 1e-9 {
		t.Errorf("one sheet: %+v", one)
	}
}

func TestUnroll(t *testing.T) {
	c := Rect{0, 0, 6, 5}
	r := Unroll(c, nil, 4, "length")
	if r.Strips != 2 || len(r.Seams) != 1 || r.Seams[0] != (Seam{0, 4, 6, 4}) || r.Bought != 48 || math.Abs(r.Waste-(1-30.0/48)) > 1e-9 {
		t.Errorf("along the room: %+v", r)
	}
	r = Unroll(c, []Rect{{3, 1, 5, 2}}, 4, "width")
	if r.Strips != 2 || len(r.Seams) != 2 || r.Seams[0].X0 != 4 || r.Bought != 40 {
		t.Errorf("across it, with a mat on the seam: %+v", r)
	}
	if r = Unroll(c, nil, 5, "length"); r.Strips != 1 || len(r.Seams) != 0 {
		t.Errorf("a roll as wide as the floor: %+v", r)
	}
}

// TestPuttsAgainstSweep: no direction of a fine sweep allows a longer putt, and the putt
// that is told crosses nothing when it is walked step by step.
func TestPuttsAgainstSweep(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	for range 40 {
		g := Green{Floor: Rect{0, 0, 3 + 4*rng.Float64(), 2 + 4*rng.Float64()}}
		g.Stops = []Rect{{1, 1, 2, 1.6}}
		g.Seams = Unroll(g.Floor, g.Stops, 0.8+rng.Float64(), "length").Seams
		c := [2]float64{0.1 + rng.Float64()*(g.Floor.X1-0.2), 0.1 + rng.Float64()*(g.Floor.Y1-0.2)}
		p := g.Putts([][2]float64{c})[0]
		if p.OnEdge {
			continue
		}
		for k := range 3600 {
			s, co := math.Sincos(float64(k) / 3600 * 2 * math.Pi)
			clear, one := g.roll(c, [2]float64{co, s})
			if clear > p.Clear+1e-4 || one > p.OneSeam+1e-4 {
				t.Fatalf("at %d a putt of %v (one seam %v) is longer than %v (%v)", k, clear, one, p.Clear, p.OneSeam)
			}
		}
		if p.OneSeam < p.Clear {
			t.Fatalf("one seam %v is less than none %v", p.OneSeam, p.Clear)
		}
		steps := 4000
		for k := range steps {
			u := float64(k) / float64(steps)
			x, y := p.From[0]+u*(c[0]-p.From[0]), p.From[1]+u*(c[1]-p.From[1])
			for _, s := range g.Stops {
				if x > s.X0+1e-4 && x < s.X1-1e-4 && y > s.Y0+1e-4 && y < s.Y1-1e-4 {
					t.Fatalf("the putt from %v to %v runs over %v", p.From, c, s)
				}
			}
			ny := p.From[1] + (u+1/float64(steps))*(c[1]-p.From[1])
			if math.Abs(y-c[1]) < CupDiameter/2 || k < 2 {
				continue
			}
			for _, s := range g.Seams {
				if (y-s.Y0)*(ny-s.Y0) < 0 && x > min(s.X0, s.X1)+1e-3 && x < max(s.X0, s.X1)-1e-3 {
					t.Fatalf("the putt from %v to %v crosses the seam %v", p.From, c, s)
				}
			}
		}
	}
}

func TestPuttsKnown(t *testing.T) {
	g := Green{Floor: Rect{0, 0, 4, 3}, Seams: []Seam{{2, 0, 2, 3}}, Stops: []Rect{{3, 0, 4, 1}}}
	all := g.Putts([][2]float64{{1, 1.5}, {2, 1.5}, {3.5, 0.5}, {3.98, 2}})
	if p := all[0]; math.Abs(p.Clear-math.Hypot(1, 1.5)) > 1e-5 || math.Abs(p.OneSeam-math.Hypot(3, 1.5)) > 1e-5 || p.OnSeam {
		t.Errorf("a cup beside the seam: %+v", p)
	}
	if p := all[1]; !p.OnSeam || p.Clear < 2 {
		t.Errorf("a cup on the seam, which does not count inside the cup: %+v", p)
	}
	// Over the end of a short seam a putt goes on.
	short := Green{Floor: g.Floor, Seams: []Seam{{2, 0, 2, 0.2}}}
	if p := short.Putts([][2]float64{{1, 1.5}})[0]; math.Abs(p.Clear-math.Hypot(3, 1.5)) > 1e-5 {
		t.Errorf("beside a short seam: %+v", p)
	}
	if !all[2].OnEdge || all[2].Clear != 0 || !all[3].OnEdge {
		t.Errorf("cups in the mat and across the edge: %+v, %+v", all[2], all[3])
	}
}

// TestLayWithGaps: two courses of panels with gaps between them, seam by seam: seams run
// in the middle of gaps, and the second course starts with half a panel.
func TestLayWithGaps(t *testing.T) {
	l := Lay(Rect{0, 0, 5, 2.1}, nil, 2, 1, 0.02, "length")
	want := []Seam{
		{2.01, 0, 2.01, 1}, {4.03, 0, 4.03, 1},
		{0, 1.01, 5, 1.01},
		{1, 1.02, 1, 2.02}, {3.02, 1.02, 3.02, 2.02},
		{0, 2.03, 5, 2.03},
		{2.01, 2.04, 2.01, 2.1}, {4.03, 2.04, 4.03, 2.1},
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
	if len(l.Seams) != len(want) {
		t.Fatalf("%d seams, want %d: %v", len(l.Seams), len(want), l.Seams)
	}
	for i, s := range l.Seams {
		if w := want[i]; !near(s.X0, w.X0) || !near(s.Y0, w.Y0) || !near(s.X1, w.X1) || !near(s.Y1, w.Y1) {
			t.Errorf("seam %d is %v, want %v", i, s, w)
		}
	}
	whole := 0
	for _, p := range l.Pieces {
		if p.Whole {
			whole++
		}
	}
	// Two whole ones in the first course, one in the second, none in the strip.
	if whole != 3 || len(l.Pieces) != 9 {
		t.Errorf("%d whole of %d pieces", whole, len(l.Pieces))
	}
}

// TestLayEitherWay: the way that takes fewer sheets is taken, of two that take as many the
// one with shorter seams.
func TestLayEitherWay(t *testing.T) {
	long := func(l Layout) (sum float64) {
		for _, s := range l.Seams {
			sum += math.Hypot(s.X1-s.X0, s.Y1-s.Y0)
		}
		return sum
	}
	fewer, shorter := 0, 0
	for k := range 80 {
		c := Rect{0, 0, 2 + float64(k%10)*0.45, 1.5 + float64(k/10)*0.5}
		a, b := Lay(c, nil, 2.4384, 1.2192, 0.003, "length"), Lay(c, nil, 2.4384, 1.2192, 0.003, "width")
		got := Lay(c, nil, 2.4384, 1.2192, 0.003, "")
		switch {
		case a.Sheets != b.Sheets:
			fewer++
			if got.Sheets != min(a.Sheets, b.Sheets) {
				t.Errorf("%v: %d sheets of %d and %d", c, got.Sheets, a.Sheets, b.Sheets)
			}
		case math.Abs(long(a)-long(b)) > 1e-3:
			shorter++
			if long(got) > min(long(a), long(b))+1e-9 {
				t.Errorf("%v: %v m of seams of %v and %v", c, long(got), long(a), long(b))
			}
		}
	}
	if fewer < 10 || shorter < 10 {
		t.Errorf("only %d floors differ in sheets and %d in seams", fewer, shorter)
	}
}

// TestCupsAtEdges: a cup needs all of its rim on the green, and a seam runs through it
// that is nearer than its radius, whichever way either lies.
func TestCupsAtEdges(t *testing.T) {
	const in, out = CupDiameter/2 - 0.004, CupDiameter/2 + 0.004
	g := Green{Floor: Rect{0, 0, 4, 3}, Stops: []Rect{{1.5, 1, 2.5, 2}}}
	side := func(d float64) [][2]float64 {
		return [][2]float64{
			{d, 0.5}, {4 - d, 0.5}, {0.5, d}, {0.5, 3 - d}, // the four borders
			{1.5 - d, 1.5}, {2.5 + d, 1.5}, {2, 1 - d}, {2, 2 + d}, // the four sides of a mat
			{1.5 - d*math.Sqrt2/2, 1 - d*math.Sqrt2/2}, {2.5 + d*math.Sqrt2/2, 2 + d*math.Sqrt2/2}, // and two of its corners
		}
	}
	for i, c := range side(in) {
		if !g.overEdge(c) {
			t.Errorf("case %d: a cup at %v hangs over an edge", i, c)
		}
	}
	for i, c := range side(out) {
		if g.overEdge(c) {
			t.Errorf("case %d: a cup at %v is on the green", i, c)
		}
	}
	s := []Seam{{3, 1, 3, 2}, {3, 0.2, 3.5, 0.2}}
	g.Seams, g.Stops = s, nil
	for _, c := range []struct {
		at      [2]float64
		through bool
	}{
		{[2]float64{3 - in, 1.5}, true}, {[2]float64{3 + in, 1.5}, true}, {[2]float64{3 - out, 1.5}, false}, {[2]float64{3 + out, 1.5}, false},
		{[2]float64{3, 2 + in}, true}, {[2]float64{3, 2 + out}, false}, {[2]float64{3, 1 - in}, true}, {[2]float64{3, 1 - out}, false},
		{[2]float64{3.2, 0.2 + in}, true}, {[2]float64{3.2, 0.2 + out}, false}, {[2]float64{3.5 + out, 0.2}, false}, {[2]float64{3.9, 1.5}, false},
	} {
		if p := g.Putts([][2]float64{c.at})[0]; p.OnSeam != c.through {
			t.Errorf("a cup at %v: a seam through it %v", c.at, p.OnSeam)
		}
	}
}

// TestStacksByKinds: turf lies on top wherever there is any, even of one sort, and no
// stack waits for what there is none of.
func TestStacksByKinds(t *testing.T) {
	board := spec.Stock{Name: "board", Kind: spec.Panel, Least: 0.018, Most: 0.020}
	turf := spec.Stock{Name: "turf", Kind: spec.Turf, Least: 0.009, Most: 0.011}
	for _, c := range []struct {
		name   string
		stock  []spec.Stock
		target float64
		want   []string
	}{
		{"boards alone", []spec.Stock{board}, 0.038, []string{"board", "board"}},
		{"turf on a board", []spec.Stock{board, turf}, 0.029, []string{"board", "turf"}},
		{"turf alone, where a board would do as well", []spec.Stock{board, turf}, 0.019, []string{"turf"}},
	} {
		got := Stacks(c.stock, c.target, 0.002, 3)
		if len(got) == 0 || !slices.Equal(got[0].Layers, c.want) {
			t.Errorf("%s: %+v, want %v", c.name, got, c.want)
		}
	}
	if got := Stacks(nil, 0.02, 0.002, 3); len(got) != 0 {
		t.Errorf("of nothing: %+v", got)
	}
	// At most so many layers, and at most three panels.
	for _, most := range []int{1, 2, 3, 4, 5} {
		for _, s := range Stacks([]spec.Stock{board, turf}, 0.2, 0.002, most) {
			if len(s.Layers) > most || len(s.Layers) > mostPanels+1 {
				t.Errorf("%d layers at most: %v", most, s.Layers)
			}
		}
	}
}

var update = flag.Bool("update", false, "rewrite the golden files")

// TestGoldenFloors holds floors with mats and columns, both ways, with their turf, putts
// and stacks.
func TestGoldenFloors(t *testing.T) {
	type laid struct {
		Panels map[string]Layout
		Turf   []Roll
		Putts  []Putt
	}
	all := map[string]any{}
	for name, f := range map[string]struct {
		covers Rect
		cut    []Rect
	}{
		"a mat in the middle": {Rect{0, 0, 6.4, 5.5}, []Rect{{2.2, 2, 3.7, 3.5}}},
		"a mat at the wall":   {Rect{0.3, 0.2, 5, 3.3}, []Rect{{0.3, 1, 1.8, 2.2}, {4, 2.9, 4.3, 3.3}}},
		"a strip":             {Rect{0, 0, 7, 0.9}, nil},
	} {
		one := laid{Panels: map[string]Layout{}}
		for _, way := range []string{"length", "width", ""} {
			one.Panels[way] = Lay(f.covers, f.cut, 2.4384, 1.2192, 0.003, way)
		}
		for _, way := range []string{"length", "width"} {
			one.Turf = append(one.Turf, Unroll(f.covers, f.cut, 2, way))
		}
		g := Green{Floor: f.covers, Stops: f.cut, Seams: one.Turf[0].Seams}
		one.Putts = g.Putts([][2]float64{{1, 0.5}, {4.5, 0.7}, {3, 0.1}})
		all[name] = one
	}
	for _, target := range []float64{0.012, 0.025, 0.0381, 0.06} {
		all[fmt.Sprintf("stacks to %v m", target)] = Stacks(spec.UsualStock(), target, 0.003, 4)
	}
	if err := figures.Held("floors.golden.json", all, *update); err != nil {
		t.Error(err)
	}
}
