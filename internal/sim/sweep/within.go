package sweep

// ClearanceWithin is Clearance for a caller who only wants to know of contacts
// nearer than limit (m) to a box: it costs next to nothing when there is none,
// and then returns false.
func (t *Track) ClearanceWithin(s Surface, limit float64) (Contact, bool) {
	q := newSearch(&s, limit)
	q.scan(t, 0)
	return q.contact()
}
