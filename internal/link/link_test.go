package link

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

var update = flag.Bool("update", false, "write testdata anew")

const (
	// longestDemo is what the issue allows the demonstration room's link.
	longestDemo = 1500
	// longestReal is what a crowded plan's link may take: browsers and messengers
	// keep addresses of 2,000 characters whole.
	longestReal = 2000
)

// crowded is a plan as large as somebody might really make.
func crowded() plan.Plan {
	p := plan.Plan{Title: "Machine shed behind the orchard", Units: units.Metric, Margin: 0.123,
		Room:   plan.Room{Length: 8.317, Width: 5.183, Height: 3.071},
		Screen: &plan.Screen{X: 7.613, Centre: 2.589, Bottom: 0.137, Width: 4.137, Height: 2.611}}
	for i := range 8 {
		f := float64(i)
		p.Room.Solids = append(p.Room.Solids, plan.Solid{Name: fmt.Sprintf("tie beam no. %d", i+1),
			Min: [3]float64{0.317 + 0.913*f, 0, 2.713 + 0.013*f}, Max: [3]float64{0.441 + 0.917*f, 5.183, 3.071}})
		p.Players = append(p.Players, plan.Player{Name: fmt.Sprintf("Neighbour %c", 'A'+i), Height: 1.613 + 0.037*f, Span: 1.597 + 0.043*f})
	}
	for _, c := range [][2]string{{"driver", "driver"}, {"3-wood", "wood"}, {"4-hybrid", "hybrid"}, {"6-iron", "iron"}, {"8-iron", "iron"}, {"54° wedge", "wedge"}} {
		p.Clubs = append(p.Clubs, plan.Club{Name: c[0], Kind: c[1]})
	}
	return p
}

func encoded(t testing.TB, p plan.Plan) string {
	t.Helper()
	c, err := plan.Check(p)
	if err != nil {
		t.Fatal(err)
	}
	link, err := Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	return link
}

func TestRoundTrip(t *testing.T) {
	for _, tc := range []struct {
		name string
		p    plan.Plan
		most int
	}{
		{"demo", plan.Demo(), longestDemo},
		{"crowded", crowded(), longestReal},
	} {
		t.Run(tc.name, func(t *testing.T) {
			link := encoded(t, tc.p)
			if len(link) > tc.most {
				t.Errorf("the link has %d characters, want at most %d", len(link), tc.most)
			}
			want := tc.p.Sparse().WithDefaults()
			for _, s := range []string{link, " " + link + "\n", "https://example.org/room/" + link, link + "&sheet=stand"} {
				if got, err := Decode(s); err != nil || !reflect.DeepEqual(got.Plan(), want) {
					t.Errorf("Decode(%.60q) = %+v, %v, want %+v", s, got, err, want)
				}
			}
		})
	}
}

