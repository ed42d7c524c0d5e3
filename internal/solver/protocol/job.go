package protocol

import (
	"errors"
	"iter"
)

// Job is a request that is served piece by piece, so that whoever asked can hear how
// far it is, and ask something else instead.
type Job struct {
	next func() (Progress, bool)
	stop func()
	out  []byte
}

// Progress is how much of a job is done; All is 0 where that is not known.
type Progress struct{ Done, All int }

// errStopped ends a job that nobody waits for any more; nobody reads it.
var errStopped = errors.New("stopped")

// Begin starts to serve a request; Next does the work. Until the job is done or
// stopped the solver may be asked nothing else.
func (s *Solver) Begin(body []byte) *Job {
	j := &Job{}
	j.next, j.stop = iter.Pull(func(yield func(Progress) bool) {
		s.cache.lab.Pause = func(done, all int) error {
			if !yield(Progress{done, all}) {
				return errStopped
			}
			return nil
		}
		defer func() { s.cache.lab.Pause = nil }()
		j.out = s.Handle(body)
	})
	return j
}

// Next works on, for some dozens of milliseconds, and returns how far it is, or the
// answer that Handle gives.
func (j *Job) Next() (p Progress, answer []byte) {
	p, more := j.next()
	if more {
		return p, nil
	}
	return p, j.out
}

// Stop ends the job; what was learnt on the way is kept.
func (j *Job) Stop() { j.stop() }
