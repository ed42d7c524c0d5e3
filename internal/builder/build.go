package builder

import (
	"slices"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/build"
	"wideberth/internal/sim/build/floor"
	"wideberth/internal/sim/build/quantity"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
)

// BuildAnswer is the sheet Build. Lengths of the drawing are m, room frame.
type BuildAnswer struct {
	Common
	Drawing FloorDrawing `json:"drawing"`
	Stacks  []StackRow   `json:"stacks"`
	Things  []Thing      `json:"things"` // doors, ledges, sensor: with fields of their own
	More    []More       `json:"more"`   // that may be added
	Pads    []plan.Solid `json:"pads"`   // foam over the bare hard places that balls meet
	Sound   SoundTable   `json:"sound"`
	CSV     string       `json:"csv"`
	AmountsAnswer
}

// AmountsAnswer is the list of quantities.
type AmountsAnswer struct {
	Quantities []LineRow `json:"quantities"`
	Total      string    `json:"total"`
}

// FloorDrawing is the floor from above.
type FloorDrawing struct {
	Size   [2]float64    `json:"size"`
	Covers floor.Rect    `json:"covers"`
	Mats   []floor.Rect  `json:"mats"`
	Pieces []floor.Piece `json:"pieces"`
	Seams  []floor.Seam  `json:"seams"` // of the panels
	Turf   []floor.Seam  `json:"turf"`  // of the turf
	Putts  []floor.Putt  `json:"putts"`
	Cup    float64       `json:"cup"`    // radius of a cup
	Screen [3]float64    `json:"screen"` // x, right, left; nothing without a screen
	Text   string        `json:"text"`   // what is drawn
	Sheets int           `json:"sheets"` // of one layer of panels
}

// StackRow is one stack that would meet the mat.
type StackRow struct {
	Name     string       `json:"name"`
	Off      string       `json:"off"`  // of the mat
	Give     string       `json:"give"` // to either side
	Headroom string       `json:"headroom"`
	Verdict  string       `json:"verdict"`
	Price    string       `json:"price"` // of a square metre; "" where it is not known
	Layers   []plan.Layer `json:"layers"`
	Laid     bool         `json:"laid"` // it is the plan's floor
}

// SoundTable is reverberation before and after.
type SoundTable struct {
	Bands  []string `json:"bands"`
	Before []string `json:"before"`
	After  []string `json:"after"`
}

// LineRow is one line of the list of quantities.
type LineRow struct {
	Item  string `json:"item"`
	Count string `json:"count"`
	Rule  string `json:"rule"`
	Price string `json:"price"` // as typed; "" where it is not known
	Cost  string `json:"cost"`
	Path  string `json:"path"` // of the price
}

func (b *Builder) build(c plan.Checked) (any, error) {
	r, s, err := b.room(c, build.Floors)
	if err != nil {
		return nil, err
	}
	p := c.Plan()
	w := pen{p.Units}
	out := BuildAnswer{
		Common:  Common{Fields: shown(buildFields, &s, p.Units), Rules: r.Rules, Cautions: cautionsOf(r, "floor", "screen", "walls", "wiring"), Notes: r.Notes},
		Drawing: floorDrawing(p, r, w), Stacks: []StackRow{}, CSV: r.CSV,
	}
	out.Things, out.More = thingsShown(p, &s), more(p, &s)
	out.Pads = []plan.Solid{}
	for _, hard := range r.Screen.Hard {
		pad, ok := build.Padding(p, hard)
		if taken := slices.ContainsFunc(p.Room.Solids, func(s plan.Solid) bool { return s.Name == pad.Name }); ok && !taken {
			out.Pads = append(out.Pads, pad)
		}
	}
	out.Said = w.saidOfFloor(p, r)
	for _, k := range r.Floor.Stacks {
		out.Stacks = append(out.Stacks, w.stack(p, k))
	}
	out.Groups = []Group{
		{"putting", "Putting", w.putting(r)},
		{"screen", "Screen and image", w.screen(p, r)},
		{"walls", "Walls as they are", w.walls(r)},
		{"sensor", "Ball sensor", w.sensor(r)},
	}
	for k, band := range r.Sound.Bands {
		out.Sound.Bands = append(out.Sound.Bands, fmt.Sprintf("%.0f Hz", band))
		out.Sound.Before = append(out.Sound.Before, fmt.Sprintf("%.1f s", r.Sound.Before[k]))
		out.Sound.After = append(out.Sound.After, fmt.Sprintf("%.1f s", r.Sound.After[k]))
	}
	out.AmountsAnswer = amountsOf(r)
	return out, nil
}

