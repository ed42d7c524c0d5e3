package main

// tellState sends the script where we are:
//
//	{type:"state", t, frame, phase, moving, duration, clearance, strike, title,
//	 tightest, view, yaw, pitch, zoom, left, marks, tape, head}
//
// t, duration and tightest (the tape's moment) are seconds; clearance is the frame's own, metres. strike says
// that the frame is past a surface, or that the first of all swings touches in it.
// view is the named view or empty; yaw and pitch, degrees, are where the viewer is
// going, and left is how much of the way is still before them, 1 to 0. For tests that look at pixels, marks lists the centres of
// the strike marks that are shown and not under the tape (their fill is
// paint.StrikeRGB, though golfer or club may be before one), tape is a
// bare spot of the tape's yellow (paint.TapeRGB) or null, and head is the
// clubhead's middle: CSS pixels from the picture's top left corner.
func (g *game) tellState() {
	g.news, g.quiet = false, 0
	frame := g.head.Frame()
	state := map[string]any{
		"t": g.head.Time(), "frame": frame, "moving": g.head.Moving(), "duration": g.head.Duration(),
		"phase": "", "clearance": nil, "strike": false, "title": g.recording.Title,
		"tightest": float64(g.recording.Tightest.Time),
		"view":     g.preset, "yaw": degrees(g.stand.Orbit.Yaw), "pitch": degrees(g.stand.Orbit.Pitch), "zoom": g.stand.Orbit.Zoom, "left": 1 - g.come(),
	}
	if frame < len(g.recording.Frames) {
		f := &g.recording.Frames[frame]
		if int(f.Phase) < len(g.recording.Phases) {
			state["phase"] = g.recording.Phases[f.Phase]
		}
		state["clearance"] = float64(f.Clearance)
		state["strike"] = g.struck(frame)
	}
	p := g.picture.Probe()
	marks := make([]any, len(p.Marks))
	for i, m := range p.Marks {
		marks[i] = g.place(m)
	}
	state["marks"], state["tape"], state["head"] = marks, nil, g.place(p.Head)
	if p.Tape[0] >= 0 {
		state["tape"] = g.place(p.Tape)
	}
	tell("state", state)
}

// struck reports whether golfer or club is past a surface in the frame: by the
// frame's own clearance or by a mark it makes, which also tells of a strike
// between two frames.
func (g *game) struck(frame int) bool {
	if g.recording.Frames[frame].Clearance < 0 {
		return true
	}
	for i := range g.recording.Strikes {
		if g.recording.Strikes[i].Frame == frame {
			return true
		}
	}
	return false
}

func (g *game) place(p [2]float32) any {
	return []any{float64(p[0]) / g.scale, float64(p[1]) / g.scale}
}

func degrees(radians float64) float64 { return radians * 57.29577951308232 }
