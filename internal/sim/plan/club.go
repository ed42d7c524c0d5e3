package plan

import (
	"strconv"
	"strings"

	"wideberth/internal/units"
)

// Kinds of club.
const (
	KindDriver = "driver"
	KindWood   = "wood"
	KindHybrid = "hybrid"
	KindIron   = "iron"
	KindWedge  = "wedge"
)

// clubFigures is one row of the default tables: what a club of this name
// usually is. inches is the length; lie, loft and launch are degrees; ball is
// m/s; spin rev/min.
type clubFigures struct {
	inches, lie, loft  float64
	ball, launch, spin float64
}

// defaultFigures gives the usual figures of a club of this kind and number.
//
// Lengths and lies are common practice with no standard behind them (trade
// tables; irons step 1/2 in and 1° a club from a 3-iron of 39 in and 58°). No
// body fixes a club's loft, length or lie. Lofts are common practice, no
// source.
//
// Ball speeds, launches and spins are for an amateur man's well-struck shot,
// which is who plays in such a room. The driver's speed and launch lie in the
// 58–61 m/s and 12–13° given from memory for amateur men, speed taken a little
// high because a harder ball is the harder test. No published set of amateur
// launches for the other clubs was found: their speeds are published tour means
// (7-iron 53.6 m/s, 9-iron 48.7, pitching wedge 45.6; the first read, the
// others from memory) times 0.82, the ratio of the driver speeds, with a launch
// 1–3° higher; lob wedge 31–36 m/s and 30–35° is common practice.
func defaultFigures(kind string, n int, hasNumber bool) clubFigures {
	switch kind {
	case KindDriver:
		return clubFigures{45.5, 58, 10.5, 62, 12.5, 2700}
	case KindWood:
		switch {
		case !hasNumber || n <= 3:
			return clubFigures{43, 57, 15, 58, 11, 3600}
		case n <= 5:
			return clubFigures{42.5, 57.5, 18, 55, 12.5, 4300}
		default:
			return clubFigures{42, 58, 21, 53, 14, 4700}
		}
	case KindHybrid:
		if !hasNumber {
			n = 4
		}
		n = min(max(n, 2), 6)
		d := float64(n - 4)
		return clubFigures{40.5 - 0.5*d, 59.5 + 0.5*d, 22 + 3*d, 51 - 2*d, 13.5 + 1.5*d, 4500 + 400*d}
	case KindIron:
		if !hasNumber {
			n = 7
		}
		n = min(max(n, 1), 9)
		d := float64(n - 7)
		// 7-iron 37 in, 62°, 34°; a long iron gains 1/2 in and loses 1° of lie
		// a club, and about 3.5° of loft.
		return clubFigures{37 - 0.5*d, 62 + d, 34 + 3.5*d, 44 - 2.1*d, 18 + 2.2*d, 6500 + 600*d}
	case KindWedge:
		// A wedge's number is its loft; a bare wedge is a pitching wedge.
		loft := 46.0
		if hasNumber {
			loft = min(max(float64(n), 40), 64)
		}
		d := loft - 46
		return clubFigures{35.75 - 0.04*d, 64, loft, 37.5 - 0.3*d, 26 + 0.6*d, 8500 + 50*d}
	}
	return clubFigures{}
}

// DefaultClub gives a club of a kind its usual length (m), lie and loft
// (degrees) and the ball it sends off. The number in the name decides: "7-iron",
// "5 wood", "56° wedge"; a wedge may also be called pitching, gap, sand or lob.
// An unknown kind gets no figures, and Validate says so. See defaultFigures for
// where the numbers come from.
func DefaultClub(kind, name string) Club {
	c := Club{Name: name, Kind: kind}
	n, ok := clubNumber(name)
	if kind == KindWedge && !ok {
		n, ok = wedgeLoft(name)
	}
	f := defaultFigures(kind, n, ok)
	if f.inches == 0 {
		return c
	}
	c.Length = roundTenthMM(f.inches * units.MetresPerInch)
	c.Lie, c.Loft = f.lie, f.loft
	c.Ball = &Ball{Speed: f.ball, Launch: f.launch, Spin: f.spin}
	return c
}

// clubNumber is the first whole number in a club's name.
func clubNumber(name string) (n int, ok bool) {
	start := strings.IndexAny(name, "0123456789")
	if start < 0 {
		return 0, false
	}
	end := start
	for end < len(name) && name[end] >= '0' && name[end] <= '9' {
		end++
	}
	n, err := strconv.Atoi(name[start:end])
	return n, err == nil
}

// wedgeLoft is the usual loft (degrees, common practice) of a wedge known by a
// word or its initials.
func wedgeLoft(name string) (int, bool) {
	for _, w := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r < 'a' || r > 'z' }) {
		switch w {
		case "pitching", "pw":
			return 46, true
		case "gap", "gw", "approach", "aw":
			return 51, true
		case "sand", "sw":
			return 56, true
		case "lob", "lw":
			return 60, true
		}
	}
	return 0, false
}
