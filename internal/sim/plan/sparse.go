package plan

import (
	"reflect"
	"slices"

	"wideberth/internal/units"
)

// Sparse is the plan as a link keeps it: every number rounded to four decimals
// (0.1 mm), and what WithDefaults would fill in again left out. The copy shares
// nothing with p.
func (p Plan) Sparse() Plan {
	p = p.WithDefaults()
	roundNumbers(reflect.ValueOf(&p))
	drop(&p.Margin, p.defaultMargin())
	if m := p.Floor.Mat; m != nil {
		drop(&m.Length, p.defaultMatSide())
		drop(&m.Width, p.defaultMatSide())
	}
	if slices.Equal(p.Tees, []Tee{p.defaultTee()}) {
		p.Tees = nil
	}
	for i := range p.Clubs {
		c := &p.Clubs[i]
		d := DefaultClub(c.Kind, c.Name)
		drop(&c.Length, d.Length)
		drop(&c.Lie, d.Lie)
		drop(&c.Loft, d.Loft)
		switch {
		case c.Ball == nil || d.Ball == nil:
		case *c.Ball == *d.Ball:
			c.Ball = nil
		default:
			drop(&c.Ball.Speed, d.Ball.Speed)
		}
	}
	for i := range p.Players {
		v := &p.Players[i]
		drop(&v.Hand, HandRight)
		drop(&v.Turn, TurnFull)
		drop(&v.Plane, PlaneNeutral)
		drop(&v.Follow, FollowFull)
		drop(&v.Skill, SkillAverage)
		drop(&v.Shoe, DefaultShoe)
	}
	for i := range p.Seats {
		drop(&p.Seats[i].Radius, p.defaultSeatRadius())
	}
	if *p.Air == DefaultAir() {
		p.Air = nil
	}
	drop(&p.Units, units.Imperial) // last: other defaults go by it
	return p
}

// drop empties a value that is what it would be without it.
func drop[T comparable](v *T, usual T) {
	if *v == usual {
		var none T
		*v = none
	}
}

// roundNumbers rounds every number that can be reached from v.
func roundNumbers(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(roundTenthMM(v.Float()))
	case reflect.Pointer:
		if !v.IsNil() {
			roundNumbers(v.Elem())
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			roundNumbers(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			roundNumbers(v.Field(i))
		}
	}
}
