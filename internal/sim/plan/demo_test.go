package plan

import "testing"

// maxDemoLink keeps the demo's link well under the 1,500 characters that a
// realistic plan may take.
const maxDemoLink = 900

func TestDemo(t *testing.T) {
	p := Demo()
	if got := p.Problems(); len(got) > 0 {
		t.Errorf("Demo().Problems() = %v, want none", got[0])
	}
	if got := p.Notes(); len(got) > 0 {
		t.Errorf("Demo().Notes() = %q, want none", got)
	}
	link, err := p.Link()
	if err != nil {
		t.Fatalf("Demo().Link() = error %v, want a link", err)
	}
	if len(link) > maxDemoLink {
		t.Errorf("len(Demo().Link()) = %d, want at most %d", len(link), maxDemoLink)
	}
}
