package plan

import "wideberth/internal/lean/fmt"

// teeProblems refuses tees on which no ball could lie: outside the room, beyond
// the screen, inside a solid or under a slope that leaves no room for a ball.
func (p Plan) teeProblems(c *collector) {
	c.count("tees", len(p.Tees), MaxTees)
	seen := newNames()
	for i, t := range p.Tees {
		field := fmt.Sprintf("tees[%d]", i)
		seen.check(c, field, "tee", t.Name, i)
		name := who("tee", t.Name, i)
		x := inRoom(c, field+".x", name, "x", t.X, p.Room.Length, "long")
		y := inRoom(c, field+".y", name, "y", t.Y, p.Room.Width, "wide")
		if !x || !y {
			continue
		}
		if s := p.Screen; s != nil && t.X+ballDiameter/2 > s.X {
			c.addf(field+".x", "%s%s from the back wall is beyond the screen, which hangs at %s", name, c.size(t.X), c.size(s.X))
		}
		low := p.Floor.Standing()
		if room := p.Room.CeilingAt(t.X, t.Y) - low; room < ballDiameter && p.Headroom() >= ballDiameter { // else the floor is at fault
			c.addf(field+".y", "%sthe slope above it leaves no room for a ball", name)
		}
		for j, s := range p.Room.Solids {
			if inside(t, s, low, low+ballDiameter) {
				c.addf(field+".x", "%sit lies inside %s", name, nameOr("solid", s.Name, j))
				break
			}
		}
	}
}

// inRoom checks a coordinate of a tee against the room's extent along that axis.
func inRoom(c *collector, field, who, axis string, v, extent float64, adjective string) bool {
	if v > 0 && v < extent {
		return true
	}
	c.addf(field, "%s%s %s is outside the room, which is %s %s", who, axis, c.size(v), c.size(extent), adjective)
	c.outside(who, v, span{0, extent})
	return false
}

// inside says whether a ball on a tee, between two heights, is within a solid.
func inside(t Tee, s Solid, low, high float64) bool {
	return t.X > s.Min[0] && t.X < s.Max[0] && t.Y > s.Min[1] && t.Y < s.Max[1] && high > s.Min[2] && low < s.Max[2]
}

func nameOr(kind, name string, i int) string {
	w := who(kind, name, i)
	return w[:len(w)-2] // without the colon
}
