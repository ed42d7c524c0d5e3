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
	Floors Part = 1 << iota // floor, putting, sensor, walls, sound, quantities
	Light                   // projector
	All    = Floors | Light
)

// Room answers for a plan, as much of it as is asked for. The error is the plan's own sentence, or that of its
// members projector and build. The same plan gives the same report.
func Room(l *fit.Lab, given plan.Checked, of Part) (Report, error) {
	s, err := spec.Of(given)
	if err != nil {
		return Report{}, err
	}
	r := room{lab: l, given: given, plan: given.Plan(), spec: s}
	if r.casts, err = l.Casts(r.plan, nil, nil); err != nil {
		return Report{}, err
	}
	r.out.Cautions, r.out.Rules, r.out.Notes = cautions, rules, []string{}
	aspect, want, columns := 1.6, spec.Image{}, 0.0
	if j := s.Projector; j != nil {
		aspect, want, columns = j.Aspect, *j.Image, j.Columns
	}
	r.out.Image = screen.Place(screen.OpeningOf(r.plan, s.Build.Enclosure), aspect, want)
	if r.out.Image.Width <= 0 {
		return Report{}, &plan.FieldError{Field: "build.enclosure", Message: "enclosure: padding, sill and border leave nothing of the screen for an image"}
	}
	if r.out.Image.Cut {
		r.note("The image does not fit where it was wanted: it is made smaller or moved so that it lies on the cloth.")
	}
	r.out.Screen.Views = screen.Views(r.plan, r.out.Image, columns)
	if of&Light != 0 {
		if err := r.projector(); err != nil {
			return Report{}, err
		}
	}
	if of&Floors != 0 {
		r.aroundScreen()
		for _, part := range []func() error{r.floor, r.sensor, r.walls} {
			if err := part(); err != nil {
				return Report{}, err
			}
		}
		r.sound()
		r.quantities()
	}
	return r.out, nil
}

func (r *room) note(format string, args ...any) {
	r.out.Notes = append(r.out.Notes, fmt.Sprintf(format, args...))
}

// shots is how many balls of each pair are flown to find the bare hard places.
const shots = 60

func (r *room) aroundScreen() {
	p := r.plan
	s := &r.out.Screen
	s.Hard = []ball.Pad{}
	if p.Screen == nil {
		r.note("The plan has no screen: the image is put on the front wall.")
		return
	}
	a := screen.AroundOf(p)
	s.Around = &a
	var all []ball.Outcome
	for _, q := range ball.Pairs(p, nil) {
		all = append(all, ball.Spread(p, q.Player, q.Club, q.Tee, q.HeadSpeed, shots))
	}
	s.Hard = ball.Pads(all)
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
	var err error
	out.Shadow = projector.Shadows(p, r.casts, light)
	if out.Region, err = projector.Region(r.lab, r.given, r.casts, *j, i); err != nil {
		return err
	}
	out.Unshaded = j.Mount == spec.MountRear || projector.Unshaded(p, r.casts, light)
	r.out.Projector = out
	return nil
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

func (r *room) sound() {
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
}

// mats are where mats lie: one for each tee and each hand that plays from it, about
// the feet of the first player of that hand with their first club.
func (r *room) mats() (out []floor.Rect) {
	type side struct {
		tee  string
		hand plan.Hand
	}
	seen := map[side]bool{}
	for _, c := range r.casts {
		for _, tee := range r.plan.TeesOf(c.Player) {
			at := side{tee.Name, c.Player.Hand}
			if seen[at] {
				continue
			}
			seen[at] = true
			if box, ok := projector.FilmOf(r.plan, c, tee).Mat(r.plan); ok {
				out = append(out, floor.Rect{X0: box.Min.X, Y0: box.Min.Y, X1: box.Max.X, Y1: box.Max.Y})
			}
		}
	}
	return out
}
