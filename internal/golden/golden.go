// Package golden has what tests share that hold an answer to a file.
package golden

// Rounded rounds every number of a tree that encoding/json has read, in place: the last
// digits differ between processors, and between one swing and a mended one.
func Rounded(tree any, round func(float64) float64) any {
	switch v := tree.(type) {
	case float64:
		return round(v)
	case []any:
		for i := range v {
			v[i] = Rounded(v[i], round)
		}
	case map[string]any:
		for k := range v {
			v[k] = Rounded(v[k], round)
		}
	}
	return tree
}
