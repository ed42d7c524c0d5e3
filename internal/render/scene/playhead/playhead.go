// Package playhead is where in a recording we are. The page has the clock: it
// sends a moment for every picture, and the head stays where it was last sent.
package playhead

import "math"

// Head is where in the swing we are. The zero Head has nothing to show.
type Head struct {
	t, duration float64 // s
	perSecond   float64 // frames
	quiet       int     // ticks since it was sent to another moment
}

// Load gives the head a recording of n frames at perSecond frames a second. The
// time is kept where the new recording reaches.
func (h *Head) Load(n int, perSecond float64) {
	h.duration, h.perSecond = 0, perSecond
	if n > 1 && perSecond > 0 {
		h.duration = float64(n-1) / perSecond
	}
	h.t = min(h.t, h.duration)
	h.quiet = restTicks
}

// Time is where the head stands, seconds.
func (h *Head) Time() float64 { return h.t }

// Duration is the time of the last frame, seconds.
func (h *Head) Duration() float64 { return h.duration }

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

// Seek goes to t seconds, kept inside the recording, and reports whether that is
// another moment.
func (h *Head) Seek(t float64) bool {
	if math.IsNaN(t) {
		return false
	}
	t = max(0, min(t, h.duration))
	moved := t != h.t
	if moved {
		h.t, h.quiet = t, 0
	}
	return moved
}

// restTicks is for how many ticks a head must not have moved to be at rest: a page
// that plays sends a moment for each picture it paints, and may miss a few.
const restTicks = 12

// Tick passes one tick of the engine and reports whether the head came to rest
// with it.
func (h *Head) Tick() bool {
	h.quiet = min(h.quiet+1, restTicks+1)
	return h.quiet == restTicks
}

// Moving reports whether the head was sent to other moments just now, as while the
// swing plays.
func (h *Head) Moving() bool { return h.quiet < restTicks }
