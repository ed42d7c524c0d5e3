package wire

// Flight is the ball after impact. The zero value shows none.
type Flight struct {
	Trail   []Moment // in order of time
	Touches []Touch  // in order of time
	Fan     []Ray    // how it would go at other launch angles, with its own last
}

// Moment is where the ball's centre is at one time (s into the swing); in
// between it goes straight on.
type Moment struct {
	Time float32
	At   Vec
}

// Touch is where the ball meets something.
type Touch struct {
	Time    float32 // s into the swing
	At      Vec     // on the surface
	Normal  Vec     // unit, towards the ball
	Surface string
}

// Ray is one launch angle of the fan: the ball's centre from tee to what it
// meets first.
type Ray struct {
	Label  string // "15°"
	Points []Vec
}

// BallAt is where the ball's centre is t seconds into the swing: on the tee
// until it is struck, at the end of its trail when that is over.
func (s *Recording) BallAt(t float64) Vec {
	trail := s.Flight.Trail
	if len(trail) == 0 || t <= float64(trail[0].Time) {
		return s.Ball
	}
	lo, hi := 0, len(trail)-1
	if t >= float64(trail[hi].Time) {
		return trail[hi].At
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; float64(trail[mid].Time) <= t {
			lo = mid
		} else {
			hi = mid
		}
	}
	a, b := trail[lo], trail[hi]
	k := float32(1)
	if b.Time > a.Time {
		k = (float32(t) - a.Time) / (b.Time - a.Time)
	}
	var at Vec
	for i := range at {
		at[i] = a.At[i] + k*(b.At[i]-a.At[i])
	}
	return at
}

func (w *writer) flight(table *stringTable, f *Flight) {
	w.u32(len(f.Trail))
	for _, m := range f.Trail {
		w.f32(m.Time)
		w.vec(m.At)
	}
	touches := f.Touches[:min(len(f.Touches), 255)]
	w.u8(len(touches))
	for _, t := range touches {
		w.f32(t.Time)
		w.vec(t.At)
		w.vec(t.Normal)
		w.u16(table.index(t.Surface))
	}
	fan := f.Fan[:min(len(f.Fan), 255)]
	w.u8(len(fan))
	for _, r := range fan {
		w.u16(table.index(r.Label))
		points := r.Points[:min(len(r.Points), 65535)]
		w.u16(len(points))
		for _, p := range points {
			w.vec(p)
		}
	}
}

func (r *reader) flight() Flight {
	var f Flight
	f.Trail = make([]Moment, r.count(r.u32(), 16, "moments of the ball"))
	for i := range f.Trail {
		f.Trail[i] = Moment{r.f32(), r.vec()}
		if i > 0 && f.Trail[i].Time < f.Trail[i-1].Time {
			r.fail("time of the ball")
		}
	}
	f.Touches = make([]Touch, r.count(r.u8(), 30, "touches of the ball"))
	for i := range f.Touches {
		f.Touches[i] = Touch{r.f32(), r.vec(), r.vec(), r.string()}
		if i > 0 && f.Touches[i].Time < f.Touches[i-1].Time {
			r.fail("time of a touch")
		}
	}
	f.Fan = make([]Ray, r.count(r.u8(), 4, "rays"))
	for i := range f.Fan {
		f.Fan[i].Label = r.string()
		f.Fan[i].Points = make([]Vec, r.count(r.u16(), 12, "points of a ray"))
		for j := range f.Fan[i].Points {
			f.Fan[i].Points[j] = r.vec()
		}
	}
	return f
}
