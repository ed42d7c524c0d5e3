package draw

// clipPolygon appends to dst the part of the convex polygon src where
// n·p ≥ d (Sutherland & Hodgman, 1974).
func clipPolygon(dst, src []vec, n vec, d float32) []vec {
	for i, a := range src {
		b := src[(i+1)%len(src)]
		da, db := n.Dot(a)-d, n.Dot(b)-d
		if da >= 0 {
			dst = append(dst, a)
		}
		if (da > 0 && db < 0) || (da < 0 && db > 0) {
			dst = append(dst, a.Lerp(b, da/(da-db)))
		}
	}
	return dst
}

// clipSegment is the part of ab where n·p ≥ d; ok is false when nothing is left.
func clipSegment(a, b, n vec, d float32) (p, q vec, ok bool) {
	da, db := n.Dot(a)-d, n.Dot(b)-d
	switch {
	case da >= 0 && db >= 0:
		return a, b, true
	case da < 0 && db < 0:
		return a, b, false
	case da < 0:
		return a.Lerp(b, da/(da-db)), b, true
	default:
		return a, a.Lerp(b, da/(da-db)), true
	}
}

// span is a stretch of a segment by its parameter, 0 at one end and 1 at the
// other.
type span struct {
	from, to float32
	by       int // index of the face that hides it
}

// behind is how far (m) past a face a point must lie to count as hidden by it:
// more than rounding at room size, less than any board.
const behind = 1e-3

// hiddenSpan is the stretch of the segment ab that the convex face f hides
// from the eye: the face and the eye span a pyramid, and its part past the face
// cuts one interval out of the segment. ok is false when nothing is hidden.
func hiddenSpan(eye, a, b vec, f *face) (s span, ok bool) {
	s.to = 1
	n, d := f.normal, f.d
	if n.Dot(eye) < d {
		n, d = n.Mul(-1), -d
	}
	if !s.keep(d-behind-n.Dot(a), d-behind-n.Dot(b)) {
		return s, false
	}
	for i, v := range f.polygon {
		m := v.Sub(eye).Cross(f.polygon[(i+1)%len(f.polygon)].Sub(eye))
		if m.Dot(f.centre.Sub(eye)) < 0 {
			m = m.Mul(-1)
		}
		if !s.keep(m.Dot(a.Sub(eye)), m.Dot(b.Sub(eye))) {
			return s, false
		}
	}
	return s, true
}

// keep narrows the span to where a value that runs linearly from ga at 0 to gb
// at 1 is not negative; false when that is nowhere.
func (s *span) keep(ga, gb float32) bool {
	switch {
	case ga < 0 && gb < 0:
		return false
	case ga < 0:
		s.from = max(s.from, ga/(ga-gb))
	case gb < 0:
		s.to = min(s.to, ga/(ga-gb))
	}
	return s.to-s.from > 1e-4
}
