package protocol

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan/plantest"
)

func TestFigures(t *testing.T) {
	p := plantest.Loft()
	near, touch := p.Margin/2, -0.042
	c := fit.Check{Clearance: touch,
		BySurface:        map[string]float64{"right wall": near, "ceiling": touch, "beam": 2, "left wall": near},
		TypicalBySurface: map[string]float64{"ceiling": 0.1},
		Causes:           []fit.Cause{{Trait: "turn", Cost: 0.03}, {Trait: "plane", Cost: -0.02}, {Trait: "tempo", Cost: 0.0009}},
	}
	drawn := drawing.Set{Plan: drawing.View{Lines: []drawing.Line{
		{Kind: drawing.KindWall, Points: []drawing.Point{{0, 0}}},
		{Kind: drawing.KindMat, Points: []drawing.Point{{2.54, 1.27}, {4.064, 1.27}, {4.064, 2.794}}},
	}}}
	got := figuresOf(p, fit.Report{Checks: []fit.Check{c, {Clearance: 0.0254}}}, c, drawn)
	if want := []string{"8 ft 4 in", "13 ft 4 in", "4 ft 2 in", "9 ft 2 in"}; !slices.Equal(got.Mat, want) {
		t.Errorf("the mat's edges are at %q, want %q", got.Mat, want)
	}
	if got := figuresOf(p, fit.Report{}, c, drawing.Set{}).Mat; len(got) != 0 {
		t.Errorf("without a mat its edges are at %q", got)
	}
	if want := []string{"−1 3/4 in", "1 in"}; !slices.Equal(got.Checks, want) {
		t.Errorf("checks read %q, want %q, rounded down", got.Checks, want)
	}
	want := []surfaceFigure{
		{"ceiling", touch, fit.Strikes, "−1 3/4 in", "3 7/8 in"},
		{"left wall", near, fit.Tight, "2 7/8 in", ""},
		{"right wall", near, fit.Tight, "2 7/8 in", ""},
		{"beam", 2, fit.Clear, "6 ft 6 5/8 in", ""},
	}
	if !slices.Equal(got.Surfaces, want) {
		t.Errorf("surfaces = %+v\nwant %+v", got.Surfaces, want)
	}
	if want := []causeFigure{{"turn", 0.03, "1 1/8 in"}, {"plane", -0.02, "3/4 in"}}; !slices.Equal(got.Causes, want) {
		t.Errorf("causes = %+v, want %+v", got.Causes, want)
	}
}

// A plan as it is typed gives the answer of the numbers that were meant.
func TestSolveTyped(t *testing.T) {
	var s Solver
	p := small()
	p.Players[0].Height = 1.9304
	want := solve(t, &s, p, Focus{})
	typed := strings.Replace(string(solveRequest(p, Focus{})), `"height":1.9304`, `"height":"6'4\""`, 1)
	var got solved
	if err := json.Unmarshal(s.Handle([]byte(typed)), &got); err != nil || got.Error != nil {
		t.Fatalf("typed: %v, %+v", err, got.Error)
	}
	if got.Sentences.Verdict != want.Sentences.Verdict || got.Figures.Fields["players[0].height"] != "6 ft 4 in" {
		t.Errorf("typed %q gives %q, want %q", got.Figures.Fields["players[0].height"], got.Sentences.Verdict, want.Sentences.Verdict)
	}
}
