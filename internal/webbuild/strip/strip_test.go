package strip

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
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

// hardyProgram is hardy, built once for all tests.
var hardyProgram = sync.OnceValues(func() ([]byte, error) {
	dir, err := os.MkdirTemp("", "strip")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	source, file := filepath.Join(dir, "main.go"), filepath.Join(dir, "main.wasm")
	if err := os.WriteFile(source, []byte(hardy), 0o644); err != nil {
		return nil, err
	}
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", file, source)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("building: %v\n%s", err, out)
	}
	return os.ReadFile(file)
})

func built(t *testing.T) []byte {
	t.Helper()
	program, err := hardyProgram()
	if err != nil {
		t.Fatal(err)
	}
	return program
}

// memoryOf returns the memory that the hardy program starts with.
func memoryOf(t *testing.T) []byte {
	t.Helper()
	program := built(t)
	_, start, end, err := dataSection(program)
	if err != nil {
		t.Fatal(err)
	}
	memory, err := readSegments(program[start:end])
	if err != nil {
		t.Fatal(err)
	}
	return memory
}

// A stripped program does what it did, and no name of a function is left in it.
func TestStrip(t *testing.T) {
	whole := built(t)
	want := runWasm(t, whole)
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
	if got := runWasm(t, bare); got != want {
		t.Errorf("stripped, the program says\n%s\nwant\n%s", got, want)
	}
}

// What no function needs in a browser is named by none, and what it names otherwise is as it was.
func TestStripDropsWhatNobodyReads(t *testing.T) {
	memory := memoryOf(t)
	table := memory[bytes.Index(memory, tableMagic):]
	whole := bytes.Clone(table)
	if err := emptyTables(memory); err != nil {
		t.Fatal(err)
	}
	num := func(i int) int { return int(binary.LittleEndian.Uint32(table[i:])) }
	records, dropped, kept := num(headFuncs), 0, 0
	for k := range num(8) {
		f := records + num(records+8*k+4)
		tables := num(f + funcPCData)
		for i := range tables + int(table[f+funcData]) {
			at := f + funcSize + 4*i
			want := whole[at : at+4]
			switch i {
			case pcUnsafePoint, pcArgLive:
				want = []byte{0, 0, 0, 0}
			}
			if i >= tables {
				want = whole[at : at+4]
			}
			switch i - tables {
			case dataArgs, dataArgLive:
				want = []byte{255, 255, 255, 255}
			}
			if !bytes.Equal(table[at:at+4], want) {
				t.Fatalf("function %d: its %d. table or data is at %v, want %v", k, i, table[at:at+4], want)
			}
			if bytes.Equal(want, whole[at:at+4]) {
				kept++
			} else {
				dropped++
			}
		}
	}
	if dropped < 500 || kept < dropped {
		t.Errorf("%d dropped and %d kept", dropped, kept)
	}
}

// A program whose tables are laid out otherwise, as another version of Go may have
// them, is refused, whichever field is another.
func TestStripRefusesOtherLayouts(t *testing.T) {
	memory := memoryOf(t)
	at := bytes.Index(memory, tableMagic)
	records := int(binary.LittleEndian.Uint32(memory[at+headFuncs:]))
	// A record in the middle, of a function that has a name, a file and lines.
	middle := records + int(binary.LittleEndian.Uint32(memory[at+records+8*700+4:]))
	for name, change := range map[string]func(table []byte){
		"as it is":           nil,
		"another magic":      func(table []byte) { table[0]++ },
		"two tables":         func(table []byte) { copy(table[middle:], tableMagic) },
		"more in the head":   func(table []byte) { copy(table[headNames+8:headSize], bytes.Clone(table[headNames:])) },
		"names not in front": func(table []byte) { copy(table[headNames:], table[headUnits:headUnits+8]) },
		"an odd index":       func(table []byte) { table[records+8*700]++ },
		"an odd name":        func(table []byte) { table[middle+funcName]++ },
		"an odd file":        func(table []byte) { table[middle+funcFile]++ },
		"an odd line":        func(table []byte) { table[middle+funcLine]++ },
		"an odd unit":        func(table []byte) { table[middle+funcUnit+3] = 1 },
		"an odd stack":       func(table []byte) { table[middle+funcPCSP]++ },
		"too many tables":    func(table []byte) { table[middle+funcPCData+3] = 0x7f },
		"too much data":      func(table []byte) { table[middle+funcData] = mostData + 1 },
		"a field more":       func(table []byte) { copy(table[middle+4:middle+funcSize], bytes.Clone(table[middle:])) },
	} {
		t.Run(name, func(t *testing.T) {
			odd := bytes.Clone(memory)
			if change != nil {
				change(odd[at:])
			}
			if err := emptyTables(odd); (err == nil) != (change == nil) {
				t.Errorf("emptyTables = %v", err)
			}
		})
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
func runWasm(t *testing.T, program []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "main.wasm")
	if err := os.WriteFile(file, program, 0o644); err != nil {
		t.Fatal(err)
	}
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
