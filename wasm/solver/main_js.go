// Command solver is the page's arithmetic, compiled to WebAssembly and run in a
// Web Worker. It offers the worker's script four functions:
//
//	wideBerthSolve(request: string): string | number
//	wideBerthNext(): string | number
//	wideBerthStop()
//	wideBerthShow(request: string): Uint8Array | string
//
// Requests and answers are the JSON of package protocol; a string from
// wideBerthShow is the JSON of an error. A number says that the request that was
// begun last is not answered yet and how much of it is done, 0 to 1, or −1 where
// nobody knows: wideBerthNext works on at it.
package main

import (
	"errors"
	"syscall/js"

	"wideberth/internal/solver/protocol"
	"wideberth/internal/solver/reply"
)

// slice is how long the worker's thread is kept from its messages, ms, if the next
// pause of the work comes in time.
const slice = 30

func main() {
	var solver protocol.Solver
	var job *protocol.Job
	scope := js.Global()
	clock := scope.Get("performance")
	now := func() float64 { return clock.Call("now").Float() }
	next := func() any {
		if job == nil {
			return string(reply.ErrorJSON(errors.New("there is nothing to work on: reload the page")))
		}
		for start := now(); ; {
			p, answer := job.Next()
			if answer != nil {
				job = nil
				return string(answer)
			}
			if now()-start < slice {
				continue
			}
			if p.All == 0 {
				return -1
			}
			return float64(p.Done) / float64(p.All)
		}
	}
	stop := func() {
		if job != nil {
			job.Stop()
			job = nil
		}
	}
	scope.Set("wideBerthSolve", js.FuncOf(func(_ js.Value, args []js.Value) any {
		request, err := requestOf(args)
		if err != nil {
			return string(reply.ErrorJSON(err))
		}
		stop()
		job = solver.Begin(request)
		return next()
	}))
	scope.Set("wideBerthNext", js.FuncOf(func(js.Value, []js.Value) any { return next() }))
	scope.Set("wideBerthStop", js.FuncOf(func(js.Value, []js.Value) any {
		stop()
		return nil
	}))
	scope.Set("wideBerthShow", js.FuncOf(func(_ js.Value, args []js.Value) any {
		request, err := requestOf(args)
		if err != nil {
			return string(reply.ErrorJSON(err))
		}
		stop()
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
