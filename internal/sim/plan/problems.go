package plan

import (
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/units"
)

// FieldError is one thing wrong with a plan.
type FieldError struct {
	Field   string // path in the document, such as players[1].height
	Message string // a whole sentence that names the field
	Range   *Range // where a number is out of its range
}

// Range is a number that is out of range, in the units of the document (SI,
// degrees), for who knows how it was typed and says so in the reader's words.
type Range struct {
	Who         string // whose: `player "Host": `
	Value       float64
	Least, Most float64
}

// Error is the sentence.
func (e *FieldError) Error() string { return e.Message }

func fieldErrorf(field, format string, args ...any) *FieldError {
	return &FieldError{Field: field, Message: fmt.Sprintf(format, args...)}
}

// Validate returns the first of Problems, a *FieldError, or nil.
func (p Plan) Validate() error {
	_, err := Check(p)
	return err
}

// Problems lists everything wrong with the plan, its defaults filled, in the
// order of the document: numbers out of range (NaN and infinities too), names
// missing or used twice, references to nothing, lists too long, tees that no
// ball could lie on, players who cannot stand upright. A tee close to the screen
// is no problem here: the swing says whether it strikes.
func (p Plan) Problems() []*FieldError { return p.WithDefaults().problems() }

// problems is Problems of a plan with its defaults.
func (p Plan) problems() []*FieldError {
	c := &collector{imperial: p.Units == units.Imperial}
	if p.Version != Version {
		c.addf("version", "version %d is not %d, the version this program writes", p.Version, Version)
	}
	c.line("title", "title", p.Title, maxTitle)
	c.word("units", "", "units", p.Units, units.Imperial, units.Metric)
	c.length("margin", "", "margin", p.Margin, rangeMargin)

	things := newNames(reservedNames...)
	p.roomProblems(c, things)
	p.floorProblems(c)
	p.screenProblems(c)
	p.teeProblems(c)
	p.clubProblems(c)
	p.playerProblems(c)
	p.amountProblems(c)
	p.hungProblems(c, things)
	p.seatProblems(c)
	p.sensorProblems(c)
	c.number("air.temperature", "air: ", "temperature", p.Air.Temperature, rangeCelsius, " °C")
	c.length("air.altitude", "air: ", "altitude", p.Air.Altitude, rangeAltitude)
	return c.found
}

func (p Plan) roomProblems(c *collector, things names) {
	r := p.Room
	c.length("room.length", "room: ", "length", r.Length, rangeRoomLength)
	c.length("room.width", "room: ", "width", r.Width, rangeRoomWidth)
	c.length("room.height", "room: ", "height", r.Height, rangeRoomHeight)
	c.count("room.slopes", len(r.Slopes), MaxSlopes)
	for i, s := range r.Slopes {
		field := fmt.Sprintf("room.slopes[%d]", i)
		things.check(c, field, "slope", s.Name, i)
		name := who("slope", s.Name, i)
		c.word(field+".wall", name, "wall", string(s.Wall), string(WallLeft), string(WallRight), string(WallFront), string(WallBack))
		c.length(field+".kneeHeight", name, "knee height", s.KneeHeight, span{0, max(r.Height, 0)})
		across := r.Width
		if s.Wall == WallFront || s.Wall == WallBack {
			across = r.Length
		}
		c.length(field+".run", name, "run", s.Run, span{0.01, max(across, 0.01)})
	}
	c.count("room.solids", len(r.Solids), MaxSolids)
	for i, s := range r.Solids {
		field := fmt.Sprintf("room.solids[%d]", i)
		things.check(c, field, "solid", s.Name, i)
		c.box(field, who("solid", s.Name, i), s.Min, s.Max)
		if s.Cover != "" {
			c.word(field+".cover", who("solid", s.Name, i), "cover", s.Cover, CoverFoam, CoverCloth)
		}
	}
}

func (p Plan) floorProblems(c *collector) {
	c.count("floor.layers", len(p.Floor.Layers), MaxLayers)
	layers := newNames()
	for i, l := range p.Floor.Layers {
		field := fmt.Sprintf("floor.layers[%d]", i)
		layers.check(c, field, "floor layer", l.Name, i)
		c.length(field+".thickness", who("floor layer", l.Name, i), "thickness", l.Thickness, rangeThickness)
	}
	if m := p.Floor.Mat; m != nil {
		c.length("floor.mat.thickness", "mat: ", "thickness", m.Thickness, rangeThickness)
		for _, side := range [2]struct {
			name      string
			mat, room float64
		}{{"length", m.Length, p.Room.Length}, {"width", m.Width, p.Room.Width}} {
			if c.length("floor.mat."+side.name, "mat: ", side.name, side.mat, rangeMatSide) && side.mat > side.room+fitTolerance {
				c.addf("floor.mat."+side.name, "mat: its %s %s is more than the room's %s", side.name, c.size(side.mat), c.size(side.room))
			}
		}
	}
	if p.Headroom() < ballDiameter && p.Room.Height >= rangeRoomHeight.lo {
		c.addf("floor", "floor: what lies on it is %s thick and leaves no room under the ceiling at %s", c.size(p.Floor.Standing()), c.size(p.Room.Height))
	}
}

