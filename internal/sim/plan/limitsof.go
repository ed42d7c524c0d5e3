package plan

import (
	"reflect"
	"wideberth/internal/lean/json"

	"wideberth/internal/units"
)

// Limits checks a part of the plan that another package reads (Plan.Projector,
// Plan.Build), with the sentences of the plan's own fields. A who is what a sentence
// starts with, such as "projector: ".
type Limits struct{ c collector }

// NewLimits starts with nothing found. system is the plan's units.
func NewLimits(system string) *Limits {
	return &Limits{collector{imperial: system == units.Imperial}}
}

// Length checks a length in metres.
func (l *Limits) Length(field, who, what string, v, least, most float64) bool {
	return l.c.length(field, who, what, v, span{least, most})
}

// Coordinate checks a place in the room, m: things may stick out of it a little.
func (l *Limits) Coordinate(field, who, what string, v float64) bool {
	return l.c.length(field, who, what, v, rangeCoordinate)
}

// Number checks a number; unit is written after it, with its space if it has one.
func (l *Limits) Number(field, who, what string, v, least, most float64, unit string) bool {
	return l.c.number(field, who, what, v, span{least, most}, unit)
}

// Word checks a choice.
func (l *Limits) Word(field, who, what, v string, choices ...string) {
	l.c.word(field, who, what, v, choices...)
}

// Count checks the length of a list.
func (l *Limits) Count(field string, n, most int) { l.c.count(field, n, most) }

// Box checks the two corners of a thing in the room.
func (l *Limits) Box(field, who string, low, high [3]float64) { l.c.box(field, who, low, high) }

// Order checks that the second of two numbers is no less than the first.
func (l *Limits) Order(field, who, what string, low, high float64) {
	if !(low <= high) {
		l.c.addf(field, "%s%s: the second, %s, must not be less than the first, %s", who, what, shortNumber(high), shortNumber(low))
	}
}

// Name checks a name: there, short, and on one line.
func (l *Limits) Name(field, kind, name string, i int) {
	newNames().check(&l.c, field, kind, name, i)
}

// Line checks a text that is nobody's name, as the plan's title.
func (l *Limits) Line(field, what, text string) { l.c.line(field, what, text, maxTitle) }

// Say adds a sentence about a field.
func (l *Limits) Say(field, format string, args ...any) { l.c.addf(field, format, args...) }

// Err is the first thing found, a *FieldError, or nil.
func (l *Limits) Err() error {
	if len(l.c.found) == 0 {
		return nil
	}
	return l.c.found[0]
}

// Group reads a part of the plan that is carried as it was written into the struct
// that into points at: unknown fields, missing ones and wrong types are *FieldErrors
// by their path, as everywhere in the plan.
func Group(tree any, path string, into any) error {
	if err := checkValue(tree, reflect.TypeOf(into).Elem(), path); err != nil {
		return err
	}
	return json.Fill(tree, into)
}
