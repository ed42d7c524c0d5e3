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

func TestSeek(t *testing.T) {
	for _, tt := range []struct {
		name  string
		at    float64
		want  float64
		moved bool
	}{
		{"on", 1.25, 1.25, true}, {"nowhere else", 1, 1, false}, {"before the start", -3, 0, true},
		{"past the end", 99, 2, true}, {"no number", math.NaN(), 1, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			h := loaded()
			h.Seek(1)
			if moved := h.Seek(tt.at); moved != tt.moved || h.Time() != tt.want {
				t.Errorf("Seek(%v) = %t and is at %v, want %t and %v", tt.at, moved, h.Time(), tt.moved, tt.want)
			}
		})
	}
	if h := (&Head{}); h.Seek(1) || h.Frame() != 0 || h.Duration() != 0 {
		t.Errorf("an empty head moved: %+v", h)
	}
}

// Every frame is reached by its own time, and close to a frame the head is on it.
func TestFrames(t *testing.T) {
	h := loaded()
	for want := range 481 {
		h.Seek(float64(want) / 240)
		if h.Frame() != want {
			t.Fatalf("at the time of frame %d Frame() = %d", want, h.Frame())
		}
	}
	for _, tt := range []struct{ at, want float64 }{{10.0009, 10}, {9.9991, 10}, {10.0011, 10.0011}} {
		h.Seek(tt.at / 240)
		if got := h.Frames(); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("at frame %v Frames() = %v, want %v", tt.at, got, tt.want)
		}
	}
}

// A new recording leaves the head where it was, or at its own end, at rest.
func TestLoad(t *testing.T) {
	h := loaded()
	h.Seek(1.5)
	h.Load(481, 240)
	if h.Moving() || h.Time() != 1.5 || h.Duration() != 2 {
		t.Errorf("after a recording as long: time %v of %v, moving %v, want 1.5 of 2, at rest", h.Time(), h.Duration(), h.Moving())
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

// The head moves while it is sent on, a few missed ticks included, and comes to
// rest once.
func TestMoving(t *testing.T) {
	h := loaded()
	if h.Moving() {
		t.Error("a head that was never sent anywhere moves")
	}
	for k := range 20 {
		h.Seek(float64(k+1) / 60)
		for range restTicks - 1 {
			if h.Tick() || !h.Moving() {
				t.Fatalf("at rest after %d moments", k+1)
			}
		}
	}
	rests := 0
	for range 3 * restTicks {
		if h.Tick() {
			rests++
		}
		h.Seek(h.Time()) // the same moment again moves nothing
	}
	if rests != 1 || h.Moving() {
		t.Errorf("came to rest %d times, moving %t, want once and at rest", rests, h.Moving())
	}
}
