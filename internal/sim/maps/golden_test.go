package maps

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	leanjson "wideberth/internal/lean/json"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/remedy"
)

var update = flag.Bool("update", false, "rewrite the golden maps")

// TestGoldenMaps holds the maps, marks and remedies of one room to the byte, as
// TestGoldenReports holds the reports: the bytes are the same compiled for the
// browser.
func TestGoldenMaps(t *testing.T) {
	p := plantest.Loft()
	p.Players = p.Players[:2] // a usual and a tall golfer, and the short list of clubs
	p.Clubs = p.Clubs[:2]
	demo := plantest.Checked(p)
	var lab fit.Lab
	for _, c := range []struct {
		name string
		make func() (any, error)
	}{
		{"stand", func() (any, error) { return Stand(&lab, demo, StandOptions{}) }},
		{"hang", func() (any, error) { return Hang(&lab, demo, HangOptions{Ball: true}) }},
		{"watch", func() (any, error) { return Onlookers(&lab, demo, OnlookOptions{}) }},
		{"marks", func() (any, error) { return lab.Marks(demo, "") }},
		{"remedies", func() (any, error) { return remedy.Solve(&lab, demo, "Host", "7-iron", "middle") }},
	} {
		t.Run(c.name, func(t *testing.T) {
			v, err := c.make()
			if err != nil {
				t.Fatal(err)
			}
			compact, err := leanjson.Encode(v)
			if err != nil {
				t.Fatal(err)
			}
			compact = longLists.ReplaceAllFunc(compact, func(list []byte) []byte {
				return fmt.Appendf(nil, `"%d bytes of SHA-256 %x"`, len(list), sha256.Sum256(list))
			})
			var got bytes.Buffer
			if err := json.Indent(&got, compact, "", " "); err != nil {
				t.Fatal(err)
			}
			got.WriteByte('\n')
			file := filepath.Join("../../../testdata/maps", c.name+".json")
			if *update {
				if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(file, got.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got.Bytes(), want) {
				t.Errorf("%s differs from byte %d on; run with -update and read the diff", file, firstDifference(got.Bytes(), want))
			}
		})
	}
}

// longLists are lists of numbers, or of points, too long for anybody to read: of
// them the golden files keep the sum.
var longLists = regexp.MustCompile(`\[[-\[\]0-9.,e]{400,}\]`)

func firstDifference(a, b []byte) int {
	at := 0
	for at < min(len(a), len(b)) && a[at] == b[at] {
		at++
	}
	return at
}
