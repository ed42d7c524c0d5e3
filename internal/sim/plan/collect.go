package plan

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/units"
)

// collector gathers problems in document order.
type collector struct {
	imperial bool // add feet and inches to ranges of length
	found    []*FieldError
}

func (c *collector) addf(field, format string, args ...any) {
	c.found = append(c.found, fieldErrorf(field, format, args...))
}

// length checks a length in metres; who is what the sentence starts with, such
// as `player "Host": ` or `room: `.
func (c *collector) length(field, who, what string, v float64, r span) bool {
	if c.number(field, who, what, v, r, " m") {
		return true
	}
	if c.imperial {
		last := c.found[len(c.found)-1]
		last.Message += fmt.Sprintf(" (%s to %s)", units.LabelFeet(r.lo), units.LabelFeet(r.hi))
	}
	return false
}

// number checks a number; unit is written after it, with its space if it has one. NaN and infinities are
// outside every range.
func (c *collector) number(field, who, what string, v float64, r span, unit string) bool {
	if v >= r.lo && v <= r.hi {
		return true
	}
	c.addf(field, "%s%s %s%s is outside %s–%s%s", who, what, shortNumber(v), unit, shortNumber(r.lo), shortNumber(r.hi), unit)
	c.outside(who, v, r)
	return false
}

// optional is length or number for a field whose zero means "not given".
func (c *collector) optional(field, who, what string, v float64, r span, unit string) {
	if v == 0 {
		return
	}
	if unit == " m" {
		c.length(field, who, what, v, r)
		return
	}
	c.number(field, who, what, v, r, unit)
}

// word checks a choice; the sentence offers the choices in the order given.
func (c *collector) word(field, who, what, v string, choices ...string) {
	if !slices.Contains(choices, v) {
		c.addf(field, "%s%s %s is not one of %s", who, what, strconv.Quote(fmt.Clip(v)), strings.Join(choices, ", "))
	}
}

// line checks a text that is nobody's name.
func (c *collector) line(field, what, text string, most int) {
	if utf8.RuneCountInString(text) > most || hasControl(text) || strings.ContainsFunc(text, hidden) {
		c.addf(field, "%s must be one line of at most %d characters, none of them hidden", what, most)
	}
}

// count checks the length of a list.
func (c *collector) count(field string, n, most int) {
	if n > most {
		c.addf(field, "%s: %d are too many; a plan holds at most %d", field, n, most)
	}
}

// box checks the two corners of a thing in the room.
func (c *collector) box(field, who string, lo, hi [3]float64) {
	for i, axis := range [3]string{"x", "y", "z"} {
		a := c.length(fmt.Sprintf("%s.min[%d]", field, i), who, "least "+axis, lo[i], rangeCoordinate)
		b := c.length(fmt.Sprintf("%s.max[%d]", field, i), who, "greatest "+axis, hi[i], rangeCoordinate)
		if a && b && lo[i] >= hi[i] {
			c.order(fmt.Sprintf("%s.max[%d]", field, i), who, axis, lo[i], hi[i])
		}
	}
}

// order tells of a thing that ends before it starts.
func (c *collector) order(field, who, axis string, lo, hi float64) {
	c.addf(field, "%sgreatest %s %s must be more than least %s %s", who, axis, c.size(hi), axis, c.size(lo))
	c.outside(who, hi, span{lo, rangeCoordinate.hi})
}

// outside notes the range that the last sentence is about.
func (c *collector) outside(who string, v float64, r span) {
	c.found[len(c.found)-1].Range = &Range{who, v, r.lo, r.hi}
}

// size writes a length for a sentence, in the document's metres and before them in
// what people of the plan read.
func (c *collector) size(v float64) string {
	if c.imperial && v-v == 0 { // neither NaN nor infinite
		return fmt.Sprintf("%s (%s m)", units.LabelFeet(v), shortNumber(v))
	}
	return shortNumber(v) + " m"
}

// names checks that names are there, short, on one line and different from one
// another, case aside. Lists whose names must not meet share one.
type names struct {
	seen map[string]string // folded name → what holds it
}

func newNames(reserved ...string) names {
	n := names{seen: map[string]string{}}
	for _, r := range reserved {
		n.seen[r] = "the room itself"
	}
	return n
}

func (n names) check(c *collector, field, kind, name string, i int) {
	at := field + ".name"
	folded := strings.ToLower(strings.TrimSpace(strings.Map(func(r rune) rune {
		if r == 0x200c || r == 0x200d || r >= 0xfe00 && r <= 0xfe0f { // joiners, and how a sign is drawn
			return -1
		}
		return r
	}, name)))
	switch {
	case folded == "":
		c.addf(at, "%s %d needs a name", kind, i+1)
		return
	case utf8.RuneCountInString(name) > maxName:
		c.addf(at, "%s %d: the name %s has more than %d characters", kind, i+1, strconv.Quote(fmt.Clip(name)), maxName)
		return
	case hasControl(name):
		c.addf(at, "%s %d: the name %s must be plain text on one line", kind, i+1, strconv.Quote(fmt.Clip(name)))
		return
	case strings.ContainsFunc(name, hidden):
		c.addf(at, "%s %d: the name %s holds a character that nobody sees", kind, i+1, strconv.QuoteToASCII(name))
		return
	}
	if holder, taken := n.seen[folded]; taken {
		c.addf(at, "%s %d: the name %s is already used by %s", kind, i+1, strconv.Quote(name), holder)
		return
	}
	n.seen[folded] = fmt.Sprintf("%s %d", kind, i+1)
}

// hidden is true of characters that nobody sees or that turn the text about them: soft
// hyphens, marks of direction, spaces of no width, fillers. Joiners, without which some
// scripts and signs are written wrong, are none, if something is there to join.
func hidden(r rune) bool {
	switch r {
	case 0x00ad, 0x034f, 0x061c, 0x115f, 0x1160, 0x180e, 0x200b, 0x200e, 0x200f, 0x3164, 0xfeff, 0xffa0:
		return true
	}
	return r >= 0x202a && r <= 0x202e || r >= 0x2060 && r <= 0x206f || r >= 0xe0000 && r <= 0xe007f
}

func hasControl(s string) bool { return strings.ContainsFunc(s, fmt.IsControl) }

// who starts a sentence about a named thing, or about its place in the list
// when it has no name.
func who(kind, name string, i int) string {
	if strings.TrimSpace(name) == "" {
		return fmt.Sprintf("%s %d: ", kind, i+1)
	}
	return fmt.Sprintf("%s %s: ", kind, strconv.Quote(fmt.Clip(name)))
}

// shortNumber writes a number for a sentence: at most four decimals.
func shortNumber(v float64) string {
	if a := max(v, -v); a >= 1e7 || (a > 0 && a < 1e-4) {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	s := strconv.FormatFloat(v, 'f', 4, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
