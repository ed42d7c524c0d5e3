// Command builder is the arithmetic of the sheets Build and Projector, compiled to
// WebAssembly and run in a Web Worker of its own. It offers one function to the worker's
// script, synchronous:
//
//	wideBerthSolve(request: string): string
//
// Requests and answers are the JSON of package internal/builder.
package main

import (
	"errors"
	"syscall/js"

	"wideberth/internal/builder"
	"wideberth/internal/solver/reply"
)

func main() {
	var b builder.Builder
	js.Global().Set("wideBerthSolve", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if len(args) != 1 || args[0].Type() != js.TypeString {
			return string(reply.ErrorJSON(errors.New("the page must ask with one string: reload the page")))
		}
		return string(b.Handle([]byte(args[0].String())))
	}))
	select {} // the function lives as long as the program does
}