func (p Plan) screenProblems(c *collector) {
	s := p.Screen
	if s == nil {
		return
	}
	r := p.Room
	c.length("screen.x", "screen: ", "x", s.X, span{0.5, max(r.Length, 0.5)})
	centre := c.length("screen.centre", "screen: ", "centre", s.Centre, span{0, max(r.Width, 0)})
	bottom := c.length("screen.bottom", "screen: ", "bottom", s.Bottom, span{0, max(r.Height, 0)})
	width := c.length("screen.width", "screen: ", "width", s.Width, rangeScreenSide)
	height := c.length("screen.height", "screen: ", "height", s.Height, rangeScreenSide)
	if centre && width {
		right, left, _, _ := s.Edges()
		switch {
		case right < -fitTolerance && left > r.Width+fitTolerance:
			c.addf("screen.width", "screen: width %s is more than the room's %s", c.size(s.Width), c.size(r.Width))
		case right < -fitTolerance:
			c.addf("screen.centre", "screen: its right edge is %s beyond the right wall", c.size(-right))
		case left > r.Width+fitTolerance:
			c.addf("screen.centre", "screen: its left edge is %s beyond the left wall", c.size(left-r.Width))
		}
	}
	if top := s.Bottom + s.Height; bottom && height && top > r.Height+fitTolerance {
		c.addf("screen.height", "screen: its top at %s is above the ceiling at %s", c.size(top), c.size(r.Height))
	}
	if top, floor := s.Bottom+s.Height, p.Floor.Standing(); bottom && height && top <= floor {
		c.addf("screen.height", "screen: its top at %s is below the surface to stand on at %s", c.size(top), c.size(floor))
	}
	c.length("screen.sideReturn", "screen: ", "side return", s.SideReturn, rangeReturn)
	c.length("screen.topReturn", "screen: ", "top return", s.TopReturn, rangeReturn)
}

func (p Plan) clubProblems(c *collector) {
	if len(p.Clubs) == 0 {
		c.addf("clubs", "clubs: the plan needs at least one club")
	}
	c.count("clubs", len(p.Clubs), MaxClubs)
	seen := newNames()
	for i, b := range p.Clubs {
		field := fmt.Sprintf("clubs[%d]", i)
		seen.check(c, field, "club", b.Name, i)
		name := who("club", b.Name, i)
		kinds := []string{KindDriver, KindWood, KindHybrid, KindIron, KindWedge}
		before := len(c.found)
		c.word(field+".kind", name, "kind", b.Kind, kinds...)
		if len(c.found) > before {
			continue // without a kind there are no default figures to check
		}
		c.length(field+".length", name, "length", b.Length, rangeClub)
		c.number(field+".lie", name, "lie", b.Lie, rangeLie, "°")
		c.number(field+".loft", name, "loft", b.Loft, rangeLoft, "°")
		if b.Ball != nil {
			c.number(field+".ball.speed", name, "ball speed", b.Ball.Speed, rangeBallSpeed, " m/s")
			c.number(field+".ball.launch", name, "launch angle", b.Ball.Launch, rangeLaunch, "°")
			c.number(field+".ball.spin", name, "spin", b.Ball.Spin, rangeSpin, " rev/min")
		}
	}
}

func (p Plan) playerProblems(c *collector) {
	if len(p.Players) == 0 {
		c.addf("players", "players: the plan needs at least one player")
	}
	c.count("players", len(p.Players), MaxPlayers)
	seen := newNames()
	for i, v := range p.Players {
		field := fmt.Sprintf("players[%d]", i)
		seen.check(c, field, "player", v.Name, i)
		name := who("player", v.Name, i)
		height := c.length(field+".height", name, "height", v.Height, rangeStature)
		shoe := v.Shoe >= rangeShoe.lo && v.Shoe <= rangeShoe.hi
		if room := p.Headroom(); height && shoe && v.Height+v.Shoe > room && room >= ballDiameter { // else the floor is at fault
			c.addf(field+".height", "%sheight %s and %s of shoe do not fit under the ceiling, which is %s above the surface to stand on",
				name, c.size(v.Height), c.size(v.Shoe), c.size(room))
		}
		c.word(field+".hand", name, "hand", string(v.Hand), string(HandRight), string(HandLeft))
		if v.Sex != "" {
			c.word(field+".sex", name, "sex", v.Sex, SexMan, SexWoman)
		}
		c.optional(field+".span", name, "span", v.Span, rangeSpan, " m")
		c.optional(field+".arm", name, "arm", v.Arm, rangeArm, " m")
		c.optional(field+".ballToToes", name, "ball to toes", v.BallToToes, rangeToes, " m")
		c.optional(field+".ballToHands", name, "ball to hands", v.BallToHands, rangeHands, " m")
		c.length(field+".shoe", name, "shoe", v.Shoe, rangeShoe)
		c.word(field+".turn", name, "turn", v.Turn, TurnCompact, TurnFull, TurnLong)
		c.word(field+".plane", name, "plane", v.Plane, PlaneUpright, PlaneNeutral, PlaneFlat)
		c.word(field+".follow", name, "follow-through", v.Follow, FollowHeld, FollowFull, FollowLoose)
		c.word(field+".skill", name, "skill", v.Skill, SkillSteady, SkillAverage, SkillWild)
		references(c, field+".clubs", name, "club", v.Clubs, func(n string) bool { _, ok := p.Club(n); return ok })
		references(c, field+".tees", name, "tee", v.Tees, func(n string) bool { _, ok := p.Tee(n); return ok })
	}
}

