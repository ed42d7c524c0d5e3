package main

import (
	"math"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

// order is a picture that the script wants to have.
type order struct {
	time          float64 // s into the swing; not a number: as it is now
	width, height float64 // pixels; not numbers: those of the canvas, at twice its CSS size at least
}

// mostPixels bounds a side of a picture.
const mostPixels = 4096

// takePictures draws the pictures that were asked for and hands each to the script as
//
//	{type:"picture", t, width, height, pixels:Uint8Array}
//
// four bytes a pixel, which the script makes into a file. The view is where it is
// going, not where it is on the way.
func (g *game) takePictures() {
	for _, o := range g.orders {
		width, height, scale := o.width, o.height, 1.0
		if !(width >= 1) || !(height >= 1) {
			scale = max(2, g.scale)
			width, height = g.width/g.scale*scale, g.height/g.scale*scale
		}
		width, height = math.Round(min(width, mostPixels)), math.Round(min(height, mostPixels))
		frames, t := g.head.Frames(), g.head.Time()
		if o.time >= 0 {
			t = min(o.time, g.head.Duration())
			frames = t * float64(g.recording.Rate)
		}
		v := g.viewOf(width, height, scale)
		v.Left = 0
		on := ebiten.NewImage(int(width), int(height))
		g.paint(on, v, frames, true)
		pixels := make([]byte, 4*int(width)*int(height))
		on.ReadPixels(pixels)
		on.Deallocate()
		bytes := js.Global().Get("Uint8Array").New(len(pixels))
		js.CopyBytesToJS(bytes, pixels)
		tell("picture", map[string]any{"t": t, "width": width, "height": height, "pixels": bytes})
		g.dirty = true // the canvas's own view is prepared again
	}
	g.orders = g.orders[:0]
}
