package form

import (
	"strconv"
	"strings"
)

// gone is what visit returns for a value that is to be taken out.
var gone = new(struct{})

// places calls visit with every value of a decoded plan that a pattern such as
// clubs[].ball.speed names, and its path. What visit returns takes its place.
// Values that are not there, or under something of another type, are passed over.
func places(node any, pattern string, visit func(path string, v any) any) {
	descend(node, "", pattern, visit)
}

func descend(node any, at, rest string, visit func(path string, v any) any) any {
	if rest == "" {
		return visit(at, node)
	}
	if inside, ok := strings.CutPrefix(rest, "["); ok {
		list, _ := node.([]any)
		which, rest, _ := strings.Cut(inside, "]")
		for i := range list {
			if n := strconv.Itoa(i); which == "" || which == n {
				list[i] = descend(list[i], at+"["+n+"]", rest, visit)
			}
		}
		return node
	}
	rest = strings.TrimPrefix(rest, ".")
	key := rest
	if i := strings.IndexAny(rest, ".["); i >= 0 {
		key = rest[:i]
	}
	object, _ := node.(map[string]any)
	v, there := object[key]
	if !there {
		return node
	}
	if at != "" {
		at += "."
	}
	switch v = descend(v, at+key, rest[len(key):], visit); v {
	case any(gone):
		delete(object, key)
	default:
		object[key] = v
	}
	return node
}

// samePath reports whether a path, such as clubs[1].ball.speed, is one of those
// that a pattern names.
func samePath(pattern, path string) bool {
	for pattern != "" && path != "" {
		if rest, any := strings.CutPrefix(pattern, "[]"); any && path[0] == '[' {
			_, after, _ := strings.Cut(path, "]")
			pattern, path = rest, after
			continue
		}
		if pattern[0] != path[0] {
			return false
		}
		pattern, path = pattern[1:], path[1:]
	}
	return pattern == path
}
