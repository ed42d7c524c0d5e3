package builder

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/build"
	"wideberth/internal/sim/build/projector"
	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// ProjectorAnswer is the sheet Projector. Lengths of the drawings are m, room frame.
type ProjectorAnswer struct {
	Common
	There   bool         `json:"there"` // the plan has a projector
	Drawing LightDrawing `json:"drawing"`
	Shadows []ShadowRow  `json:"shadows"`
	Hang    *plan.Hung   `json:"hang"` // as it would hang at its lens; nothing for what stands
	InPlan  bool         `json:"inPlan"`
	Size    string       `json:"size"`  // of the image
	Fresh   any          `json:"fresh"` // the plan's member for a projector, where it has none
}

// LightDrawing is what is drawn in elevation, in plan and on the wall.
type LightDrawing struct {
	Room     [3]float64         `json:"room"`
	Standing float64            `json:"standing"`
	Wall     [2][2]float64      `json:"wall"`    // y and z of the cloth: right and left, bottom and top
	Returns  [2]float64         `json:"returns"` // depth of the sides and the top
	Image    screen.Image       `json:"image"`
	Lens     [3]float64         `json:"lens"`
	Case     build.Box          `json:"case"`
	Throw    [2]float64         `json:"throw"` // x of the lens at the least and at the most
	Region   []projector.Column `json:"region"`
	Boxes    []NamedBox         `json:"boxes"` // built in and hung things
	Text     [3]string          `json:"text"`  // what elevation, plan and wall show
	Reach    build.Box          `json:"reach"` // where a lens may be at all
	Where    string             `json:"where"` // the lens is
}

// reachOf is where a lens may be at all: in the room, on its side of the cloth.
func reachOf(p plan.Plan, j spec.Projector, cloth float64) build.Box {
	const near = 0.02 // m
	b := build.Box{Max: [3]float64{cloth - near, p.Room.Width, p.Room.Height}}
	if j.Mount == spec.MountRear {
		b.Min[0], b.Max[0] = cloth+near, max(p.Room.Length, cloth+2*near)
	}
	return b
}

// NamedBox is a thing of the plan.
type NamedBox struct {
	Name string     `json:"name"`
	Min  [3]float64 `json:"min"`
	Max  [3]float64 `json:"max"`
}

// ShadowRow is what somebody cuts out of the image.
type ShadowRow struct {
	Player  string `json:"player"`
	Club    string `json:"club"`
	Tee     string `json:"tee"`
	Address string `json:"address"`
	Worst   string `json:"worst"`
	Frame   int    `json:"frame"` // of the worst, in a film
	Mark    string `json:"mark"`
}

// FilmAnswer is a shadow frame by frame: of every frame the dark cells of the image as
// runs, first cell and number, row by row from the bottom, in each from the golfer's
// right.
type FilmAnswer struct {
	Rate   int          `json:"rate"` // frames a second
	NX     int          `json:"nx"`
	NY     int          `json:"ny"`
	Frames [][]int      `json:"frames"`
	Said   []string     `json:"said"` // of every frame, how much is dark
	Lens   [3]float64   `json:"lens"`
	Image  screen.Image `json:"image"`
}

// filmRate is how many frames a second a film has.
const filmRate = 30

// filmMesh is how many cells across a film's image has.
const filmMesh = 96

// film swings one member of one family only.
func film(c plan.Checked, req Request) (any, error) {
	p := c.Plan()
	s, err := spec.Of(c)
	if err != nil {
		return nil, err
	}
	if s.Projector == nil {
		return nil, fmt.Errorf("the plan has no projector")
	}
	i, err := build.ImageOf(p, s)
	if err != nil {
		return nil, err
	}
	pl, club, tee, err := p.Named(req.Player, req.Club, req.Tee)
	if err != nil {
		return nil, err
	}
	f, err := projector.MemberFilm(p, pl, club, tee, req.Variation)
	if err != nil {
		return nil, err
	}
	light := projector.Pyramid{Lens: projector.Point(s.Projector.Lens), Image: i}
	shade := projector.NewShade(projector.MeshOf(filmMesh, i))
	out := FilmAnswer{Rate: filmRate, NX: shade.NX, NY: shade.NY, Lens: s.Projector.Lens, Image: i}
	for k := 0; float64(k)/filmRate <= f.Duration(); k++ {
		shade.Clear()
		f.Dark(shade, light, float64(k)/filmRate)
		out.Frames = append(out.Frames, runs(shade.Dark))
		out.Said = append(out.Said, percent(shade.Share()))
	}
	return out, nil
}

