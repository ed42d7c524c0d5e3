package protocol

import (
	"fmt"
	"os"
	"path"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/solver/reply"
	"wideberth/internal/solver/words"
)

// TestWire holds the types that the page's scripts are checked with against what
// the solver reads and sends: a member that comes, goes or changes its type shows
// up in every script that uses it. Write it anew with -update.
func TestWire(t *testing.T) {
	const file = "../../pagetest/wire.d.ts"
	w := typeScript{names: map[reflect.Type]string{}}
	for _, v := range []any{request{}, reply.Failure{}, startAnswer{}, planAnswer{}, solveAnswer{}, lengthAnswer{}, ballAnswer{}, roomsAnswer{},
		standAnswer{}, hangAnswer{}, watchAnswer{}, marksAnswer{}, dragAnswer{}, hangAnswerAt{}, hangThingAnswer{}, remediesAnswer{}, changesAnswer{}, reelAnswer{}} {
		w.of(reflect.TypeOf(v))
	}
	got := "// What goes between the page and the solver, written by TestWire of internal/solver/protocol.\n" +
		"declare namespace Wire {\n" + strings.Join(w.out, "\n") + "}\n"
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is not what the solver sends; run go test ./internal/solver/protocol -run TestWire -update, then make page\n%s", file, got)
	}
}

// typeScript writes Go types as TypeScript's.
type typeScript struct {
	names map[reflect.Type]string
	out   []string
}

func (w *typeScript) of(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Bool:
		return "boolean"
	case reflect.String:
		return "string"
	case reflect.Int, reflect.Float64:
		return "number"
	case reflect.Pointer:
		return w.of(t.Elem())
	case reflect.Slice:
		return w.of(t.Elem()) + "[]"
	case reflect.Array:
		return "[" + strings.TrimSuffix(strings.Repeat(w.of(t.Elem())+", ", t.Len()), ", ") + "]"
	case reflect.Map:
		return "Record<string, " + w.of(t.Elem()) + ">"
	case reflect.Struct:
		return w.named(t)
	}
	return "any"
}

// named is the name of a struct's interface, written out the first time.
func (w *typeScript) named(t reflect.Type) string {
	if name, ok := w.names[t]; ok {
		return name
	}
	name := words.UpperFirst(t.Name())
	for _, taken := range w.names {
		if taken == name {
			name = words.UpperFirst(path.Base(t.PkgPath())) + name
		}
	}
	w.names[t] = name
	members := w.members(t)
	w.out = append(w.out, fmt.Sprintf("  interface %s {\n%s  }\n", name, members))
	return name
}

func (w *typeScript) members(t reflect.Type) string {
	var out strings.Builder
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous && f.Tag == "" {
			out.WriteString(w.members(f.Type))
			continue
		}
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if !f.IsExported() || name == "-" {
			continue
		}
		if strings.Contains(name, ".") {
			name = `"` + name + `"`
		}
		// Every request has a kind, and of the rest what its kind reads.
		if options == "omitempty" || t == reflect.TypeFor[request]() && name != "kind" {
			name += "?"
		}
		fmt.Fprintf(&out, "    %s: %s;\n", name, w.of(f.Type))
	}
	return out.String()
}
