package wire

import (
	"encoding/binary"
	"math"
)

// magic and version open every encoded recording; a reader refuses any other.
const (
	magic   = "WBS"
	version = 5
)

// Encode packs the recording, little-endian:
//
//	"WBS" version
//	strings   u16 count, each u16 length + UTF-8
//	title     u16 string
//	room      3 f32
//	faces     u16 count, each: u16 name, u8 kind, u8 corners, corners×3 f32
//	phases    u8 count, each u16 string
//	parts     u8 count, each u16 name, f32 radius
//	rate      f32
//	frames    u32 count, u8 poses in each (1, or 2 with the typical), each: u8 phase, f32 clearance, f32 club, poses×parts×6 f32
//	strikes   u32 count, each: u32 frame, 3 f32 at, 3 f32 normal, f32 radius, u16 surface, u16 part
//	tightest  f32 time, 3 f32 from, 3 f32 to, u16 label, u8 verdict, u16 surface, u16 part, f32 fray
//	ball      3 f32
//	club      u16 kind, f32 loft
//	margin    f32
//	ticks     f32 spacing, u8 major
//	trail     u32 count, each: f32 time, 3 f32 at
//	touches   u8 count, each: f32 time, 3 f32 at, 3 f32 normal, u16 surface
//	fan       u8 count, each: u16 label, u16 points, points×3 f32
//
// Counts past the width of their field are cut off, a pose is padded or cut to
// the number of parts, and a string past 65,535 bytes is cut; the recordings
// that package record makes stay far below all of these.
func (s *Recording) Encode() []byte {
	var table stringTable
	var w writer
	w.u16(table.index(s.Title))
	w.vec(s.Room)
	w.faces(&table, s.Faces)

	phases := s.Phases[:min(len(s.Phases), math.MaxUint8)]
	w.u8(len(phases))
	for _, p := range phases {
		w.u16(table.index(p))
	}
	parts := s.Parts[:min(len(s.Parts), math.MaxUint8)]
	w.u8(len(parts))
	for _, p := range parts {
		w.u16(table.index(p.Name))
		w.f32(p.Radius)
	}

	w.f32(s.Rate)
	w.u32(len(s.Frames))
	w.u8(s.poses())
	for _, f := range s.Frames {
		w.u8(int(f.Phase))
		w.f32(f.Clearance)
		w.f32(f.Club)
		for _, pose := range [][]Segment{f.Pose, f.Typical}[:s.poses()] {
			for i := range parts {
				var seg Segment
				if i < len(pose) {
					seg = pose[i]
				}
				w.segment(seg)
			}
		}
	}

	w.u32(len(s.Strikes))
	for _, k := range s.Strikes {
		w.u32(k.Frame)
		w.vec(k.At)
		w.vec(k.Normal)
		w.f32(k.Radius)
		w.u16(table.index(k.Surface))
		w.u16(table.index(k.Part))
	}

	w.f32(s.Tightest.Time)
	w.vec(s.Tightest.From)
	w.vec(s.Tightest.To)
	w.u16(table.index(s.Tightest.Label))
	w.u8(int(s.Tightest.Verdict))
	w.u16(table.index(s.Tightest.Surface))
	w.u16(table.index(s.Tightest.Part))
	w.f32(s.Tightest.Fray)

	w.vec(s.Ball)
	w.u16(table.index(s.Club.Kind))
	w.f32(s.Club.Loft)
	w.f32(s.Margin)
	w.f32(s.Tick)
	w.u8(s.Major)
	w.flight(&table, &s.Flight)

	head := writer{b: make([]byte, 0, 4096+len(w.b))}
	head.b = append(head.b, magic...)
	head.u8(version)
	head.u16(len(table.list))
	for _, t := range table.list {
		t = t[:min(len(t), math.MaxUint16)]
		head.u16(len(t))
		head.b = append(head.b, t...)
	}
	return append(head.b, w.b...)
}

// poses is how many poses each frame holds.
func (s *Recording) poses() int {
	if len(s.Frames) > 0 && len(s.Frames[0].Typical) > 0 {
		return 2
	}
	return 1
}

// stringTable collects each distinct string once.
type stringTable struct {
	list []string
	at   map[string]int
}

func (t *stringTable) index(s string) int {
	if i, ok := t.at[s]; ok {
		return i
	}
	if t.at == nil {
		t.at = map[string]int{}
	}
	t.at[s] = len(t.list)
	t.list = append(t.list, s)
	return len(t.list) - 1
}

type writer struct{ b []byte }

func (w *writer) u8(v int)  { w.b = append(w.b, uint8(v)) }
func (w *writer) u16(v int) { w.b = binary.LittleEndian.AppendUint16(w.b, uint16(v)) }
func (w *writer) u32(v int) { w.b = binary.LittleEndian.AppendUint32(w.b, uint32(v)) }
func (w *writer) f32(v float32) {
	w.b = binary.LittleEndian.AppendUint32(w.b, math.Float32bits(v))
}

func (w *writer) vec(v Vec) {
	for _, c := range v {
		w.f32(c)
	}
}

func (w *writer) segment(s Segment) {
	w.vec(s.A)
	w.vec(s.B)
}

func (w *writer) faces(table *stringTable, faces []Face) {
	faces = faces[:min(len(faces), math.MaxUint16)]
	w.u16(len(faces))
	for _, f := range faces {
		polygon := f.Polygon[:min(len(f.Polygon), math.MaxUint8)]
		w.u16(table.index(f.Name))
		w.u8(int(f.Kind))
		w.u8(len(polygon))
		for _, p := range polygon {
			w.vec(p)
		}
	}
}
