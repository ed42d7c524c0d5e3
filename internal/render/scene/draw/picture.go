// Package draw turns a recording into triangles: the room as a paper model with
// its hidden edges dashed, the golfer as a jointed mannequin, the clubhead's
// path as a ribbon with ticks, the strike marks and the tape. It knows nothing
// of the engine that puts the triangles on the screen and nothing of the
// physics behind the recording.
package draw

import (
	"math"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

// Picture draws one recording. It keeps every slice it fills, so that drawing a
// frame allocates nothing; it is not safe for concurrent use.
type Picture struct {
	recording *wire.Recording
	canvas    canvas
	corners   []vec // what must fit the picture
	view      View  // that the room was last prepared for

	room   *room
	figure figure
	ribbon ribbon
	ball   ball
	marks  marks
	tape   tape
	maps   maps
	shade  *Shade
	scale  yardstick
	shift  vec // of the golfer over the floor, m
}

// View is the picture wanted: its size in device pixels, how many of these make
// a CSS pixel, from where it is seen, and the theme.
type View struct {
	Width, Height, Scale float32
	Stand
	Dark bool
	// From is where the viewer comes from and Left how much of the way is still before
	// them, 1 to 0.
	From Stand
	Left float32
}

// New prepares a recording for drawing.
func New(s *wire.Recording) *Picture {
	p := &Picture{
		recording: s, canvas: canvas{texts: map[string]Glyphs{}},
		figure: newFigure(s), ball: newBall(s), marks: newMarks(s), tape: newTape(s),
	}
	p.ribbon = newRibbon(s, &p.figure)
	p.room = newRoom(s, p.figure.middle(s))
	p.scale = newYardstick(s, p.room, p.figure.leftHanded(s))
	for _, f := range p.room.shell {
		p.corners = append(p.corners, p.room.faces[f].polygon...)
	}
	if len(p.corners) == 0 {
		p.corners = []vec{{}, p.room.size}
	}
	for i := 0; i < len(p.ribbon.points); i += reachStep {
		p.corners = append(p.corners, p.ribbon.points[i].at)
	}
	if p.tape.shown() {
		p.corners = append(p.corners, p.tape.from, p.tape.to)
	}
	return p
}

// reachStep is the stride through the ribbon's points by which the picture is
// made to hold a club that goes out of the room.
const reachStep = 8

// Texts lists what the picture letters, each once.
func (p *Picture) Texts() []Text {
	seen := map[string]bool{"": true}
	var texts []Text
	add := func(s string, bold bool, most float32) {
		if !seen[s] {
			seen[s] = true
			texts = append(texts, Text{s, bold, most})
		}
	}
	if p.tape.shown() {
		add(p.tape.reading, true, mostLine)
		add(p.tape.words, false, mostLine)
	}
	add(p.scale.doorWords, false, mostName)
	add(p.scale.stickWords, false, mostName)
	for _, f := range p.recording.Faces {
		add(f.Name, false, mostName)
	}
	for _, r := range p.recording.Flight.Fan {
		add(r.Label, false, mostName)
	}
	return texts
}

// SetGlyphs tells where a text of Texts lies in the atlas.
func (p *Picture) SetGlyphs(text string, g Glyphs) {
	p.canvas.texts[text] = g
	p.view = View{}
}

// ShowBall says whether the ball's flight and its fan are drawn; they are to
// begin with.
func (p *Picture) ShowBall(on bool) {
	p.ball.grounded = !on
	p.view = View{}
}

// ShowGhost says whether the typical swing is drawn solid with the deciding one as a pale
// outline behind it. To begin with, and in a recording without a typical swing, the
// deciding one is drawn solid, which is whose strikes, tape and ribbon are shown.
func (p *Picture) ShowGhost(on bool) { p.figure.ghost = on }

// Shift moves the golfer over the floor, m, as somebody moves the tee. Nothing is
// known of the swing there yet: what the clubhead leaves behind it, what it strikes,
// the tape and the ball are not drawn until Shift(0, 0).
func (p *Picture) Shift(dx, dy float32) { p.shift = xyz(dx, dy, 0) }

// BallShown reports whether the recording has a flight and it is drawn.
func (p *Picture) BallShown() bool { return p.ball.flies() }

// Draw makes the picture of the play-head, in frames; a fraction is in between
// two frames. The mesh is the picture's own and stays valid until the next Draw.
func (p *Picture) Draw(v View, playHead float64) *paint.Mesh {
	at := momentAt(p.recording, playHead)
	at.shift = p.shift
	p.prepare(v)
	p.drawFrame(at)
	if at.shift == (vec{}) {
		p.drawOverlay(at)
	}
	return &p.canvas.Mesh
}

// prepare draws what only depends on the viewpoint, unless that has not moved:
// the table, the room and the fan, and where the tape and its plate will lie.
func (p *Picture) prepare(v View) {
	v.Stand, v.From = v.Stand.Clamped(), v.From.Clamped()
	if v == p.view && v.Width != 0 {
		return
	}
	p.view = v
	c := &p.canvas
	c.start(v, p.cameraOf(v), p.corners)
	golfer, head := p.figure.extent(c, p.recording)
	c.golfer, c.golferDepth = golfer, c.cam.depth(p.room.golfer)
	p.tape.place(c, obstacles{golfer: golfer, head: head, marks: p.marks.spots(c)})
	p.ball.placeFan(c)
	p.scale.place(c)
	drawTable(c)
	p.room.draw(c)
	p.maps.draw(c, p.room)
	p.scale.draw(c)
	p.ball.drawFan(c)
	c.Keep()
}

// drawFrame draws what the play-head moves, in depth among what is prepared:
// golfer, club and ball, what they leave behind them and what they strike.
func (p *Picture) drawFrame(at moment) {
	c := &p.canvas
	c.Rewind()
	defer c.Flush()
	if len(p.recording.Frames) == 0 {
		return
	}
	p.figure.pose(p.recording, at)
	p.figure.shape(p.recording, at)
	p.figure.drawShadow(c, p.room)
	if at.shift != (vec{}) {
		p.figure.draw(c, p.room, p.recording)
		p.tape.drawn, p.marks.shown = false, p.marks.shown[:0]
		return
	}
	p.shade.draw(c, at.time)
	p.ball.move(at)
	p.ball.drawShadow(c, p.room)
	p.figure.drawFeet(c, p.room)
	p.figure.draw(c, p.room, p.recording)
	p.ribbon.draw(c, &p.figure, at)
	p.ball.draw(c, p.room)
	p.ball.drawFlight(c, at)
	p.marks.draw(c, at)
}

// drawOverlay draws what lies over the picture: the lettering of the fan, and
// the tape with its plate.
func (p *Picture) drawOverlay(at moment) {
	p.ball.letterFan(&p.canvas)
	p.tape.draw(&p.canvas, at)
}

// moment is where a play-head stands.
type moment struct {
	frames float64 // from the start
	frame  int     // the frame at or just before
	time   float64 // s into the swing
	shift  vec     // of the golfer over the floor, m
}

// momentAt keeps a play-head in frames inside the recording.
func momentAt(s *wire.Recording, playHead float64) moment {
	if !(playHead > 0) {
		playHead = 0
	}
	m := moment{frames: min(playHead, float64(max(0, len(s.Frames)-1)))}
	m.frame = int(m.frames)
	if s.Rate > 0 {
		m.time = m.frames / float64(s.Rate)
	}
	return m
}

// ruleGap is the distance of the lines ruled on the table, CSS pixels.
const ruleGap = 32

// drawTable rules the drafting table behind the model.
func drawTable(c *canvas) {
	gap := ruleGap * c.scale
	x0, y0 := float32(math.Mod(float64(c.width/2), float64(gap))), float32(math.Mod(float64(c.height/2), float64(gap)))
	for x := x0; x < c.width; x += gap {
		c.line(point{x, 0}, point{x, c.height}, c.scale, c.theme.Rule)
	}
	for y := y0; y < c.height; y += gap {
		c.line(point{0, y}, point{c.width, y}, c.scale, c.theme.Rule)
	}
}

// Probe says where things ended up in the last picture, device pixels.
type Probe struct {
	Marks [][2]float32 // the strike marks that are shown and not under tape or plate
	Tape  [2]float32   // a bare spot of the blade; negative: no whole blade is shown
	Head  [2]float32   // the clubhead's middle
}

// Probe reports on the last picture.
func (p *Picture) Probe() Probe {
	out := Probe{Tape: [2]float32{-1, -1}}
	if p.tape.drawn && !p.tape.frayed() {
		out.Tape = [2]float32{p.tape.bare.x, p.tape.bare.y}
	}
	if at, ok := p.figure.clubhead(); ok {
		x, y, _ := p.canvas.cam.project(at)
		out.Head = [2]float32{x, y}
	}
	for _, m := range p.marks.shown {
		if !p.tape.covers(m) {
			out.Marks = append(out.Marks, [2]float32{m.x, m.y})
		}
	}
	return out
}
