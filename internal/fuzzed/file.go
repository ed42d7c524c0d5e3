package fuzzed

import (
	"crypto/sha256"
	"fmt"
	"go/ast"
	"go/parser"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// heading is the first line of the engine's files.
const heading = "go test fuzz v1"

// engineCache is the folder where the engine keeps what covered something new.
func engineCache() string {
	dir := os.Getenv("GOCACHE")
	if dir == "" {
		user, err := os.UserCacheDir()
		if err != nil {
			return "" // none is kept then
		}
		dir = filepath.Join(user, "go-build")
	}
	return filepath.Join(dir, "fuzz")
}

// kept are the inputs in the engine's files of a folder that are no longer than so many
// bytes; none where there is no folder.
func kept(dir string, longest int) corpus {
	var c corpus
	entries, _ := os.ReadDir(dir)
	for _, entry := range entries {
		data, err := os.ReadFile(filepath.Join(dir, entry.Name()))
		if err != nil {
			panic(err)
		}
		if len(data) > longest {
			continue
		}
		input, err := read(string(data))
		if err != nil {
			panic(fmt.Sprintf("%s: %v", entry.Name(), err))
		}
		c = append(c, input)
	}
	return c
}

// keep writes the input as one of the engine's files, by a name made of what is in it.
func keep(dir string, input []any) {
	text := written(input)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		panic(err)
	}
	name := filepath.Join(dir, fmt.Sprintf("%x", sha256.Sum256([]byte(text)))[:16])
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		panic(err)
	}
	fmt.Println("kept as", name)
}

// written is the text of one of the engine's files.
func written(input []any) string {
	var b strings.Builder
	b.WriteString(heading + "\n")
	for _, v := range input {
		switch v := v.(type) {
		case string, []byte:
			fmt.Fprintf(&b, "%T(%q)\n", v, v)
		case uint8:
			fmt.Fprintf(&b, "byte(%q)\n", rune(v))
		case float64:
			fmt.Fprintf(&b, "math.Float64frombits(%#x)\n", math.Float64bits(v))
		case float32:
			fmt.Fprintf(&b, "math.Float32frombits(%#x)\n", math.Float32bits(v))
		default:
			fmt.Fprintf(&b, "%T(%v)\n", v, v)
		}
	}
	return strings.ReplaceAll(b.String(), "[]uint8(", "[]byte(")
}

// read is what one of the engine's files holds.
func read(text string) ([]any, error) {
	rest, found := strings.CutPrefix(strings.TrimSpace(text), heading)
	if !found {
		return nil, fmt.Errorf("it does not begin with %q", heading)
	}
	var input []any
	for _, line := range strings.Split(strings.TrimSpace(rest), "\n") {
		expr, err := parser.ParseExpr(line)
		if err != nil {
			return nil, err
		}
		call, ok := expr.(*ast.CallExpr)
		if !ok || len(call.Args) != 1 {
			return nil, fmt.Errorf("%s is not a value with its type", line)
		}
		kind, inside := line[:call.Lparen-1], line[call.Lparen:call.Rparen-1]
		v, err := value(kind, inside)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", line, err)
		}
		input = append(input, v)
	}
	return input, nil
}

// value is one argument, of the kinds that our targets have.
func value(kind, text string) (any, error) {
	switch kind {
	case "string":
		return strconv.Unquote(text)
	case "[]byte":
		s, err := strconv.Unquote(text)
		return []byte(s), err
	case "byte", "uint8":
		if s, err := strconv.Unquote(text); err == nil {
			return byte([]rune(s)[0]), nil
		}
		n, err := strconv.ParseUint(text, 0, 8)
		return byte(n), err
	case "bool":
		return strconv.ParseBool(text)
	case "int":
		return strconv.Atoi(text)
	case "int64":
		return strconv.ParseInt(text, 0, 64)
	case "uint64":
		return strconv.ParseUint(text, 0, 64)
	case "float64":
		return strconv.ParseFloat(text, 64)
	case "float32":
		x, err := strconv.ParseFloat(text, 32)
		return float32(x), err
	case "math.Float64frombits":
		n, err := strconv.ParseUint(text, 0, 64)
		return math.Float64frombits(n), err
	case "math.Float32frombits":
		n, err := strconv.ParseUint(text, 0, 32)
		return math.Float32frombits(uint32(n)), err
	}
	return nil, fmt.Errorf("no target has a %s", kind)
}
