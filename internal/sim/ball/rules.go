package ball

import (
	"math"

	"wideberth/internal/sim/rules"
)

const (
	// Diameter and Radius (m) of the ball that is flown.
	Diameter = rules.BallDiameter
	Radius   = rules.BallRadius
	// Mass (kg) is the most the Rules allow: 1.620 oz (Equipment Rules 2019,
	// Part 4, section 2). The heaviest ball carries the most energy.
	Mass = 0.04593
	// inertiaFactor is I/(m r²): 83.63 g cm² for 45.9 g and 21.3 mm
	// (Proceedings (MDPI) 49(1):47, 2020, table 1). A uniform sphere has 0.4.
	inertiaFactor = 83.63e-7 / (45.9e-3 * 21.3e-3 * 21.3e-3)
	// Gravity (m/s²), the standard value.
	Gravity = 9.80665
	// area (m²) is the ball's cross-section.
	area = math.Pi * Radius * Radius
)

// Energy returns the kinetic energy (J) of a ball at speed (m/s), spin left out.
func Energy(speed float64) float64 { return Mass * speed * speed / 2 }

// rpm is one revolution per minute in rad/s.
const rpm = 2 * math.Pi / 60

// degree is one degree in radians.
const degree = math.Pi / 180
