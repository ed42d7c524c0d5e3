package draw

import (
	"math"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/rules"
)

// Scene draws one show. It keeps its buffers; it is not safe for concurrent use.
type Scene struct {
	painter
	show   *wire.Recording
	model  *model
	ribbon ribbon
	marks  []mark
	meshes meshes
	texts  map[string]Glyphs
	words  string // second line of the tape's plate
	// noFlight leaves the ball's flight out.
	noFlight bool

	// What the show fixes.
	room, pivot, ball   vec
	floor               float32 // height of the standing surface, m
	feet                []foot
	corners             []vec // what must fit the picture
	materials           []material
	headPart, shaftPart int
	impact              int // first frame of impact, -1: none

	// The picture that is being drawn.
	cam                 camera
	pal                 *palette
	width, height       float32
	scale               float32 // device pixels in a CSS pixel
	pen                 float32 // device pixels in a unit of line width
	frame               int
	playHead            float64 // frames
	pose                []segment
	figureLo, figureHi  point   // where the golfer is at the tape's moment
	markPixels          []point // of the marks up to the play-head
	markSpots           []point // of all marks
	tapePixel, headSpot point
	blade               [4]point // what the tape covers
	plate               [2]point // two corners

	// What is kept from frame to frame while the viewpoint stays.
	kept         View
	keptVertices int
	keptIndices  int
	keptQueue    []triangle

	// Scratch.
	depths           []float32
	hidden, dashes   []span
	outline, clipped []vec
	angles           []point
}

// View is the picture wanted: its size in device pixels, how many of these make
// a CSS pixel, from where it is seen, and the theme.
type View struct {
	Width, Height, Scale float32
	Orbit                Orbit
	Dark                 bool
}

// New prepares a show for drawing.
func New(s *wire.Recording) *Scene {
	sc := &Scene{show: s, meshes: newMeshes(), texts: map[string]Glyphs{}}
	_, sc.words = PlateWords(&s.Tightest)
	sc.room, sc.ball = fromShow(s.Room), fromShow(s.Ball)
	sc.floor = sc.ball.z - rules.BallRadius
	sc.feet = findFeet(s)
	stand := sc.ball
	for _, f := range sc.feet {
		stand = stand.add(f.a.lerp(f.b, 0.5).sub(sc.ball).mul(0.5 / float32(len(sc.feet))))
	}
	sc.pivot = vec{stand.x, stand.y, sc.floor + 1.0}
	for _, f := range s.Faces {
		if f.Kind.Shell() {
			for _, p := range f.Polygon {
				sc.corners = append(sc.corners, fromShow(p))
			}
		}
	}
	if len(sc.corners) == 0 {
		sc.corners = []vec{{}, sc.room}
	}
	sc.ribbon, sc.marks = newRibbon(s), newMarks(s)
	for i := 0; i < len(sc.ribbon.points); i += reachStep {
		sc.corners = append(sc.corners, sc.ribbon.points[i].at)
	}
	if s.Tightest.Label != "" {
		sc.corners = append(sc.corners, fromShow(s.Tightest.From), fromShow(s.Tightest.To))
	}
	lamp := sc.pivot
	lamp.z = sc.floor + 0.95*sc.room.z
	sc.model = newModel(s, lamp)
	for _, p := range s.Parts {
		sc.materials = append(sc.materials, materials[p.Name])
	}
	sc.pose = make([]segment, len(s.Parts))
	sc.headPart, sc.shaftPart = s.PartIndex("clubhead"), s.PartIndex("shaft")
	sc.impact = -1
	for i, f := range s.Frames {
		if int(f.Phase) < len(s.Phases) && s.Phases[f.Phase] == "impact" {
			sc.impact = i
			break
		}
	}
	return sc
}

// reachStep is the stride through the ribbon's points by which the picture is
// made to hold a club that goes out of the room.
const reachStep = 8

// Preset is the orbit of a named view of this show's golfer; see Preset.
func (sc *Scene) Preset(name string) (Orbit, bool) { return Preset(name, sc.leftHanded()) }

// Texts lists what the scene letters, each once.
func (sc *Scene) Texts() []Text {
	seen := map[string]bool{"": true}
	var texts []Text
	add := func(s string, bold bool) {
		if !seen[s] {
			seen[s] = true
			texts = append(texts, Text{s, bold})
		}
	}
	add(sc.show.Tightest.Label, true)
	if sc.show.Tightest.Label != "" {
		add(sc.words, false)
	}
	for _, f := range sc.show.Faces {
		add(f.Name, false)
	}
	for _, r := range sc.show.Flight.Fan {
		add(r.Label, false)
	}
	return texts
}

// SetGlyphs tells where a text of Texts lies in the atlas.
func (sc *Scene) SetGlyphs(text string, g Glyphs) {
	sc.texts[text] = g
	sc.kept = View{}
}

func (sc *Scene) glyphs(s string) Glyphs { return sc.texts[s] }

