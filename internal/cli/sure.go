package main

import (
	"context"

	"wideberth/internal/modeltable"
)

// printSure prints the model beside every measured figure, as the page shows it.
func printSure(_ context.Context, args []string, s streams) (int, error) {
	if err := newFlags("sure", "", s).Parse(args); err != nil {
		return 0, err
	}
	table, err := modeltable.New()
	if err != nil {
		return 0, err
	}
	return exitClear, table.Print(s.out)
}
