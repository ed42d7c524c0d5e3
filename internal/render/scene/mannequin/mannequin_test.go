package mannequin

import (
	"math"
	"slices"
	"testing"

	"wideberth/internal/render/scene/record"
	"wideberth/internal/render/scene/shape"
	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// recorded are the swings of the demonstration's players with all its clubs.
func recorded(t *testing.T) []*wire.Recording {
	t.Helper()
	var out []*wire.Recording
	p := plan.Demo()
	for _, player := range p.Players {
		for _, club := range p.Clubs {
			m, err := swing.New(body.New(player), swing.NewClub(club), swing.StyleOf(player))
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, record.Swing(record.Input{Plan: p, Player: player, Club: club, Tee: p.Tees[0], Swing: m}))
		}
	}
	return out
}

// figureOf is the figure of a recording, and how to pose it.
func figureOf(t *testing.T, s *wire.Recording) (f *Figure, pose func(frame int) []shape.Solid) {
	t.Helper()
	f, ok := New(s)
	if !ok {
		t.Fatalf("%s: no figure", s.Title)
	}
	axes := make([]axis, len(s.Parts))
	return f, func(frame int) []shape.Solid {
		for i, k := range s.Frames[frame].Pose {
			axes[i] = axis{A: shape.Of(k.A), B: shape.Of(k.B)}
		}
		return f.Pose(axes, float64(frame))
	}
}

// fromAxis is how far p lies from an axis, and how far along it is from A.
func fromAxis(a axis, p vec) (off, along float32) {
	d := a.B.Sub(a.A)
	t := float32(0)
	if n := d.Dot(d); n > 0 {
		t = max(0, min(p.Sub(a.A).Dot(d)/n, 1))
	}
	return p.Sub(a.A.Lerp(a.B, t)).Norm(), t * d.Norm()
}

// Both fists are closed about the grip in every frame, the lead hand above the trail.
func TestHandsOnTheGrip(t *testing.T) {
	const most = 0.02 // m
	for _, s := range recorded(t) {
		f, pose := figureOf(t, s)
		for frame := range s.Frames {
			pose(frame)
			var down [2]float32
			for i, arm := range [2][3]int{{leadUpperArm, leadForearm, leadHand}, {trailUpperArm, trailForearm, trailHand}} {
				f.solids = f.solids[:0]
				f.shapeArm(arm[0], arm[1], arm[2], shape.Glove)
				fist := f.solids[len(f.solids)-1]
				for _, r := range fist.Rings {
					off, along := fromAxis(f.axes[grip], r.Centre)
					down[i] += along / float32(len(fist.Rings))
					if off > most {
						t.Fatalf("%s, frame %d: hand %d is %.3f m beside the grip, want at most %v", s.Title, frame, i, off, most)
					}
				}
			}
			if down[1]-down[0] < 0.05 {
				t.Fatalf("%s, frame %d: the lead hand is %.3f m down the grip and the trail hand %.3f, want it 5 cm lower", s.Title, frame, down[0], down[1])
			}
		}
	}
}

// At impact the face looks to the target, give or take what the model's swing leaves
// open, and upwards by its loft less what the hands lead the head by; the shaft meets
// the head at its heel.
func TestFaceMeetsTheBall(t *testing.T) {
	for _, s := range recorded(t) {
		f, pose := figureOf(t, s)
		solids := pose(int(f.impact))
		head := solids[len(solids)-1]
		face := head.Rings[1]
		if !face.Flat || face.Tone != shape.Face {
			t.Fatalf("%s: the second slice of the clubhead is not its face", s.Title)
		}
		normal := face.U.Cross(face.V).Unit()
		if normal.Dot(face.Centre.Sub(head.At)) < 0 {
			normal = normal.Mul(-1)
		}
		loft := math.Asin(float64(normal.Z)) * 180 / math.Pi
		aim := math.Atan2(float64(normal.Y), float64(normal.X)) * 180 / math.Pi
		if math.Abs(aim) > 8 {
			t.Errorf("%s: the face looks %.1f° beside the target at impact, want at most 8°", s.Title, aim)
		}
		if lead := float64(s.Club.Loft) - loft; lead < 0 || lead > 18 {
			t.Errorf("%s: the face looks %.1f° up at impact, want up to 18° less than the loft of %.1f°", s.Title, loft, s.Club.Loft)
		}
		end := f.axes[shaft].B
		if heel, toe := f.axes[clubhead].A.Sub(end).Norm(), f.axes[clubhead].B.Sub(end).Norm(); heel >= toe {
			t.Errorf("%s: the shaft ends %.3f m from the heel and %.3f m from the toe", s.Title, heel, toe)
		}
	}
}

