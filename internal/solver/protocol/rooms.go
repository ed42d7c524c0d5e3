package protocol

import (
	"wideberth/internal/form"
	"wideberth/internal/sim/plan"
)

// roomsAnswer is the rooms to start from.
type roomsAnswer struct {
	Rooms []plan.Plan `json:"rooms"`
}

func rooms() roomsAnswer { return roomsAnswer{plan.Rooms()} }

// room serves a request of kind room: of a plan that holds units, walls and
// players, as typed, the whole plan that follows from them.
func room(req request) (any, error) {
	typed, err := form.Read(req.Plan)
	if err != nil {
		return nil, err
	}
	asked, err := plan.Fill(req.Plan)
	if err != nil {
		return nil, err
	}
	p := plan.ForRoom(asked.Room.Walls(), asked.Units)
	p.Players = asked.Players
	doc, err := plan.Check(p)
	if err != nil {
		return nil, typed.Tell(err)
	}
	return planAnswer{Plan: doc.Plan(), Notes: typed.Notes}, nil
}
