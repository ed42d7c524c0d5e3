package plan

import (
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/units"
)

// What is left out comes back, in every plan, and nothing else changes but the
// fifth decimal.
func TestSparse(t *testing.T) {
	odd := Demo()
	odd.Players[0].Height = 1.78006
	odd.Clubs[0].Ball.Speed, odd.Clubs[1].Ball.Launch = DefaultClub(KindDriver, "").Ball.Speed, 0
	odd.Tees = nil
	odd.Screen = nil
	plans := append(Rooms(), Demo(), odd)
	for _, p := range plans {
		t.Run(p.Title, func(t *testing.T) {
			sparse := p.Sparse().JSON()
			back, err := parsed(sparse)
			want := p.WithDefaults()
			roundNumbers(reflect.ValueOf(&want))
			if err != nil || !reflect.DeepEqual(back, want) {
				t.Errorf("Parse(Sparse()) = %+v, %v\nwant %+v", back, err, want)
			}
			if again := back.Sparse().JSON(); string(again) != string(sparse) {
				t.Errorf("sparse twice is\n%s\nwant\n%s", again, sparse)
			}
			for _, usual := range []string{`"skill"`, `"neutral"`, `"imperial"`, `"shoe"`, `"air"`, `"lie":62`} {
				if strings.Contains(string(sparse), usual) {
					t.Errorf("%s is kept in %s", usual, sparse)
				}
			}
		})
	}
	if p := Demo(); p.Sparse().Units != "" || p.Units != units.Imperial || p.Air == nil {
		t.Errorf("Sparse changed its own plan: %+v", p)
	}
}