// LensAnswer is a projector whose lens is on its way: what is said first of it there, and
// where it is drawn.
type LensAnswer struct {
	Said      []Figure   `json:"said"`
	Lens      [3]float64 `json:"lens"`
	Case      build.Box  `json:"case"`
	Throw     [2]float64 `json:"throw"`     // x of the lens at the least and at the most
	Where     string     `json:"where"`     // the lens is
	Projector any        `json:"projector"` // the plan's member with the lens there
}

func (b *Builder) lens(c plan.Checked, at [3]float64) (any, error) {
	p := c.Plan()
	s, err := spec.Of(c)
	if err != nil {
		return nil, err
	}
	if s.Projector == nil {
		return nil, fmt.Errorf("the plan has no projector")
	}
	filled(&p, &s, "projector.lens")
	if p.Projector, err = changed(p.Projector, []string{"lens"}, numerals(at[:])); err != nil {
		return nil, err
	}
	if c, err = plan.Check(p); err != nil {
		return nil, err
	}
	r, s, err := b.room(c, build.Lens)
	if err != nil {
		return nil, err
	}
	w := pen{p.Units}
	return LensAnswer{w.saidOfLight(p, *s.Projector, r), at, r.Projector.Case, throws(*s.Projector, r), w.where(at), p.Projector}, nil
}

// where says where a lens is.
func (w pen) where(lens [3]float64) string {
	return fmt.Sprintf("%s from the back wall, %s from the right wall, %s above the floor", w.long(lens[0]), w.long(lens[1]), w.long(lens[2]))
}

// throws is the x of a lens at the least and at the most throw.
func throws(j spec.Projector, r build.Report) [2]float64 {
	side := 1.0
	if j.Mount == spec.MountRear {
		side = -1
	}
	return [2]float64{r.Image.X - side*r.Projector.Throw.Least, r.Image.X - side*r.Projector.Throw.Most}
}

// runs are the stretches that are dark: where each starts and how long it is.
func runs(dark []bool) []int {
	out := []int{}
	for i := 0; i < len(dark); i++ {
		if !dark[i] {
			continue
		}
		from := i
		for i < len(dark) && dark[i] {
			i++
		}
		out = append(out, from, i-from)
	}
	return out
}

func (b *Builder) projector(c plan.Checked) (any, error) {
	r, s, err := b.room(c, build.Light)
	if err != nil {
		return nil, err
	}
	p := c.Plan()
	w := pen{p.Units}
	out := ProjectorAnswer{
		Common:  Common{Said: []Figure{}, Groups: []Group{}, Fields: []Shown{}, Rules: r.Rules, Cautions: cautionsOf(r, "projector"), Notes: r.Notes},
		Shadows: []ShadowRow{}, Drawing: lightDrawing(p, r),
	}
	out.Size = w.long(r.Image.Width) + " × " + w.long(r.Image.Height)
	j := r.Projector
	if j == nil {
		out.Fresh = fresh(p, r.Image)
		out.Said = append(out.Said, Figure{Term: "Projector", Text: "The plan has none."})
		return out, nil
	}
	out.There, out.InPlan = true, j.InPlan
	out.Fields = shown(projectorFields, &s, p.Units)
	d := &out.Drawing
	d.Lens, d.Case, d.Region, d.Throw = s.Projector.Lens, j.Case, j.Region, throws(*s.Projector, r)
	d.Reach, d.Where = reachOf(p, *s.Projector, r.Image.X), w.where(s.Projector.Lens)
	if s.Projector.Mount != spec.MountFloor {
		h := projector.CaseAt(*s.Projector, s.Projector.Lens)
		out.Hang = &h
	}
	out.Said = w.saidOfLight(p, *s.Projector, r)
	out.Groups = []Group{
		{"place", "Where the lens may be", w.place(p, *s.Projector, r)},
		{"light", "How bright", w.light(*s.Projector, r)},
		{"image", "The image", w.image(r)},
	}
	for _, k := range j.Shadow {
		m := fit.Clear
		if k.Worst > 0 {
			m = fit.Tight
		}
		if k.Address > 0 {
			m = fit.Strikes
		}
		out.Shadows = append(out.Shadows, ShadowRow{k.Player, k.Club, k.Tee, percent(k.Address), percent(k.Worst), int(math.Round(k.Time * filmRate)), string(m)})
	}
	return out, nil
}

