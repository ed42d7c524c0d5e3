//go:build browser

package browsertest

import (
	"bytes"
	"image"
	"image/color"
	"image/png"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// picture is the viewport as it is drawn now.
func (tb *tab) picture() (image.Image, []byte) {
	tb.t.Helper()
	shot, err := chromedp.Call(tb.ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{OptimizeForSpeed: new(*shots == "")})
	if err != nil {
		tb.t.Fatalf("taking a screenshot: %v", err)
	}
	img, err := png.Decode(bytes.NewReader(shot.Data))
	if err != nil {
		tb.t.Fatal(err)
	}
	return img, shot.Data
}

// rect is where an element lies in the viewport, whole pixels.
func (tb *tab) rect(selector string) image.Rectangle {
	tb.t.Helper()
	r := tb.rectOf(selector)
	return image.Rect(int(r[0]), int(r[1]), int(r[2]), int(r[3]))
}

// count is how many pixels of the part lie within tol of the colour in each
// channel.
func count(img image.Image, part image.Rectangle, c color.RGBA, tol int) int {
	n := 0
	part = part.Intersect(img.Bounds())
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			r, g, b, _ := img.At(x, y).RGBA()
			if near(r, c.R, tol) && near(g, c.G, tol) && near(b, c.B, tol) {
				n++
			}
		}
	}
	return n
}

func near(got uint32, want uint8, tol int) bool {
	d := int(got>>8) - int(want)
	return d <= tol && d >= -tol
}

// colours is how many different colours the part has on a grid of every fourth
// pixel: a blank canvas has one.
func colours(img image.Image, part image.Rectangle) int {
	seen := map[color.Color]bool{}
	part = part.Intersect(img.Bounds())
	for y := part.Min.Y; y < part.Max.Y; y += 4 {
		for x := part.Min.X; x < part.Max.X; x += 4 {
			seen[img.At(x, y)] = true
		}
	}
	return len(seen)
}
