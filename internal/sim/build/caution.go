package build

// Status is how a figure or a code section is known.
type Status string

// The statuses.
const (
	AsRead     Status = "as read"     // in the text itself, or in one that quotes it
	FromMemory Status = "from memory" // not opened
	Practice   Status = "common practice, no source"
	Computed   Status = "computed here"
	Assumed    Status = "an assumption"
)

// Caution is one line of care. It never says that anything complies: that is for the
// building department.
type Caution struct {
	Topic  string `json:"topic"` // floor, screen, projector, wiring, walls
	Line   string `json:"line"`
	Code   string `json:"code"` // section, or where it comes from
	Status Status `json:"status"`
}

// cautions are one line each; US model codes, which places adopt and amend as they
// like.
var cautions = []Caution{
	{"screen", "Foam blocks or boards as ball-proofing want a thermal barrier over them: 1/2 in gypsum board or a material tested for it. Bare foam is a fire matter; ask the building department.", "IRC R316.4, NFPA 275", AsRead},
	{"screen", "Curtains and netting: ask the maker for a flame-test report.", "NFPA 701", FromMemory},
	{"screen", "Glass-fibre poles splinter: wear gloves.", "common practice", Practice},
	{"walls", "Between garage and house the board is fire separation, 1/2 in on the garage side and 5/8 in Type X under habitable rooms: do not cut, open or take it down to hang a screen or to gain height; ask the building department.", "IRC Table R302.6", AsRead},
	{"walls", "Holes through that board are to be sealed, and ducts through it are a matter of their own; ask the building department.", "IRC R302.5.2, R302.5.3, R302.11", AsRead},
	{"walls", "Never close off the window or door that people escape by; ask the building department what it must leave free.", "IRC R310", FromMemory},
	{"walls", "Keep 30 in of width, 36 in of depth and 78 in of height free before an electrical panel; ask the building department.", "NEC 110.26(A)", AsRead},
	{"walls", "A garage door is an obstacle open and shut, and its photo-eyes sit within 6 in of the floor: keep nets, mats and floor clear of both, and unplug the opener while anybody swings.", "UL 325, quoted", AsRead},
	{"walls", "A room to live in asks for a ceiling of 7 ft, a bathroom 6 ft 8 in, beams in a basement 6 ft 4 in: a raised floor takes from all of them; ask the building department.", "IRC R305.1", AsRead},
	{"floor", "A step up to a floor: no riser over 7 3/4 in, no two that differ by more than 3/8 in; ask the building department.", "IRC R311.7.5", AsRead},
	{"floor", "A floor more than 30 in above what lies below it wants a guard; ask the building department.", "IRC R312.1", AsRead},
	{"floor", "Wood that touches a concrete slab on the ground is to be preservative-treated or naturally durable; ask the building department.", "IRC R317.1", FromMemory},
	{"wiring", "Flexible cord is not wiring: not through walls, ceilings or doorways, not fastened to them, not above a suspended ceiling. A projector on the ceiling wants a receptacle beside it, put in by an electrician; ask the building department.", "NEC 400.12", AsRead},
	{"wiring", "Receptacles in garages and basements want ground-fault protection; ask the building department.", "NEC 210.8(A)(2), (5)", AsRead},
	{"projector", "Overhead mounts go into joists or blocking with two screws or more, never into board alone, and with a safety cable.", "common practice", Practice},
	{"projector", "Joists of an attic may be made for 10 lb/ft² only; ask the building department before hanging much from them.", "IRC Table R301.5", FromMemory},
	{"projector", "Do not look into the beam. RG2 is the highest risk group for consumer goods; RG3 is for trained people.", "IEC 62471-5:2015", AsRead},
	{"projector", "On a stepladder stay off the cap and the top step; have it open, locked and level.", "OSHA 1910.23(c)", FromMemory},
	{"projector", "Cutting mineral or glass fibre: gloves, long sleeves, eye protection and a dust mask.", "NIOSH", FromMemory},
}
