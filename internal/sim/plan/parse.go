package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
)

// maxBytes is the largest document read: a plan at every limit is under a
// twentieth of it.
const maxBytes = 1 << 20

// Parse reads a plan from JSON: it migrates old versions, refuses unknown
// fields and wrong types by their path (a *FieldError), fills the defaults of
// WithDefaults and ends with Validate. It never returns a plan that Validate
// refuses.
func Parse(data []byte) (Plan, error) {
	tree, err := decodeTree(data)
	if err != nil {
		return Plan{}, err
	}
	if err := migrate(tree); err != nil {
		return Plan{}, err
	}
	if err := checkShape(tree); err != nil {
		return Plan{}, err
	}
	// Encoding the checked tree again, rather than decoding data a second time,
	// makes sure that the plan is read from exactly what was checked.
	checked, err := json.Marshal(tree)
	if err != nil {
		return Plan{}, fmt.Errorf("the plan cannot be read: %w", err)
	}
	var p Plan
	if err := json.Unmarshal(checked, &p); err != nil {
		return Plan{}, fmt.Errorf("the plan cannot be read: %w", err)
	}
	p = p.WithDefaults()
	if err := p.Validate(); err != nil {
		return Plan{}, err
	}
	return p, nil
}

// decodeTree reads one JSON object, numbers kept as text.
func decodeTree(data []byte) (map[string]any, error) {
	if len(data) > maxBytes {
		return nil, fmt.Errorf("the plan is %.1f MB, more than the 1 MB a plan may have", float64(len(data))/1e6)
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, errors.New("the plan is empty: it should be one JSON object with room, clubs and players")
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	var tree any
	if err := dec.Decode(&tree); err != nil {
		return nil, syntaxError(data, err)
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("the plan has more text after its end, %s", position(data, dec.InputOffset()))
	}
	object, ok := tree.(map[string]any)
	if !ok {
		return nil, fmt.Errorf("the plan must be an object in braces, not %s", kindOf(tree))
	}
	return object, nil
}

// syntaxError says where the JSON breaks.
func syntaxError(data []byte, err error) error {
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		return fmt.Errorf("the plan is not valid JSON %s: %w", position(data, syntax.Offset), err)
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return fmt.Errorf("the plan breaks off %s: a brace, bracket or quote is not closed: %w", position(data, int64(len(data))), err)
	}
	return fmt.Errorf("the plan is not valid JSON: %w", err)
}

// position names the line and column (both from 1) of a byte offset.
func position(data []byte, offset int64) string {
	head := data[:min(max(int(offset), 0), len(data))]
	line := 1 + bytes.Count(head, []byte("\n"))
	column := max(1, len(head)-(bytes.LastIndexByte(head, '\n')+1))
	return fmt.Sprintf("at line %d, column %d", line, column)
}

// migrate brings an older document up to Version, one step at a time. A plan
// without a version is version 0.
func migrate(tree map[string]any) error {
	version, err := versionOf(tree)
	if err != nil {
		return err
	}
	for ; version < Version; version++ {
		switch version {
		case 0: // before plans carried a version; otherwise the same as 1
		}
	}
	tree["version"] = json.Number(strconv.Itoa(version))
	return nil
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
	v, err := number.Float64()
	if err != nil || v != math.Trunc(v) || v < 0 {
		return 0, fieldErrorf("version", "version must be a whole number such as %d, not %s", Version, number)
	}
	if v > Version {
		return 0, fieldErrorf("version", "version %s is newer than this program reads (%d): reload the page, or get a newer program", number, Version)
	}
	return int(v), nil
}
