package measure

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// fitPlane returns the slope to the floor (rad, 0 to π/2) of the plane with the
// least sum of squared distances to the points, and the root mean square of
// those distances (m). Total least squares, so that steep planes are not
// favoured over flat ones.
func fitPlane(points []geom.Vec) (slope, rms float64) {
	n := float64(len(points))
	var mean geom.Vec
	for _, p := range points {
		mean = r3.Add(mean, r3.Scale(1/n, p))
	}
	var xx, yy, zz, xy, xz, yz float64
	for _, p := range points {
		d := r3.Sub(p, mean)
		xx, yy, zz = xx+d.X*d.X, yy+d.Y*d.Y, zz+d.Z*d.Z
		xy, xz, yz = xy+d.X*d.Y, xz+d.X*d.Z, yz+d.Y*d.Z
	}
	// The normal is the eigenvector of the least eigenvalue of the scatter
	// matrix, which is the greatest of its adjugate: power iteration finds it.
	row := [3]geom.Vec{
		{X: yy*zz - yz*yz, Y: xz*yz - xy*zz, Z: xy*yz - xz*yy},
		{X: xz*yz - xy*zz, Y: xx*zz - xz*xz, Z: xy*xz - xx*yz},
		{X: xy*yz - xz*yy, Y: xy*xz - xx*yz, Z: xx*yy - xy*xy},
	}
	normal := geom.Vec{X: 0.1, Y: 0.5, Z: 0.8} // not square to any plane a swing lies in
	for range 100 {
		normal = geom.Vec{X: geom.Dot(row[0], normal), Y: geom.Dot(row[1], normal), Z: geom.Dot(row[2], normal)}
		size := geom.Norm(normal)
		if size == 0 {
			return math.NaN(), math.NaN() // the points lie on one line
		}
		normal = r3.Scale(1/size, normal)
	}
	sum := 0.0
	for _, p := range points {
		d := geom.Dot(normal, r3.Sub(p, mean))
		sum += d * d
	}
	return math.Acos(min(1, math.Abs(normal.Z))), math.Sqrt(sum / n)
}
