package draw

import (
	"encoding/json"
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

var update = flag.Bool("update", false, "rewrite the golden pictures")

// frozen is the recording that the golden pictures show: a tall guest's driver
// in the demonstration's loft with a ceiling of 2.80 m, every fourth of its
// frames, rounded to a tenth of a millimetre. It is kept as a file, so that a
// change of the model moves no picture.
func frozen(t *testing.T) *wire.Recording {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", "recording.json"))
	if err != nil {
		t.Fatal(err)
	}
	var r wire.Recording
	if err := json.Unmarshal(b, &r); err != nil {
		t.Fatal(err)
	}
	return &r
}

// leftHanded mirrors the golfer of a recording.
func leftHanded(r *wire.Recording) {
	for i := range r.Frames {
		for j := range r.Frames[i].Pose {
			s := &r.Frames[i].Pose[j]
			s.A[1], s.B[1] = 2*r.Ball[1]-s.A[1], 2*r.Ball[1]-s.B[1]
		}
	}
}

// typicalBehind gives the recording a typical swing that is a little late, with the club 3 cm lower.
func typicalBehind(r *wire.Recording) {
	for i := range r.Frames {
		typical := slices.Clone(r.Frames[max(0, i-2)].Pose)
		for j := range typical {
			if name := r.Parts[j].Name; name == "shaft" || name == "clubhead" || name == "grip" {
				typical[j].A[2] -= 0.03
				typical[j].B[2] -= 0.03
			}
		}
		r.Frames[i].Typical = typical
	}
}

// phaseStart is the first frame of a phase.
func phaseStart(r *wire.Recording, phase string) float64 {
	return float64(slices.IndexFunc(r.Frames, func(f wire.Frame) bool { return r.Phases[f.Phase] == phase }))
}

// TestGoldenPictures holds what a person sees of the frozen recording, pixel by
// pixel. To see what changed, run with -artifacts and compare.
func TestGoldenPictures(t *testing.T) {
	in := func(verdict wire.Verdict) func(*wire.Recording) {
		return func(r *wire.Recording) { r.Tightest.Verdict = verdict }
	}
	fray := func(metres float32) func(*wire.Recording) {
		return func(r *wire.Recording) { r.Tightest.Fray = metres }
	}
	pictures := []struct {
		name          string
		phase         string
		after         float64 // frames past the start of the phase
		view          string
		width, height int
		scale         float32
		zoom, pitch   float64
		dark          bool
		maps, ghost   bool
		change        func(*wire.Recording)
	}{
		{name: "address", phase: "address", view: "behind"},
		{name: "top", phase: "top", after: 0.4, view: "behind"},
		{name: "impact", phase: "impact", view: "behind"},
		{name: "finish", phase: "finish", after: 2, view: "behind"},
		{name: "address face-on by lamplight", phase: "address", view: "face-on", dark: true},
		{name: "impact from the target", phase: "impact", after: 0.5, view: "target", zoom: 2.5},
		{name: "release from above", phase: "release", after: 3, view: "above"},
		{name: "finish face-on", phase: "finish", view: "face-on", pitch: 0.5, change: in(wire.Tight)},
		{name: "finish on a phone", phase: "finish", after: 30, view: "behind", width: 390, height: 300, scale: 2, dark: true, change: in(wire.Clear)},
		{name: "left-hander face-on", phase: "top", view: "face-on", change: leftHanded},
		{name: "lettering", phase: "address", view: "behind", width: 960, height: 640, pitch: 0.25},
		{name: "lettering on the back of the cloth", phase: "top", view: "target", width: 800, height: 500, pitch: 0.3, zoom: 1.3},
		{name: "frayed tape", phase: "finish", view: "behind", width: 960, height: 720, change: fray(0.1)},
		{name: "tape frayed all along", phase: "finish", view: "behind", change: fray(0.5)},
		{name: "what the golfer sees", phase: "address", view: "golfer", width: 640, height: 420},
		{name: "what a camera sees", phase: "follow-through", view: "camera", width: 640, height: 420},
		{name: "maps", phase: "address", view: "camera", width: 640, height: 420, maps: true},
		{name: "maps from above", phase: "address", view: "above", maps: true},
		{name: "ghost beside the typical swing", phase: "release", after: 2, view: "face-on", width: 640, height: 420, zoom: 1.6, change: typicalBehind, ghost: true},
		{name: "from below the floor", phase: "follow-through", view: "face-on", pitch: -0.2, zoom: 1.5},
	}
	for _, tt := range pictures {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			r := frozen(t)
			if tt.change != nil {
				tt.change(r)
			}
			p := New(r)
			letters := newAtlas(p.Texts())
			for text, g := range letters.places {
				p.SetGlyphs(text, g)
			}
			p.ShowGhost(tt.ghost)
			if tt.maps {
				p.ShowMaps(sampleMaps())
			}
			v := View{Width: 480, Height: 360, Scale: 1, Dark: tt.dark}
			if tt.width > 0 {
				v.Width, v.Height, v.Scale = float32(tt.width), float32(tt.height), tt.scale
			}
			v.Stand, _ = p.Preset(tt.view)
			v.Orbit.Pitch += tt.pitch
			if tt.zoom > 0 {
				v.Orbit.Zoom = tt.zoom
			}
			mesh := p.Draw(v, phaseStart(r, tt.phase)+tt.after)
			comparePicture(t, tt.name, rasterise(mesh, int(v.Width), int(v.Height), paint.ThemeOf(tt.dark).Ground, letters))
		})
	}
}

// comparePicture holds a picture against its golden file.
func comparePicture(t *testing.T, name string, got *image.RGBA) {
	t.Helper()
	file := filepath.Join("testdata", name+".png")
	if *update {
		writePicture(t, file, got)
	}
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want, err := png.Decode(f)
	if err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	if want.Bounds() != got.Bounds() {
		t.Fatalf("the picture is %v, %s is %v", got.Bounds(), file, want.Bounds())
	}
	var off image.Rectangle
	n := 0
	for y := range got.Bounds().Dy() {
		for x := range got.Bounds().Dx() {
			r, g, b, _ := want.At(x, y).RGBA()
			if c := got.RGBAAt(x, y); c.R != uint8(r>>8) || c.G != uint8(g>>8) || c.B != uint8(b>>8) {
				off = off.Union(image.Rect(x, y, x+1, y+1))
				n++
			}
		}
	}
	if n > 0 {
		now := filepath.Join(t.ArtifactDir(), "now.png")
		writePicture(t, now, got)
		t.Errorf("%d pixels within %v are not those of %s: compare it with %s (kept with -artifacts); -update takes the new picture", n, off, file, now)
	}
}

func writePicture(t *testing.T, file string, img image.Image) {
	t.Helper()
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(f, img); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}
