package contour

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestTrace(t *testing.T) {
	const o = 1.0 // outside
	tests := []struct {
		name   string
		nx, ny int
		field  []float64
		want   [][]Point
	}{
		{"nothing", 3, 3, []float64{o, o, o, o, o, o, o, o, o}, nil},
		{"one node, half way to its neighbours", 3, 3, []float64{o, o, o, o, -1, o, o, o, o},
			[][]Point{{{1, 0.5}, {1.5, 1}, {1, 1.5}, {0.5, 1}}}},
		{"nearer to an even neighbour", 3, 3, []float64{o, 3, o, 3, -1, 3, o, 3, o},
			[][]Point{{{1, 0.75}, {1.25, 1}, {1, 1.25}, {0.75, 1}}}},
		{"zero is inside", 3, 3, []float64{o, o, o, o, 0, o, o, o, o},
			[][]Point{{{1, 1}, {1, 1}, {1, 1}, {1, 1}}}},
		{"a low saddle joins", 4, 4, []float64{o, o, o, o, o, -2, o, o, o, o, -2, o, o, o, o, o},
			[][]Point{{{1, 1 - 2./3}, {1 + 2./3, 1}, {2, 2 - 2./3}, {2 + 2./3, 2}, {2, 2 + 2./3}, {2 - 2./3, 2}, {1, 1 + 2./3}, {1 - 2./3, 1}}}},
	}
	for _, tt := range tests {
		got := Trace(tt.nx, tt.ny, tt.field)
		if !sameLoops(got, tt.want) {
			t.Errorf("%s: Trace = %v, want %v", tt.name, got, tt.want)
		}
	}
	apart := Trace(4, 4, []float64{o, o, o, o, o, -0.5, o, o, o, o, -0.5, o, o, o, o, o})
	if len(apart) != 2 {
		t.Errorf("a high saddle: %d loops, want 2: %v", len(apart), apart)
	}
}

// sameLoops compares up to where a loop starts and to rounding.
func sameLoops(a, b [][]Point) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		found := false
		for shift := range a[i] {
			if len(a[i]) != len(b[i]) {
				break
			}
			same := true
			for k, p := range a[i] {
				q := b[i][(k+shift)%len(b[i])]
				same = same && math.Hypot(p[0]-q[0], p[1]-q[1]) < 1e-12
			}
			found = found || same
		}
		if !found {
			return false
		}
	}
	return true
}

// Over random fields every inside node is enclosed once and every outside one
// not at all, whatever the saddles, and the mirrored field has the mirrored
// lines.
func TestTraceSeparates(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	const nx, ny = 12, 9
	for range 200 {
		field, mirrored := make([]float64, nx*ny), make([]float64, nx*ny)
		for j := range ny {
			for i := range nx {
				v := 1.0
				if i > 0 && j > 0 && i < nx-1 && j < ny-1 {
					v = 2*rng.Float64() - 1
				}
				field[j*nx+i], mirrored[j*nx+nx-1-i] = v, v
			}
		}
		loops := Trace(nx, ny, field)
		for k, v := range field {
			want := 0.0
			if v <= 0 {
				want = 1
			}
			if got := winding(loops, float64(k%nx), float64(k/nx)); math.Abs(got-want) > 1e-9 {
				t.Fatalf("node %d of %v, value %v, is enclosed %.3f times, want %v", k, field, v, got, want)
			}
		}
		var points, mirror int
		for _, l := range loops {
			points += len(l)
		}
		for _, l := range Trace(nx, ny, mirrored) {
			mirror += len(l)
		}
		if points != mirror {
			t.Fatalf("%d points, %d of the mirrored field: %v", points, mirror, field)
		}
	}
}

// winding is how often the loops go round a place against the clock.
func winding(loops [][]Point, x, y float64) float64 {
	sum := 0.0
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			a := math.Atan2(q[1]-y, q[0]-x) - math.Atan2(p[1]-y, p[0]-x)
			sum += math.Remainder(a, 2*math.Pi)
		}
	}
	return sum / (2 * math.Pi)
}
