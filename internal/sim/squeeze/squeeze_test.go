package squeeze

import (
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

const sample = `{"room":{"length":6.4,"width":4.4,"height":2.8},"players":[{"name":"guest","height":1.78}]}`

func TestRoundTrip(t *testing.T) {
	noise := make([]byte, 3000)
	for i, x := 0, uint32(1); i < len(noise); i++ {
		x = x*1664525 + 1013904223
		noise[i] = byte(x >> 24)
	}
	for _, tc := range []struct {
		name string
		text string
		most int // bytes packed
	}{
		{"nothing", "", 1},
		{"one byte", "{", 2},
		{"the sample", sample, 6},
		{"like the sample", strings.ReplaceAll(sample, "guest", "Tall guest"), 20},
		{"unlike it", "Völlig anders — 完全に違う", 50},
		{"a run", strings.Repeat("a", 10000), 60},
		{"zeros", strings.Repeat("\x00", 500), 30},
		{"noise", string(noise), len(noise) + len(noise)/10},
	} {
		t.Run(tc.name, func(t *testing.T) {
			packed := Pack([]byte(tc.text), []byte(sample))
			if len(packed) > tc.most {
				t.Errorf("len(Pack(%.40q)) = %d, want at most %d", tc.text, len(packed), tc.most)
			}
			got, err := Unpack(packed, []byte(sample), len(tc.text))
			if err != nil || string(got) != tc.text {
				t.Errorf("Unpack(Pack(%.40q)) = %.40q, %v, want it back", tc.text, got, err)
			}
		})
	}
}

// TestFrozen fails when the model or the coder changes, which would break links
// that people hold.
func TestFrozen(t *testing.T) {
	const text = `{"room":{"length":5.55},"players":[{"name":"Left-handed friend","height":1.7}]}`
	const want = "4f0de952fe57e049c77ca2628a1ceca3f5730d1a05233b7710a7"
	if got := hex.EncodeToString(Pack([]byte(text), []byte(sample))); got != want {
		t.Errorf("Pack(…) = %s, want %s", got, want)
	}
}

func TestUnpackErrors(t *testing.T) {
	packed := Pack([]byte("It will not fit, whatever is done to it."), nil)
	for _, tc := range []struct {
		name   string
		packed []byte
		want   error
	}{
		{"empty", nil, ErrDamaged},
		{"endless length", bytes.Repeat([]byte{0xff}, 20), ErrDamaged},
		{"longer than allowed", []byte{101, 1, 2, 3}, ErrTooLong},
		{"cut short", packed[:len(packed)/2], ErrDamaged},
	} {
		t.Run(tc.name, func(t *testing.T) {
			if got, err := Unpack(tc.packed, nil, 100); !errors.Is(err, tc.want) {
				t.Errorf("Unpack(%x) = %q, %v, want error %v", tc.packed, got, err, tc.want)
			}
		})
	}
}

// TestLogistic holds the table against its formula.
func TestLogistic(t *testing.T) {
	for i, got := range logistic {
		want := int32(math.Round(certain / (1 + math.Exp(-float64(i-16)/2))))
		if got != want {
			t.Errorf("logistic[%d] = %d, want %d", i, got, want)
		}
	}
	m := newModel()
	last := int16(-limit - 1)
	for i, s := range m.stretch {
		if s < last {
			t.Fatalf("stretch[%d] = %d after %d: it must not fall", i, s, last)
		}
		last = s
	}
}

func FuzzRoundTrip(f *testing.F) {
	f.Add([]byte(""), []byte(""))
	f.Add([]byte(sample), []byte(sample))
	f.Add([]byte{0, 255, 0, 255, 128}, []byte("x"))
	f.Fuzz(func(t *testing.T, text, sample []byte) {
		got, err := Unpack(Pack(text, sample), sample, len(text))
		if err != nil || !bytes.Equal(got, text) {
			t.Errorf("Unpack(Pack(%q, %q)) = %q, %v, want it back", text, sample, got, err)
		}
		// What nobody packed may be refused or read as something else, in bounds.
		if other, err := Unpack(text, sample, 1000); err == nil && len(other) > 1000 {
			t.Errorf("len(Unpack(%q)) = %d, want at most 1000", text, len(other))
		}
	})
}

func BenchmarkPack(b *testing.B) {
	text := bytes.Repeat([]byte(sample), 20)
	b.ReportAllocs()
	for b.Loop() {
		Pack(text, []byte(sample))
	}
}

func ExamplePack() {
	sample := []byte(`{"name":"guest","height":1.78}`)
	packed := Pack([]byte(`{"name":"host","height":1.83}`), sample)
	text, err := Unpack(packed, sample, 100)
	fmt.Println(len(packed), "bytes hold", string(text), err)
	// Output: 9 bytes hold {"name":"host","height":1.83} <nil>
}