// amounts counts without swinging anybody.
func (b *Builder) amounts(c plan.Checked) (any, error) {
	r, _, err := b.room(c, build.Amounts)
	return amountsOf(r), err
}

func amountsOf(r build.Report) AmountsAnswer {
	out := AmountsAnswer{Quantities: []LineRow{}}
	for _, l := range r.Quantities {
		row := LineRow{Item: l.Item, Count: trim(l.Count) + " " + unitOf(l), Rule: words.UpperFirst(l.Rule) + ".", Path: pricePath + l.Item}
		if l.Price > 0 {
			row.Price, row.Cost = trim(l.Price), fmt.Sprintf("%.2f", l.Cost)
		}
		out.Quantities = append(out.Quantities, row)
	}
	switch {
	case r.Unpriced == len(r.Quantities):
		out.Total = "not known: type what a unit costs where you buy"
	case r.Unpriced > 0:
		out.Total = fmt.Sprintf("%.2f, and %d items without a price", r.Total, r.Unpriced)
	default:
		out.Total = fmt.Sprintf("%.2f", r.Total)
	}
	return out
}

// unitOf is the unit of a count, of more than one in its plural.
func unitOf(l quantity.Line) string {
	switch l.Unit {
	case "piece", "sheet", "length":
		if l.Count != 1 {
			return l.Unit + "s"
		}
	}
	return l.Unit
}

func floorDrawing(p plan.Plan, r build.Report, w pen) FloorDrawing {
	f := r.Floor
	d := FloorDrawing{
		Size: [2]float64{p.Room.Length, p.Room.Width}, Covers: f.Covers, Mats: f.Mats,
		Pieces: f.Panels.Pieces, Seams: f.Panels.Seams, Turf: f.Turf.Seams, Sheets: f.Panels.Sheets, Putts: r.Putting.Cups, Cup: floor.CupDiameter / 2,
	}
	if s := p.Screen; s != nil {
		right, left, _, _ := s.Edges()
		d.Screen = [3]float64{s.X, right, left}
	}
	if f.Sheets == 0 && len(p.Floor.Layers) > 0 { // its layers are all soft
		d.Pieces, d.Seams = []floor.Piece{}, []floor.Seam{}
	}
	d.Text = fmt.Sprintf("The floor from above: panels in %d pieces, turf in %s, %d cups.", len(d.Pieces), strips(f.Turf.Strips), len(r.Putting.Cups))
	return d
}

func (w pen) saidOfFloor(p plan.Plan, r build.Report) []Figure {
	f := r.Floor
	out := []Figure{}
	level := f.Error <= f.Wanted+1e-4 && f.Error >= -f.Wanted-1e-4
	if p.Floor.Mat == nil {
		out = append(out, Figure{Term: "Floor", Text: fmt.Sprintf("%s thick; the plan has no mat for it to meet.", w.short(f.Height)), Rule: "stack"})
	} else {
		out = append(out, Figure{Term: "Floor and mat", Text: fmt.Sprintf("The planned layers end %s the mat's top.", w.besideMat(f.Error)), Rule: "stack", Mark: mark(level)})
	}
	if len(r.Putting.Cups) > 0 {
		out = append(out, Figure{Term: "Longest putt", Text: fmt.Sprintf("%s, straight, over no seam.", w.long(r.Putting.Longest)), Rule: "putt"})
	}
	buy := Figure{Term: "To buy", Rule: "panels", Text: fmt.Sprintf("turf in %s of %s", strips(f.Turf.Strips), w.long(f.Turf.Long))}
	if f.Sheets > 0 {
		buy.Text = fmt.Sprintf("%d sheets of panel, ", f.Sheets) + buy.Text
	}
	buy.Text = words.UpperFirst(buy.Text) + ", and what is listed below."
	return append(out, buy)
}

