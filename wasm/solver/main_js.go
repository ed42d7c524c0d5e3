// Command solver is the page's arithmetic, compiled to WebAssembly and run in a
// Web Worker. It offers two functions to the worker's script, both synchronous:
//
//	wideBerthSolve(request: string): string
//	wideBerthShow(request: string): Uint8Array | string
//
// Requests and answers are the JSON of package protocol; a string from
// wideBerthShow is the JSON of an error.
package main

import (
	"errors"
	"syscall/js"

	"wideberth/internal/solver/protocol"
	"wideberth/internal/solver/reply"
)

func main() {
	var solver protocol.Solver
	scope := js.Global()
	scope.Set("wideBerthSolve", js.FuncOf(func(_ js.Value, args []js.Value) any {
		request, err := requestOf(args)
		if err != nil {
			return string(reply.ErrorJSON(err))
		}
		return string(solver.Handle(request))
	}))
	scope.Set("wideBerthShow", js.FuncOf(func(_ js.Value, args []js.Value) any {
		request, err := requestOf(args)
		if err != nil {
			return string(reply.ErrorJSON(err))
		}
		show, err := solver.Show(request)
		if err != nil {
			return string(reply.ErrorJSON(err))
		}
		bytes := scope.Get("Uint8Array").New(len(show))
		js.CopyBytesToJS(bytes, show)
		return bytes
	}))
	select {} // the functions live as long as the program does
}

// requestOf is the one string that both functions take. Asking a js.Value of
// another type for its string would not fail but describe the value.
func requestOf(args []js.Value) ([]byte, error) {
	if len(args) != 1 || args[0].Type() != js.TypeString {
		return nil, errors.New("the page must ask with one string: reload the page")
	}
	return []byte(args[0].String()), nil
}