// Draw makes the picture of the play-head, in frames; a fraction is in between
// two frames. The mesh is the scene's own and stays valid until the next Draw.
func (sc *Scene) Draw(v View, playHead float64) *Mesh {
	if !(playHead > 0) {
		playHead = 0
	}
	playHead = min(playHead, float64(max(0, len(sc.show.Frames)-1)))
	sc.frame, sc.playHead = int(playHead), playHead
	v.Orbit = v.Orbit.Clamped()
	if v != sc.kept || v.Width == 0 {
		sc.look3D(v)
	}
	sc.Vertices, sc.Indices = sc.Vertices[:sc.keptVertices], sc.Indices[:sc.keptIndices]
	sc.queue = append(sc.queue[:0], sc.keptQueue...)
	if len(sc.show.Frames) > 0 {
		sc.findPose(playHead)
		sc.moveBall()
		sc.drawShadows()
		sc.drawFeet()
		sc.drawFigure()
		sc.drawRibbon(float32(playHead))
		sc.drawBall()
		sc.drawFlight()
	}
	sc.drawMarks()
	sc.flush()
	sc.drawAngles()
	sc.drawTape()
	if sc.headPart >= 0 && len(sc.show.Frames) > 0 {
		seg := sc.pose[sc.headPart]
		x, y, _ := sc.cam.project(seg.a.lerp(seg.b, 0.5))
		sc.headSpot = point{x, y}
	}
	return &sc.Mesh
}

// penFullAt is the width of a picture, CSS pixels, from which lines have their
// full width.
const penFullAt = 720

// look3D sets the viewpoint and draws what only depends on it.
func (sc *Scene) look3D(v View) {
	sc.kept = v
	sc.width, sc.height, sc.scale = v.Width, v.Height, max(0.5, v.Scale)
	sc.pen = sc.scale * max(0.7, min(v.Width/sc.scale/penFullAt, 1))
	sc.pal = &day
	if v.Dark {
		sc.pal = &night
	}
	sc.cam = newCamera(v.Orbit, sc.pivot, sc.corners, v.Width, v.Height)
	near, far := float32(math.Inf(1)), float32(0)
	for _, c := range sc.corners {
		d := sc.cam.depth(c)
		near, far = min(near, d), max(far, d)
	}
	sc.reset(near-1, far+1)
	sc.drawTable()
	sc.drawRoom()
	sc.keptVertices, sc.keptIndices = len(sc.Vertices), len(sc.Indices)
	sc.keptQueue = append(sc.keptQueue[:0], sc.queue...)
	sc.findFigure()
}

// Background is the colour of the table under a theme, to clear the picture with.
func Background(dark bool) Colour {
	if dark {
		return night.ground
	}
	return day.ground
}

// ruleGap is the distance of the lines ruled on the table, CSS pixels.
const ruleGap = 32

// drawTable rules the drafting table behind the model.
func (sc *Scene) drawTable() {
	gap := ruleGap * sc.scale
	x0, y0 := float32(math.Mod(float64(sc.width/2), float64(gap))), float32(math.Mod(float64(sc.height/2), float64(gap)))
	for x := x0; x < sc.width && gap > 4; x += gap {
		sc.line(point{x, 0}, point{x, sc.height}, sc.scale, sc.pal.rule)
	}
	for y := y0; y < sc.height && gap > 4; y += gap {
		sc.line(point{0, y}, point{sc.width, y}, sc.scale, sc.pal.rule)
	}
}

// findFigure is where the golfer stands in the picture at the tape's moment and
// where the strike marks are, for the plate to keep clear of.
func (sc *Scene) findFigure() {
	sc.markSpots = sc.markSpots[:0]
	for i := range sc.marks {
		x, y, _ := sc.cam.project(sc.marks[i].at)
		sc.markSpots = append(sc.markSpots, point{x, y})
	}
	sc.figureLo, sc.figureHi = point{}, point{}
	if len(sc.show.Frames) == 0 {
		return
	}
	f := &sc.show.Frames[sc.show.FrameAt(float64(sc.show.Tightest.Time))]
	first := true
	for i, seg := range f.Pose {
		if m := sc.materials[i]; m == shaft || m == clubhead || m == grip {
			continue
		}
		for _, p := range [2]vec{fromShow(seg.A), fromShow(seg.B)} {
			x, y, d := sc.cam.project(p)
			if d < nearPlane {
				continue
			}
			r := sc.show.Parts[i].Radius * sc.cam.pixels(p)
			if first {
				sc.figureLo, sc.figureHi = point{x, y}, point{x, y}
				first = false
			}
			sc.figureLo = point{min(sc.figureLo.x, x-r), min(sc.figureLo.y, y-r)}
			sc.figureHi = point{max(sc.figureHi.x, x+r), max(sc.figureHi.y, y+r)}
		}
	}
}

// Probe says where things ended up in the last picture, device pixels.
type Probe struct {
	Marks [][2]float32 // the strike marks that are shown and not under tape or plate
	Tape  [2]float32   // a bare spot of the blade; negative: no tape is shown
	Head  [2]float32   // the clubhead's middle
}

// Probe reports on the last picture.
func (sc *Scene) Probe() Probe {
	p := Probe{Tape: [2]float32{sc.tapePixel.x, sc.tapePixel.y}, Head: [2]float32{sc.headSpot.x, sc.headSpot.y}}
	for _, m := range sc.markPixels {
		if sc.underTape(m) {
			continue
		}
		p.Marks = append(p.Marks, [2]float32{m.x, m.y})
	}
	return p
}

// turn is the direction a share of a full turn from (1, 0).
func turn(share float64) point {
	s, c := math.Sincos(2 * math.Pi * share)
	return point{float32(c), float32(s)}
}