// What is drawn lies inside the capsules that are judged, but for the peak of the cap,
// the nose, and 3 cm at soles, shoulders and knuckles; and it does not stay far
// inside where something is judged, so that the picture promises no more room.
func TestInsideWhatIsJudged(t *testing.T) {
	const (
		little   = 0.030 // m outside
		ornament = 0.060 // m, of peak and nose
		within   = 0.040 // m that a capsule may stand out past what is drawn, at its end
	)
	for _, s := range recorded(t) {
		f, pose := figureOf(t, s)
		for frame := 0; frame < len(s.Frames); frame += 10 {
			solids := pose(frame)
			for i := range solids {
				k := &solids[i]
				limit := float32(little)
				if k.Size < 0.31*f.radius[head] && !k.Rod && k.At.Sub(f.axes[head].Middle()).Norm() < 2*f.radius[head] {
					limit = ornament
				}
				for j := range k.Rings {
					for n := range k.Section.Cos {
						p := k.Rings[j].Point(k.Section.Cos[n], k.Section.Sin[n])
						out := float32(math.Inf(1))
						for part := range numParts {
							off, _ := fromAxis(f.axes[part], p)
							out = min(out, off-f.radius[part])
						}
						if out > limit {
							t.Fatalf("%s, frame %d: solid %d stands %.3f m out of the capsules at ring %d, want at most %v", s.Title, frame, i, out, j, limit)
						}
					}
				}
			}
			for _, end := range []struct {
				name string
				part int
				way  vec
			}{
				{"the crown", head, f.axes[head].B.Sub(f.axes[head].A).Unit()},
				{"the toe of the club", clubhead, f.axes[clubhead].B.Sub(f.axes[clubhead].A).Unit()},
				{"the lead shoe", leadFoot, f.axes[leadFoot].B.Sub(f.axes[leadFoot].A).Unit()},
				{"the lead elbow", leadUpperArm, f.axes[leadUpperArm].B.Sub(f.axes[leadUpperArm].A).Unit()},
			} {
				judged := f.axes[end.part].B.Dot(end.way) + f.radius[end.part]
				drawn := float32(math.Inf(-1))
				for i := range solids {
					k := &solids[i]
					for j := range k.Rings {
						if off, _ := fromAxis(f.axes[end.part], k.Rings[j].Centre); off > 2*f.radius[end.part] {
							continue
						}
						for n := range k.Section.Cos {
							drawn = max(drawn, k.Rings[j].Point(k.Section.Cos[n], k.Section.Sin[n]).Dot(end.way))
						}
					}
				}
				if judged-drawn > within {
					t.Errorf("%s, frame %d: %s ends %.3f m inside what is judged, want at most %v", s.Title, frame, end.name, judged-drawn, within)
				}
			}
		}
	}
}

// The shoulders are on the trunk: its yoke ends at them.
func TestShouldersOnTheYoke(t *testing.T) {
	for _, s := range recorded(t) {
		f, pose := figureOf(t, s)
		for frame := 0; frame < len(s.Frames); frame += 5 {
			body := pose(frame)[1]
			for _, arm := range [2]int{leadUpperArm, trailUpperArm} {
				nearest := float32(math.Inf(1))
				for j := range body.Rings {
					for n := range body.Section.Cos {
						nearest = min(nearest, body.Rings[j].Point(body.Section.Cos[n], body.Section.Sin[n]).Sub(f.axes[arm].A).Norm())
					}
				}
				if nearest > 1.05*f.radius[arm] {
					t.Fatalf("%s, frame %d: %s begins %.3f m from the trunk, want it on it (its radius is %.3f)", s.Title, frame, partNames[arm], nearest, f.radius[arm])
				}
			}
		}
	}
}

// The golfer looks at the ball until it has gone, and down the line at the finish.
func TestLooks(t *testing.T) {
	for _, s := range recorded(t) {
		f, pose := figureOf(t, s)
		for _, tt := range []struct {
			name  string
			frame int
			at    vec
		}{{"address", 0, f.ball}, {"impact", int(f.impact), f.ball}, {"finish", len(s.Frames) - 1, vec{X: s.Room[0], Y: f.ball.Y, Z: 1.5}}} {
			pose(tt.frame)
			eyes, way := f.Eyes(float64(tt.frame))
			if cos := way.Dot(tt.at.Sub(eyes).Unit()); cos < 0.97 {
				t.Errorf("%s at %s: looks %v from %v, want at %v", s.Title, tt.name, way, eyes, tt.at)
			}
			up := f.axes[head].B.Sub(f.axes[head].A).Unit()
			flat := tt.at.Sub(f.axes[head].Middle()).Across(up)
			peak := vec{}
			for _, k := range f.solids {
				if k.Size == 0.3*f.radius[head] {
					peak = k.At.Sub(f.axes[head].Middle()).Across(up)
				}
			}
			if cos := peak.Dot(flat); cos < 0.95 {
				t.Errorf("%s at %s: the peak points %v, want %v", s.Title, tt.name, peak, flat)
			}
		}
	}
}

