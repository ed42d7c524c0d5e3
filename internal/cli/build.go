package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"wideberth/internal/webbuild"
)

// Folders of the build, relative to the folder of go.mod.
const (
	publicDir = "public"
	cacheDir  = ".cache"
)

// build compiles the programs and writes their twins.
func build(ctx context.Context, args []string, s streams) (int, error) {
	flags := newFlags("build", "[-quality N]", s)
	quality := flags.Int("quality", webbuild.BestQuality, qualityUsage)
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	if err := checkQuality(*quality); err != nil {
		return 0, err
	}
	_, err := buildPage(ctx, *quality)
	return exitClear, err
}

const qualityUsage = "brotli quality 0–11; a better twin that is cached is taken anyway"

func checkQuality(quality int) error {
	if quality < 0 || quality > webbuild.BestQuality {
		return fmt.Errorf("quality %d is outside 0–%d", quality, webbuild.BestQuality)
	}
	return nil
}

func buildPage(ctx context.Context, quality int) (webbuild.Manifest, error) {
	programs := []webbuild.Program{webbuild.Solver, webbuild.Scene, webbuild.Builder}
	return webbuild.Build(ctx, webbuild.Options{
		Root: ".", Out: filepath.Join(publicDir, "build"), Cache: cacheDir, Quality: quality,
		Programs: programs,
		Data:     append([]webbuild.Data{webbuild.Sureness, webbuild.Known, webbuild.Licences(ctx, ".", programs...)}, webbuild.Pictures...),
	})
}

// size builds at the best quality and prints what a first visit transfers.
func size(ctx context.Context, args []string, s streams) (int, error) {
	flags := newFlags("size", "[-check]", s)
	check := flags.Bool("check", false, "fail when a budget is exceeded")
	if err := flags.Parse(args); err != nil {
		return 0, err
	}

	// The engine's empty program is compressed beside the page's: each takes
	// the better part of a minute.
	type yardstick struct {
		built webbuild.Built
		err   error
	}
	empty := make(chan yardstick, 1)
	go func() {
		built, err := webbuild.Yardstick(ctx, ".", cacheDir)
		empty <- yardstick{built, err}
	}()
	manifest, err := buildPage(ctx, webbuild.BestQuality)
	measure := <-empty
	if err := errors.Join(err, measure.err); err != nil {
		return 0, err
	}
	sizes, err := webbuild.Measure(publicDir, manifest, measure.built.Brotli)
	if err != nil {
		return 0, err
	}
	if err := sizes.Print(s.out); err != nil {
		return 0, err
	}
	if over := sizes.Check(); *check && len(over) > 0 {
		return 0, errors.New(strings.Join(over, "\n"))
	}
	return exitClear, nil
}
