//go:build !js

package geom

import (
	"encoding/json"
	"errors"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Agreement with Rapier, a general-purpose physics library in 32-bit floats.
const (
	// rapierTolerance (m) leaves room for its search, which stops short by some
	// 20 µm (see distances.mjs); what it measures of an overlap is exact.
	rapierTolerance = 0.0001
	// rapierPoses is how many poses are compared for boxes, and for planes.
	rapierPoses = 3000
)

type rapierPose struct {
	Capsule struct {
		A, B [3]float64
		R    float64
	} `json:"capsule"`
	Box   *rapierBox   `json:"box,omitempty"`
	Plane *rapierPlane `json:"plane,omitempty"`
}

type rapierBox struct {
	Min [3]float64 `json:"min"`
	Max [3]float64 `json:"max"`
}

type rapierPlane struct {
	N [3]float64 `json:"n"`
	D float64    `json:"d"`
}

func (p rapierPose) MarshalJSON() ([]byte, error) {
	return json.Marshal(map[string]any{
		"capsule": map[string]any{"a": p.Capsule.A, "b": p.Capsule.B, "r": p.Capsule.R},
		"box":     p.Box, "plane": p.Plane,
	})
}

// TestAgainstRapier compares the kernels with Rapier's on random poses within a
// few metres, where 32-bit floats still resolve a micron.
func TestAgainstRapier(t *testing.T) {
	root := filepath.Join("..", "..", "..")
	if _, err := os.Stat(filepath.Join(root, "node_modules", "@dimforge", "rapier3d-compat")); errors.Is(err, fs.ErrNotExist) {
		if testing.Short() {
			t.Skip("node_modules is missing and -short is set: run make deps")
		}
		t.Fatal("node_modules is missing: run make deps (make test does), or go test -short")
	}
	rnd := rand.New(rand.NewPCG(1, 2))
	var poses []rapierPose
	var want []float64
	var inside []bool
	for i := range 2 * rapierPoses {
		c := randomCapsule(rnd, 2)
		var p rapierPose
		p.Capsule.A, p.Capsule.B, p.Capsule.R = array(c.A), array(c.B), c.R
		if i%2 == 0 {
			b := randomBox(rnd)
			d, _, _ := b.Distance(c)
			p.Box = &rapierBox{array(b.Min), array(b.Max)}
			want, inside = append(want, d), append(inside, d <= -c.R)
		} else {
			h := Halfspace{N: randomUnit(rnd), D: 2*rnd.Float64() - 1}
			p.Plane = &rapierPlane{array(h.N), h.D}
			d := h.Distance(c)
			want, inside = append(want, d), append(inside, d <= -c.R)
		}
		poses = append(poses, p)
	}
	got := rapier(t, root, poses)
	if len(got) != len(want) {
		t.Fatalf("Rapier answered %d of %d poses", len(got), len(want))
	}
	var worst [2]float64
	var overlaps, cores int
	for i, d := range got {
		k := 0
		if inside[i] {
			k = 1
			cores++
		}
		if d < 0 {
			overlaps++
		}
		off := math.Abs(d - want[i])
		worst[k] = max(worst[k], off)
		if off > rapierTolerance {
			t.Errorf("Distance(%+v) = %.6f, want %.6f (%g)", poses[i], want[i], d, rapierTolerance)
		}
		if (d < 0) != (want[i] < 0) && math.Abs(d) > rapierTolerance {
			t.Errorf("Distance(%+v) = %.6f, want the sign of %.6f", poses[i], want[i], d)
		}
	}
	if overlaps < len(got)/20 || cores < len(got)/50 {
		t.Errorf("only %d of %d poses overlap, %d with the axis inside: too few to mean anything", overlaps, len(got), cores)
	}
	t.Logf("%d poses, %d overlapping, %d with the axis inside; largest difference %.1f µm, %.1f µm inside", len(got), overlaps, cores, 1e6*worst[0], 1e6*worst[1])
}

// rapier returns Rapier's signed distance for each pose.
func rapier(t *testing.T, root string, poses []rapierPose) []float64 {
	t.Helper()
	data, err := json.Marshal(poses)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "poses.json")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("node", filepath.Join("testdata", "rapier", "check.mjs"), file)
	cmd.Dir = root
	out, err := cmd.Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			t.Fatalf("node testdata/rapier/check.mjs: %v\n%s", err, exit.Stderr)
		}
		t.Fatalf("node testdata/rapier/check.mjs: %v; make deps installs Node", err)
	}
	var got []float64
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatalf("what check.mjs printed: %v", err)
	}
	return got
}

func array(v Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
