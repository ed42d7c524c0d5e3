package builder

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden file")

// TestGoldenSheets holds what both sheets show of a small plan to the byte, on this
// machine and compiled for the browser (make wasmtest): figures, drawings, quantities and
// the shadow; what is the same for every plan is left out.
func TestGoldenSheets(t *testing.T) {
	var b Builder
	var got bytes.Buffer
	p := setIn(t, quick(), `"kind":"set","path":"projector.lens[0]","text":"3 ft"`)
	p = setIn(t, p, `"kind":"set","path":"projector.lens[2]","text":"6 ft"`) // low and far back: a shadow
	for _, kind := range []string{"build", "projector", "film"} {
		var answer map[string]json.RawMessage
		ask(t, &b, p, `"kind":"`+kind+`"`, &answer)
		for _, same := range []string{"rules", "cautions", "fields", "things", "more", "csv"} {
			delete(answer, same)
		}
		line, err := json.Marshal(answer) // its members in the order of their names, numbers as they came
		if err != nil {
			t.Fatal(err)
		}
		got.Write(line)
		got.WriteByte('\n')
	}
	const golden = "testdata/sheets.golden.jsonl"
	if *update {
		if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got.Bytes()) {
		t.Error("the sheets differ from their golden file; go test -run Golden -update rewrites it")
	}
}
