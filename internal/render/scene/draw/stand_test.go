package draw

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/render/scene/wire"
)

// views are the named views of a picture.
var views = []string{"behind", "face-on", "above", "target", "golfer", "camera"}

// shapes are sizes of pictures: a phone, a tablet, a desktop, one wide and one tall.
var shapes = [][2]float32{{358, 270}, {780, 480}, {860, 560}, {1000, 500}, {600, 800}}

// handed are the frozen recording and its mirror image.
func handed(t *testing.T) map[string]*wire.Recording {
	left := frozen(t)
	leftHanded(left)
	return map[string]*wire.Recording{"right": frozen(t), "left": left}
}

// TestPresets checks what each named view has at its right and at its top.
func TestPresets(t *testing.T) {
	tests := []struct {
		name, hand string
		right, top vec // directions of the room that must point right and up
	}{
		{"behind", "right", xyz(0, -1, 0), xyz(0, 0, 1)},
		{"face-on", "right", xyz(1, 0, 0), xyz(0, 0, 1)},
		{"face-on", "left", xyz(-1, 0, 0), xyz(0, 0, 1)},
		{"above", "right", xyz(1, 0, 0), xyz(0, 1, 0)},
		{"target", "right", xyz(0, 1, 0), xyz(0, 0, 1)},
	}
	recordings := handed(t)
	for _, tt := range tests {
		p := New(recordings[tt.hand])
		s, ok := p.Preset(tt.name)
		if !ok {
			t.Fatalf("Preset(%q) is unknown", tt.name)
		}
		c := p.cameraOf(View{Width: 1280, Height: 720, Scale: 1, Stand: s})
		pivot := p.room.golfer
		x0, y0, _ := c.project(pivot)
		x1, y1, _ := c.project(pivot.Add(tt.right.Mul(0.5)))
		x2, y2, _ := c.project(pivot.Add(tt.top.Mul(0.5)))
		if x1-x0 < 20 || math.Abs(float64(y1-y0)) > 1 {
			t.Errorf("Preset(%q), %s: %v points (%v, %v), want to the right", tt.name, tt.hand, tt.right, x1-x0, y1-y0)
		}
		if y0-y2 < 20 || math.Abs(float64(x2-x0)) > 1 {
			t.Errorf("Preset(%q), %s: %v points (%v, %v), want up", tt.name, tt.hand, tt.top, x2-x0, y2-y0)
		}
	}
	if _, ok := New(recordings["right"]).Preset("nowhere"); ok {
		t.Error(`Preset("nowhere") is known`)
	}
}

// From outside the whole room is in the picture with a small margin, whatever the
// picture's shape, and one side is filled. From inside, what the view is for is seen.
func TestViewsFrameTheRoom(t *testing.T) {
	for hand, s := range handed(t) {
		p := New(s)
		for _, name := range views {
			stand, _ := p.Preset(name)
			for _, size := range shapes {
				where := fmt.Sprintf("%s-hander, %s, %v×%v", hand, name, size[0], size[1])
				c := p.cameraOf(View{Width: size[0], Height: size[1], Scale: 1, Stand: stand})
				points := p.corners
				if stand.Inside != Outside {
					_, seen := p.eye(stand.Inside)
					points = seen[:]
				}
				room := emptyBox()
				for _, q := range points {
					x, y, d := c.project(q)
					if d < nearPlane {
						t.Fatalf("%s: %v is behind the viewer", where, q)
					}
					room = room.add(point{x, y}, 0)
				}
				margin := float32(0.02) * min(size[0], size[1])
				if !room.inside(box{point{margin, margin}, point{size[0] - margin, size[1] - margin}}) {
					t.Errorf("%s: what must be seen spans %v, want it %v inside the picture", where, room, margin)
				}
				if stand.Inside == Outside && (room.hi.x-room.lo.x)/size[0] < 0.9 && (room.hi.y-room.lo.y)/size[1] < 0.9 {
					t.Errorf("%s: the room spans %v, want one side of the picture filled", where, room)
				}
			}
		}
	}
}

// The golfer's view is from the head, the camera's from high at the back wall, inside
// the room.
func TestInsideViews(t *testing.T) {
	p := New(frozen(t))
	head := axisOf(p.recording.Frames[0].Pose[p.recording.PartIndex("head")]).Middle()
	if eye, _ := p.eye(AtEyes); eye.Sub(head).Norm() > 0.12 {
		t.Errorf("the golfer looks from %v, the head is at %v", eye, head)
	}
	eye, _ := p.eye(AtWall)
	if under := p.room.ceilingAt(eye.X, eye.Y) - eye.Z; eye.X < 0 || eye.X > 0.3 || under < 0.1 || under > 0.3 || p.room.through(eye) {
		t.Errorf("the camera is at %v, want at the back wall 0.1 to 0.3 m under the ceiling", eye)
	}
	for _, name := range []string{"golfer", "camera"} {
		v := View{Width: 860, Height: 560, Scale: 1}
		v.Stand, _ = p.Preset(name)
		for _, i := range p.Draw(v, 0).Indices {
			if q := p.canvas.Vertices[i]; math.IsNaN(float64(q.X+q.Y)) || math.Abs(float64(q.X)) > 1e5 || math.Abs(float64(q.Y)) > 1e5 {
				t.Fatalf("%s: a corner is drawn at (%v, %v)", name, q.X, q.Y)
			}
		}
	}
}

