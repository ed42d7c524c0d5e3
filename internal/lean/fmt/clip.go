package fmt

import "strings"

// longest is how many characters of somebody else's text stand in a sentence.
const longest = 60

// Clip shortens text that came from outside and keeps it on one line, so that an
// error stays a sentence.
func Clip(s string) string {
	s = strings.Map(func(r rune) rune {
		if IsControl(r) {
			return ' '
		}
		return r
	}, s)
	if r := []rune(s); len(r) > longest {
		return string(r[:longest]) + "…"
	}
	return s
}

// IsControl is true of control characters and the line separators of Unicode.
func IsControl(r rune) bool { return r < ' ' || r >= 0x7f && r < 0xa0 || r == 0x2028 || r == 0x2029 }
