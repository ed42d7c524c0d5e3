package draw

import (
	"testing"

	"wideberth/internal/render/scene/wire"
)

func TestThroughASurface(t *testing.T) {
	m := newRoom(sampleRecording(), xyz(3, 2, 1))
	tests := []struct {
		name string
		p    vec
		want bool
	}{
		{"in the room", xyz(3, 2, 1), false},
		{"past the left wall", xyz(3, 4.02, 1), true},
		{"above the ceiling", xyz(3, 2, 2.9), true},
		{"inside the beam", xyz(3.5, 2, 2.6), true},
		{"below the beam", xyz(3.5, 2, 2.4), false},
		{"beside the beam", xyz(3.3, 2, 2.6), false},
	}
	floored := newRoom(func() *wire.Recording {
		s := sampleRecording()
		for i := range s.Faces {
			if s.Faces[i].Name == "room" && s.Faces[i].Polygon[0][2] == 0 && s.Faces[i].Polygon[1][2] == 0 && s.Faces[i].Polygon[2][2] == 0 {
				s.Faces[i].Kind = wire.Floor
			}
		}
		return s
	}(), xyz(3, 2, 1))
	if floored.through(xyz(3, 2, -0.01)) || !floored.through(xyz(3, 4.02, -0.01)) || !m.through(xyz(3, 2, -0.01)) {
		t.Error("the sole of a shoe strikes the floor, or a wall ends at it")
	}
	for _, tt := range tests {
		if got := m.through(tt.p); got != tt.want {
			t.Errorf("%s: through(%v) = %v, want %v", tt.name, tt.p, got, tt.want)
		}
		if tt.want && !m.crosses(tt.p, 0.05) {
			t.Errorf("%s: crosses(%v) = false although it is through", tt.name, tt.p)
		}
	}
}
