// Package rules holds what the Rules of Golf fix and more than one package
// needs. It imports nothing, so that every other package may import it.
package rules

const (
	// BallDiameter (m) is the least the Rules allow: 1.680 in (USGA and R&A,
	// Equipment Rules 2019, Part 4, section 3).
	BallDiameter = 0.04267
	// BallRadius (m) is that of this ball.
	BallRadius = BallDiameter / 2
)
