package draw

import (
	"wideberth/internal/render/scene/shape"
	"wideberth/internal/render/scene/wire"
)

// vec is a point or direction in room coordinates, m.
type vec = shape.Vec

func xyz(x, y, z float32) vec         { return shape.XYZ(x, y, z) }
func fromWire(v wire.Vec) vec         { return shape.Of(v) }
func perpendiculars(n vec) (u, v vec) { return shape.Perpendiculars(n) }
func sqrt(x float32) float32          { return shape.Sqrt(x) }
func abs(x float32) float32           { return shape.Abs(x) }

// polygonNormal is the unit normal of a counter-clockwise polygon (Newell's
// method, which needs no particular corner to be convex); zero for a degenerate
// one.
func polygonNormal(p []vec) vec {
	var n vec
	for i, a := range p {
		b := p[(i+1)%len(p)]
		n.X += (a.Y - b.Y) * (a.Z + b.Z)
		n.Y += (a.Z - b.Z) * (a.X + b.X)
		n.Z += (a.X - b.X) * (a.Y + b.Y)
	}
	return n.Unit()
}

func centroid(p []vec) vec {
	var c vec
	for _, q := range p {
		c = c.Add(q)
	}
	return c.Mul(1 / float32(max(1, len(p))))
}
