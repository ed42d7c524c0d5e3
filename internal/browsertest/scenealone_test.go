//go:build browser

package browsertest

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"wideberth/internal/render/scene/record"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// sceneAlone opens the scene in a frame of a page that holds nothing else, with the
// tall guest's driver in the demonstration's room.
func sceneAlone(t *testing.T, width, height int) *tab {
	t.Helper()
	p := plan.Demo()
	player, club := p.Players[1], p.Clubs[0]
	of := func(style string) *swing.Swing {
		one := player
		one.Follow = style
		m, err := swing.New(body.New(one), swing.NewClub(club), swing.StyleOf(one))
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	bytes := record.Swing(record.Input{
		Plan: p, Player: player, Club: club, Tee: p.Tees[0], Swing: of("loose"), Typical: of("full"),
		Tightest: record.Tightest{
			Time: 1.55, From: geom.Vec{X: 2.67, Y: 3.88, Z: 2.89}, To: geom.Vec{X: 2.67, Y: 3.7, Z: 2.66},
			Label: "11 1/2 in · 290 mm past", Verdict: fit.Strikes, Surface: "rafters, left", Part: "clubhead", ModelError: 0.05,
		},
	}).Encode()

	tb := open(t, withGL, desktop)
	tb.goTo("/build/build.json")
	eval[bool](tb, fmt.Sprintf(`(() => {
		globalThis.heard = [];
		addEventListener("message", ({ data }) => {
			heard.push(data); // a picture's bytes follow as text
			if (data.type !== "picture") return;
			const reader = new FileReader();
			reader.onload = () => { data.base64 = reader.result.split(",")[1]; };
			reader.readAsDataURL(new Blob([data.png]));
		});
		document.body.replaceChildren();
		const frame = document.createElement("iframe");
		frame.src = "/scene/scene.html";
		frame.style.cssText = "width: %dpx; height: %dpx; border: 0";
		document.body.append(frame);
		globalThis.say = (message) => frame.contentWindow.postMessage(message, location.origin);
		globalThis.last = (type) => heard.findLast((one) => one.type === type);
		return true;
	})()`, width, height))
	tb.until("the scene", `last("ready") !== undefined`)
	tb.say(`{ type: "motion", reduced: true }`)
	tb.say(fmt.Sprintf(`{ type: "show", bytes: Uint8Array.from(atob("%s"), (c) => c.charCodeAt(0)) }`, base64.StdEncoding.EncodeToString(bytes)))
	tb.until("the recording", `last("state")?.duration > 0`)
	return tb
}

// say sends the scene a message, given as script.
func (tb *tab) say(message string) {
	tb.t.Helper()
	eval[bool](tb, `(say(`+message+`), true)`)
}

// ask has the scene make a picture. Where the tests write their screenshots it is kept
// under the given name.
func (tb *tab) ask(message, name string) image.Image {
	tb.t.Helper()
	before := eval[int](tb, `heard.length`)
	tb.say(message)
	tb.until("a picture", fmt.Sprintf(`heard.slice(%d).some((one) => one.base64)`, before))
	data, err := base64.StdEncoding.DecodeString(eval[string](tb, `last("picture").base64`))
	if err != nil {
		tb.t.Fatal(err)
	}
	if *shots != "" {
		if err := os.WriteFile(filepath.Join(*shots, name+".png"), data, 0o644); err != nil {
			tb.t.Fatal(err)
		}
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		tb.t.Fatal(err)
	}
	return img
}

// unlike is how many pixels of two pictures of one size differ.
func unlike(a, b image.Image) int {
	n := 0
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			if a.At(x, y) != b.At(x, y) {
				n++
			}
		}
	}
	return n
}

// The scene without the page, asked by messages.
func TestSceneAlone(t *testing.T) {
	t.Parallel()
	tb := sceneAlone(t, 860, 560)
	for _, fact := range []fact{{"rests", sceneRests}, {"pictures", scenePictures}} {
		t.Run(fact.name, func(t *testing.T) {
			tb.in(t)
			fact.holds(t, tb)
		})
	}
}

