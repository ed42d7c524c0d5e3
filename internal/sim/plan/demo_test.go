package plan

import "testing"

func TestDemo(t *testing.T) {
	p := Demo()
	if got := p.Problems(); len(got) > 0 {
		t.Errorf("Demo().Problems() = %v, want none", got[0])
	}
	if got := p.Notes(); len(got) > 0 {
		t.Errorf("Demo().Notes() = %q, want none", got)
	}
}