// fresh is a projector to start with: under the ceiling on the middle line of the image,
// as far off as a usual throw ratio takes.
func fresh(p plan.Plan, i screen.Image) any {
	const ratio, under = 1.2, 0.3 // the ratio is common behind a golfer; m under the ceiling
	x := max(i.X-ratio*i.Width, 0.5)
	y := i.Centre
	z := p.Room.CeilingAt(x, y) - under
	tenth := func(v float64) any { return numeral(math.Round(v*1e4) / 1e4) }
	return map[string]any{"lens": []any{tenth(x), tenth(y), tenth(z)}, "throwRatio": []any{numeral(1), numeral(1.4)}}
}

func lightDrawing(p plan.Plan, r build.Report) LightDrawing {
	d := LightDrawing{Room: [3]float64{p.Room.Length, p.Room.Width, p.Room.Height}, Standing: p.Floor.Standing(), Image: r.Image, Region: []projector.Column{}, Boxes: []NamedBox{}}
	d.Wall = [2][2]float64{{0, p.Room.Width}, {0, p.Room.Height}}
	if s := p.Screen; s != nil {
		right, left, bottom, top := s.Edges()
		d.Wall = [2][2]float64{{right, left}, {bottom, top}}
		d.Returns = [2]float64{s.SideReturn, s.TopReturn}
	}
	for _, v := range p.Room.Solids {
		d.Boxes = append(d.Boxes, NamedBox{v.Name, v.Min, v.Max})
	}
	for _, v := range p.Hung {
		d.Boxes = append(d.Boxes, NamedBox{v.Name, v.Min, v.Max})
	}
	w := pen{p.Units}
	i := r.Image
	d.Text = [3]string{
		"The room from the right: the light from lens to screen, and where the lens may hang.",
		"The room from above: the light from lens to screen.",
		fmt.Sprintf("The screen as the golfer sees it: an image of %s by %s, with %s of blank cloth above it and %s below.", w.long(i.Width), w.long(i.Height), w.short(i.Border.Top), w.short(i.Border.Bottom)),
	}
	return d
}

func (w pen) saidOfLight(p plan.Plan, j spec.Projector, r build.Report) []Figure {
	o := r.Projector
	out := []Figure{}
	throw := Figure{Term: "Throw", Rule: "throw", Mark: mark(o.Throw.Fits), Text: fmt.Sprintf("%s from lens to cloth, between %s and %s.", w.long(o.Throw.Is), w.long(o.Throw.Least), w.long(o.Throw.Most))}
	if !o.Throw.Fits {
		throw.Text = fmt.Sprintf("%s from lens to cloth; this image takes %s to %s.", w.long(o.Throw.Is), w.long(o.Throw.Least), w.long(o.Throw.Most))
	}
	near := Figure{Term: "Swing and case", Rule: "clearance", Mark: string(o.Verdict), Text: fmt.Sprintf("The swings come as near as %s (%s).", w.clearance(o.Clearance), o.Nearest)}
	out = append(out, near, throw)
	worst := projector.Shadow{}
	for _, s := range o.Shadow {
		if s.Worst > worst.Worst {
			worst = s
		}
	}
	shadow := Figure{Term: "Shadow", Rule: "shadow", Mark: mark(true), Text: "No usual swing cuts the image; a looser one may."}
	switch {
	case o.Unshaded:
		shadow.Text, shadow.Rule = "No modelled swing reaches the light.", "unshaded"
	case worst.Worst > 0:
		shadow.Mark = string(fit.Tight)
		shadow.Text = fmt.Sprintf("%s, %s: %s of the image at worst, in the %s.", worst.Player, worst.Club, percent(worst.Worst), worst.Phase)
		if worst.Address > 0 {
			shadow.Mark = mark(false)
		}
	}
	out = append(out, shadow)
	for _, b := range o.Blocked {
		out = append(out, Figure{Term: "In the light", Rule: "region", Mark: mark(false), Text: fmt.Sprintf("%s takes %s of the image.", b.Name, percent(b.Share))})
	}
	if !o.Inside {
		out = append(out, Figure{Term: "Case", Mark: mark(false), Text: "It sticks out of the room or through the ceiling there."})
	}
	return out
}