// The scene makes pictures of any moment and size, of the view it has, and shows what it
// is told to: views, the ghost, maps, a pan.
func scenePictures(t *testing.T, tb *tab) {
	tb.say(`{ type: "seek", t: 1.55 }`)
	tb.until("the moment", `Math.abs(last("state").t - 1.55) < 0.01`)
	whole := tb.ask(`{ type: "picture" }`, "scene")
	if got := whole.Bounds().Size(); got != image.Pt(1720, 1120) {
		t.Errorf("a picture of a frame of 860×560 is %v, want twice that", got)
	}
	if n := count(whole, whole.Bounds(), vermilion, shade); n < fewest {
		t.Errorf("%d pixels of the strike's colour at the tightest moment, want at least %d", n, fewest)
	}
	small := tb.ask(`{ type: "picture", t: 0, width: 320, height: 240 }`, "scene-small")
	if got := small.Bounds().Size(); got != image.Pt(320, 240) {
		t.Errorf("the picture that was asked for in 320×240 is %v", got)
	}
	if n := count(small, small.Bounds(), vermilion, shade); n > 0 {
		t.Errorf("%d pixels of the strike's colour at address, want none", n)
	}
	if at := eval[float64](tb, `last("state").t`); at < 1.5 {
		t.Errorf("the scene stands at %.2f s after a picture of another moment, want it where it was", at)
	}

	const ask = `{ type: "picture", t: 1.4, width: 430, height: 280 }` // a picture costs by its size
	seen := map[string]image.Image{}
	for _, view := range []string{"behind", "face-on", "above", "target", "golfer", "camera"} {
		tb.say(`{ type: "view", name: "` + view + `" }`)
		tb.until(view, `last("state").view === "`+view+`"`)
		seen[view] = tb.ask(ask, "scene-"+view)
		for other, img := range seen {
			if n := unlike(img, seen[view]); other != view && n < 2_500 {
				t.Errorf("views %s and %s differ in %d pixels", other, view, n)
			}
		}
	}
	tb.say(`{ type: "view", name: "behind" }`)
	tb.until("the view", `last("state").view === "behind"`)
	for _, tt := range []struct{ name, on, off string }{
		{"ghost", `{ type: "ghost", shown: true }`, `{ type: "ghost", shown: false }`},
		{"maps", `{ type: "maps", stand: [{ name: "margin", rings: [[[2, 1], [4, 1], [4, 3], [2, 3]]] }, { name: "strike", rings: [[[1, 0.5], [5, 0.5], [5, 3.5], [1, 3.5]]] }], hang: [{ name: "closed", rings: [[[2, 1], [4, 1], [4, 3], [2, 3]]] }] }`, `{ type: "maps" }`},
		{"ball", `{ type: "ball", shown: true }`, `{ type: "ball", shown: true }`},
	} {
		tb.say(tt.on)
		on := tb.ask(ask, "scene-"+tt.name)
		tb.say(tt.off)
		off := tb.ask(ask, "scene-without")
		if n := unlike(on, seen["behind"]); tt.name != "ball" && n < 75 {
			t.Errorf("with the %s %d pixels differ, want it seen", tt.name, n)
		}
		if n := unlike(off, seen["behind"]); n > 0 {
			t.Errorf("without the %s again %d pixels differ, want none", tt.name, n)
		}
	}

	head := eval[[]float64](tb, `last("state").head`)
	tb.say(`{ type: "pan", dx: 40, dy: -25 }`)
	tb.until("the pan", fmt.Sprintf(`Math.abs(last("state").head[0] - %v) < 0.5 && Math.abs(last("state").head[1] - %v) < 0.5`, head[0]+40, head[1]-25))
}

// Nothing is drawn and nothing said while nothing changes, whatever is sent again.
func sceneRests(t *testing.T, tb *tab) {
	tb.say(`{ type: "seek", t: 1 }`)
	tb.until("rest", `Math.abs(last("state").t - 1) < 0.01 && !last("state").moving`)
	told := func(does func()) int {
		t.Helper()
		from := eval[int](tb, `heard.length`)
		does()
		tb.ask(`{ type: "picture", width: 64, height: 48 }`, "scene-rest") // which takes a frame, and tells of it
		tb.until("what it tells of it", fmt.Sprintf(`heard.slice(%d).some((one) => one.type === "state")`, from))
		return eval[int](tb, fmt.Sprintf(`heard.slice(%d).filter((one) => one.type === "state").length`, from))
	}
	if n := told(func() {}); n != 1 {
		t.Errorf("at rest a picture made the scene tell its state %d times, want once", n)
	}
	if n := told(func() {
		eval[bool](tb, `(async () => {
			for (let left = 10; left > 0; left--) {
				say({ type: "seek", t: 1 });
				await new Promise((done) => setTimeout(done, 50));
			}
			return true;
		})()`)
	}); n != 1 {
		t.Errorf("ten times the same moment made the scene tell its state %d times, want once, after the picture", n)
	}
}
