package protocol

import (
	"bytes"
	"encoding/json"
	"testing"

	leanjson "wideberth/internal/lean/json"
	"wideberth/internal/sim/plan/plantest"
)

// TestBytesOfEncodingJSON holds every kind of answer against encoding/json, which
// the command line prints reports with: the two must say the same in the same
// bytes.
func TestBytesOfEncodingJSON(t *testing.T) {
	demo := string(plantest.Loft().JSON())
	for _, body := range []string{
		`{"kind":"start","saved":"{"}`,
		`{"kind":"solve","plan":` + demo + `}`,
		`{"kind":"ball","plan":` + demo + `}`,
		`{"kind":"maps","of":"stand","plan":` + demo + `}`,
	} {
		var s Solver
		v, err := s.serve([]byte(body))
		if err != nil {
			t.Errorf("serve(%.40s) = error %v, want an answer", body, err)
			continue
		}
		want, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := leanjson.Encode(v); err != nil || !bytes.Equal(got, want) {
			t.Errorf("Encode(answer to %.40s) = %v\n got %.400s\nwant %.400s", body, err, got, want)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	var s Solver
	v, err := s.serve([]byte(`{"kind":"solve","plan":` + string(plantest.Loft().JSON()) + `}`))
	if err != nil {
		b.Fatal(err)
	}
	b.Run("json", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := leanjson.Encode(v); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("encoding-json", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := json.Marshal(v); err != nil {
				b.Fatal(err)
			}
		}
	})
}
