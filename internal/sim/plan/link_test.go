package plan

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/sim/squeeze"
)

const (
	// maxDemoLink keeps the demo's link well under maxRealLink.
	maxDemoLink = 600
	// maxRealLink is what a realistic plan's link may take.
	maxRealLink = 1500
)

// crowded is a plan as large as somebody might really make, whose words and
// numbers the dictionary does not know.
func crowded() Plan {
	p := Plan{Title: "Machine shed behind the orchard", Units: UnitsMetric, Margin: 0.123,
		Room:   Room{Length: 8.317, Width: 5.183, Height: 3.071},
		Screen: &Screen{X: 7.613, Centre: 2.589, Bottom: 0.137, Width: 4.137, Height: 2.611}}
	for i := range 8 {
		f := float64(i)
		p.Room.Solids = append(p.Room.Solids, Solid{Name: fmt.Sprintf("tie beam no. %d", i+1),
			Min: [3]float64{0.317 + 0.913*f, 0, 2.713 + 0.013*f}, Max: [3]float64{0.441 + 0.917*f, 5.183, 3.071}})
		p.Players = append(p.Players, Player{Name: fmt.Sprintf("Neighbour %c", 'A'+i), Height: 1.613 + 0.037*f, Span: 1.597 + 0.043*f,
			BallToToes: 0.713 + 0.017*f, BallToHands: 0.741 + 0.019*f})
	}
	for _, c := range [][2]string{{"driver", "driver"}, {"3-wood", "wood"}, {"4-hybrid", "hybrid"}, {"6-iron", "iron"}, {"8-iron", "iron"}, {"54° wedge", "wedge"}} {
		p.Clubs = append(p.Clubs, Club{Name: c[0], Kind: c[1]})
	}
	return p
}

func TestLinkRoundTrip(t *testing.T) {
	for _, tc := range []struct {
		name string
		p    Plan
		most int
	}{
		{"demo", Demo(), maxDemoLink},
		{"crowded", crowded(), maxRealLink},
	} {
		t.Run(tc.name, func(t *testing.T) {
			link, err := tc.p.Link()
			if err != nil {
				t.Fatalf("Link() = error %v, want a link", err)
			}
			if len(link) > tc.most {
				t.Errorf("len(Link()) = %d, want at most %d", len(link), tc.most)
			}
			want, err := tc.p.rounded()
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range []string{link, strings.TrimPrefix(link, linkPrefix), " " + link + "\n"} {
				got, err := FromLink(s)
				if err != nil || !reflect.DeepEqual(got, want) {
					t.Errorf("FromLink(%q) = %+v, %v, want %+v", s, got, err, want)
				}
			}
		})
	}
}

func TestLinkRounds(t *testing.T) {
	p := Demo()
	p.Players[0].Height = 1.78006
	link, err := p.Link()
	if err != nil {
		t.Fatal(err)
	}
	got, err := FromLink(link)
	if err != nil || got.Players[0].Height != 1.7801 {
		t.Errorf("height after the link = %v, %v, want 1.7801", got.Players[0].Height, err)
	}
	if p.Players[0].Height != 1.78006 {
		t.Errorf("Link changed its own plan: height %v, want 1.78006", p.Players[0].Height)
	}
}

func TestLinkOfBadPlan(t *testing.T) {
	p := Demo()
	p.Players[1].Height = 7.3
	_, err := p.Link()
	if err == nil {
		t.Fatal("Link() of a bad plan = a link, want an error")
	}
	checkField(t, err, "players[1].height")
}