// The page's tests read the link that this package makes, and this package reads
// the one that they keep from the browser's compressor.
func TestPageLinks(t *testing.T) {
	const ours, theirs = "testdata/cli.txt", "testdata/page.txt"
	link := encoded(t, plan.Demo())
	if *update {
		if err := os.WriteFile(ours, []byte(link+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, file := range []string{ours, theirs} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Decode(string(text))
		if err != nil || !bytes.Equal(p.Plan().JSON(), plan.Demo().JSON()) {
			t.Errorf("%s = %v, %v, want the demonstration room", file, p.Plan().Title, err)
		}
	}
}

// What mail and chat do to an address does no harm.
func TestHandedOn(t *testing.T) {
	good := encoded(t, plan.Demo())
	const page = "https://example.org/room/"
	for _, tc := range []struct{ name, address string }{
		{"with the page", page + good},
		{"a full stop", good + "."},
		{"a bracket and a comma", good + "),"},
		{"a blank", good + " "},
		{"broken into lines", good[:76] + "\r\n " + good[76:]},
		{"a sheet and whom it is for", page + good + "&for=friend&sheet=stand"},
		{"a tracking parameter", page + good + "?utm_source=mail"},
		{"escaped", page + strings.NewReplacer("#", "%23", "=", "%3D", "_", "%5F").Replace(good)},
	} {
		t.Run(tc.name, func(t *testing.T) {
			p, err := Decode(tc.address)
			if err != nil || p.Plan().Title != plan.Demo().Title {
				t.Errorf("Decode(%.90s) = %q, %v", tc.address, p.Plan().Title, err)
			}
		})
	}
}

func made(t testing.TB, data string) string {
	t.Helper()
	link, err := encode([]byte(data))
	if err != nil {
		t.Fatal(err)
	}
	return link
}

func TestDecodeErrors(t *testing.T) {
	good := encoded(t, plan.Demo())
	swapped := []byte(good)
	swapped[len(swapped)/2] ^= 1 // still a letter of the alphabet or not: damaged either way
	const wide = `{"version":1,"margin":9,"room":{"length":6,"width":4,"height":3},"clubs":[{"name":"d","kind":"driver"}],"players":[{"name":"a","height":1.8}]}`
	for _, tc := range []struct{ name, link, message string }{
		{"empty", "", "holds no plan"},
		{"no link", "plan.json", "holds no plan"},
		{"only the prefix", Prefix, "holds no plan"},
		{"not base64", "#p=!!!!", errDamaged.Error()},
		{"not the alphabet", "#p=%20%F0%9F%92%A5!!", errDamaged.Error()},
		{"noise", "#p=AAAAAAAAAAAAAAAA", errDamaged.Error()},
		{"checksum only", "#p=AAAA", errDamaged.Error()},
		{"cut short", good[:len(good)-20], errDamaged.Error()},
		{"half", good[:len(good)/2], errDamaged.Error()},
		{"last letter lost", good[:len(good)-1], errDamaged.Error()},
		{"one letter changed", string(swapped), errDamaged.Error()},
		{"changed inside", good[:20] + "zzzz" + good[24:], errDamaged.Error()},
		{"something behind it", good + "AAAA", errDamaged.Error()},
		{"bomb", made(t, strings.Repeat(" ", most+1)), errDamaged.Error()},
		{"a megabyte", Prefix + strings.Repeat("A", 1<<20), "too long"},
		{"a bad plan", made(t, wide), "the link holds a plan that does not work: margin 9 m"},
		{"not JSON", made(t, `hello`), "the link holds a plan that does not work: the plan is not valid JSON"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			if _, err := Decode(tc.link); err == nil || !strings.Contains(err.Error(), tc.message) {
				t.Errorf("Decode(%.60s) = error %v, want one with %q", tc.link, err, tc.message)
			}
		})
	}
}

// Every letter of a link is changed in turn: none may pass for another plan.
func TestDamage(t *testing.T) {
	good := encoded(t, plan.Demo())
	for i := len(Prefix); i < len(good); i++ {
		bad := []byte(good)
		bad[i] = 'A'
		if good[i] == 'A' {
			bad[i] = 'B'
		}
		// The compressor may leave bits of its last byte unused: those change nothing.
		if p, err := Decode(string(bad)); err == nil && !bytes.Equal(p.Plan().JSON(), plan.Demo().JSON()) {
			t.Errorf("Decode(link with letter %d changed) = another plan, want an error", i)
		}
	}
}

func FuzzDecode(engine *testing.F) {
	f := fuzzed.New(engine)
	good := encoded(f, plan.Demo())
	for _, s := range []string{"", Prefix, good, good[:40], "#p=AAAAA", made(f, strings.Repeat("{", 4000))} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := Decode(s)
		if err != nil {
			return
		}
		again, err := Encode(p)
		if err != nil {
			return // numbers finer than a link keeps may lie on a limit
		}
		if _, err := Decode(again); err != nil {
			t.Errorf("Decode(Encode(p)) = error %v, want a plan", err)
		}
	})
}

func ExampleEncode() {
	demo, err := plan.Check(plan.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	link, err := Encode(demo)
	if err != nil {
		fmt.Println(err)
		return
	}
	back, err := Decode(link)
	fmt.Println(link[:3], back.Plan().Title, err)
	// Output: #p= Carriage-house loft <nil>
}
