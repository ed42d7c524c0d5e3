package floor

import "math"

// Piece is one piece of a layer as it lies.
type Piece struct {
	Rect
	Sheet   int  `json:"sheet"`   // which sheet it is cut from, from 1
	Whole   bool `json:"whole"`   // a sheet as it comes
	Notched bool `json:"notched"` // a cut-out takes a corner or a middle out of it
}

// Seam is where two pieces meet, a line along an axis, m.
type Seam struct {
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
}

func (s Seam) turned() Seam { return Seam{s.Y0, s.X0, s.Y1, s.X1} }

// Layout is a layer of panels.
type Layout struct {
	Along  string  `json:"along"` // the way of the long edges
	Pieces []Piece `json:"pieces"`
	Seams  []Seam  `json:"seams"`
	Sheets int     `json:"sheets"`
	Area   float64 `json:"area"`  // covered, m²
	Waste  float64 `json:"waste"` // share of what is bought that is not laid
}

// kerf is what a saw takes, m: an assumption.
const kerf = 0.003

// Lay lays panels of long × wide (m) over a floor less its cut-outs, with gap
// between them: in courses, every other one started with half a panel, so that no
// four corners meet. along is "length", "width" or "" for the way that takes fewer
// sheets, and then the one with shorter seams.
func Lay(covers Rect, cut []Rect, long, wide, gap float64, along string) Layout {
	if along != "" {
		return lay(covers, cut, long, wide, gap, along)
	}
	a, b := lay(covers, cut, long, wide, gap, "length"), lay(covers, cut, long, wide, gap, "width")
	if b.Sheets < a.Sheets || b.Sheets == a.Sheets && seamLength(b.Seams) < seamLength(a.Seams)-tiny {
		return b
	}
	return a
}

func seamLength(seams []Seam) (sum float64) {
	for _, s := range seams {
		sum += math.Abs(s.X1-s.X0) + math.Abs(s.Y1-s.Y0)
	}
	return sum
}

func lay(covers Rect, cut []Rect, long, wide, gap float64, along string) Layout {
	l := Layout{Along: along, Pieces: []Piece{}, Seams: []Seam{}}
	if along == "width" { // the same in a floor turned by its diagonal
		turned := make([]Rect, len(cut))
		for i, c := range cut {
			turned[i] = c.turned()
		}
		l.courses(covers.turned(), turned, long, wide, gap)
		for i := range l.Pieces {
			l.Pieces[i].Rect = l.Pieces[i].Rect.turned()
		}
		for i := range l.Seams {
			l.Seams[i] = l.Seams[i].turned()
		}
	} else {
		l.courses(covers, cut, long, wide, gap)
	}
	l.nest(Size{long, wide})
	l.Area = areaOf(covers.without(cut))
	if l.Sheets > 0 {
		l.Waste = max(0, 1-l.Area/(float64(l.Sheets)*long*wide))
	}
	return l
}

// courses lays pieces with their long edges along x.
func (l *Layout) courses(covers Rect, cut []Rect, long, wide, gap float64) {
	n := 0
	for y := covers.Y0; y < covers.Y1-tiny; y += wide + gap {
		top := min(y+wide, covers.Y1)
		if n > 0 {
			l.seam(Rect{covers.X0, y - gap/2, covers.X1, y - gap/2}, cut)
		}
		reach := long
		if n%2 == 1 {
			reach = (long - gap) / 2
		}
		for x := covers.X0; x < covers.X1-tiny; {
			end := min(x+reach, covers.X1)
			if x > covers.X0 {
				l.seam(Rect{x - gap/2, y, x - gap/2, top}, cut)
			}
			l.piece(Rect{x, y, end, top}, cut)
			x, reach = end+gap, long
		}
		n++
	}
}

// piece adds what the cut-outs leave of a piece: cut down to what is needed.
func (l *Layout) piece(r Rect, cut []Rect) {
	left := r.without(cut)
	if len(left) == 0 {
		return
	}
	need := around(left)
	l.Pieces = append(l.Pieces, Piece{Rect: need, Notched: areaOf(left) < need.Area()-tiny})
}

// seam adds the parts of a seam that are on no cut-out.
func (l *Layout) seam(line Rect, cut []Rect) {
	const hair = 1e-3 // a line as a rectangle, so that it can be cut like one
	wide := Rect{line.X0, line.Y0, line.X1, line.Y1}
	level := line.Y0 == line.Y1
	if level {
		wide.Y0, wide.Y1 = line.Y0-hair/2, line.Y0+hair/2
	} else {
		wide.X0, wide.X1 = line.X0-hair/2, line.X0+hair/2
	}
	for _, r := range wide.without(cut) {
		switch {
		case level && r.Y1-r.Y0 > hair/2:
			l.Seams = append(l.Seams, Seam{r.X0, line.Y0, r.X1, line.Y0})
		case !level && r.X1-r.X0 > hair/2:
			l.Seams = append(l.Seams, Seam{line.X0, r.Y0, line.X0, r.Y1})
		}
	}
}

// nest says which sheet each piece comes from: whole ones have their own, the
// others share.
func (l *Layout) nest(sheet Size) {
	var cutUp []Size
	var which []int
	for i := range l.Pieces {
		p := &l.Pieces[i]
		size := Size{max(p.X1-p.X0, p.Y1-p.Y0), min(p.X1-p.X0, p.Y1-p.Y0)}
		if p.Whole = !p.Notched && size.Long >= sheet.Long-tiny && size.Wide >= sheet.Wide-tiny; p.Whole {
			l.Sheets++
			p.Sheet = l.Sheets
			continue
		}
		cutUp, which = append(cutUp, size), append(which, i)
	}
	from, n := Nest(cutUp, sheet, kerf)
	for k, i := range which {
		l.Pieces[i].Sheet = l.Sheets + from[k] + 1
	}
	l.Sheets += n
}

// Roll is turf that is rolled out.
type Roll struct {
	Along  string  `json:"along"`  // the way it is rolled out
	Strips int     `json:"strips"` //
	Long   float64 `json:"long"`   // of a strip, m
	Wide   float64 `json:"wide"`   // of the roll, m
	Seams  []Seam  `json:"seams"`
	Bought float64 `json:"bought"` // m²
	Waste  float64 `json:"waste"`  // share of it
}

// Unroll covers a floor with strips of a roll of this width (m), whole ones first.
func Unroll(covers Rect, cut []Rect, wide float64, along string) Roll {
	r := Roll{Along: along, Wide: wide, Seams: []Seam{}}
	area := covers
	if along == "width" {
		area = covers.turned()
	}
	r.Long = area.X1 - area.X0
	r.Strips = max(1, int(math.Ceil((area.Y1-area.Y0)/wide-1e-9)))
	var l Layout
	for k := 1; k < r.Strips; k++ {
		y := area.Y0 + float64(k)*wide
		line := Rect{area.X0, y, area.X1, y}
		if along == "width" {
			line = line.turned()
		}
		l.seam(line, cut)
	}
	r.Seams = append(r.Seams, l.Seams...)
	r.Bought = float64(r.Strips) * wide * r.Long
	r.Waste = max(0, 1-areaOf(covers.without(cut))/r.Bought)
	return r
}
