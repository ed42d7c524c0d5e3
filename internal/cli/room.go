package main

import (
	"context"

	building "wideberth/internal/sim/build"
	"wideberth/internal/sim/fit"
)

// printRoom prints what the rest of the room needs: floor, image, projector,
// quantities.
func printRoom(_ context.Context, args []string, s streams) (int, error) {
	flags := newFlags("room", "PLAN.json", s)
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	p, err := readPlan(flags.Args(), s.in)
	if err != nil {
		return 0, err
	}
	var lab fit.Lab
	report, err := building.Room(&lab, p, building.All)
	if err != nil {
		return 0, err
	}
	return exitClear, printJSON(s.out, report, "  ")
}
