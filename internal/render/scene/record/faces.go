package record

import (
	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Faces are the flat faces of the plan's room: its shell with the slopes cut
// into it, a mat on every tee under the golfer at address, what is built in and
// hung up, and the screen's cloth.
func Faces(p plan.Plan, golfer plan.Player, address swing.Pose) []wire.Face {
	faces := shell(p)
	for _, t := range p.Tees {
		if m, ok := sweep.Place(p, t, golfer).Mat(p, address); ok {
			m.Min.Z = max(m.Min.Z, p.Floor.Top()) // an inset mat shows its top only
			faces = appendBox(faces, "", wire.Mat, m)
		}
	}
	for _, s := range p.Room.Solids {
		faces = appendBox(faces, s.Name, wire.Solid, clipBox(p, array(s.Min), array(s.Max)))
	}
	for _, h := range p.Hung {
		faces = appendBox(faces, h.Name, wire.Hung, clipBox(p, array(h.Min), array(h.Max)))
	}
	return append(faces, cloth(p)...)
}

func array(v [3]float64) geom.Vec { return geom.Vec{X: v[0], Y: v[1], Z: v[2]} }

// shell cuts the convex room out of its planes: each face is its plane less
// what lies behind any other plane.
func shell(p plan.Plan) []wire.Face {
	type plane struct {
		name string
		kind wire.Kind
		half geom.Halfspace
	}
	planes := []plane{
		{"floor", wire.Floor, geom.Halfspace{N: geom.Vec{Z: 1}, D: p.Floor.Top()}},
		{"front wall", wire.Wall, geom.Halfspace{N: geom.Vec{X: -1}, D: -p.Room.Length}},
	}
	for _, s := range sweep.Surfaces(p) {
		switch {
		case s.Name == "front wall" && s.Kind == sweep.Wall: // listed above, screen or not
		case s.Kind == sweep.Wall:
			planes = append(planes, plane{s.Name, wire.Wall, s.Plane})
		case s.Kind == sweep.Ceiling:
			planes = append(planes, plane{s.Name, wire.Ceiling, s.Plane})
		case s.Kind == sweep.Slope:
			planes = append(planes, plane{s.Name, wire.Slope, s.Plane})
		}
	}
	reach := 2 * (p.Room.Length + p.Room.Width + p.Room.Height)
	var faces []wire.Face
	for i, f := range planes {
		polygon := square(f.half, reach)
		for j, g := range planes {
			if i != j {
				polygon = clip(polygon, g.half)
			}
		}
		if area(polygon) > 1e-4 {
			faces = append(faces, wire.Face{Name: f.name, Kind: f.kind, Polygon: vecs(polygon)})
		}
	}
	return faces
}

func vecs(p []geom.Vec) []wire.Vec {
	out := make([]wire.Vec, len(p))
	for i := range p {
		out[i] = vec(p[i])
	}
	return out
}

// clipBox keeps a box to the bare room: what is built against a wall may be
// given as reaching into it.
func clipBox(p plan.Plan, lo, hi geom.Vec) geom.Box {
	return geom.Box{
		Min: geom.Vec{X: max(lo.X, 0), Y: max(lo.Y, 0), Z: max(lo.Z, 0)},
		Max: geom.Vec{X: min(hi.X, p.Room.Length), Y: min(hi.Y, p.Room.Width), Z: min(hi.Z, p.Room.Height)},
	}
}

// appendBox adds the six faces of a box, leaving out those without area.
func appendBox(faces []wire.Face, name string, kind wire.Kind, b geom.Box) []wire.Face {
	x, y, z := [2]float64{b.Min.X, b.Max.X}, [2]float64{b.Min.Y, b.Max.Y}, [2]float64{b.Min.Z, b.Max.Z}
	at := func(i, j, k int) geom.Vec { return geom.Vec{X: x[i], Y: y[j], Z: z[k]} }
	for _, p := range [6][]geom.Vec{
		{at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)}, // -x
		{at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)}, // +x
		{at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)}, // -y
		{at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)}, // +y
		{at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)}, // -z
		{at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)}, // +z
	} {
		if area(p) > 1e-5 {
			faces = append(faces, wire.Face{Name: name, Kind: kind, Polygon: vecs(p)})
		}
	}
	return faces
}

// cloth is the impact screen and its returns, each a sheet that faces the
// golfer's bay.
func cloth(p plan.Plan) []wire.Face {
	c := p.Screen
	if c == nil {
		return nil
	}
	right, left, _, top := c.Edges()
	sheet := func(name string, kind wire.Kind, corners ...geom.Vec) wire.Face {
		return wire.Face{Name: name, Kind: kind, Polygon: vecs(corners)}
	}
	faces := []wire.Face{sheet("screen", wire.Screen,
		geom.Vec{X: c.X, Y: right, Z: c.Bottom}, geom.Vec{X: c.X, Y: right, Z: top},
		geom.Vec{X: c.X, Y: left, Z: top}, geom.Vec{X: c.X, Y: left, Z: c.Bottom})}
	near := c.X - c.SideReturn
	if c.SideReturn > 0 {
		faces = append(faces,
			sheet("left return", wire.Return,
				geom.Vec{X: near, Y: left, Z: c.Bottom}, geom.Vec{X: near, Y: left, Z: top},
				geom.Vec{X: c.X, Y: left, Z: top}, geom.Vec{X: c.X, Y: left, Z: c.Bottom}),
			sheet("right return", wire.Return,
				geom.Vec{X: near, Y: right, Z: c.Bottom}, geom.Vec{X: c.X, Y: right, Z: c.Bottom},
				geom.Vec{X: c.X, Y: right, Z: top}, geom.Vec{X: near, Y: right, Z: top}))
	}
	if c.TopReturn > 0 {
		near = c.X - c.TopReturn
		faces = append(faces, sheet("top return", wire.Return,
			geom.Vec{X: near, Y: right, Z: top}, geom.Vec{X: near, Y: left, Z: top},
			geom.Vec{X: c.X, Y: left, Z: top}, geom.Vec{X: c.X, Y: right, Z: top}))
	}
	return faces
}
