package wire

import (
	"encoding/binary"
	"errors"
	"math"
	"strconv"
)

// maxFrames bounds a recording at 65,536 frames, over four minutes of swing at
// 240 a second; more is a damaged file.
const maxFrames = 1 << 16

// ErrNotRecording is what Decode returns for bytes that are not a recording or are
// one
// of another version.
var ErrNotRecording = errors.New("these bytes are not a recording that this program can read: reload the page to fetch matching programs")

// Decode unpacks what Encode wrote. It checks every count against the bytes
// that are left before it allocates, every index against its table and every
// number for being finite, so that a damaged recording is an error and never a panic.
func Decode(b []byte) (*Recording, error) {
	if len(b) < len(magic)+1 || string(b[:len(magic)]) != magic || b[len(magic)] != version {
		return nil, ErrNotRecording
	}
	r := &reader{b: b, at: len(magic) + 1}
	table := make([]string, r.count(r.u16(), 2, "strings"))
	for i := range table {
		table[i] = string(r.bytes(r.u16()))
	}
	r.table = table

	s := &Recording{Title: r.string(), Room: r.vec()}
	s.Faces = r.faces()
	s.Phases = make([]string, r.count(r.u8(), 2, "phases"))
	for i := range s.Phases {
		s.Phases[i] = r.string()
	}
	s.Parts = make([]Part, r.count(r.u8(), 6, "parts"))
	for i := range s.Parts {
		s.Parts[i] = Part{Name: r.string(), Radius: r.f32()}
	}
	s.Rate = r.f32()
	if r.err == nil && s.Rate <= 0 {
		r.fail("frame rate")
	}
	s.Frames = r.frames(len(s.Parts), len(s.Phases))

	const strikeBytes = 4 + 2*12 + 4 + 2*2
	s.Strikes = make([]Strike, r.count(r.u32(), strikeBytes, "strikes"))
	for i := range s.Strikes {
		k := Strike{Frame: r.u32(), At: r.vec(), Normal: r.vec(), Radius: r.f32(), Surface: r.string(), Part: r.string()}
		if k.Frame >= max(1, len(s.Frames)) || (i > 0 && k.Frame < s.Strikes[i-1].Frame) {
			r.fail("frame of a strike")
		}
		s.Strikes[i] = k
	}
	s.Tightest = Tightest{Time: r.f32(), From: r.vec(), To: r.vec(), Label: r.string(),
		Verdict: Verdict(r.u8()), Surface: r.string(), Part: r.string(), Fray: r.f32()}
	if s.Tightest.Verdict >= NumVerdicts {
		r.fail("verdict of the tightest moment")
	}
	s.Ball = r.vec()
	s.Club = Club{Kind: r.string(), Loft: r.f32()}
	s.Margin = r.f32()
	s.Tick, s.Major = r.f32(), r.u8()
	s.Flight = r.flight()
	if r.err == nil && r.at != len(b) {
		r.fail("end")
	}
	if r.err != nil {
		return nil, r.err
	}
	return s, nil
}

// reader walks the bytes; after the first failure it returns zeros and keeps
// the failure.
type reader struct {
	b     []byte
	at    int
	table []string
	err   error
}

func (r *reader) fail(what string) {
	if r.err == nil {
		r.err = errors.New("the recording is damaged near byte " + strconv.Itoa(r.at) + " (" + what + "): solve the plan again")
	}
}

func (r *reader) bytes(n int) []byte {
	if r.err != nil || n > len(r.b)-r.at {
		r.fail("cut short")
		return nil
	}
	r.at += n
	return r.b[r.at-n : r.at]
}

// count passes n through when n items of at least size bytes can follow.
func (r *reader) count(n, size int, what string) int {
	if r.err != nil || n > (len(r.b)-r.at)/size {
		r.fail("number of " + what)
		return 0
	}
	return n
}

func (r *reader) u8() int {
	if b := r.bytes(1); b != nil {
		return int(b[0])
	}
	return 0
}

func (r *reader) u16() int {
	if b := r.bytes(2); b != nil {
		return int(binary.LittleEndian.Uint16(b))
	}
	return 0
}

func (r *reader) u32() int {
	b := r.bytes(4)
	if b == nil {
		return 0
	}
	v := binary.LittleEndian.Uint32(b)
	if v > math.MaxInt32 {
		r.fail("count")
		return 0
	}
	return int(v)
}

// limit is the largest size of any number in a recording: nothing in a room is a
// hundred kilometres away, and drawing stays free of overflow below it.
const limit = 1e5

func (r *reader) f32() float32 {
	b := r.bytes(4)
	if b == nil {
		return 0
	}
	v := math.Float32frombits(binary.LittleEndian.Uint32(b))
	if !(v >= -limit && v <= limit) {
		r.fail("number out of range")
		return 0
	}
	return v
}

func (r *reader) vec() Vec         { return Vec{r.f32(), r.f32(), r.f32()} }
func (r *reader) segment() Segment { return Segment{r.vec(), r.vec()} }

func (r *reader) string() string {
	i := r.u16()
	if r.err != nil {
		return ""
	}
	if i >= len(r.table) {
		r.fail("name")
		return ""
	}
	return r.table[i]
}

func (r *reader) faces() []Face {
	faces := make([]Face, r.count(r.u16(), 4, "faces"))
	for i := range faces {
		f := Face{Name: r.string(), Kind: Kind(r.u8())}
		n := r.count(r.u8(), 12, "corners")
		if r.err == nil && (f.Kind >= NumKinds || n < 3) {
			r.fail("face")
		}
		f.Polygon = make([]Vec, n)
		for j := range f.Polygon {
			f.Polygon[j] = r.vec()
		}
		faces[i] = f
	}
	return faces
}

func (r *reader) frames(parts, phases int) []Frame {
	n, each := r.u32(), r.u8()
	if r.err == nil && (each < 1 || each > 2) {
		r.fail("number of poses")
	}
	n = r.count(n, 9+24*parts*each, "frames")
	if n > maxFrames {
		r.fail("number of frames")
		n = 0
	}
	frames := make([]Frame, n)
	poses := make([]Segment, n*parts*each)
	take := func() []Segment {
		pose := poses[:parts:parts]
		poses = poses[parts:]
		for j := range pose {
			pose[j] = r.segment()
		}
		return pose
	}
	for i := range frames {
		f := Frame{Phase: uint8(r.u8()), Clearance: r.f32(), Club: r.f32(), Pose: take()}
		if each == 2 {
			f.Typical = take()
		}
		if int(f.Phase) >= max(1, phases) {
			r.fail("phase of a frame")
		}
		frames[i] = f
	}
	return frames
}
