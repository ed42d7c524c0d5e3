package plan

import _ "embed"

//go:embed demo.json
var demoJSON []byte

// Demo is the plan that the page opens with: an invented carriage-house loft
// with three players and three clubs, every default filled.
func Demo() Plan {
	p, err := Parse(demoJSON)
	if err != nil {
		panic("plan: the embedded demo does not parse: " + err.Error())
	}
	return p
}
