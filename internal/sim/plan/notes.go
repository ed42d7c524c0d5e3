package plan

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/units"
)

// Notes are sentences about values that are allowed but odd, in the order of
// the document; nil when there are none.
func (p Plan) Notes() []string {
	p = p.WithDefaults()
	var out []string
	addf := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if p.Margin < smallMargin {
		addf("The margin of %s is under %s: real swings differ from one to the next by more than that.", units.Label(p.Margin, p.Units), units.Label(smallMargin, p.Units))
	}
	for i, s := range p.Room.Solids {
		if !p.Room.Touches(s.Min, s.Max) {
			addf("%s lies outside the room and counts for nothing.", upperFirst(nameOr("solid", s.Name, i)))
		}
	}
	if m := p.Floor.Mat; m != nil && m.Inset {
		layers := Floor{Layers: p.Floor.Layers}.Standing()
		if m.Thickness > layers+fitTolerance {
			addf("The inset mat is thicker than the floor layers around it: it stands %s proud of them.", units.LabelShort(m.Thickness-layers, p.Units))
		}
	}
	for i, b := range p.Clubs {
		if b.Length > LongestClub+fitTolerance {
			addf("%s is %s long, over the 48 in (1.219 m) limit of the Equipment Rules, Part 2, 1c.", upperFirst(nameOr("club", b.Name, i)), units.LabelShort(b.Length, p.Units))
		}
	}
	for i, v := range p.Players {
		if v.Height < ShortestMeasured || v.Height > TallestMeasured {
			addf("%s: height %s is outside the measured people (ANSUR II), extrapolated.", upperFirst(nameOr("player", v.Name, i)), units.Label(v.Height, p.Units))
		}
	}
	for i, h := range p.Hung {
		if !p.Room.Touches(h.Min, h.Max) {
			addf("%s lies outside the room and counts for nothing.", upperFirst(nameOr("hung thing", h.Name, i)))
		}
	}
	return out
}

// Touches says whether a box shares any volume with the room's box: what does not counts
// for nothing.
func (r Room) Touches(lo, hi [3]float64) bool {
	return lo[0] < r.Length && lo[1] < r.Width && lo[2] < r.Height && hi[0] > 0 && hi[1] > 0 && hi[2] > 0
}

// upperFirst starts a sentence; the words it is given start with a small ASCII letter.
func upperFirst(s string) string {
	return string(s[0]-'a'+'A') + s[1:]
}
