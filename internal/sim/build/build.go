package build

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/build/floor"
	"wideberth/internal/sim/build/projector"
	"wideberth/internal/sim/build/quantity"
	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/sim/swing"
)

// room is a plan on its way to a Report.
type room struct {
	lab   *fit.Lab
	given plan.Checked
	plan  plan.Plan
	spec  spec.Spec
	casts []fit.Cast
	out   Report
}

// Part is what is asked for: a sheet shows one, and need not wait for the other.
type Part uint8

// The parts of a report.
const (
	Floors  Part = 1 << iota // floor, putting, sensor, walls, sound, quantities
	Light                    // projector
	Lens                     // the projector without where else it may hang, soon enough for a drag
	Amounts                  // quantities alone, for which nobody swings
	All     = Floors | Light
)

// Room answers for a plan, as much of it as is asked for. The error is the plan's own
// sentence, or that of its members projector and build. The same plan gives the same
// report.
func Room(l *fit.Lab, given plan.Checked, of Part) (Report, error) {
	s, err := spec.Of(given)
	if err != nil {
		return Report{}, err
	}
	r := room{lab: l, given: given, plan: given.Plan(), spec: s}
	if of&(Floors|Light|Lens) != 0 {
		if r.casts, err = l.Casts(r.plan, nil, nil); err != nil {
			return Report{}, err
		}
	}
	r.out.Cautions, r.out.Rules, r.out.Notes = cautions, rules, []string{}
	if r.out.Image, err = ImageOf(r.plan, s); err != nil {
		return Report{}, err
	}
	if r.out.Image.Cut {
		r.note("The image does not fit where it was wanted: it is made smaller or moved so that it lies on the cloth.")
	}
	columns := 0.0
	if s.Projector != nil {
		columns = s.Projector.Columns
	}
	r.out.Screen.Views = screen.Views(r.plan, r.out.Image, columns)
	parts := []func() error{}
	if of&(Light|Lens) != 0 {
		parts = append(parts, r.projector)
	}
	if of&Light != 0 {
		parts = append(parts, r.region)
	}
	if of&(Floors|Amounts) != 0 {
		parts = append(parts, r.floor)
	}
	if of&Floors != 0 {
		parts = append(parts, r.aroundScreen, r.tryStacks, r.sensor, r.walls, r.sound)
	}
	if of&(Floors|Amounts) != 0 {
		parts = append(parts, r.quantities)
	}
	for _, part := range parts {
		if err := part(); err != nil {
			return Report{}, err
		}
	}
	return r.out, nil
}

// ImageOf is where the image lies: the plan's own, or the largest of a usual aspect.
func ImageOf(p plan.Plan, s spec.Spec) (screen.Image, error) {
	aspect, want := 1.6, spec.Image{}
	if j := s.Projector; j != nil {
		aspect, want = j.Aspect, *j.Image
	}
	i := screen.Place(screen.OpeningOf(p, s.Build.Enclosure), aspect, want)
	if i.Width <= 0 {
		return i, &plan.FieldError{Field: "build.enclosure", Message: "enclosure: padding, sill and border leave nothing of the screen for an image"}
	}
	return i, nil
}

func (r *room) note(format string, args ...any) {
	r.out.Notes = append(r.out.Notes, fmt.Sprintf(format, args...))
}

// shots is how many balls of each pair are flown to find the bare hard places.
const shots = 60

func (r *room) aroundScreen() error {
	p := r.plan
	s := &r.out.Screen
	s.Hard = []ball.Pad{}
	if p.Screen == nil {
		r.note("The plan has no screen: the image is put on the front wall.")
		return nil
	}
	a := screen.AroundOf(p)
	s.Around = &a
	var all []ball.Outcome
	for _, q := range ball.Pairs(p, nil) {
		all = append(all, ball.Spread(p, q.Player, q.Club, q.Tee, q.HeadSpeed, shots))
	}
	s.Hard = ball.Pads(all)
	return nil
}

