package fuzzed

import (
	"math/rand/v2"
	"strings"
)

// odd is what stands in a mutated text for what was there.
var odd = []string{
	"0", "-0", "-1", "1e308", "1e-400", "1e400", "NaN", "null", "true", `""`, `"6 ft"`, `"\u202e"`, `"\ud800"`, "[]", "{}", "[[[[", "}}}}", `"`, `\`, ",", ":",
	"\x00", "\ufeff", "\xff", "é", "e\u0301", "🏌", "%00", "..", "&", "#p=", "<b>", "0.01", "1.5", "3", "12", "99", `"version":1`, `"clubs":[]`, `"tees":null`,
}

// Text is a text with one to four faults in it: bytes that are others, parts that are
// gone, twice there or elsewhere, odd words, numbers that are others.
func Text(rnd *rand.Rand, text string) string {
	for range 1 + rnd.IntN(4) {
		if text == "" {
			return text
		}
		from := rnd.IntN(len(text))
		to := min(len(text), from+1+rnd.IntN(12))
		word := odd[rnd.IntN(len(odd))]
		switch rnd.IntN(12) {
		case 0:
			text = text[:from] + string(rune(rnd.IntN(256))) + text[from+1:]
		case 1:
			text = text[:from] + text[to:]
		case 2:
			text = text[:to] + text[from:]
		case 3:
			text = text[:from] + word + text[to:]
		case 4:
			text = text[:from] + text[to:] + text[from:to]
		case 5:
			if rnd.IntN(8) == 0 {
				text = text[:from]
			}
		default: // the number that stands there or behind it
			start := strings.IndexAny(text[from:], "0123456789")
			if start < 0 {
				continue
			}
			start += from
			rest := strings.TrimLeft(text[start:], "0123456789.")
			text = text[:start] + word + rest
		}
	}
	return text
}
