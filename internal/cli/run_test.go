package main

import (
	"bytes"
	"strings"
	"testing"
)

// The command line's own mistakes: each gets a sentence and exit code 3.
func TestBadCommandLines(t *testing.T) {
	tests := []struct {
		name string
		args []string
		want string
	}{
		{"nothing", nil, `"" is not a command; choose one of `},
		{"unknown verb", []string{"fly"}, `"fly" is not a command; choose one of `},
		{"unknown flag", []string{"serve", "-loud"}, "flag provided but not defined: -loud"},
		{"stray argument", []string{"serve", "public"}, `serve takes no "public": flags only`},
		{"no such folder", []string{"serve", "-dir", "no/such/folder"}, "the folder to serve: "},
		{"bad address", []string{"serve", "-dir", ".", "-addr", "nowhere"}, "missing port"},
		{"no folder for the site", []string{"site"}, "-o FOLDER"},
		{"a site in the page", []string{"site", "-o", "public/site"}, "public/site is in the page's own folder"},
		{"an address of nothing", []string{"site", "-o", "x", "-address", "golf"}, `"golf" is not the address`},
		{"a site of no quality", []string{"site", "-o", "x", "-quality", "-1"}, "quality -1 is outside 0–11"},
		{"a bad value", []string{"build", "-quality", "good"}, "-h lists the flags"},
		{"no such plan", []string{"check", "no\nplan.json"}, `"no\nplan.json": no such file`},
		{"bad quality", []string{"build", "-quality", "12"}, "quality 12 is outside 0–11"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var out, errOut bytes.Buffer
			code := run(t.Context(), tt.args, strings.NewReader(""), &out, &errOut)
			if code != exitBad || !strings.Contains(errOut.String(), tt.want) {
				t.Errorf("run(%q) = %d with stderr %q, want %d with %q", tt.args, code, &errOut, exitBad, tt.want)
			}
			if n := strings.Count(errOut.String(), "\n"); n != 1 {
				t.Errorf("run(%q) wrote %d lines, want one sentence:\n%s", tt.args, n, &errOut)
			}
			if out.Len() > 0 {
				t.Errorf("run(%q) wrote %q to stdout, want nothing", tt.args, &out)
			}
		})
	}
}

func TestHelp(t *testing.T) {
	var out, errOut bytes.Buffer
	if code := run(t.Context(), []string{"size", "-h"}, nil, &out, &errOut); code != exitClear {
		t.Errorf("size -h = %d, want %d", code, exitClear)
	}
	if !strings.Contains(errOut.String(), "usage: size [-check]") {
		t.Errorf("size -h wrote %q, want its usage", &errOut)
	}
}
