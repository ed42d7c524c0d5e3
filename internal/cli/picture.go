package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"wideberth/internal/picture"
	"wideberth/internal/solver/protocol"
)

// Widths of a picture, px.
const (
	defaultWidth = 960
	leastWidth   = 100
	mostWidth    = 6000
	mostRatio    = 4 // of height to width, or of width to height
)

// drawPicture draws a plan's answer into a file.
func drawPicture(_ context.Context, args []string, s streams) (int, error) {
	flags := newFlags("picture", "-o FILE.png|FILE.svg [-view VIEW] [-size WIDTH[xHEIGHT]] [-dark] [-player NAME] [-club NAME] [-tee NAME] PLAN.json", s)
	out := flags.String("o", "", "file to write: .png or .svg")
	view := flags.String("view", string(picture.Elevation), "plan, elevation, frames (the key frames of the swing) or all")
	size := flags.String("size", strconv.Itoa(defaultWidth), "width in pixels, or width and height as in 1200x630")
	dark := flags.Bool("dark", false, "by lamplight: light paper on a dark sheet")
	var focus protocol.Focus
	flags.StringVar(&focus.Player, "player", "", "whose swing; the worst when nobody is named")
	flags.StringVar(&focus.Club, "club", "", "with which club")
	flags.StringVar(&focus.Tee, "tee", "", "from which tee")
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	ext := strings.ToLower(filepath.Ext(*out))
	if ext != ".png" && ext != ".svg" {
		return 0, fmt.Errorf("name the picture with -o FILE.png or -o FILE.svg; got %q", *out)
	}
	if !slices.Contains(picture.Views, picture.View(*view)) {
		return 0, fmt.Errorf("%q is not a view; choose plan, elevation, frames or all", *view)
	}
	width, ratio, err := readSize(*size)
	if err != nil {
		return 0, err
	}
	if one := picture.View(*view); ratio > 0 && one != picture.Plan && one != picture.Elevation {
		return 0, fmt.Errorf("the view %s is as high as it needs: give -size a width alone", *view)
	}
	p, err := readPlan(flags.Args(), s.in)
	if err != nil {
		return 0, err
	}
	answer, err := picture.Ask(p, focus)
	if err != nil {
		return 0, err
	}
	sheet := picture.Draw(answer, picture.Options{View: picture.View(*view), Ratio: ratio, Dark: *dark})
	drawn := sheet.SVG()
	if ext == ".png" {
		var b bytes.Buffer
		if err := sheet.PNG(&b, float64(width)/sheet.Width); err != nil {
			return 0, err
		}
		drawn = b.Bytes()
	}
	return exitClear, os.WriteFile(*out, drawn, 0o644)
}

// readSize reads "960" or "1200x630": the width in pixels, and height over width, 0
// where no height is asked for.
func readSize(text string) (width int, ratio float64, err error) {
	w, h, both := strings.Cut(text, "x")
	wrong := fmt.Errorf("the size %q is not a width of %d to %d pixels, nor a width and a height as in 1200x630", text, leastWidth, mostWidth)
	if width, err = strconv.Atoi(w); err != nil || width < leastWidth || width > mostWidth {
		return 0, 0, wrong
	}
	if !both {
		return width, 0, nil
	}
	height, err := strconv.Atoi(h)
	if err != nil || height < leastWidth || height > mostWidth {
		return 0, 0, wrong
	}
	if ratio = float64(height) / float64(width); ratio > mostRatio || ratio < 1.0/mostRatio {
		return 0, 0, fmt.Errorf("the size %q is more than %d times as long one way as the other", text, mostRatio)
	}
	return width, ratio, nil
}