func strips(n int) string {
	if n == 1 {
		return "1 strip"
	}
	return fmt.Sprintf("%d strips", n)
}

func (w pen) besideMat(m float64) string {
	if text := w.signed(m, "over", "under"); text != "level" {
		return text
	}
	return "level with"
}

func (w pen) stack(p plan.Plan, k build.Stack) StackRow {
	row := StackRow{
		Name: strings.Join(k.Layers, " + "), Off: w.signed(k.Error, "over", "under"), Give: "± " + w.short(k.Tolerance),
		Headroom: w.long(k.Headroom), Verdict: string(k.Verdict), Layers: []plan.Layer{},
	}
	if k.Price > 0 {
		row.Price = fmt.Sprintf("%.2f", k.Price)
	}
	times := map[string]int{}
	for i, name := range k.Layers {
		times[name]++
		row.Layers = append(row.Layers, plan.Layer{Name: build.LayerName(name, times[name]), Thickness: float64(int(k.Thickness[i]*1e4+0.5)) / 1e4})
	}
	row.Laid = len(p.Floor.Layers) == len(row.Layers)
	for i, l := range row.Layers {
		row.Laid = row.Laid && l == p.Floor.Layers[i]
	}
	return row
}

func (w pen) putting(r build.Report) []Figure {
	out := []Figure{}
	for _, c := range r.Putting.Cups {
		term := fmt.Sprintf("Cup %d", c.Cup)
		switch {
		case c.OnEdge:
			out = append(out, Figure{Term: term, Text: "It lies in the mat, in a column or across the floor's edge: move it.", Rule: "putt", Mark: mark(false)})
			continue
		case c.OnSeam:
			out = append(out, Figure{Term: term, Text: "A seam runs through it: move it by a hand's breadth.", Rule: "putt", Mark: string(fit.Tight)})
		}
		text := w.long(c.Clear) + " over no seam"
		if c.OneSeam > c.Clear+0.005 {
			text += ", " + w.long(c.OneSeam) + " over one"
		}
		out = append(out, Figure{Term: term, Text: text, Rule: "putt"})
	}
	if len(out) == 0 {
		out = append(out, Figure{Term: "Cups", Text: "none in the plan"})
	}
	depth := fmt.Sprintf("%s of floor down to the slab", w.short(r.Putting.Depth))
	if !r.Putting.Deep {
		depth += ": a shallow cup; a hole asks for " + w.short(floor.CupDepth)
	}
	return append(out, Figure{Term: "Depth of a cup", Text: depth, Rule: "cup"})
}

func (w pen) screen(p plan.Plan, r build.Report) []Figure {
	i := r.Image
	out := []Figure{
		{Term: "Largest image", Text: fmt.Sprintf("%s × %s, %s from corner to corner", w.long(i.Width), w.long(i.Height), w.long(i.Diagonal)), Rule: "image"},
		{Term: "Its bottom", Text: w.long(i.Bottom) + " above the floor", Rule: "border"},
		{Term: "Blank border", Text: fmt.Sprintf("%s above, %s below, %s at the sides", w.short(i.Border.Top), w.short(i.Border.Bottom), w.short(i.Border.Left)), Rule: "border"},
	}
	if a := r.Screen.Around; a != nil {
		const least = 0.30 // m, 12 in: common practice
		behind := Figure{Term: "Behind the cloth", Text: w.short(a.Behind) + " to the wall", Rule: "around"}
		if a.Behind < least {
			behind.Text += ", less than is usual"
			behind.Mark = string(fit.Tight)
		}
		out = append(out, behind, Figure{Term: "Beside the cloth", Text: fmt.Sprintf("%s to the left wall, %s to the right, %s to the ceiling", w.long(a.Left), w.long(a.Right), w.long(a.Ceiling)), Rule: "around"})
	}
	for _, v := range r.Screen.Views {
		out = append(out, Figure{Term: "From the " + v.Kind + " “" + v.Name + "”", Text: viewText(w, v), Rule: "view"})
	}
	hard := []string{}
	for _, h := range r.Screen.Hard {
		hard = append(hard, h.Surface)
	}
	if len(hard) > 0 {
		out = append(out, Figure{Term: "Bare and hard", Text: "Balls meet " + strings.Join(hard, ", ") + ": padding belongs there. Once it is in the plan, golfer and club have to clear it too.", Mark: string(fit.Tight)})
	}
	return out
}

