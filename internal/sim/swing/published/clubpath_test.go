package published

import (
	"math"
	"strings"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing/measure"
)

func recorded(t *testing.T) []ClubPath {
	t.Helper()
	paths, err := ClubPaths()
	if err != nil {
		t.Fatal(err)
	}
	if len(paths) != 2 {
		t.Fatalf("%d recorded swings, want two", len(paths))
	}
	return paths
}

// What was recorded is a club: one length from hands to face, and a face that
// goes as fast as its places say.
func TestClubPathsAreAClub(t *testing.T) {
	for _, p := range recorded(t) {
		if len(p.Samples) < 100 {
			t.Errorf("%s has %d samples, want the whole swing", p.Name, len(p.Samples))
		}
		for i, s := range p.Samples {
			if length := geom.Norm(r3.Sub(s.Face, s.Hands)); math.Abs(length-1.07) > 0.02 {
				t.Errorf("%s at %.4f s: hands to face %.3f m, want 1.07", p.Name, s.Time, length)
			}
			if i == 0 {
				continue
			}
			before := p.Samples[i-1]
			chord := geom.Norm(r3.Sub(s.Face, before.Face)) / (s.Time - before.Time)
			if mean := (s.Speed + before.Speed) / 2; math.Abs(chord-mean) > 0.6+0.1*mean {
				t.Errorf("%s at %.4f s: the face moves at %.1f m/s, want the recorded %.1f", p.Name, s.Time, chord, mean)
			}
		}
	}
}

// The frame is that of swing.Pose: the face's centre meets a ball that stands
// over the origin, and the golfer is on the +y side of it.
func TestClubPathsMeetTheBall(t *testing.T) {
	for _, p := range recorded(t) {
		for i, s := range p.Samples[1:] {
			before := p.Samples[i]
			if before.Time > 0 || s.Time < 0 {
				continue
			}
			share := -before.Time / (s.Time - before.Time)
			at := geom.Lerp(before.Face, s.Face, share)
			if off := geom.Norm(r3.Sub(at, teed)); off > 0.01 {
				t.Errorf("%s: the face at impact is at %.3v, %.3f m from where it meets the ball %.3v", p.Name, at, off, teed)
			}
			if s.Hands.Y < 0.5 || s.Hands.Z < 0.5 || s.Face.X <= before.Face.X {
				t.Errorf("%s at impact: hands %.3v, face from %.3v to %.3v: not a golfer on the +y side striking towards +x", p.Name, s.Hands, before.Face, s.Face)
			}
		}
	}
}

// The club is soled behind the ball at address: neither in the ground nor in the
// air.
func TestClubPathsBeginOnTheGround(t *testing.T) {
	for _, p := range recorded(t) {
		if z := p.Samples[0].Face.Z; z < 0.01 || z > 0.045 {
			t.Errorf("%s: the face's centre is %.3f m above the ground at address, want that of a soled driver", p.Name, z)
		}
	}
}

// The rows about the recorded paths say what the recordings hold.
func TestRecordedRowsAreOfTheRecordings(t *testing.T) {
	low, high := map[string]float64{}, map[string]float64{}
	for i, p := range recorded(t) {
		for _, m := range measure.Path(p.Samples) {
			if i == 0 {
				low[m.Name], high[m.Name] = m.Value, m.Value
			}
			low[m.Name], high[m.Name] = min(low[m.Name], m.Value), max(high[m.Name], m.Value)
		}
	}
	figures, err := Figures()
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, f := range figures {
		if f.Cite != "recorded clubs" {
			continue
		}
		rows++
		round := map[string]float64{"m": 0.005, "m/s": 0.5, "deg": 0.5, "s": 0.005}[f.Unit] + 1e-9
		if _, ok := low[f.Quantity]; !ok || math.Abs(f.Low-low[f.Quantity]) > round || math.Abs(f.High-high[f.Quantity]) > round {
			t.Errorf("%s: the row says %g to %g %s, the recordings %.3f to %.3f", f.Quantity, f.Low, f.High, f.Unit, low[f.Quantity], high[f.Quantity])
		}
	}
	if rows < 30 {
		t.Errorf("%d rows are of the recordings, want the thirty and more", rows)
	}
}

func TestParsePathsNamesWhatIsWrong(t *testing.T) {
	const good = "A,-0.1,0,0.8,0.7,-1,1,1,20"
	for _, c := range []struct{ name, text, want string }{
		{"other columns", "swing,t\n", "first row"},
		{"not a number", pathColumns + "\n" + good + "\nA,0,0,high,0.7,0,0,0,50\n", "sample 2: hands_y is not a number"},
		{"back in time", pathColumns + "\n" + good + "\nA,-0.1,0,0.8,0.7,0,0,0,50\n", "sample 2: t -0.1 does not follow -0.1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := parsePaths(c.text); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("parsePaths = %v, want %q", err, c.want)
			}
		})
	}
	paths, err := parsePaths(pathColumns + "\n" + good + "\n" + strings.Replace(good, "A", "B", 1) + "\n")
	if err != nil || len(paths) != 2 {
		t.Errorf("parsePaths of two swings = %d swings, %v", len(paths), err)
	}
}
