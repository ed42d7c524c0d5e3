package figures

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestRead: a file is read by the names of its columns, without its remarks.
func TestRead(t *testing.T) {
	rows := Read("panels.csv")
	if len(rows) < 5 || rows[0]["category"] != "1/4" || rows[0].Number("least") != 0.219 {
		t.Errorf("%v", rows)
	}
	defer func() {
		if recover() == nil {
			t.Error("a word is a number")
		}
	}()
	rows[0].Number("category")
}

// TestHeld: what was written is held to a millionth, and text to the letter.
func TestHeld(t *testing.T) {
	name, err := filepath.Rel(folder(), filepath.Join(t.TempDir(), "x.json"))
	if err != nil {
		t.Fatal(err)
	}
	type sample struct {
		A []float64
		B map[string]any
	}
	of := func(v float64, word string) sample { return sample{[]float64{1, v}, map[string]any{"w": word, "v": v}} }
	if err := Held(name, of(2, "x"), false); !os.IsNotExist(err) {
		t.Errorf("without a file: %v", err)
	}
	if err := Held(name, of(2, "x"), true); err != nil {
		t.Fatal(err)
	}
	written, err := os.ReadFile(filepath.Join(folder(), name))
	if err != nil || !strings.HasSuffix(string(written), "}\n") {
		t.Errorf("written %q, %v", written, err)
	}
	for _, c := range []struct {
		name string
		of   sample
		same bool
	}{{"the same", of(2, "x"), true}, {"to a millionth", of(2+1e-8, "x"), true}, {"another number", of(2.001, "x"), false}, {"another word", of(2, "y"), false}} {
		if err := Held(name, c.of, false); (err == nil) != c.same {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if err := Held(name, func() {}, false); err == nil {
		t.Error("what has no JSON is held")
	}
}
