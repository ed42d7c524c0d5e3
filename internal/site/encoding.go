package site

import (
	"strconv"
	"strings"
)

// twins are the compressed copies the build may have written beside a file,
// best first.
var twins = []struct{ encoding, suffix string }{
	{"br", ".br"},
	{"gzip", ".gz"},
}

// accepts reports whether the Accept-Encoding header takes the encoding
// (RFC 9110, section 12.5.3): named, or covered by "*", with a weight above 0.
// A weight that cannot be read counts as a refusal.
func accepts(header, encoding string) bool {
	wildcard := false
	for item := range strings.SplitSeq(header, ",") {
		name, params, _ := strings.Cut(item, ";")
		name = strings.TrimSpace(name)
		switch {
		case strings.EqualFold(name, encoding):
			return weight(params) > 0
		case name == "*":
			wildcard = weight(params) > 0
		}
	}
	return wildcard
}

// weight reads the q of one item of an Accept-Encoding header; no q is 1.
func weight(params string) float64 {
	key, value, given := strings.Cut(strings.TrimSpace(params), "=")
	if !given {
		return 1
	}
	q, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
	if err != nil || !strings.EqualFold(strings.TrimSpace(key), "q") {
		return 0
	}
	return q
}