// TestLinkFrozen reads a link made when format "a" was introduced: it fails when
// sampleA, package squeeze or the layout changes, which would break links people hold.
func TestLinkFrozen(t *testing.T) {
	const link = "#p=aH22uhg00A-dMLrSI28IZgdr-HqSq0jBjlNfIYUvRXVU2uBwj1Rt9z_LBqoXgg61rgSrqjNX8kxlDuh3wQnbSboDuCtiwg9ZLyljzmFLIHiMfSZU1GmCxaSVEFreY53EYYZIrXgOxE4-nVe0nM1fQjQsVZMp3UKvQNZCtjWYp74kg813sP_jzGkSrVLFXvSX9KMD45nyt37RQVAE23nG6yx33RZIVEtLUNdIkf2RELkjWjo6fzkb1GF8VA3UxElI"
	got, err := FromLink(link)
	if err != nil || got.Title != "Carriage-house loft" || got.Players[1].Span != 2.01 {
		t.Errorf("FromLink(frozen link) = %+v, %v, want the carriage-house loft", got, err)
	}
}

// pack makes a link of any text.
func pack(t testing.TB, data []byte) string {
	t.Helper()
	packed := append(checksum(data), squeeze.Pack(data, []byte(sampleA))...)
	return linkPrefix + "a" + base64.RawURLEncoding.EncodeToString(packed)
}

func TestFromLinkErrors(t *testing.T) {
	good, err := Demo().Link()
	if err != nil {
		t.Fatal(err)
	}
	swapped := []byte(good)
	swapped[len(swapped)/2] ^= 1 // still a letter of the alphabet or not: damaged either way
	for _, tc := range []struct{ name, link, message string }{
		{"empty", "", "holds no plan"},
		{"only the prefix", "#p=", "holds no plan"},
		{"unknown format", "#p=zzzz", "made by a newer program"},
		{"not base64", "#p=a!!!!", errBadLink.Error()},
		{"format only", "#p=a", errBadLink.Error()},
		{"checksum only", "#p=aAAAA", errBadLink.Error()},
		{"cut short", good[:len(good)-20], errBadLink.Error()},
		{"last letter lost", good[:len(good)-1], errBadLink.Error()},
		{"one letter changed", string(swapped), errBadLink.Error()},
		{"bomb", pack(t, bytes.Repeat([]byte{' '}, maxLinked+1)), errBadLink.Error()},
		{"endless", "#p=a" + strings.Repeat("A", maxLink), "too long"},
		{"a bad plan", pack(t, []byte(fmt.Sprintf(minimal, `,"margin":9`))), "the link holds a plan that does not work: margin 9 m"},
		{"not JSON", pack(t, []byte(`hello`)), "the link holds a plan that does not work: the plan is not valid JSON"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			_, err := FromLink(tc.link)
			if err == nil || !strings.Contains(err.Error(), tc.message) {
				t.Errorf("FromLink(%.60s) = error %v, want one with %q", tc.link, err, tc.message)
			}
		})
	}
}

// TestFromLinkDamage changes every letter of a link in turn: none may pass for
// another plan.
func TestFromLinkDamage(t *testing.T) {
	good, err := Demo().Link()
	if err != nil {
		t.Fatal(err)
	}
	for i := len(linkPrefix) + 1; i < len(good); i++ {
		bad := []byte(good)
		bad[i] = 'A'
		if good[i] == 'A' {
			bad[i] = 'B'
		}
		if _, err := FromLink(string(bad)); err == nil {
			t.Errorf("FromLink(link with letter %d changed) = a plan, want an error", i)
		}
	}
}

func FuzzFromLink(f *testing.F) {
	good, err := Demo().Link()
	if err != nil {
		f.Fatal(err)
	}
	for _, s := range []string{"", "#p=", good, good[:40], "#p=aAAAA", pack(f, bytes.Repeat([]byte{'{'}, 4000))} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := FromLink(s)
		if err != nil {
			return
		}
		link, err := p.Link()
		if err != nil {
			t.Skip("numbers finer than a link keeps may lie on a limit")
		}
		if _, err := FromLink(link); err != nil {
			t.Errorf("FromLink(p.Link()) = error %v, want a plan", err)
		}
	})
}

func ExamplePlan_Link() {
	link, err := Demo().Link()
	if err != nil {
		fmt.Println(err)
		return
	}
	back, err := FromLink(link)
	fmt.Println(link[:4], back.Title, err)
	// Output: #p=a Carriage-house loft <nil>
}
