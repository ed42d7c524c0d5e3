package main

import (
	"go/parser"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// Every kind of fault is found where it can be put, and what is left is a file.
func TestMutants(t *testing.T) {
	const source = `package p

import "math"

func f(a, b int) (n int, err error) {
	if a < b && !ok {
		n += 2
		n++
		log(n)
	}
	g := func() (int, string) { return a - b, "" }
	if empty {
		return 0, nil
	}
	for range 3 {
		x = -math.Pi
	}
	return n, nil
}
`
	found, err := mutants("f.go", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, m := range found {
		got = append(got, m.what)
		changed := m.apply([]byte(source))
		if string(changed) == source {
			t.Errorf("%s leaves the file as it is", m.what)
		}
		if _, err := parser.ParseFile(token.NewFileSet(), "f.go", changed, 0); err != nil {
			t.Errorf("%s: %v in\n%s", m.what, err, changed)
		}
		if want := 1 + strings.Count(source[:m.start], "\n"); m.line != want {
			t.Errorf("%s is said to be in line %d, want %d", m.what, m.line, want)
		}
	}
	want := []string{
		"if not a < b && !ok", "&& becomes ||", "< becomes <=", "without !",
		"+= becomes -=", "without n += 2", "2 becomes 2+1", "++ becomes --", "without log(n)",
		"returns zero", "- becomes +", "if not empty", "0 becomes 0+1", "3 becomes 3+1", "without x = -math.Pi", "without -", "returns zero",
	}
	if !slices.Equal(got, want) {
		t.Errorf("mutants =\n%q, want\n%q", got, want)
	}
	zero := found[slices.Index(got, "returns zero")]
	if want := "return *new(int), *new(string)"; zero.with != want {
		t.Errorf("the inner function returns %q, want %q", zero.with, want)
	}
}
