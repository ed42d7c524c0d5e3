package protocol

import "wideberth/internal/sim/plan"

// roomsAnswer is the rooms to start from.
type roomsAnswer struct {
	Rooms []plan.Plan `json:"rooms"`
}

func rooms() roomsAnswer { return roomsAnswer{plan.Rooms()} }
