package picture

import (
	"wideberth/internal/picture/sheet"
	"wideberth/internal/sim/fit"
)

// signs are the shapes of the verdicts on a square of 32, those of the page: a colour
// is never the only sign.
var signs = map[fit.Verdict][][]sheet.Point{
	fit.Strikes: {star(sheet.Point{16, 16}, 15)},
	fit.Tight: {
		{{14.5, 3}, {17.5, 3}, {17.5, 29}, {14.5, 29}},
		{{1, 14.5}, {6.5, 14.5}, {6.5, 10}, {13, 16}, {6.5, 22}, {6.5, 17.5}, {1, 17.5}},
		{{31, 14.5}, {31, 17.5}, {25.5, 17.5}, {25.5, 22}, {19, 16}, {25.5, 10}, {25.5, 14.5}},
	},
	fit.Clear: {
		{{2, 4}, {5, 4}, {5, 28}, {2, 28}},
		{{27, 4}, {30, 4}, {30, 28}, {27, 28}},
		{{6.5, 16}, {12.5, 10.5}, {12.5, 14.5}, {19.5, 14.5}, {19.5, 10.5}, {25.5, 16}, {19.5, 21.5}, {19.5, 17.5}, {12.5, 17.5}, {12.5, 21.5}},
	},
}

// Icon is the page's icon on a square of size px: the sign of a clear verdict on tape,
// to the edges, since whoever shows it cuts its own corners.
func Icon(size float64) *sheet.Sheet {
	s := &sheet.Sheet{Width: size, Height: size, Title: "Wide Berth"}
	s.Box(sheet.Ink{Fill: tapeYellow}, 0, 0, size, size)
	const room = 0.1 // of the size, round the sign
	var rings [][]sheet.Point
	for _, ring := range signs[fit.Clear] {
		rings = append(rings, scaled(ring, size*room, size*room, size*(1-2*room)/32))
	}
	s.Outline(sheet.Ink{Fill: byDay.ink}, rings...)
	return s
}

func scaled(ring []sheet.Point, left, top, by float64) []sheet.Point {
	out := make([]sheet.Point, len(ring))
	for i, p := range ring {
		out[i] = sheet.Point{left + p[0]*by, top + p[1]*by}
	}
	return out
}

// sign draws a verdict's shape with its corner at a place.
func (k inks) sign(s *sheet.Sheet, v fit.Verdict, left, top float64) {
	var rings [][]sheet.Point
	for _, ring := range signs[v] {
		rings = append(rings, scaled(ring, left, top, sign/32))
	}
	s.Outline(sheet.Ink{Fill: k.verdict[v]}, rings...)
}
