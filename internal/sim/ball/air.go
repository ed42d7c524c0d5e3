package ball

import (
	"math"

	"wideberth/internal/sim/plan"
)

// Air is what the ball flies through.
type Air struct {
	Density   float64 // kg/m³
	Viscosity float64 // dynamic, Pa s
}

// Vacuum has neither drag nor lift.
var Vacuum = Air{}

// AirOf returns the air of a plan; nil gives plan.DefaultAir.
//
// Pressure falls with altitude as in the International Standard Atmosphere
// (ISO 2533:1975, lower layer: 101325 Pa, 288.15 K, 6.5 K/km); density follows
// from the ideal gas law for dry air (287.053 J/(kg K)) at the temperature in
// the room; viscosity is Sutherland's formula with the constants of ISO 2533
// (1.458e-6, 110.4 K). Humidity changes density by less than 1 % and is left out.
func AirOf(a *plan.Air) Air {
	at := plan.DefaultAir()
	if a != nil {
		at = *a
	}
	const (
		seaPressure = 101325.0
		seaKelvin   = 288.15
		lapse       = 0.0065
		gas         = 287.053
	)
	kelvin := at.Temperature + 273.15
	pressure := seaPressure * math.Pow(1-lapse*at.Altitude/seaKelvin, Gravity/(lapse*gas))
	return Air{
		Density:   pressure / (gas * kelvin),
		Viscosity: 1.458e-6 * math.Pow(kelvin, 1.5) / (kelvin + 110.4),
	}
}
