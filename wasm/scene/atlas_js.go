package main

import (
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"

	"wideberth/internal/render/scene/draw"
	"wideberth/internal/render/scene/paint"
)

// textPixels is the height of a line of text in the atlas, CSS pixels: that of
// the largest lettering in the picture.
const textPixels = 30

// letter has the script draw the recording's texts with the browser's own fonts,
// once for each recording and scale. That costs the program no font and no font
// code, and it can write whatever a plan is named.
//
// wideBerthGlyphs(texts, pixels) takes a list of [string, bold, most], the widest it may
// be in its heights, and answers
// {width, height, alpha, places}: the coverage of every pixel as a Uint8Array,
// and a Float64Array of left, top, width and height for each text. The square
// of paint.WhitePatch pixels at the top left must be covered.
func (g *game) letter() {
	g.lettered = g.scale
	texts := g.picture.Texts()
	list := make([]any, len(texts))
	for i, t := range texts {
		list[i] = []any{t.String, t.Bold, t.Most}
	}
	drawGlyphs := js.Global().Get("wideBerthGlyphs")
	if drawGlyphs.Type() != js.TypeFunction {
		g.setAtlas(paint.WhitePatch, paint.WhitePatch, nil)
		return
	}
	answer := drawGlyphs.Invoke(list, textPixels*g.scale)
	w, h := answer.Get("width").Int(), answer.Get("height").Int()
	alpha := make([]byte, w*h)
	js.CopyBytesToGo(alpha, answer.Get("alpha"))
	g.setAtlas(w, h, alpha)
	places := answer.Get("places")
	for i, t := range texts {
		at := func(k int) float32 { return float32(places.Index(4*i + k).Float()) }
		g.picture.SetGlyphs(t.String, draw.Glyphs{U: at(0), V: at(1), Width: at(2), Height: at(3)})
	}
}

// setAtlas makes the atlas of coverage; nil is all covered.
func (g *game) setAtlas(w, h int, alpha []byte) {
	pixels := make([]byte, 4*w*h)
	for i := range w * h {
		a := byte(255)
		if alpha != nil {
			a = alpha[i]
		}
		pixels[4*i], pixels[4*i+1], pixels[4*i+2], pixels[4*i+3] = a, a, a, a
	}
	if g.atlas != nil {
		g.atlas.Deallocate()
	}
	g.atlas = ebiten.NewImage(w, h)
	g.atlas.WritePixels(pixels)
}