func (r *room) projector() error {
	j := r.spec.Projector
	if j == nil {
		return nil
	}
	p, i := r.plan, r.out.Image
	light := projector.Pyramid{Lens: projector.Point(j.Lens), Image: i}
	h, inPlan := projector.Itself(p, *j)
	check := remedy.Thing(p, r.casts, h)
	area := i.Width * i.Height
	edge, far := projector.Offsets(j.Lens[2], i.Bottom, i.Height)
	out := &Projector{
		Throw:      Throw{Least: j.ThrowRatio[0] * i.Width, Most: j.ThrowRatio[1] * i.Width, Is: light.Throw()},
		Angle:      screen.Degrees(projector.Angle(light.Throw() / i.Width)),
		EdgeOffset: edge, FarOffset: far, SideShift: math.Abs(i.Centre-j.Lens[1]) / i.Width,
		Luminance:    projector.Luminance(j.Lumens, j.Gain, area),
		Stray:        projector.Stray(j.RoomLight, j.Gain),
		CinemaLumens: projector.CinemaWhite * math.Pi * area / j.Gain,
		Pixel:        i.Width / j.Columns,
		Clearance:    check.Clearance, Verdict: check.Verdict, Nearest: check.Player + ", " + check.Club + ", " + check.Tee,
		Case: Box{h.Min, h.Max}, Name: h.Name, InPlan: inPlan, Inside: inside(p, h),
		Blocked: projector.InTheWay(p, light, h.Name),
	}
	// A millimetre is forgiven, which is what a plan in round inches is off by.
	const hair = 1e-3
	out.Throw.Fits = out.Throw.Is >= out.Throw.Least-hair && out.Throw.Is <= out.Throw.Most+hair
	out.SideFits = out.SideShift*i.Width <= j.SideShift*i.Width+hair
	if len(j.Offset) == 2 {
		fits := edge >= j.Offset[0]-hair && edge <= j.Offset[1]+hair
		out.OffsetFits = &fits
	}
	out.FootLambert = out.Luminance / projector.FootLambert
	out.Used = [2]float64{out.Luminance * projector.UsedLeast, out.Luminance * projector.UsedMost}
	if out.Stray > 0 {
		out.Contrast = (out.Used[0] + out.Stray) / out.Stray
	}
	out.Region = []projector.Column{}
	out.Shadow = projector.Shadows(p, r.casts, light)
	out.Unshaded = j.Mount == spec.MountRear || projector.Unshaded(p, r.casts, light)
	r.out.Projector = out
	return nil
}

// region finds where else the lens may hang.
func (r *room) region() (err error) {
	if j := r.spec.Projector; j != nil {
		r.out.Projector.Region, err = projector.Region(r.lab, r.given, r.casts, *j, r.out.Image)
	}
	return err
}

// inside is whether a case lies within walls and ceiling, slopes included.
func inside(p plan.Plan, h plan.Hung) bool {
	r := p.Room
	const hair = 1e-3
	if h.Min[0] < -hair || h.Min[1] < -hair || h.Min[2] < -hair || h.Max[0] > r.Length+hair || h.Max[1] > r.Width+hair {
		return false
	}
	for _, x := range [2]float64{h.Min[0], h.Max[0]} {
		for _, y := range [2]float64{h.Min[1], h.Max[1]} {
			if h.Max[2] > r.CeilingAt(x, y)+hair {
				return false
			}
		}
	}
	return true
}

func (r *room) sound() error {
	p, b := r.plan, r.spec.Build
	size := p.Room
	floorArea := size.Length * size.Width
	walls := 2 * (size.Length + size.Width) * size.Height
	s := &r.out.Sound
	s.Bands = quantity.Bands()
	volume := floorArea * size.Height
	bare := []quantity.Surface{{Material: b.Finish.Walls, Area: walls}, {Material: b.Finish.Ceiling, Area: floorArea}, {Material: spec.Concrete, Area: floorArea}}
	s.Before = quantity.Reverberation(volume, bare)
	covered := r.out.Floor.Covers.Area()
	after := []quantity.Surface{
		{Material: b.Finish.Walls, Area: max(0, walls-b.Finish.Absorber)}, {Material: b.Finish.Ceiling, Area: floorArea},
		{Material: spec.Concrete, Area: floorArea - covered}, {Material: spec.CarpetOnSolid, Area: covered},
		{Material: spec.HeavyVelour, Area: b.Finish.Absorber},
	}
	s.After = quantity.Reverberation(volume, after)
	return nil
}

// mats are where mats lie: one for each tee and each hand that plays from it, about
// the feet of the first player of that hand with their first club.
func (r *room) mats() ([]floor.Rect, error) {
	type side struct {
		tee  string
		hand plan.Hand
	}
	out := []floor.Rect{}
	seen := map[side]bool{}
	for _, pl := range r.plan.Players {
		for _, tee := range r.plan.TeesOf(pl) {
			at := side{tee.Name, pl.Hand}
			if seen[at] {
				continue
			}
			seen[at] = true
			f, err := projector.MemberFilm(r.plan, pl, r.plan.ClubsOf(pl)[0], tee, swing.Variation{})
			if err != nil {
				return nil, err
			}
			if box, ok := f.Mat(r.plan); ok {
				out = append(out, floor.Rect{X0: box.Min.X, Y0: box.Min.Y, X1: box.Max.X, Y1: box.Max.Y})
			}
		}
	}
	return out, nil
}