func (w pen) place(p plan.Plan, j spec.Projector, r build.Report) []Figure {
	o := r.Projector
	out := []Figure{
		{Term: "Least throw", Text: w.long(o.Throw.Least), Rule: "throw"},
		{Term: "Most throw", Text: w.long(o.Throw.Most), Rule: "throw"},
		{Term: "Light spreads", Text: fmt.Sprintf("%.1f° across", o.Angle), Rule: "throw"},
	}
	from, to, where := 0.0, 0.0, 0
	for _, c := range o.Region {
		if c.From <= c.To {
			if where == 0 || c.From < from {
				from = c.From
			}
			to = max(to, c.To)
			where++
		}
	}
	if j.Mount == spec.MountCeiling {
		one := Figure{Term: "Lens heights", Rule: "region", Mark: mark(where > 0), Text: "Nowhere at this throw: something swings, hangs or bounds in the way."}
		if where > 0 {
			one.Text = fmt.Sprintf("from %s to %s, as drawn", w.long(from), w.long(to))
		}
		out = append(out, one)
	}
	offset := Figure{Term: "Offset it takes", Rule: "offset", Text: fmt.Sprintf("%.0f %% of the image height to the nearest edge (A), which others call %.0f %% (B)", 100*o.EdgeOffset, 100*o.FarOffset)}
	if o.OffsetFits == nil {
		offset.Text += ": look it up in the data sheet"
		offset.Mark = string(fit.Tight)
	} else {
		offset.Mark = mark(*o.OffsetFits)
		if !*o.OffsetFits {
			offset.Text += fmt.Sprintf("; it can do %.0f to %.0f %% (A)", 100*j.Offset[0], 100*j.Offset[1])
		}
	}
	out = append(out, offset)
	if o.SideShift > 0.001 {
		out = append(out, Figure{Term: "Sideways shift it takes", Rule: "shift", Mark: mark(o.SideFits), Text: fmt.Sprintf("%.0f %% of the image width", 100*o.SideShift)})
	}
	return append(out, Figure{Term: "Left out", Text: "two projectors, tilted ones, keystone correction"})
}

func (w pen) light(j spec.Projector, r build.Report) []Figure {
	o := r.Projector
	out := []Figure{
		{Term: "White", Text: fmt.Sprintf("%.0f cd/m² (%.0f fL) with all of %s lumens", o.Luminance, o.FootLambert, trim(j.Lumens)), Rule: "luminance"},
		{Term: "In use", Text: fmt.Sprintf("%.0f to %.0f cd/m²", o.Used[0], o.Used[1]), Rule: "luminance"},
		{Term: "A cinema", Text: fmt.Sprintf("48 cd/m², which takes %.0f lumens here", math.Ceil(o.CinemaLumens)), Rule: "cinema", Mark: mark(o.Used[0] >= projector.CinemaWhite)},
	}
	if o.Stray > 0 {
		out = append(out, Figure{Term: "In your room light", Text: fmt.Sprintf("%.0f : 1 from white to black", math.Floor(o.Contrast)), Rule: "contrast"})
	}
	risk := "Its risk group is not in the plan: look at its label."
	if j.RiskGroup != "" {
		risk = j.RiskGroup + " on its label."
	}
	return append(out, Figure{Term: "Eyes", Text: risk + " Do not look into the beam.", Rule: "risk"})
}

func (w pen) image(r build.Report) []Figure {
	i := r.Image
	out := []Figure{
		{Term: "Size", Text: fmt.Sprintf("%s × %s", w.long(i.Width), w.long(i.Height)), Rule: "image"},
		{Term: "Bottom", Text: w.long(i.Bottom) + " above the floor", Rule: "border"},
		{Term: "A pixel", Text: fmt.Sprintf("%.1f mm", 1000*r.Projector.Pixel), Rule: "view"},
	}
	for _, v := range r.Screen.Views {
		out = append(out, Figure{Term: "From the " + v.Kind + " “" + v.Name + "”", Text: viewText(w, v), Rule: "view"})
	}
	return out
}

func viewText(w pen, v screen.View) string {
	text := fmt.Sprintf("%s away, %.0f° wide", w.long(v.Distance), v.Wide)
	if v.Aside > 1 {
		text += fmt.Sprintf(", %.0f° aside", v.Aside)
	}
	if v.Pixel > 0 {
		text += fmt.Sprintf(", a pixel is %.1f′", v.Pixel)
	}
	return text
}
