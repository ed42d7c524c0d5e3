// Package spec reads what a plan says of building the room: its members projector
// and build, which package plan only carries. Everything is optional but the lens
// and the throw ratios of a projector; every number is held to a range, in the
// plan's own sentences, and what is left out takes the default beside it.
package spec

import (
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Spec is what a plan says of building, its defaults filled.
type Spec struct {
	Projector *Projector // nil: none is planned
	Build     Build
}

// Projector throws the image on the screen.
type Projector struct {
	Lens       [3]float64 `json:"lens"`                            // middle of the lens, room frame, m
	ThrowRatio [2]float64 `json:"throwRatio"`                      // least and most: distance from lens to screen over image width
	Aspect     float64    `json:"aspect,omitempty"`                // image width over height; 1.6
	Lumens     float64    `json:"lumens,omitempty"`                // rated light, lm; 3000
	Gain       float64    `json:"gain,omitempty"`                  // of the screen beside a perfect diffuser; 1
	Mount      string     `json:"mount,omitempty"`                 // MountCeiling (default), MountFloor, MountRear
	Offset     []float64  `json:"offset,omitempty"`                // least and most, share of the image height from lens axis to the nearest image edge, into the image negative; none: not known
	SideShift  float64    `json:"sideShift,omitempty" zero:"same"` // most that the image's middle may lie to either side of the lens, share of its width; 0
	Body       [3]float64 `json:"body,omitempty"`                  // length, width, height of the case, m; 0.40 × 0.32 × 0.15
	Columns    float64    `json:"columns,omitempty"`               // pixels across; 1920
	RoomLight  float64    `json:"roomLight,omitempty" zero:"same"` // what falls on the screen with the projector dark, lx; 0
	RiskGroup  string     `json:"riskGroup,omitempty"`             // "RG1", "RG2", "RG3" on its label; "": not known
	Image      *Image     `json:"image,omitempty"`                 // nil: the largest, in the middle of the screen
}

// Image is where the picture is wanted.
type Image struct {
	Width  float64 `json:"width,omitempty"`  // m; 0: the largest
	Bottom float64 `json:"bottom,omitempty"` // above the structural floor, m; 0: so that the border is as high above as below
}

// Places for a projector.
const (
	MountCeiling = "ceiling"
	MountFloor   = "floor"
	MountRear    = "rear" // behind the screen, which lets the light through
)

// Build is everything else.
type Build struct {
	Floor     Floor     `json:"floor,omitempty"`
	Stock     []Stock   `json:"stock,omitempty"` // what there is to lay; none: the usual stock
	Cups      []Cup     `json:"cups,omitempty"`
	Enclosure Enclosure `json:"enclosure,omitempty"`
	Sensor    *Sensor   `json:"sensor,omitempty"`
	Finish    Finish    `json:"finish,omitempty"`
	Wiring    Wiring    `json:"wiring,omitempty"`
	Walls     Walls     `json:"walls,omitempty"`
	Prices    []Price   `json:"prices,omitempty"`
}

// Floor says how a floor is to be laid.
type Floor struct {
	Tolerance float64    `json:"tolerance,omitempty"` // how far floor and mat may differ, m; 1/8 in or 3 mm
	Layers    float64    `json:"layers,omitempty"`    // the most that are laid; 4
	Covers    [4]float64 `json:"covers,omitempty"`    // least x, least y, greatest x, greatest y, m; the whole room
	Gap       float64    `json:"gap,omitempty"`       // between panels, m; 3.2 mm
	Panels    string     `json:"panels,omitempty"`    // Length or Width: the way of the long edges; "": whichever takes fewer sheets
	TurfRoll  float64    `json:"turfRoll,omitempty"`  // width of the roll, m; 12 ft
	Turf      string     `json:"turf,omitempty"`      // Length (default) or Width: the way that it is rolled out
}

// The ways that a sheet may lie.
const (
	Length = "length" // along the room, to the target
	Width  = "width"  // across it
)

// Stock is something a floor layer can be made of.
type Stock struct {
	Name  string  `json:"name"`
	Kind  string  `json:"kind"`            // Panel, Rubber, Foam, Turf
	Least float64 `json:"least"`           // thickness, m
	Most  float64 `json:"most"`            // thickness, m
	Long  float64 `json:"long,omitempty"`  // sheet, m; 96 in
	Wide  float64 `json:"wide,omitempty"`  // sheet, m; 48 in
	Price float64 `json:"price,omitempty"` // per sheet, or per square metre of what comes in rolls; 0: not known
}

// Kinds of stock, from the slab upwards.
const (
	Panel  = "panel" // plywood or strand board
	Foam   = "foam"
	Rubber = "rubber"
	Turf   = "turf"
)

// Cup is a hole in the floor, by its middle.
type Cup struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// Enclosure is what stands around the cloth.
type Enclosure struct {
	Padding float64 `json:"padding,omitempty" zero:"same"` // that overlaps the cloth along its sides and top, m; 0
	Sill    float64 `json:"sill,omitempty" zero:"same"`    // that overlaps it along its bottom, m; 0
	Border  float64 `json:"border,omitempty" zero:"same"`  // cloth left blank around the image at least, m; 0
}

// Sensor is the case of a ball sensor. What it reads is the plan's own sensor.
type Sensor struct {
	Place   string `json:"place"` // Overhead, Beside, Behind
	Body    Zone   `json:"body"`
	KeepOut []Zone `json:"keepOut,omitempty"` // what must stay free for it to see
}

// Places for a sensor.
const (
	Overhead = "overhead"
	Beside   = "beside"
	Behind   = "behind"
)

// Zone is a box in the room, m.
type Zone struct {
	Min [3]float64 `json:"min"`
	Max [3]float64 `json:"max"`
}

// Finish is paint and sound.
type Finish struct {
	Coats    float64 `json:"coats,omitempty"`                // of paint; 2
	Coverage float64 `json:"coverage,omitempty"`             // m² that a litre covers once; 9
	Absorber float64 `json:"absorber,omitempty" zero:"same"` // area of absorbers on walls and ceiling, m²; 0
	Walls    string  `json:"walls,omitempty"`                // what walls are made of, a Material; GypsumBoard
	Ceiling  string  `json:"ceiling,omitempty"`              // the same of the ceiling
}

// Wiring is cables and sockets.
type Wiring struct {
	Source      [3]float64 `json:"source,omitempty"`      // where the picture comes from, m; desk height in the back right corner
	Receptacles float64    `json:"receptacles,omitempty"` // asked for; 2
	Slack       float64    `json:"slack,omitempty"`       // m on top of a tenth of the run; 1
}

// Walls are walls as they are found.
type Walls struct {
	Feet   []Foot  `json:"feet,omitempty"`
	Doors  []Door  `json:"doors,omitempty"`
	Garage *Garage `json:"garage,omitempty"`
	Slab   *Slab   `json:"slab,omitempty"`
}

// Foot is what the foot of a wall has: a ledge that sticks out, or a gap under it.
type Foot struct {
	Wall   string  `json:"wall"`
	Height float64 `json:"height"`                      // of the ledge or the gap, m
	Depth  float64 `json:"depth,omitempty" zero:"same"` // that a ledge sticks out, m; 0: it is a gap
}

// Door swings into the room.
type Door struct {
	Name   string  `json:"name"`
	Wall   string  `json:"wall"`
	From   float64 `json:"from"`             // along the wall, from its end at the back or right wall, m
	Width  float64 `json:"width"`            // of the leaf, m
	Height float64 `json:"height,omitempty"` // m; 80 in
	Gap    float64 `json:"gap,omitempty"`    // under the leaf, above the structural floor, m; 3/4 in
}

// Garage is an overhead door.
type Garage struct {
	Wall   string  `json:"wall"` // that it closes
	From   float64 `json:"from"` // along the wall, as of a Door
	Width  float64 `json:"width"`
	Height float64 `json:"height"`         // of the opening, m
	Open   bool    `json:"open,omitempty"` // it is open while people swing
}

// Slab is a floor that falls: to one wall, by so much for each metre. The plan's
// ceiling height is measured where the slab is highest.
type Slab struct {
	Towards string  `json:"towards"`
	Fall    float64 `json:"fall"` // m per m
}

// Price is what one of an item of the list of quantities costs, in any money.
type Price struct {
	Item  string  `json:"item"`
	Price float64 `json:"price"`
}

// Of reads a plan's members, fills the defaults and checks them. An error is a
// *plan.FieldError.
func Of(c plan.Checked) (Spec, error) {
	p := c.Plan()
	var s Spec
	if p.Projector != nil {
		s.Projector = &Projector{}
		if err := plan.Group(p.Projector, "projector", s.Projector); err != nil {
			return Spec{}, err
		}
	} else {
		s.Projector = hung(p)
	}
	if p.Build != nil {
		if err := plan.Group(p.Build, "build", &s.Build); err != nil {
			return Spec{}, err
		}
	}
	s.fill(p)
	l := plan.NewLimits(p.Units)
	s.check(l, p)
	if err := l.Err(); err != nil {
		return Spec{}, err
	}
	return s, nil
}

// hung is a projector that hangs in the plan with a throw ratio of its own, for
// plans that say no more of it; its lens is taken to be in the middle of its front.
func hung(p plan.Plan) *Projector {
	for _, h := range p.Hung {
		if h.ThrowRatio == 0 {
			continue
		}
		z := h.LensHeight
		if z == 0 {
			z = (h.Min[2] + h.Max[2]) / 2
		}
		return &Projector{
			Lens:       [3]float64{h.Max[0], (h.Min[1] + h.Max[1]) / 2, z},
			ThrowRatio: [2]float64{h.ThrowRatio, h.ThrowRatio},
			Lumens:     h.Lumens,
			Body:       [3]float64{h.Max[0] - h.Min[0], h.Max[1] - h.Min[1], h.Max[2] - h.Min[2]},
		}
	}
	return nil
}

// usual is a length that is round in the plan's units, m.
func usual(p plan.Plan, metres, inches float64) float64 { return plan.Usual(p.Units, metres, inches) }

// SheetLong and SheetWide are the usual sheet of 96 × 48 in (APA, from memory), m.
const (
	SheetLong = 96 * units.MetresPerInch
	SheetWide = 48 * units.MetresPerInch
)