func TestStands(t *testing.T) {
	nan := math.NaN()
	out := Stand{Orbit: Orbit{1, 0.5, 2}}
	in := Stand{Inside: AtEyes, Orbit: Orbit{1, 0.5, 2}}
	for _, tt := range []struct {
		name      string
		got, want Stand
	}{
		{"turned outside", out.Turned(0.1, 0.2), Stand{Orbit: Orbit{1.1, 0.7, 2}}},
		{"turned inside, the other way", in.Turned(0.1, 0.2), Stand{Inside: AtEyes, Orbit: Orbit{0.9, 0.3, 2}}},
		{"looking up inside", in.Turned(0, 1), Stand{Inside: AtEyes, Orbit: Orbit{1, -0.5, 2}}},
		{"not from below the floor", out.Turned(0, -3), Stand{Orbit: Orbit{1, minPitch, 2}}},
		{"panned, half as far in a picture twice as large", out.Panned(0.2, -0.1), Stand{Orbit: out.Orbit, Pan: [2]float64{0.1, -0.05}}},
		{"panned too far", out.Panned(9, -9), Stand{Orbit: out.Orbit, Pan: [2]float64{maxPan, -maxPan}}},
		{"panned by nothing known", Stand{Orbit: out.Orbit, Pan: [2]float64{nan, 0.1}}.Clamped(), Stand{Orbit: out.Orbit, Pan: [2]float64{0, 0.1}}},
		{"at the start", Between(out, Stand{Orbit: Orbit{3, 0, 1}}, 0), out},
		{"half way", Between(out, Stand{Orbit: Orbit{3, 0, 1}, Pan: [2]float64{0.2, 0}}, 0.5), Stand{Orbit: Orbit{2, 0.25, 1.5}, Pan: [2]float64{0.1, 0}}},
		{"by the shorter turn", Between(Stand{Orbit: Orbit{3, 0, 1}}, Stand{Orbit: Orbit{-3, 0, 1}}, 0.5), Stand{Orbit: Orbit{math.Pi, 0, 1}}},
		{"from inside", Between(in, out, 0.1), out},
	} {
		same := tt.got.Inside == tt.want.Inside
		for _, d := range [5]float64{tt.got.Orbit.Yaw - tt.want.Orbit.Yaw, tt.got.Orbit.Pitch - tt.want.Orbit.Pitch, tt.got.Orbit.Zoom - tt.want.Orbit.Zoom, tt.got.Pan[0] - tt.want.Pan[0], tt.got.Pan[1] - tt.want.Pan[1]} {
			same = same && math.Abs(d) < 1e-9
		}
		if !same {
			t.Errorf("%s: %+v, want %+v", tt.name, tt.got, tt.want)
		}
	}
	if a, b, c := Eased(0), Eased(0.5), Eased(2); a != 0 || b != 0.5 || c != 1 {
		t.Errorf("Eased goes %v, %v, %v, want 0, 0.5, 1", a, b, c)
	}
	if a, b := Eased(0.1), Eased(0.9); a > 0.05 || b < 0.95 {
		t.Errorf("Eased is %v after a tenth and %v after nine, want it slow at both ends", a, b)
	}
}

// A view on its way begins at one stand and ends at the other, inside or outside.
func TestOnTheWay(t *testing.T) {
	p := New(frozen(t))
	for _, from := range views {
		for _, to := range views {
			v := View{Width: 860, Height: 560, Scale: 1, Left: 1}
			v.From, _ = p.Preset(from)
			v.Stand, _ = p.Preset(to)
			start := p.cameraOf(v)
			v.Left = 1e-6
			end := p.cameraOf(v)
			for _, tt := range []struct {
				name string
				got  camera
				want camera
			}{{"start", start, p.standing(v.From, v)}, {"end", end, p.standing(v.Stand, v)}} {
				q := fromWire(p.recording.Ball)
				x0, y0, _ := tt.got.project(q)
				x1, y1, _ := tt.want.project(q)
				if (point{x0 - x1, y0 - y1}).norm() > 1 {
					t.Errorf("from %s to %s: the ball is at (%v, %v) at the %s, want (%v, %v)", from, to, x0, y0, tt.name, x1, y1)
				}
			}
		}
	}
}

// A pan shifts the picture by what it says, at any zoom.
func TestPan(t *testing.T) {
	p := New(frozen(t))
	for _, zoom := range []float64{1, 3} {
		v := View{Width: 800, Height: 500, Scale: 1}
		v.Stand, _ = p.Preset("behind")
		v.Orbit.Zoom = zoom
		before := p.cameraOf(v)
		v.Stand = v.Stand.Panned(0.1, -0.2)
		after := p.cameraOf(v)
		x0, y0, _ := before.project(p.room.golfer)
		x1, y1, _ := after.project(p.room.golfer)
		if abs(x1-x0-50) > 0.1 || abs(y1-y0+100) > 0.1 {
			t.Errorf("zoom %v: panned by (%v, %v), want (50, -100)", zoom, x1-x0, y1-y0)
		}
	}
}
