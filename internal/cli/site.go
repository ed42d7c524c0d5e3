package main

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"

	"wideberth/internal/site"
	"wideberth/internal/webbuild"
)

// makeSite builds the page and leaves a folder that any static host can serve.
func makeSite(ctx context.Context, args []string, s streams) (int, error) {
	flags := newFlags("site", "-o FOLDER [-address URL] [-twins=false] [-quality N]", s)
	out := flags.String("o", "", "folder to write to; what lies there is written over")
	address := flags.String("address", "", "where the page will stand, for those who show links as cards")
	twins := flags.Bool("twins", true, "with .br and .gz files beside the large ones, for hosts that send them")
	quality := flags.Int("quality", webbuild.BestQuality, qualityUsage)
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	if flags.NArg() > 0 {
		return 0, fmt.Errorf("site takes no %q: flags only", flags.Arg(0))
	}
	if *out == "" {
		return 0, errors.New("name the folder to write to with -o FOLDER")
	}
	if u, err := url.Parse(*address); *address != "" && (err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" || u.RawQuery != "" || u.Fragment != "") {
		return 0, fmt.Errorf("%q is not the address of a folder on the web, as https://example.org/golf/ is", *address)
	}
	if err := checkQuality(*quality); err != nil {
		return 0, err
	}
	if inside, err := within(*out, publicDir); err != nil || inside {
		return 0, fmt.Errorf("%s is in the page's own folder: name another with -o", *out)
	}
	if _, err := buildPage(ctx, *quality); err != nil {
		return 0, err
	}
	root, err := os.OpenRoot(publicDir)
	if err != nil {
		return 0, err
	}
	defer root.Close()
	if err := (site.Export{Twins: *twins, Address: *address}).Write(root.FS(), *out); err != nil {
		return 0, err
	}
	return exitClear, webbuild.ListFiles(*out) // the page with an address has another sum
}

// within tells whether a path is a folder or lies in it.
func within(path, folder string) (bool, error) {
	p, err1 := filepath.Abs(path)
	f, err2 := filepath.Abs(folder)
	if err := errors.Join(err1, err2); err != nil {
		return false, err
	}
	rel, err := filepath.Rel(f, p)
	return filepath.IsLocal(rel), err
}