// A left-hander is the mirror image of a right-hander in every slice.
func TestLeftHander(t *testing.T) {
	s := recorded(t)[0]
	mirrored := *s
	mirrored.Frames = slices.Clone(s.Frames)
	for i := range mirrored.Frames {
		mirrored.Frames[i].Pose = slices.Clone(s.Frames[i].Pose)
		for j := range mirrored.Frames[i].Pose {
			k := &mirrored.Frames[i].Pose[j]
			k.A[1], k.B[1] = 2*s.Ball[1]-k.A[1], 2*s.Ball[1]-k.B[1]
		}
	}
	right, poseRight := figureOf(t, s)
	left, poseLeft := figureOf(t, &mirrored)
	if right.LeftHanded() || !left.LeftHanded() {
		t.Fatalf("left-handed: %v and %v, want false and true", right.LeftHanded(), left.LeftHanded())
	}
	for frame := 0; frame < len(s.Frames); frame += 20 {
		a, b := poseRight(frame), poseLeft(frame)
		for i := range a {
			for j := range a[i].Rings {
				p, q := a[i].Rings[j].Centre, b[i].Rings[j].Centre
				if d := (vec{X: p.X, Y: 2*s.Ball[1] - p.Y, Z: p.Z}).Sub(q).Norm(); d > 1e-4 {
					t.Fatalf("frame %d, solid %d, ring %d: %v of the right-hander, %v of the left-hander", frame, i, j, p, q)
				}
			}
		}
	}
}

// A pose costs no allocation once the slices have grown, and a recording that lacks a
// part has no figure.
func TestPoseAllocatesNothing(t *testing.T) {
	s := recorded(t)[0]
	_, pose := figureOf(t, s)
	pose(0)
	if n := testing.AllocsPerRun(20, func() { pose(100); pose(300) }); n > 0 {
		t.Errorf("a pose takes %v allocations, want none", n)
	}
	for i, name := range partNames {
		lacking := *s
		lacking.Parts = slices.Clone(s.Parts)
		lacking.Parts[i].Name = "tail"
		if _, ok := New(&lacking); ok {
			t.Errorf("without %s there is a figure, want none", name)
		}
	}
	if _, ok := New(&wire.Recording{Parts: s.Parts, Rate: 240}); ok {
		t.Error("without frames there is a figure, want none")
	}
}

// Every kind of clubhead stays in the capsule that is judged and reaches heel and toe;
// a driver is bulbous, an iron and a wedge are blades, and what is no kind is an iron.
func TestClubheads(t *testing.T) {
	s := recorded(t)[0]
	deep := map[string]float32{}
	for _, kind := range []string{"driver", "wood", "hybrid", "iron", "wedge", "rake"} {
		with := *s
		with.Club = wire.Club{Kind: kind}
		f, pose := figureOf(t, &with)
		solids := pose(int(f.impact))
		head := solids[len(solids)-1]
		heel, normal, up := f.headFrame()
		if shape.Abs(heel.Dot(normal))+shape.Abs(heel.Dot(up))+shape.Abs(normal.Dot(up)) > 1e-4 || up.Z < 0.7 || normal.X < 0.9 {
			t.Errorf("%s: the head's base is %v, %v, %v", kind, heel, normal, up)
		}
		front, back, wide := float32(-1), float32(1), float32(0)
		for j := range head.Rings {
			for n := range head.Section.Cos {
				p := head.Rings[j].Point(head.Section.Cos[n], head.Section.Sin[n])
				if off, _ := fromAxis(f.axes[clubhead], p); off > f.radius[clubhead]+0.012 {
					t.Errorf("%s: ring %d stands %.3f m out of the capsule", kind, j, off-f.radius[clubhead])
				}
				d := p.Sub(head.At)
				front, back, wide = max(front, d.Dot(normal)), min(back, d.Dot(normal)), max(wide, shape.Abs(d.Dot(heel)))
			}
		}
		deep[kind] = front - back
		judged := f.axes[clubhead].B.Sub(f.axes[clubhead].A).Norm()/2 + f.radius[clubhead]
		if wide < 0.7*judged {
			t.Errorf("%s: the head is drawn %.3f m to each side, judged %.3f: want at least seven tenths", kind, wide, judged)
		}
	}
	if !(deep["driver"] >= deep["wood"] && deep["wood"] > deep["hybrid"] && deep["hybrid"] > 1.2*deep["iron"] && deep["rake"] == deep["iron"]) {
		t.Errorf("from face to back the heads are %v", deep)
	}
}
