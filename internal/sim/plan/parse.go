package plan

import (
	"bytes"
	"errors"
	"math"
	"strconv"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
)

// maxBytes is the largest document read: a plan at every limit is under a
// twentieth of it.
const maxBytes = 1 << 20

// Checked is a plan that passed Validate, with every default filled. Only Check,
// Parse and FromTree make one, so that what works on plans need not check again.
type Checked struct{ plan Plan }

// Plan is a copy of the plan. It shares its lists with c: change none of them.
func (c Checked) Plan() Plan { return c.plan }

// Check fills the defaults and checks a plan that is in memory; the error is
// that of Validate.
func Check(p Plan) (Checked, error) {
	p = p.WithDefaults() // shares nothing with the caller's
	if all := p.problems(); len(all) > 0 {
		return Checked{}, all[0]
	}
	return Checked{p}, nil
}

// Parse reads a plan from JSON: it migrates old versions, refuses unknown
// fields and wrong types by their path (a *FieldError), and checks it.
func Parse(data []byte) (Checked, error) {
	if len(data) > maxBytes {
		return Checked{}, fmt.Errorf("the plan is %.1f MB, more than the 1 MB a plan may have", float64(len(data))/1e6)
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // a byte-order mark, which some editors write
	if len(bytes.TrimSpace(data)) == 0 {
		return Checked{}, errors.New("the plan is empty: it should be one JSON object with room, clubs and players")
	}
	tree, err := json.Decode(data)
	if err != nil {
		return Checked{}, syntaxError(data, err)
	}
	return FromTree(tree)
}

// FromTree is Parse for JSON that json.Decode has read; it may change the tree.
func FromTree(tree any) (Checked, error) {
	p, err := Fill(tree)
	if err != nil {
		return Checked{}, err
	}
	return Check(p)
}

// Fill is FromTree without the check of what the fields hold, for who completes a
// plan and then calls Check.
func Fill(tree any) (Plan, error) {
	object, ok := tree.(map[string]any)
	if !ok {
		return Plan{}, fmt.Errorf("the plan must be an object in braces, not %s", kindOf(tree))
	}
	version, err := versionOf(object)
	if err != nil {
		return Plan{}, err
	}
	migrate(object, version)
	if err := checkShape(object); err != nil {
		return Plan{}, err
	}
	var p Plan
	if err := json.Fill(object, &p); err != nil {
		return Plan{}, fmt.Errorf("the plan cannot be read: %w", err)
	}
	return p, nil
}

// syntaxError says where the JSON breaks.
func syntaxError(data []byte, err error) error {
	syntax, ok := errors.AsType[*json.SyntaxError](err)
	switch {
	case !ok:
		return fmt.Errorf("the plan breaks off %s: a brace, bracket or quote is not closed: %w", position(data, len(data)), err)
	case syntax.Trailing:
		return fmt.Errorf("the plan has more text after its end, %s", position(data, syntax.Offset-1))
	}
	return fmt.Errorf("the plan is not valid JSON %s: %w", position(data, syntax.Offset), err)
}

// position names the line and column (both from 1) of a byte offset.
func position(data []byte, offset int) string {
	head := data[:offset]
	line := 1 + bytes.Count(head, []byte("\n"))
	column := max(1, len(head)-(bytes.LastIndexByte(head, '\n')+1))
	return fmt.Sprintf("at line %d, column %d", line, column)
}

// migrate brings a document of an older version up to this Version. One that names
// none, as who writes it by hand may, is read like one of today.
func migrate(tree map[string]any, version int) {
	if version == 1 { // its links had a 0 where these were left out
		dropZero(tree, "margin")
		clubs, _ := tree["clubs"].([]any)
		for _, club := range clubs {
			club, _ := club.(map[string]any)
			dropZero(club["ball"], "speed")
		}
	}
	tree["version"] = json.Number(strconv.Itoa(Version))
}

// dropZero takes a number out of a group where it is 0.
func dropZero(group any, name string) {
	if group, ok := group.(map[string]any); ok && zero(group[name]) {
		delete(group, name)
	}
}

// versionOf reads the version field: a whole number from 0 to Version.
func versionOf(tree map[string]any) (int, error) {
	raw, ok := tree["version"]
	if !ok {
		return 0, nil
	}
	number, ok := raw.(json.Number)
	if !ok {
		return 0, fieldErrorf("version", "version must be a number, not %s", kindOf(raw))
	}
	v, err := number.Float()
	if err != nil || v != math.Trunc(v) || v < 0 {
		return 0, fieldErrorf("version", "version must be a whole number such as %d, not %s", Version, number)
	}
	if v > Version {
		return 0, fieldErrorf("version", "version %s is newer than this program reads (%d): reload the page, or get a newer program", number, Version)
	}
	return int(v), nil
}
