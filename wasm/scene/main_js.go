// Command scene is the 3D picture, compiled to WebAssembly: the room as a paper
// model, the golfer and the club. It runs in a document of its own and speaks
// with that document's script by plain objects:
//
//	wideBerthScene(message)                 from the script, see receive
//	wideBerthSceneEvent(message)            to the script: ready, failed and state, see tellState
//	wideBerthGlyphs(texts, pixels): atlas   asks the script to draw lettering, see letter
//
// It draws when something has changed and rests otherwise.
package main

import (
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

func main() {
	g := newGame()
	js.Global().Set("wideBerthScene", js.FuncOf(g.receive)) // lives as long as the page
	ebiten.SetScreenClearedEveryFrame(false)
	err := ebiten.RunGameWithOptions(g, &ebiten.RunGameOptions{InitUnfocused: true})
	if err != nil {
		tell("failed", map[string]any{"message": "The 3D view could not start: " + err.Error() + "."})
	}
}

// tell sends the script an event.
func tell(kind string, fields map[string]any) {
	if fields == nil {
		fields = map[string]any{}
	}
	fields["type"] = kind
	if f := js.Global().Get("wideBerthSceneEvent"); f.Type() == js.TypeFunction {
		f.Invoke(js.ValueOf(fields))
	}
}
