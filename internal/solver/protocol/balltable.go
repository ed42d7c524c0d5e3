package protocol

import (
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/solver/words"
)

// row is a line of the table of all players, clubs and tees.
func (b *balls) row(o ball.Outcome) ballRow {
	r := ballRow{
		Player: o.Player, Club: o.Club, Tee: o.Tee,
		Leaves: fmt.Sprintf("%s, %.1f°", b.SpeedUp(o.Launch.Speed), o.Launch.Launch),
		First:  words.UpperFirst(o.Struck.Contact.Surface), Caught: words.ShareDown(o.Caught.Share),
	}
	if o.Caught.Share == 1 {
		r.Caught = "all " + words.Thousands(o.Balls)
	}
	switch c := o.Struck.Contact; {
	case c.Kind == ball.KindNone:
		r.First = "Nothing"
	case c.Kind == ball.KindGap:
		r.First = words.UpperFirst(passing(c.Beside)) + " the screen"
	case c.Kind != ball.KindScreen && c.Short > 0 && b.plan.Screen != nil:
		r.First += "," + b.before(c.Short)
	default:
		r.Good = c.Kind == ball.KindScreen && c.Caught
	}
	for _, s := range o.Shares {
		if isCaught(s) || s.Kind == ball.KindNone {
			continue
		}
		r.Else = words.UpperFirst(s.Surface)
		if s.Kind == ball.KindGap {
			r.Else = words.UpperFirst(passing(s.Beside)) + " the screen"
		}
		r.Else += ", " + lowerFirst(oneIn(s.Share, false))
		break
	}
	return r
}

// mishit says where a named mishit goes and how it comes back.
func (b *balls) mishit(m ball.MissOut) ballMishit {
	out := ballMishit{Name: words.UpperFirst(m.Name), Goes: words.UpperFirst(b.meeting(m.Contact)) + "."}
	if m.Contact.Kind == ball.KindNone {
		return out
	}
	out.Back = words.UpperFirst(b.back(m.Back, "may come back")) + "."
	if m.Padded != nil && calmer(*m.Padded, m.Back) {
		out.Back += " With a foam pad there it " + b.back(*m.Padded, "may come back") + "."
	}
	return out
}

// ballRebound is how the well-struck ball would come back off one thing.
type ballRebound struct {
	Off    string `json:"off"`
	Met    bool   `json:"met"` // this is what the ball does meet
	Low    string `json:"low"`
	Likely string `json:"likely"`
	High   string `json:"high"`
}

// rebounds compares what the well-struck ball may meet where it meets the
// first: the same arrival on cloth, frame, foam and a bare wall.
func (b *balls) rebounds(o ball.Outcome) []ballRebound {
	c := o.Struck.Contact
	if c.Kind == ball.KindNone {
		return []ballRebound{}
	}
	kinds := []struct {
		of  ball.Material
		off string
	}{
		{ball.Cloth, "Impact screen, hung free"},
		{ball.Foam, "Foam pad over something hard"},
		{ball.Steel, "Tube of the frame, struck square"},
		{ball.Hard, "Bare wall: block, boards, concrete"},
	}
	out := make([]ballRebound, 0, len(kinds))
	for _, k := range kinds {
		at := c
		at.Material = k.of
		way := func(g ball.Give) string { return b.way(b.scene.Back(at, b.who.tee, g)) }
		out = append(out, ballRebound{k.off, k.of == c.Material, way(ball.Low), way(ball.Likely), way(ball.High)})
	}
	return out
}

// way is back, for a table.
func (b *balls) way(r ball.Return) string {
	switch {
	case r.Reaches:
		return fmt.Sprintf("%s at the golfer, about %s up", b.SpeedUp(r.Speed), b.Rough(r.Height))
	case r.Nearest <= 0:
		return "rests at the golfer's feet"
	}
	return "rests " + b.Down(r.Nearest) + " short"
}

// pad says what to cover and why.
func (b *balls) pad(p ball.Pad) string {
	text := "Pad this: " + words.Surface(p.Surface) + b.patch(p) + ". "
	switch {
	case p.Share > 0 && len(p.Mishits) > 0:
		text += fmt.Sprintf("Met by %s of somebody's ordinary shots, and by these mishits: %s", lowerFirst(oneIn(p.Share, false)), words.List(p.Mishits))
	case p.Share > 0:
		text += fmt.Sprintf("Met by %s of somebody's ordinary shots", lowerFirst(oneIn(p.Share, false)))
	default:
		text += "Met by these mishits: " + words.List(p.Mishits)
	}
	text += ", at up to " + b.SpeedUp(p.Fastest)
	if p.Bare.Reaches {
		text += fmt.Sprintf(". Bare, it may send one back past the golfer at up to %s", b.SpeedUp(p.Bare.Speed))
		if p.Padded != nil {
			switch {
			case !p.Padded.Reaches:
				text += "; with foam it stops short"
			case calmer(*p.Padded, p.Bare):
				text += fmt.Sprintf("; with foam, %s", b.SpeedUp(p.Padded.Speed))
			default:
				text += fmt.Sprintf("; with foam it takes another way, at up to %s", b.SpeedUp(p.Padded.Speed))
			}
		}
	}
	return text + "."
}

// calmer reports whether a return is less of a threat than another.
func calmer(a, b ball.Return) bool {
	return b.Reaches && (!a.Reaches || a.Speed < b.Speed)
}

// patch says where on a surface balls land, along its own axes, rounded so that
// the pad is not too small.
func (b *balls) patch(p ball.Pad) string {
	span := func(axis int, from string) string {
		return fmt.Sprintf("%s to %s %s", b.SizeDown(p.From[axis]), b.SizeUp(p.To[axis]), from)
	}
	const fromBack, fromRight, high = "from the back wall", "from the right wall", "above the bare floor"
	spans := map[int]string{0: span(0, fromBack), 1: span(1, fromRight), 2: span(2, high)}
	switch {
	case p.Kind == ball.KindCeiling:
		delete(spans, 2)
	case p.Surface == "left wall" || p.Surface == "right wall":
		delete(spans, 1)
	case p.Surface == "front wall" || p.Surface == "back wall":
		delete(spans, 0)
	}
	var parts []string
	for axis := range 3 {
		if s, ok := spans[axis]; ok {
			parts = append(parts, s)
		}
	}
	return ", " + words.List(parts)
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }
