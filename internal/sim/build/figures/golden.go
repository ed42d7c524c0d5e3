package figures

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"runtime"

	"wideberth/internal/golden"
)

// folder is testdata/build.
func folder() string {
	_, here, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(here), "../../../../testdata/build")
}

// Held holds what was computed to a golden file of testdata/build: its JSON, numbers to
// a millionth. With update the file is written anew.
func Held(name string, got any, update bool) error {
	text, err := json.Marshal(got)
	if err != nil {
		return err
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		return err
	}
	data, err := json.MarshalIndent(golden.Rounded(tree, micro), "", " ")
	if err != nil {
		return err
	}
	data = append(data, '\n')
	file := filepath.Join(folder(), name)
	if update {
		return os.WriteFile(file, data, 0o644)
	}
	want, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	if string(want) != string(data) {
		return errors.New("what was computed differs from " + name + "; go test -run Golden -update rewrites it")
	}
	return nil
}

// micro keeps six decimals.
func micro(v float64) float64 { return math.Round(v*1e6) / 1e6 }
