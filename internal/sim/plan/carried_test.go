package plan

import (
	"strings"
	"testing"
)

// TestCarried: what another package reads goes through the plan as it was written,
// also through what a link keeps, and is refused only where it is no group of fields.
func TestCarried(t *testing.T) {
	bare := Demo()
	bare.Projector, bare.Build = nil, nil
	with := func(more string) []byte {
		return []byte(strings.Replace(string(bare.JSON()), `"version":1,`, `"version":1,`+more+`,`, 1))
	}
	const group = `"projector":{"any":[1.50,{"thing":null}],"lumens":3000}`
	c, err := Parse(with(group))
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{"JSON": c.Plan().JSON(), "Sparse": c.Plan().Sparse().JSON()} {
		if !strings.Contains(string(data), group) {
			t.Errorf("%s does not carry %s", name, group)
		}
		if _, err := Parse(data); err != nil {
			t.Errorf("%s does not read back: %v", name, err)
		}
	}
	for _, bad := range []string{`"projector":3`, `"build":[]`, `"build":"x"`} {
		if _, err := Parse(with(bad)); err == nil || !strings.Contains(err.Error(), "must be a group of fields in braces") {
			t.Errorf("%s: %v, want a sentence about a group of fields", bad, err)
		}
	}
	if c, err := Parse(with(`"build":null`)); err != nil || c.Plan().Build != nil {
		t.Errorf("null: %v, %v; want no group", c.Plan().Build, err)
	}
}
