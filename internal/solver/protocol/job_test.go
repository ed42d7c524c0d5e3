package protocol

import (
	"bytes"
	"testing"

	"wideberth/internal/sim/plan"
)

// A job gives what Handle gives, tells how far it is, and when it is stopped leaves a
// solver that answers as a fresh one does.
func TestJob(t *testing.T) {
	body := solveRequest(plan.Demo(), Focus{})
	want := new(Solver).Handle(body)
	var s Solver
	for stopped := range 3 {
		j := s.Begin(body)
		for range stopped {
			if _, answer := j.Next(); answer != nil {
				t.Fatal("answered before the first pause")
			}
		}
		j.Stop()
		j.Stop()
	}
	j := s.Begin(body)
	last, pauses := -1, 0
	for {
		p, answer := j.Next()
		if answer != nil {
			if !bytes.Equal(answer, want) {
				t.Errorf("a job answers otherwise than Handle")
			}
			break
		}
		pauses++
		if p.All > 0 {
			if p.Done < last || p.Done >= p.All {
				t.Errorf("%d of %d are done after %d", p.Done, p.All, last)
			}
			last = p.Done
		}
	}
	if last != 7 {
		t.Errorf("progress came to check %d, want to the last of eight", last)
	}
	if j.Stop(); !bytes.Equal(s.Handle(body), want) {
		t.Error("the solver answers otherwise after jobs")
	}
}

// Everything that takes long is served in pieces.
func TestLongRequestsPause(t *testing.T) {
	for _, c := range []struct{ kind, more string }{
		{"solve", ``}, {"reel", ``}, {"drag", `,"x":2.8,"y":2.7`}, {"hangAt", `,"x":2.8,"y":2.7`}, {"hangThing", `,"x":2.8,"y":2.7,"text":"fan","length":0.4,"width":0.4,"drop":0.2`},
		{"remedies", ``}, {"changes", ``}, {"maps", `,"of":"stand"`}, {"maps", `,"of":"hang"`}, {"maps", `,"of":"watch"`}, {"maps", `,"of":"marks"`},
	} {
		t.Run(c.kind+c.more, func(t *testing.T) {
			var s Solver
			p := small()
			j := s.Begin([]byte(`{"kind":"` + c.kind + `","plan":` + string(p.JSON()) + c.more + `}`))
			defer j.Stop()
			if _, answer := j.Next(); answer != nil {
				t.Errorf("answered at once: %.200s", answer)
			}
		})
	}
}
