package plan

import (
	"slices"

	"wideberth/internal/units"
)

// Usual is the length (m) that is usual for a field: as many metres, or in a
// plan in feet and inches as many inches, so that it reads as a round figure. It
// is rounded to 0.1 mm, as links keep it.
func Usual(system string, metres, inches float64) float64 {
	if system == units.Metric {
		return metres
	}
	return roundTenthMM(inches * units.MetresPerInch)
}

// The defaults (m) that are round in the units of the plan.

// defaultMargin is about a hand's length; a choice, not a standard.
func (p Plan) defaultMargin() float64 { return Usual(p.Units, 0.15, 6) }

// defaultSeatRadius is a seated person with elbows; common practice, no source.
func (p Plan) defaultSeatRadius() float64 { return Usual(p.Units, 0.35, 14) }

// defaultMatSide is a usual square hitting mat; common practice, no source.
func (p Plan) defaultMatSide() float64 { return Usual(p.Units, 1.5, 60) }

// Other defaults of fields that may be left out. Lengths are metres.
const (
	DefaultShoe = 0.025 // sole of a golf or sports shoe, 1 in; common practice, no source

	// defaultTeeToScreen is how far short of the screen the ball lies when the
	// plan says nothing: 10 ft, a usual least distance; common practice, no source.
	defaultTeeToScreen = 3.05
	// defaultTeeFromBack is the least room kept behind a ball for the backswing
	// when the room is too short for defaultTeeToScreen.
	defaultTeeFromBack = 2.0
)

// Hand is the hand that a player swings with: a right-hander's target is to their
// left.
type Hand string

// The hands.
const (
	HandRight Hand = "right"
	HandLeft  Hand = "left"
)

// Wall is one of the upright walls, as somebody sees them who looks to the target.
type Wall string

// The walls.
const (
	WallLeft  Wall = "left"
	WallRight Wall = "right"
	WallFront Wall = "front"
	WallBack  Wall = "back"
)

// Side reports whether it is a side wall: what slopes down at it slopes along y.
func (w Wall) Side() bool { return w == WallLeft || w == WallRight }

// Words that a plan uses.
const (
	SexMan, SexWoman = "man", "woman"

	TurnCompact, TurnFull, TurnLong = "compact", "full", "long"

	PlaneUpright, PlaneNeutral, PlaneFlat = "upright", "neutral", "flat"

	FollowHeld, FollowFull, FollowLoose = "held", "full", "loose"

	CoverFoam, CoverCloth = "foam", "cloth"

	SkillSteady, SkillAverage, SkillWild = "steady", "average", "wild"
)

// DefaultAir is 20 °C at sea level.
func DefaultAir() Air { return Air{Temperature: 20} }

// WithDefaults returns a copy in which every optional field that was left out
// (zero, empty or nil) has its default: imperial units, a margin of 6 in or
// 150 mm, one tee in the middle of the width, each club's figures from
// DefaultClub, right hand, full turn and follow-through, neutral plane, average
// skill, DefaultShoe, a seat of 14 in or 350 mm to each side, a mat 5 ft or 1.5 m
// square, DefaultAir. A span or arm of zero stays
// zero: it is guessed from the height where the body is built; so do ballToToes
// and ballToHands, which are worked out where the swing is. A missing screen
// stays missing. The copy shares nothing with p, and filling it again changes
// nothing.
func (p Plan) WithDefaults() Plan {
	if p.Version == 0 {
		p.Version = Version
	}
	orWord(&p.Units, units.Imperial)
	orNumber(&p.Margin, p.defaultMargin())
	p.Room.Slopes = list(p.Room.Slopes)
	p.Room.Solids = list(p.Room.Solids)
	p.Floor.Layers = list(p.Floor.Layers)
	if m := own(&p.Floor.Mat); m != nil {
		orNumber(&m.Length, p.defaultMatSide())
		orNumber(&m.Width, p.defaultMatSide())
	}
	own(&p.Screen)
	p.Tees = list(p.Tees)
	if len(p.Tees) == 0 {
		p.Tees = []Tee{p.defaultTee()}
	}
	p.Clubs = list(p.Clubs)
	for i := range p.Clubs {
		c := &p.Clubs[i]
		d := DefaultClub(c.Kind, c.Name)
		orNumber(&c.Length, d.Length)
		orNumber(&c.Lie, d.Lie)
		orNumber(&c.Loft, d.Loft)
		if b := own(&c.Ball); b == nil {
			c.Ball = d.Ball
		} else if d.Ball != nil {
			orNumber(&b.Speed, d.Ball.Speed) // launch and spin may be zero
		}
	}
	p.Players = list(p.Players)
	for i := range p.Players {
		v := &p.Players[i]
		orWord(&v.Hand, HandRight)
		orWord(&v.Turn, TurnFull)
		orWord(&v.Plane, PlaneNeutral)
		orWord(&v.Follow, FollowFull)
		orWord(&v.Skill, SkillAverage)
		orNumber(&v.Shoe, DefaultShoe)
		v.Clubs = list(v.Clubs)
		v.Tees = list(v.Tees)
	}
	p.Hung = list(p.Hung)
	p.Seats = list(p.Seats)
	for i := range p.Seats {
		orNumber(&p.Seats[i].Radius, p.defaultSeatRadius())
	}
	own(&p.Sensor)
	if own(&p.Air) == nil {
		air := DefaultAir()
		p.Air = &air
	}
	return p
}

// defaultTee is in the middle of the width, defaultTeeToScreen short of the
// screen (or of the front wall), or in a short room as near to
// defaultTeeFromBack from the back wall as half the depth allows.
func (p Plan) defaultTee() Tee {
	end := p.Room.Length
	if p.Screen != nil {
		end = p.Screen.X
	}
	x := max(end-defaultTeeToScreen, min(defaultTeeFromBack, end/2))
	return Tee{Name: "middle", X: roundTenthMM(x), Y: roundTenthMM(p.Room.Width / 2)}
}

// orWord fills an empty word.
func orWord[T ~string](s *T, d T) {
	if *s == "" {
		*s = d
	}
}

// orNumber fills a number that is zero.
func orNumber(v *float64, d float64) {
	if *v == 0 {
		*v = d
	}
}

// list copies a list; an empty one becomes nil, so that plans compare equal
// after a trip through JSON.
func list[T any](s []T) []T {
	if len(s) == 0 {
		return nil
	}
	return slices.Clone(s)
}

// own replaces what a pointer points at by a copy and returns the copy, or nil.
func own[T any](p **T) *T {
	if *p != nil {
		v := **p
		*p = &v
	}
	return *p
}