// amountProblems refuses more swings than can be answered for in a minute or so.
func (p Plan) amountProblems(c *collector) {
	pairs, checks := p.Pairs(), 0
	for _, v := range p.Players {
		checks += len(p.ClubsOf(v)) * len(p.TeesOf(v))
	}
	switch {
	case pairs > MaxPairs:
		c.addf("players", "players: with their clubs they make %d families of swings; a plan holds at most %d: say whose clubs are whose", pairs, MaxPairs)
	case checks > MaxChecks:
		c.addf("players", "players: with their clubs on their tees they make %d checks; a plan holds at most %d: say who plays from where", checks, MaxChecks)
	}
}

// references checks that each name stands for something, once.
func references(c *collector, field, who, kind string, list []string, known func(string) bool) {
	used := map[string]bool{}
	for i, n := range list {
		at := fmt.Sprintf("%s[%d]", field, i)
		switch {
		case !known(n):
			c.addf(at, "%sthere is no %s called %s", who, kind, strconv.Quote(fmt.Clip(n)))
		case used[n]:
			c.addf(at, "%s%s %s is listed twice", who, kind, strconv.Quote(fmt.Clip(n)))
		}
		used[n] = true
	}
}

func (p Plan) hungProblems(c *collector, things names) {
	c.count("hung", len(p.Hung), MaxHung)
	for i, h := range p.Hung {
		field := fmt.Sprintf("hung[%d]", i)
		things.check(c, field, "hung thing", h.Name, i)
		name := who("hung thing", h.Name, i)
		c.box(field, name, h.Min, h.Max)
		c.optional(field+".throwRatio", name, "throw ratio", h.ThrowRatio, rangeThrow, "")
		c.optional(field+".lensHeight", name, "lens height", h.LensHeight, rangeLens, " m")
		c.optional(field+".lumens", name, "light", h.Lumens, rangeLumens, " lumens")
	}
}

func (p Plan) seatProblems(c *collector) {
	c.count("seats", len(p.Seats), MaxSeats)
	seen := newNames()
	for i, s := range p.Seats {
		field := fmt.Sprintf("seats[%d]", i)
		seen.check(c, field, "seat", s.Name, i)
		name := who("seat", s.Name, i)
		c.length(field+".x", name, "x", s.X, span{0, max(p.Room.Length, 0)})
		c.length(field+".y", name, "y", s.Y, span{0, max(p.Room.Width, 0)})
		if !c.length(field+".radius", name, "radius", s.Radius, rangeSeat) {
			continue
		}
		for j, t := range p.Tees {
			if x, y := t.X-s.X, t.Y-s.Y; x*x+y*y < s.Radius*s.Radius {
				c.addf(field+".x", "%sit stands on the ball of %s", name, nameOr("tee", t.Name, j))
				break
			}
		}
		low := p.Floor.Standing()
		for j, b := range p.Room.Solids {
			if inside(Tee{X: s.X, Y: s.Y}, b, low, low+sitting) {
				c.addf(field+".x", "%sit lies inside %s", name, nameOr("solid", b.Name, j))
				break
			}
		}
	}
}

func (p Plan) sensorProblems(c *collector) {
	s := p.Sensor
	if s == nil {
		return
	}
	if c.line("sensor.name", "sensor: the name", s.Name, maxName); strings.TrimSpace(s.Name) == "" {
		c.addf("sensor.name", "sensor: it needs a name")
	}
	for i, axis := range [2]string{"x", "y"} {
		a := c.length(fmt.Sprintf("sensor.min[%d]", i), "sensor: ", "least "+axis, s.Min[i], rangeCoordinate)
		b := c.length(fmt.Sprintf("sensor.max[%d]", i), "sensor: ", "greatest "+axis, s.Max[i], rangeCoordinate)
		if a && b && s.Min[i] >= s.Max[i] {
			c.order(fmt.Sprintf("sensor.max[%d]", i), "sensor: ", axis, s.Min[i], s.Max[i])
			continue
		}
		if room := [2]float64{p.Room.Length, p.Room.Width}[i]; a && b && (s.Max[i] <= 0 || s.Min[i] >= room) {
			c.addf(fmt.Sprintf("sensor.min[%d]", i), "sensor: it lies outside the room: %s from %s to %s in a room of %s", axis, c.size(s.Min[i]), c.size(s.Max[i]), c.size(room))
		}
	}
}
