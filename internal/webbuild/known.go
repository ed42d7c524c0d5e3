package webbuild

import (
	"encoding/json"
	"fmt"

	"wideberth/internal/solver/protocol"
)

// Known is what the page of a newcomer asks first, about the demonstration room, with
// what the solver answers: the first picture need not wait for the program. The same
// solver works it out as would in the page, when the page is built.
var Known = Data{"known.json", known}

// exchange is a request as the page makes it, with its answer.
type exchange struct {
	Request json.RawMessage `json:"request"`
	Reply   json.RawMessage `json:"reply"`
}

func known() ([]byte, error) {
	var solver protocol.Solver
	var all []exchange
	var shown struct { // what the page goes on from
		Plan, Focus, Error json.RawMessage
	}
	shown.Focus = json.RawMessage(`{"player":"","club":"","tee":""}`)
	ask := func(request string) error {
		said := solver.Handle([]byte(request))
		all = append(all, exchange{json.RawMessage(request), said})
		err := json.Unmarshal(said, &shown)
		if err == nil && shown.Error != nil {
			err = fmt.Errorf("the solver refuses the demonstration room: %s", shown.Error)
		}
		return err
	}
	if err := ask(`{"kind":"start"}`); err != nil {
		return nil, err
	}
	for _, kind := range []string{"solve", "reel", "changes"} {
		if err := ask(fmt.Sprintf(`{"kind":%q,"plan":%s,"focus":%s}`, kind, shown.Plan, shown.Focus)); err != nil {
			return nil, err
		}
	}
	return json.Marshal(all)
}
