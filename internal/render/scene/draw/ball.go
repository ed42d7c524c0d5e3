package draw

import (
	"wideberth/internal/render/scene/shape"
	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/rules"
)

// ball is the ball, on its tee or on its way.
type ball struct {
	recording *wire.Recording
	flight    *wire.Flight
	impact    int  // first frame of impact, -1: none
	grounded  bool // its flight is not drawn
	solid     shape.Solid

	at     vec // where it is
	gone   bool
	angles []lettering // of the fan, where they are lettered
}

func newBall(s *wire.Recording) ball {
	b := ball{recording: s, flight: &s.Flight, impact: -1, solid: shape.Solid{Section: shape.Oval(10)}}
	for i, f := range s.Frames {
		if int(f.Phase) < len(s.Phases) && s.Phases[f.Phase] == "impact" {
			b.impact = i
			break
		}
	}
	return b
}

// flies reports whether there is a flight and it is drawn.
func (b *ball) flies() bool { return !b.grounded && len(b.flight.Trail) > 0 }

// move puts the ball where it is at a moment. Without a flight it is on its tee
// until it is struck.
func (b *ball) move(at moment) {
	b.at, b.gone = fromWire(b.recording.Ball), b.impact >= 0 && at.frame >= b.impact
	if b.flies() {
		b.at, b.gone = fromWire(b.recording.BallAt(at.time)), false
	}
}

// leastBall is the least width at which the ball is drawn, CSS pixels.
const leastBall = 5

// draw queues the ball.
func (b *ball) draw(c *canvas, m *room) {
	if b.gone {
		return
	}
	tones := tonesOf(c.theme)
	b.solid.Ball(b.at, max(rules.BallRadius, leastBall/2*c.scale/c.cam.pixels(b.at)), shape.White)
	c.drawSolid(m, &b.solid, &solidLook{tones: &tones, outline: c.theme.Outline, width: c.pen})
}

// drawShadow lays the ball's shadow on the floor.
func (b *ball) drawShadow(c *canvas, m *room) {
	if !b.gone {
		m.drawShadow(c, b.at, b.at, rules.BallRadius)
	}
}
