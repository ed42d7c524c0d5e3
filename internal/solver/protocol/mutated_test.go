package protocol

import (
	"bytes"
	"encoding/json"
	"flag"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"
	"time"

	"wideberth/internal/fuzzed"
	"wideberth/internal/link"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

var mutated = flag.Int("mutated", 2000, "how many mutated links and plans TestMutated sends")

// TestMutated: whatever a link or a plan was made into, the solver answers with a plan or
// a sentence, remembers the plan before it, and holds no more than before. Of ten plans
// that it could answer one is answered; the others are left at the first pause.
func TestMutated(t *testing.T) {
	var s Solver
	rnd := rand.New(rand.NewPCG(13, 7))
	small := plantest.OneClub("7-iron")
	small.Players = small.Players[:1]
	good := []byte(`{"kind":"solve","plan":` + string(small.JSON()) + `}`)
	want := s.Handle(good)
	whole, err := link.Encode(plantest.Checked(plan.Demo()))
	if err != nil {
		t.Fatal(err)
	}
	texts := []string{string(plan.Demo().JSON()), string(plan.Demo().Sparse().JSON()), string(small.JSON())}

	var links, opened, refused, left, solved int
	held := func() uint64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	early, start := uint64(0), time.Now()
	for i := range *mutated {
		if i == *mutated/4 {
			early = held()
		}
		text := fuzzed.Text(rnd, texts[rnd.IntN(len(texts))])
		var body []byte
		switch i % 4 {
		case 0: // the letters of a link, which say themselves that they were changed
			links++
			if c, err := link.Decode(fuzzed.Text(rnd, whole)); err == nil {
				if !bytes.Equal(c.Plan().JSON(), plan.Demo().JSON()) {
					t.Fatalf("a changed link passes for another plan: %s", c.Plan().JSON())
				}
			} else if sentence := err.Error(); len(sentence) < 10 || len(sentence) > 400 {
				t.Errorf("a damaged link is told as %q", sentence)
			}
			continue
		case 1, 2: // what a sound link may hold
			body = []byte(`{"kind":"open","linked":` + quoted(text) + `}`)
		default:
			body = []byte(`{"kind":"solve","plan":` + text + `}`)
		}
		job := s.Begin(body)
		_, out := job.Next()
		for answered := rnd.IntN(10) == 0; answered && out == nil; {
			_, out = job.Next()
		}
		if out == nil {
			left++
			job.Stop()
			continue
		}
		var answer struct{ Error *struct{ Message string } }
		if err := json.Unmarshal(out, &answer); err != nil {
			t.Fatalf("%q: the answer is not a JSON object: %v", body, err)
		}
		switch {
		case answer.Error == nil && i%4 == 3:
			solved++
		case answer.Error == nil:
			opened++
		default:
			refused++
			if m := answer.Error.Message; len(m) < 10 || len(m) > 600 || strings.Contains(m, "fault of the program") {
				t.Errorf("%q is refused with %q", body, m)
			}
		}
		if i%1000 == 999 {
			if got := s.Handle(good); !bytes.Equal(got, want) {
				t.Fatalf("after %d of them the good plan is answered %.300s", i+1, got)
			}
		}
	}
	if got := s.Handle(good); !bytes.Equal(got, want) {
		t.Errorf("after all of them the good plan is answered %.300s", got)
	}
	late := held()
	t.Logf("%d in %v: %d links; plans: %d refused, %d opened, %d left, %d answered; %d kB held after a quarter, %d at the end",
		*mutated, time.Since(start).Round(time.Second), links, refused, opened, left, solved, early>>10, late>>10)
	if refused == 0 || opened == 0 || left == 0 || solved == 0 {
		t.Errorf("%d refused, %d opened, %d left, %d answered: want some of each", refused, opened, left, solved)
	}
	if late > early+20<<20 {
		t.Errorf("%d kB are held at the end, %d after a quarter of it", late>>10, early>>10)
	}
	runtime.KeepAlive(&s)
}
