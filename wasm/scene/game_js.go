package main

import (
	"image/color"
	"sync"

	"github.com/hajimehoshi/ebiten/v2"

	"wideberth/internal/render/scene/draw"
	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/playhead"
	"wideberth/internal/render/scene/wire"
)

// game is what the engine runs.
type game struct {
	mu    sync.Mutex
	inbox []message // guarded by mu
	spare []message

	recording *wire.Recording
	picture   *draw.Picture
	head      playhead.Head
	view
	dark   bool
	calm   bool // the visitor wants less motion
	noBall bool // the visitor has switched the ball off

	width, height, scale float64 // of the picture, device pixels; of a CSS pixel
	dirty                bool    // the picture on the screen is not the one wanted
	drawn                bool    // a picture was drawn
	ready                bool    // and the script knows
	news                 bool    // the script is to hear the state at once
	quiet                int     // ticks since it heard last
	slow                 int     // pictures in a row that came slowly while the swing moves

	orders []order            // pictures that were asked for
	ghost  bool               // the deciding swing is shown beside the typical one
	maps   [2][]draw.MapShape // of where to stand and of what may hang
	shade  *draw.Shade        // on the screen, if it is shown

	atlas    *ebiten.Image
	lettered float64 // the scale that the atlas was lettered for, 0: not at all
	vertices []ebiten.Vertex
}

func newGame() *game {
	g := &game{
		view:      view{preset: "behind"},
		recording: &wire.Recording{Rate: 240},
		dirty:     true,
		scale:     1,
	}
	g.picture = draw.New(g.recording)
	g.stand, _ = g.picture.Preset(g.preset)
	return g
}

// Ticks: the engine calls Update 60 times a second of real time.
const (
	tick       = 1.0 / 60 // s
	stateEvery = 6        // ticks between two states while the swing moves
)

// Update carries out what was asked.
func (g *game) Update() error {
	g.carryOut()
	if g.head.Tick() { // at rest: the picture may be smooth again, and the script hears where
		g.dirty, g.news = true, true
	}
	if g.step() {
		g.dirty = true
	}
	g.quiet++
	if g.drawn && !g.ready {
		g.ready = true
		tell("ready", nil)
	}
	// News waits for its picture, so that what the state says is on the screen.
	if g.ready && ((g.news && !g.dirty) || (g.head.Moving() && g.quiet >= stateEvery)) {
		g.tellState()
	}
	return nil
}

// Moving with smooth edges is given up when slowPictures in a row come at less
// than slowFPS; a picture at rest is always smooth.
const (
	slowFPS      = 40
	slowPictures = 10
	crawlFPS     = 15 // below it there is no waiting
)

// judgeSpeed counts the slow pictures. The engine's rate is 0 until it has
// counted for a second.
func (g *game) judgeSpeed() {
	switch fps := ebiten.ActualFPS(); {
	case !g.head.Moving() || fps == 0:
	case fps < crawlFPS:
		g.slow = slowPictures
	case fps < slowFPS:
		g.slow++
	case g.slow < slowPictures:
		g.slow = 0
	}
}

func (g *game) smooth() bool { return !g.head.Moving() || g.slow < slowPictures }

// Draw draws when there is something new; the engine keeps the last picture
// otherwise.
func (g *game) Draw(screen *ebiten.Image) {
	g.takePictures()
	if !g.dirty {
		return
	}
	g.dirty, g.drawn = false, true
	g.judgeSpeed()
	g.paint(screen, g.viewOf(g.width, g.height, g.scale), g.head.Frames(), g.smooth())
}

// paint draws the swing at a moment (frames) as it is seen in a view.
func (g *game) paint(on *ebiten.Image, v draw.View, frames float64, smooth bool) {
	if g.lettered != g.scale {
		g.letter()
	}
	c := paint.ThemeOf(g.dark).Ground
	on.Fill(color.RGBA{byte(c.R*255 + 0.5), byte(c.G*255 + 0.5), byte(c.B*255 + 0.5), 255})
	mesh := g.picture.Draw(v, frames)
	g.vertices = g.vertices[:0]
	for i := range mesh.Vertices {
		v := &mesh.Vertices[i]
		g.vertices = append(g.vertices, ebiten.Vertex{
			DstX: v.X, DstY: v.Y, SrcX: v.U, SrcY: v.V,
			ColorR: v.R, ColorG: v.G, ColorB: v.B, ColorA: v.A,
		})
	}
	on.DrawTriangles(g.vertices, mesh.Indices, g.atlas, &ebiten.DrawTrianglesOptions{
		ColorScaleMode: ebiten.ColorScaleModePremultipliedAlpha,
		Filter:         ebiten.FilterLinear,
		AntiAlias:      smooth,
	})
}

// Layout is only there for the interface; the engine prefers LayoutF.
func (g *game) Layout(w, h int) (int, int) { return w, h }

// LayoutF draws at the device's own resolution.
func (g *game) LayoutF(w, h float64) (float64, float64) {
	scale := ebiten.Monitor().DeviceScaleFactor()
	w, h = max(1, w*scale), max(1, h*scale)
	if w != g.width || h != g.height || scale != g.scale {
		g.width, g.height, g.scale = w, h, scale
		g.dirty = true
	}
	return w, h
}
