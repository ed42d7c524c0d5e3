package strip

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// hardy grows its stack, collects garbage and recovers from faults: all that the
// runtime's tables serve for.
const hardy = `package main

import "runtime"

type node struct{ next *node; pad [64]int }

func deep(n int, at *node) int {
	if n == 0 {
		runtime.GC()
		return at.pad[0]
	}
	return 1 + deep(n-1, &node{next: at})
}

func fault(what func()) (said string) {
	defer func() { said = recover().(error).Error() }()
	what()
	return
}

func main() {
	var list []int
	var none *node
	println(deep(20000, nil2()), fault(func() { println(none.pad[1]) }), fault(func() { println(list[len(list)]) }))
	done := make(chan int)
	go func() { done <- deep(1000, nil2()) }()
	println(<-done)
}

func nil2() *node { return &node{} }
`

// A stripped program does what it did, and no name of a function is left in it.
func TestStrip(t *testing.T) {
	dir := t.TempDir()
	source, file := filepath.Join(dir, "main.go"), filepath.Join(dir, "main.wasm")
	if err := os.WriteFile(source, []byte(hardy), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", file, source)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("building: %v\n%s", err, out)
	}
	whole, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	want := runWasm(t, file)
	if !strings.Contains(want, "20000 ") || !strings.Contains(want, "nil pointer") || !strings.Contains(want, "out of range") {
		t.Fatalf("the program says %q", want)
	}
	bare, err := Program(whole)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(whole, []byte("runtime.gcDrain")) || bytes.Contains(bare, []byte("runtime.gcDrain")) {
		t.Error("the names of functions were not there, or are there still")
	}
	if err := os.WriteFile(file, bare, 0o644); err != nil {
		t.Fatal(err)
	}
	if got := runWasm(t, file); got != want {
		t.Errorf("stripped, the program says\n%s\nwant\n%s", got, want)
	}
}

func TestStripRefuses(t *testing.T) {
	for name, program := range map[string][]byte{
		"nothing":            nil,
		"no data":            []byte("\x00asm\x01\x00\x00\x00"),
		"data past the end":  []byte("\x00asm\x01\x00\x00\x00\x0b\xff\x01"),
		"data without Go":    []byte("\x00asm\x01\x00\x00\x00\x0b\x07\x01\x00\x41\x00\x0b\x01x"),
		"a passive segment":  []byte("\x00asm\x01\x00\x00\x00\x0b\x04\x01\x01\x01x"),
		"a segment too long": []byte("\x00asm\x01\x00\x00\x00\x0b\x07\x01\x00\x41\x00\x0b\x7fx"),
	} {
		t.Run(name, func(t *testing.T) {
			if out, err := Program(program); err == nil {
				t.Errorf("Program = %d bytes, want an error", len(out))
			}
		})
	}
}

// runWasm runs a program in Node and returns what it prints.
func runWasm(t *testing.T, file string) string {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "go_js_wasm_exec"), file)
	cmd.Env = []string{"PATH=" + os.Getenv("PATH")} // the loader has room for little more
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("running it in Node: %v\n%s", err, out)
	}
	return string(out)
}
