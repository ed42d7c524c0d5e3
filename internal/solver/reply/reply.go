// Package reply is what the programs behind the page share of a conversation: how a
// request is read and how it is refused.
package reply

import (
	"errors"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/plan"
)

// maxRequest is the longest request read, in bytes: a plan of the largest size
// that plan.Parse takes, twice over for escapes, and its wrapping.
const maxRequest = 2<<20 + 1<<10

// Problem is why a request was not served.
type Problem struct {
	Message string `json:"message"`         // a sentence
	Field   string `json:"field,omitempty"` // path in the plan, such as players[1].height
}

// Failure is the answer that holds only a problem.
type Failure struct {
	Error Problem `json:"error"`
}

// ErrorJSON is the answer for an error.
func ErrorJSON(err error) []byte {
	out, merr := json.Encode(Failure{ProblemOf(err)})
	if merr != nil { // a struct of two strings always marshals
		return []byte(`{"error":{"message":"this is a fault of the program, not of your numbers"}}`)
	}
	return out
}

// Guarded turns a panic of serve into an error, so that one bad request does
// not end the program and with it the page.
func Guarded(serve func() ([]byte, error)) (out []byte, err error) {
	defer func() {
		if r := recover(); r != nil {
			out, err = nil, fmt.Errorf("this is a fault of the program, not of your numbers: %s", panicText(r))
		}
	}()
	return serve()
}

// Handle answers a request: always one JSON object.
func Handle(serve func() (any, error)) []byte {
	out, err := Guarded(func() ([]byte, error) {
		answer, err := serve()
		if err != nil {
			return nil, err
		}
		return json.Encode(answer)
	})
	if err != nil {
		return ErrorJSON(err)
	}
	return out
}

// panicText is what a panic says: the runtime's are errors, ours are text.
func panicText(r any) string {
	switch r := r.(type) {
	case error:
		return r.Error()
	case string:
		return r
	}
	return "it stopped without a word"
}

// Read puts a request into the struct that into points at.
func Read(body []byte, into any) error {
	if len(body) > maxRequest {
		return fmt.Errorf("the request is %.1f MB, more than the %.0f MB that are read at once", float64(len(body))/1e6, float64(maxRequest)/1e6)
	}
	tree, err := json.Decode(body)
	if err == nil {
		err = json.Fill(tree, into)
	}
	if wrong, ok := errors.AsType[*json.TypeError](err); ok && wrong.Path != "" {
		return fmt.Errorf("%s in the page's request is a %s: reload the page", wrong.Path, wrong.Got)
	}
	if err != nil {
		return fmt.Errorf("the page's request cannot be read: reload the page (%w)", err)
	}
	return nil
}

// ProblemOf finds the field that an error is about.
func ProblemOf(err error) Problem {
	p := Problem{Message: err.Error()}
	if field, ok := errors.AsType[*plan.FieldError](err); ok {
		p.Field = field.Field
	}
	return p
}
