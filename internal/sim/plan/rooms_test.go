package plan

import "testing"

func TestRooms(t *testing.T) {
	titles := map[string]bool{}
	for _, p := range Rooms() {
		if p.Title == "" || titles[p.Title] {
			t.Errorf("title %q is empty or used twice", p.Title)
		}
		titles[p.Title] = true
		if got := p.Problems(); len(got) > 0 {
			t.Errorf("%s: Problems() = %v, want none", p.Title, got[0])
		}
		if got := p.Notes(); len(got) > 0 {
			t.Errorf("%s: Notes() = %q, want none", p.Title, got)
		}
	}
	if len(titles) < 6 {
		t.Errorf("%d rooms to start from, want at least 6", len(titles))
	}
}
