package swing

// Phase names a stretch of the swing.
type Phase uint8

// The nine phases in order.
const (
	Address Phase = iota
	Takeaway
	Backswing
	Top
	DownswingPhase
	Impact
	Release
	FollowThrough
	Finish
	NumPhases
)

var phaseNames = [NumPhases]string{
	"address", "takeaway", "backswing", "top", "downswing", "impact",
	"release", "follow-through", "finish",
}

func (p Phase) String() string { return phaseNames[p] }
