package jsontext

// Indent puts every member of compact JSON on a line of its own, two spaces in
// for each level, as json.Indent does. It does not check the JSON.
func Indent(compact []byte) []byte {
	var out []byte
	depth := 0
	line := func() {
		out = append(out, '\n')
		for range depth {
			out = append(out, "  "...)
		}
	}
	quoted, escaped := false, false
	for i, c := range compact {
		if quoted {
			out = append(out, c)
			quoted = c != '"' || escaped
			escaped = c == '\\' && !escaped
			continue
		}
		switch c {
		case '{', '[':
			out = append(out, c)
			if i+1 < len(compact) && compact[i+1] != '}' && compact[i+1] != ']' {
				depth++
				line()
			}
		case '}', ']':
			if compact[i-1] != '{' && compact[i-1] != '[' {
				depth--
				line()
			}
			out = append(out, c)
		case ',':
			out = append(out, c)
			line()
		case ':':
			out = append(out, ':', ' ')
		default:
			quoted = c == '"'
			out = append(out, c)
		}
	}
	return out
}
