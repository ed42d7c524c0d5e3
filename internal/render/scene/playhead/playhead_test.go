package playhead

import (
	"math"
	"testing"
)

// loaded is a head with two seconds of 240 frames.
func loaded() *Head {
	h := &Head{}
	h.Load(481, 240)
	return h
}

func TestStepLandsOnFrames(t *testing.T) {
	tests := []struct {
		name  string
		from  float64 // frames
		steps []int
		want  int
	}{
		{"one on", 10, []int{1}, 11},
		{"one back", 10, []int{-1}, 9},
		{"on from between", 10.4, []int{1}, 11},
		{"back from between", 10.4, []int{-1}, 10},
		{"stops at the start", 1, []int{-1, -1, -1}, 0},
		{"stops at the end", 479, []int{1, 1, 1}, 480},
		{"there and back", 100, []int{1, 1, 1, -1, -1, -1}, 100},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := loaded()
			h.Play()
			h.Seek(tt.from / 240)
			for _, n := range tt.steps {
				h.Step(n)
			}
			if h.Frame() != tt.want || h.Frames() != float64(tt.want) {
				t.Errorf("frame = %d (%v), want %d", h.Frame(), h.Frames(), tt.want)
			}
			if h.Playing() {
				t.Error("still playing after a step")
			}
		})
	}
}

func TestEveryFrameIsReached(t *testing.T) {
	h := loaded()
	for want := range 481 {
		if h.Frame() != want {
			t.Fatalf("after %d steps frame = %d", want, h.Frame())
		}
		h.Step(1)
	}
}

func TestAdvance(t *testing.T) {
	const frameTolerance = 1e-9 // s, the rounding of a hundred additions
	tests := []struct {
		name    string
		rate    float64
		ticks   int
		dt      float64
		want    float64
		playing bool
	}{
		{"real time", 1, 60, 1.0 / 60, 1, true},
		{"a quarter", 0.25, 60, 1.0 / 60, 0.25, true},
		{"a stall is not made up for", 1, 1, 30, 0.1, true},
		{"twice is the fastest", 9, 30, 1.0 / 60, 1, true},
		{"a fiftieth is the slowest", 0.001, 60, 1.0 / 60, 0.02, true},
		{"stops at the end", 1, 180, 1.0 / 60, 2, false},
		{"a rate that is no number", math.NaN(), 60, 1.0 / 60, 1, true},
		{"a rate of nothing", 0, 60, 1.0 / 60, 1, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := loaded()
			h.SetRate(tt.rate)
			h.Play()
			for range tt.ticks {
				h.Advance(tt.dt)
			}
			if math.Abs(h.Time()-tt.want) > frameTolerance || h.Playing() != tt.playing {
				t.Errorf("time = %v, playing %v, want %v, %v", h.Time(), h.Playing(), tt.want, tt.playing)
			}
		})
	}
}

func TestPlayAtTheEndStartsAgain(t *testing.T) {
	h := loaded()
	h.Seek(99)
	h.Play()
	if h.Time() != 0 || !h.Playing() {
		t.Errorf("time = %v, playing %v, want 0, true", h.Time(), h.Playing())
	}
}

func TestNothingToPlay(t *testing.T) {
	h := &Head{}
	h.Play()
	h.Step(1)
	h.Seek(math.NaN())
	if h.Playing() || h.Advance(1) || h.Frame() != 0 {
		t.Errorf("an empty head moved: %+v", h)
	}
}

// A slow window takes its share of the rate, whatever the length of the steps,
// and the rest of the swing none of it.
func TestSlowDown(t *testing.T) {
	const tol = 1e-9 // sums of a few hundred steps
	for _, tt := range []struct {
		name            string
		from, to, share float64
		wall            float64 // s of real time
		want            float64 // where the head is then
	}{
		{"before it", 0.5, 0.6, 0.1, 0.4, 0.4},
		{"half way through", 0.5, 0.6, 0.1, 1.0, 0.55},
		{"behind it", 0.5, 0.6, 0.1, 1.7, 0.8},
		{"none", 0, 0, 0.1, 0.7, 0.7},
		{"back to front", 0.6, 0.5, 0.1, 0.7, 0.7},
		{"without a share", 0.5, 0.6, 0, 0.7, 0.7},
		{"over its end in one step", 0.513, 0.543, 0.5, 0.62, 0.59},
		{"just begun", 0.513, 0.613, 0.25, 0.553, 0.523},
		{"a share above one does not hurry", 0.5, 0.6, 3, 0.7, 0.7},
	} {
		for _, step := range []float64{1.0 / 60, 0.05, 0.07, 0.1} {
			var h Head
			h.Load(481, 240)
			h.SlowDown(tt.from, tt.to, tt.share)
			h.Play()
			for left := tt.wall; left > 1e-12; left -= step {
				h.Advance(min(step, left))
			}
			if math.Abs(h.Time()-tt.want) > tol {
				t.Errorf("%s, steps of %.3f s: after %v s at %v, want %v", tt.name, step, tt.wall, h.Time(), tt.want)
			}
		}
	}
}

// A new recording stops the swing where it was, or at its own end, at full speed.
func TestLoad(t *testing.T) {
	h := loaded()
	h.Seek(1.5)
	h.SlowDown(1, 2, 0.5)
	h.Play()
	h.Load(481, 240)
	if h.Playing() || h.Time() != 1.5 || h.Duration() != 2 {
		t.Errorf("after a recording as long: time %v of %v, playing %v, want 1.5 of 2, at rest", h.Time(), h.Duration(), h.Playing())
	}
	h.Play()
	h.Advance(0.1)
	if want := 1.6; math.Abs(h.Time()-want) > 1e-12 {
		t.Errorf("the slow window outlived its recording: time = %v, want %v", h.Time(), want)
	}
	h.Load(241, 240)
	if h.Time() != 1 {
		t.Errorf("after a shorter recording: time = %v, want its end, 1", h.Time())
	}
	for _, tt := range []struct {
		name      string
		n         int
		perSecond float64
		want      float64
	}{{"one frame", 1, 240, 0}, {"two frames", 2, 1, 1}, {"no rate", 9, 0, 0}} {
		h.Load(tt.n, tt.perSecond)
		if h.Duration() != tt.want {
			t.Errorf("%s: duration = %v, want %v", tt.name, h.Duration(), tt.want)
		}
	}
}

// Paused or without time passed, the head stays; close to a frame it is on it.
func TestStays(t *testing.T) {
	h := loaded()
	h.Seek(1)
	if h.Advance(1); h.Time() != 1 {
		t.Errorf("a head at rest moved to %v", h.Time())
	}
	h.Play()
	if h.Advance(0) || h.Advance(-1) || h.Advance(math.NaN()) || h.Time() != 1 {
		t.Errorf("the head moved to %v in no time", h.Time())
	}
	h.Pause()
	if h.Playing() {
		t.Error("still playing after a pause")
	}
	h.Seek(-3)
	if h.Time() != 0 {
		t.Errorf("sought to %v, want 0", h.Time())
	}
	for _, tt := range []struct{ at, want float64 }{{10.0009, 10}, {9.9991, 10}, {10.0011, 10.0011}} {
		h.Seek(tt.at / 240)
		if got := h.Frames(); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("at frame %v Frames() = %v, want %v", tt.at, got, tt.want)
		}
	}
}
