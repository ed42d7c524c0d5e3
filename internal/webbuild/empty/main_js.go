// Command empty is the drawing engine with nothing to draw. The build compiles
// it only to know what the engine itself costs to download.
package main

import (
	"os"

	"github.com/hajimehoshi/ebiten/v2"
)

type game struct{}

func (game) Update() error              { return nil }
func (game) Draw(*ebiten.Image)         {}
func (game) Layout(w, h int) (int, int) { return w, h }

func main() {
	if err := ebiten.RunGame(game{}); err != nil {
		os.Exit(1)
	}
}
