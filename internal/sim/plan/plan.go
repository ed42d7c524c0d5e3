// Package plan is the one versioned document behind the page: a room, its
// floor and screen, the tees, the clubs and the people who will play. It holds
// the schema, the defaults, the range checks, the link codec and the units that
// people type. Everything past this package is SI.
//
// Room frame: origin at a floor corner, x towards the target (the screen end),
// y to the left when facing the target, z up from the structural floor. The
// room is the box [0,length]×[0,width]×[0,height] less its slopes and solids.
package plan

// Version is the version of the document that this package writes.
const Version = 2

// Plan is the whole document. Lengths are metres unless a field says otherwise.
type Plan struct {
	Version int      `json:"version"`
	Title   string   `json:"title,omitempty"`
	Units   string   `json:"units,omitempty"`  // how lengths are shown: UnitsImperial or UnitsMetric
	Margin  float64  `json:"margin,omitempty"` // clearance (m) under which a check is tight
	Room    Room     `json:"room"`             //
	Floor   Floor    `json:"floor"`            // what is built up on the structural floor
	Screen  *Screen  `json:"screen,omitempty"` // nil: no screen yet, the front wall counts
	Tees    []Tee    `json:"tees"`             //
	Clubs   []Club   `json:"clubs"`            //
	Players []Player `json:"players"`          //
	Hung    []Hung   `json:"hung,omitempty"`   // things that hang from the ceiling or a wall
	Seats   []Seat   `json:"seats,omitempty"`  // where onlookers sit or stand
	Sensor  *Sensor  `json:"sensor,omitempty"` // floor strip that a ball sensor can read
	Air     *Air     `json:"air,omitempty"`    // nil: DefaultAir

	// What package internal/sim/build/spec reads and checks: here it is carried as it
	// was written, because the first answer does not need it. Nobody changes what is
	// inside.
	Projector any `json:"projector,omitempty"`
	Build     any `json:"build,omitempty"`
}

// Room is the bare box with what is built into it.
type Room struct {
	Length float64 `json:"length"` // along x
	Width  float64 `json:"width"`  // along y
	Height float64 `json:"height"` // structural floor to ceiling
	Slopes []Slope `json:"slopes,omitempty"`
	Solids []Solid `json:"solids,omitempty"`
}

// Slope is a ceiling that comes down to a knee wall: at the wall it is
// KneeHeight high, and it meets the flat ceiling Run away from the wall.
type Slope struct {
	Name       string  `json:"name"`
	Wall       Wall    `json:"wall"` // at which it comes down
	KneeHeight float64 `json:"kneeHeight"`
	Run        float64 `json:"run"`
}

// Solid is an axis-aligned box that takes room away: a beam, a duct, a column,
// an alcove's corner, padding on a wall, a curtain before it.
type Solid struct {
	Name  string     `json:"name"`
	Min   [3]float64 `json:"min"`
	Max   [3]float64 `json:"max"`
	Cover string     `json:"cover,omitempty"` // what a ball meets: "" bare and hard, CoverFoam, CoverCloth
}

// Floor is what lies on the structural floor.
type Floor struct {
	Layers []Layer `json:"layers,omitempty"`
	Mat    *Mat    `json:"mat,omitempty"`
}

// Layer is one full-floor layer.
type Layer struct {
	Name      string  `json:"name"`
	Thickness float64 `json:"thickness"`
}

// Mat is the hitting mat. An inset mat lies flush with the top of the layers
// around it (they are cut out for it); otherwise it lies on top of them.
type Mat struct {
	Thickness float64 `json:"thickness"`
	Length    float64 `json:"length,omitempty"` // along x
	Width     float64 `json:"width,omitempty"`  // along y
	Inset     bool    `json:"inset,omitempty"`
}

// Screen is the impact screen: a rectangle across the room at X, with cloth
// returns along its sides and top towards the golfer.
type Screen struct {
	X          float64 `json:"x"`
	Centre     float64 `json:"centre"` // y of the middle
	Bottom     float64 `json:"bottom"` // above the structural floor
	Width      float64 `json:"width"`
	Height     float64 `json:"height"`
	SideReturn float64 `json:"sideReturn,omitempty" zero:"same"` // depth of each side return
	TopReturn  float64 `json:"topReturn,omitempty" zero:"same"`  // depth of the top return
}

// Tee is where a ball lies.
type Tee struct {
	Name string  `json:"name"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
}

// Club is one club. Lie and Loft are degrees.
type Club struct {
	Name   string  `json:"name"`
	Kind   string  `json:"kind"` // "driver", "wood", "hybrid", "iron", "wedge"
	Length float64 `json:"length,omitempty"`
	Lie    float64 `json:"lie,omitempty"`
	Loft   float64 `json:"loft,omitempty"`
	Ball   *Ball   `json:"ball,omitempty"`
}

// Ball is how a well-struck ball leaves the club.
type Ball struct {
	Speed  float64 `json:"speed,omitempty"` // m/s
	Launch float64 `json:"launch"`          // degrees above level
	Spin   float64 `json:"spin"`            // backspin, rev/min
}

// Player is one golfer. Empty words take the default named beside them.
type Player struct {
	Name   string  `json:"name"`
	Height float64 `json:"height"`         // standing, without shoes
	Hand   Hand    `json:"hand,omitempty"` // HandRight by default
	Sex    string  `json:"sex,omitempty"`  // body proportions: "man", "woman", or "" for both pooled
	Span   float64 `json:"span,omitempty"` // fingertip to fingertip, measured; 0: guessed from Height
	Arm    float64 `json:"arm,omitempty"`  // shoulder to grip, measured; 0: guessed
	// How this player stands to the ball with the driver, along the floor; 0: worked out.
	BallToToes  float64  `json:"ballToToes,omitempty"`  // from the ball to the line of the toes, measured
	BallToHands float64  `json:"ballToHands,omitempty"` // from the ball to below the middle of the hands, measured
	Shoe        float64  `json:"shoe,omitempty"`        // sole thickness
	Turn        string   `json:"turn,omitempty"`        // "compact", "full" (default), "long"
	Plane       string   `json:"plane,omitempty"`       // "upright", "neutral" (default), "flat"
	Follow      string   `json:"follow,omitempty"`      // "held", "full" (default), "loose"
	Skill       string   `json:"skill,omitempty"`       // spread of the ball's start: "steady", "average" (default), "wild"
	Clubs       []string `json:"clubs,omitempty"`       // names of clubs this player swings; empty: all
	Tees        []string `json:"tees,omitempty"`        // names of tees this player uses; empty: all
}

// Hung is a box hung from the ceiling or a wall. The projector fields are
// optional and only read by the build cards.
type Hung struct {
	Name       string     `json:"name"`
	Min        [3]float64 `json:"min"`
	Max        [3]float64 `json:"max"`
	ThrowRatio float64    `json:"throwRatio,omitempty"` // throw distance over image width
	LensHeight float64    `json:"lensHeight,omitempty"`
	Lumens     float64    `json:"lumens,omitempty"`
}

// Seat is where somebody watches from: a disc on the floor.
type Seat struct {
	Name   string  `json:"name"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Radius float64 `json:"radius,omitempty"`
}

// Sensor is the floor rectangle inside which a ball sensor reads the ball.
type Sensor struct {
	Name string     `json:"name"`
	Min  [2]float64 `json:"min"`
	Max  [2]float64 `json:"max"`
}

// Air sets the density the ball flies through.
type Air struct {
	Temperature float64 `json:"temperature"` // °C
	Altitude    float64 `json:"altitude"`    // m above sea level
}
