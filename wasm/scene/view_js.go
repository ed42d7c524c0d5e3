package main

import (
	"math"

	"wideberth/internal/render/scene/draw"
)

// view is from where the room is seen.
type view struct {
	stand  draw.Stand
	preset string     // the named view we are in; "" once it was turned by hand
	from   draw.Stand // where we come from
	glide  int        // ticks left of the way
}

// glideTicks is how long the way to a named view takes: 0.4 s.
const glideTicks = 24

// now is where the viewer stands on the way.
func (v *view) now() draw.Stand {
	if v.glide == 0 {
		return v.stand
	}
	return draw.Between(v.from, v.stand, v.come())
}

// come is how much of the way is behind us.
func (v *view) come() float64 { return draw.Eased(1 - float64(v.glide)/glideTicks) }

// step goes on for a tick and reports whether it moved.
func (v *view) step() bool {
	if v.glide == 0 {
		return false
	}
	v.glide--
	return true
}

// turnTo goes to a named view, gliding unless less motion is wanted.
func (g *game) turnTo(name string) {
	goal, ok := g.picture.Preset(name)
	if !ok {
		return
	}
	g.from, g.stand, g.preset, g.glide = g.now(), goal, name, glideTicks
	if g.calm {
		g.glide = 0
	}
}

// turn turns the view by degrees, zoom and pan change it by hand.
func (g *game) turn(yaw, pitch float64) {
	if !math.IsNaN(yaw + pitch) {
		g.stand, g.preset, g.glide = g.now().Turned(yaw*math.Pi/180, pitch*math.Pi/180), "", 0
	}
}

func (g *game) zoom(factor float64) {
	if factor > 0 {
		g.stand, g.glide = g.now(), 0
		g.stand.Orbit.Zoom *= factor
		g.stand = g.stand.Clamped()
	}
}

// pan shifts the picture by CSS pixels to the right and down.
func (g *game) pan(dx, dy float64) {
	if !math.IsNaN(dx + dy) {
		side := min(g.width, g.height) / g.scale
		g.stand, g.preset, g.glide = g.now().Panned(dx/side, dy/side), "", 0
	}
}

// viewOf is the view for a picture of a size in pixels, of which scale make a CSS pixel.
func (g *game) viewOf(width, height, scale float64) draw.View {
	return draw.View{
		Width: float32(width), Height: float32(height), Scale: float32(scale), Dark: g.dark,
		Stand: g.stand, From: g.from, Left: float32(1 - g.come()),
	}
}
