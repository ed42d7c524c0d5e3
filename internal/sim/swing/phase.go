package swing

// Phase names a stretch of the swing, in the word that reports use for it.
type Phase string

// The nine phases.
const (
	Address        Phase = "address"
	Takeaway       Phase = "takeaway"
	Backswing      Phase = "backswing"
	Top            Phase = "top"
	DownswingPhase Phase = "downswing"
	Impact         Phase = "impact"
	Release        Phase = "release"
	FollowThrough  Phase = "follow-through"
	Finish         Phase = "finish"
)

// Phases returns all phases in the order they come in.
func Phases() [9]Phase {
	return [...]Phase{Address, Takeaway, Backswing, Top, DownswingPhase, Impact, Release, FollowThrough, Finish}
}