func (w pen) walls(r build.Report) []Figure {
	out := []Figure{}
	for _, f := range r.Walls {
		one := Figure{Term: words.UpperFirst(f.What) + ", " + f.Name, Mark: mark(!f.Bad), Rule: "clearance"}
		switch f.What {
		case "ledge":
			one.Text = fmt.Sprintf("%s deep: the swings come as near as %s", w.short(f.Amount), w.clearance(f.Clearance))
		case "gap":
			one.Rule = "gap"
			one.Text = w.short(f.Amount) + " over the floor"
			if f.Bad {
				one.Text += ": a ball rolls under it"
			}
		case "door":
			one.Text = "Swung open, " + w.signed(f.Amount, "free under the leaf", "too low for the floor") + "; the swings come as near to where it swings as " + w.clearance(f.Clearance) + ": lock it while anybody swings"
		case "garage door":
			one.Text = "Shut: a wall; open it would be a lowered ceiling"
			if f.Box != nil {
				one.Text = fmt.Sprintf("Open, its underside may be %s above the floor: the swings come as near as %s", w.long(f.Amount), w.clearance(f.Clearance))
			}
		case "slab":
			one.Rule = "slab"
			one.Text = fmt.Sprintf("It falls by %s over the floor: shim it level, and measure the ceiling where the slab is highest", w.short(f.Amount))
		}
		out = append(out, one)
	}
	if s := r.Floor.Step; s.Height > 0 {
		one := Figure{Term: "Edge of the floor", Text: w.short(s.Height) + " up at doors", Rule: "step", Mark: mark(!s.Steep)}
		if s.Free {
			one.Text = w.short(s.Height) + " down in the room: mark it, or end it in a ramp"
			one.Mark = string(fit.Tight)
		}
		if s.Guard {
			one.Text += "; a guard is asked for"
		}
		out = append(out, one)
	}
	return out
}

func (w pen) sensor(r build.Report) []Figure {
	s := r.Sensor
	if s == nil {
		return []Figure{{Term: "Ball sensor", Text: "The plan has no place for one."}}
	}
	out := []Figure{{Term: "Its case", Text: "The swings come as near as " + w.clearance(s.Clearance), Rule: "clearance", Mark: string(s.Verdict)}}
	if s.InFlight {
		out = append(out, Figure{Term: "Its case", Text: "Ordinary balls come nearer than the margin.", Rule: "sensor", Mark: mark(false)})
	}
	for _, t := range s.Reads {
		text := "is read, for " + strings.Join(t.Hands, " and ") + "-handers"
		if !t.Reads {
			text = "is not read: it lies outside the strip"
		}
		out = append(out, Figure{Term: "Tee “" + t.Tee + "”", Text: text, Rule: "sensor", Mark: mark(t.Reads)})
	}
	for _, k := range s.KeepOut {
		text := "free"
		if len(k.Holds) > 0 {
			text = "holds " + strings.Join(k.Holds, ", ")
		}
		if k.Swept {
			text += "; golfer and club pass through it"
		}
		out = append(out, Figure{Term: fmt.Sprintf("Keep-out %d", k.Number), Text: text, Rule: "sensor", Mark: mark(len(k.Holds) == 0)})
	}
	return out
}
