package units

import (
	"strings"

	"wideberth/internal/lean/fmt"
)

// lengthTokens splits plain text into quantities: a number, perhaps with a
// fraction behind it, perhaps with a unit behind that; dashes and spaces between.
func lengthTokens(s string) ([]quantity, error) {
	var out []quantity
	for {
		s = strings.TrimLeft(s, " ")
		if len(out) > 0 && strings.HasPrefix(s, "-") {
			s = strings.TrimLeft(s[1:], " ")
			if s == "" {
				return nil, errOrder
			}
		}
		if s == "" {
			return out, nil
		}
		if len(out) == 3 {
			return nil, errOrder
		}
		q, rest, err := oneQuantity(s)
		if err != nil {
			return nil, err
		}
		out, s = append(out, q), rest
	}
}

// oneQuantity reads "71", "71 1/2 in", "11-1/2\"", "3/4", "1,80 m".
func oneQuantity(s string) (quantity, string, error) {
	number, rest := cutNumber(s)
	if number == "" {
		word := rest
		if i := strings.IndexAny(word, " 0123456789"); i > 0 {
			word = word[:i]
		}
		return quantity{}, "", fmt.Errorf("%s is not expected there", quoted(word))
	}
	var top, bottom string
	q := quantity{}
	if after, ok := strings.CutPrefix(strings.TrimLeft(rest, " "), "/"); ok {
		top, number = number, ""
		bottom, rest = cutNumber(strings.TrimLeft(after, " "))
		q.fraction = true
	} else if t, b, after, ok := cutFraction(rest); ok {
		top, bottom, rest = t, b, after
	}
	word, after := cutWord(rest)
	if word != "" {
		unit, ok := unitOf(word)
		if !ok {
			return quantity{}, "", fmt.Errorf("%s is not a unit", quoted(word))
		}
		q.unit, rest = unit, after
	}
	if number != "" {
		v, err := numberText(number, q.unit)
		if err != nil {
			return quantity{}, "", err
		}
		q.value = v
		q.whole = top == "" && !strings.ContainsAny(number, ".,")
	}
	if top != "" || q.fraction {
		v, err := fraction(top, bottom)
		if err != nil {
			return quantity{}, "", err
		}
		if strings.ContainsAny(number, ".,") {
			return quantity{}, "", errOrder // 1.5 1/2
		}
		q.value += v
	}
	return q, rest, nil
}

// cutNumber splits leading digits, points and commas from the rest.
func cutNumber(s string) (number, rest string) {
	i := 0
	for i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.' || s[i] == ',') {
		i++
	}
	return s[:i], s[i:]
}

// cutFraction reads " 1/2" or "-1/2" behind a whole number.
func cutFraction(s string) (top, bottom, rest string, ok bool) {
	t := strings.TrimLeft(s, " ")
	t = strings.TrimLeft(strings.TrimPrefix(t, "-"), " ")
	top, t = cutNumber(t)
	t, slash := strings.CutPrefix(strings.TrimLeft(t, " "), "/")
	if top == "" || !slash {
		return "", "", s, false
	}
	bottom, t = cutNumber(strings.TrimLeft(t, " "))
	return top, bottom, t, true
}

// cutWord reads a unit: one quote mark or a run of letters with an optional full stop.
func cutWord(s string) (word, rest string) {
	t := strings.TrimLeft(s, " ")
	if t == "" {
		return "", ""
	}
	if t[0] == '\'' || t[0] == '"' {
		return t[:1], t[1:]
	}
	i := 0
	for i < len(t) && (t[i] >= 'a' && t[i] <= 'z' || t[i] >= 0x80) {
		i++
	}
	if i == 0 {
		return "", s
	}
	return t[:i], strings.TrimPrefix(t[i:], ".")
}

// fraction reads whole numbers above and below the line; below, 2 to 64.
func fraction(top, bottom string) (float64, error) {
	if strings.ContainsAny(top+bottom, ".,") || top == "" || bottom == "" {
		return 0, fmt.Errorf("%s/%s is not a fraction", top, bottom)
	}
	a, errA := numberText(top, 0)
	b, errB := numberText(bottom, 0)
	if errA != nil || errB != nil || b < 2 || b > 64 || a >= b {
		return 0, fmt.Errorf("%s/%s is not a fraction of an inch", top, bottom)
	}
	return a / b, nil
}
