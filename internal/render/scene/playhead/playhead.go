// Package playhead moves the play-head of a recording: play, pause, seek, step and
// slow motion, without a clock of its own.
package playhead

import "math"

// Head is where in the swing we are. The zero Head has nothing to play.
type Head struct {
	t, duration float64 // s
	perSecond   float64 // frames
	rate        float64 // how fast, 1 is real time; 0 stands for 1
	playing     bool
	slow        window
}

// window is a stretch of time (s) that plays at a share of the usual rate.
type window struct{ from, to, share float64 }

// Load gives the head a recording of n frames at perSecond frames a second. The
// time is kept where the new recording reaches, playing stops.
func (h *Head) Load(n int, perSecond float64) {
	h.duration, h.perSecond = 0, perSecond
	if n > 1 && perSecond > 0 {
		h.duration = float64(n-1) / perSecond
	}
	h.playing = false
	h.slow = window{}
	h.t = min(h.t, h.duration)
}

// Time is where the head stands, seconds.
func (h *Head) Time() float64 { return h.t }

// Duration is the time of the last frame, seconds.
func (h *Head) Duration() float64 { return h.duration }

// Playing reports whether Advance moves the head.
func (h *Head) Playing() bool { return h.playing }

// Frames is where the head stands in frames, a fraction between two. Within a
// thousandth of a frame it is that frame, so that a time that was rounded on
// its way here still shows it.
func (h *Head) Frames() float64 {
	f := h.t * h.perSecond
	if r := math.Round(f); math.Abs(f-r) < 1e-3 {
		return r
	}
	return f
}

// Frame is the frame at or just before the head.
func (h *Head) Frame() int { return int(h.Frames()) }

// Play starts to move, from the start again when the head is at the end.
func (h *Head) Play() {
	if h.duration == 0 {
		return
	}
	if h.t >= h.duration {
		h.t = 0
	}
	h.playing = true
}

// Pause stops.
func (h *Head) Pause() { h.playing = false }

// Slowest and Fastest bound the rate.
const (
	Slowest = 0.02
	Fastest = 2
)

// SetRate sets how fast the swing plays, 1 being real time, within Slowest and
// Fastest; anything that is not a positive number is left out of account.
func (h *Head) SetRate(rate float64) {
	if rate > 0 {
		h.rate = max(Slowest, min(rate, Fastest))
	}
}

// Seek goes to t seconds, kept inside the recording; playing goes on from there.
func (h *Head) Seek(t float64) {
	if !math.IsNaN(t) {
		h.t = max(0, min(t, h.duration))
	}
}

// Step pauses and goes n frames on, or back when n is negative. Between two
// frames the first step goes to the next one in its direction.
func (h *Head) Step(n int) {
	h.playing = false
	if h.perSecond <= 0 {
		return
	}
	f := h.Frames()
	if n < 0 {
		f = math.Ceil(f)
	} else {
		f = math.Floor(f)
	}
	h.Seek((f + float64(n)) / h.perSecond)
}

// SlowDown makes the time between from and to (s) play at a share of the rate,
// which shows what is over in the blink of an eye; the next Load ends it.
func (h *Head) SlowDown(from, to, share float64) {
	h.slow = window{}
	if from < to && share > 0 {
		h.slow = window{from, to, min(share, 1)}
	}
}

// longestStep is the most time, s, that one Advance passes: after a stall the
// swing goes on where it was.
const longestStep = 0.1

// Advance moves a playing head by dt seconds of real time and reports whether
// it moved. At the end it stops.
func (h *Head) Advance(dt float64) bool {
	if !h.playing || !(dt > 0) {
		return false
	}
	rate := h.rate
	if rate == 0 {
		rate = 1
	}
	h.pass(min(dt, longestStep) * rate)
	if h.t >= h.duration {
		h.t, h.playing = h.duration, false
	}
	return true
}

// pass moves on by a step, slower within the slow window.
func (h *Head) pass(step float64) {
	w := h.slow
	if w.share == 0 {
		h.t += step
		return
	}
	if h.t < w.from {
		before := min(step, w.from-h.t)
		h.t += before
		step -= before
	}
	if step > 0 && h.t < w.to {
		inside := min(step*w.share, w.to-h.t)
		h.t += inside
		step -= inside / w.share
	}
	if step > 0 {
		h.t += step
	}
}
