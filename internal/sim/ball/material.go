package ball

// Material is how a surface gives a ball back.
type Material string

// The materials. Only Hard has a formula behind it.
const (
	Cloth  Material = "cloth"         // impact screen and returns, hung free
	Steel  Material = "frame"         // tube of the enclosure's frame
	Foam   Material = "foam"          // pad over something hard
	Hard   Material = "bare and hard" // concrete, block, brick, timber, boards on studs
	Ground Material = "floor"         // turf or mat on a hard floor
)

// Give picks a place in a material's range of restitution.
type Give int

// Low, Likely and High are the ends and the middle of a range.
const (
	Low Give = iota
	Likely
	High
)

// The restitution of what is bare and hard, head-on against a rigid surface, is
// HardStill − HardPerSpeed v (A. R. Penner, Am. J. Phys. 69:563–568, 2001, from
// memory): BoardsLess for boards that give, DoubtMore for the doubt.
const (
	HardStill    = 0.86
	HardPerSpeed = 0.0029 // per m/s
	BoardsLess   = 0.15
	DoubtMore    = 0.05
)

// Restitution returns speed off over speed on, along the normal, for a ball that
// arrives at normal speed v (m/s).
//
// Hard does not fall below 0.3. Steel is the same at its upper end; a tube that
// gives or is struck off its middle returns less.
//
// Cloth, foam and floor are assumptions. No measured return off hung cloth was
// found; it depends on tension, gap and cloth, hence a range of ten to one.
// Whoever builds should try soft shots first.
func (m Material) Restitution(v float64, g Give) float64 {
	rigid := max(0.3, HardStill-HardPerSpeed*v)
	switch m {
	case Cloth:
		return [3]float64{0.03, 0.10, 0.30}[g]
	case Foam:
		return [3]float64{0.10, 0.30, 0.50}[g]
	case Ground:
		return [3]float64{0.30, 0.50, 0.70}[g]
	case Steel:
		return [3]float64{0.30, (0.30 + rigid) / 2, rigid}[g]
	default:
		return [3]float64{max(0.3, rigid-BoardsLess), rigid, min(0.9, rigid+DoubtMore)}[g]
	}
}

// friction is the coefficient that limits the pull along the surface: all
// assumptions. Most balls grip and roll off whatever it is, so little hangs on it.
func (m Material) friction() float64 {
	switch m {
	case Steel:
		return 0.2
	case Cloth, Foam:
		return 0.6
	default:
		return 0.4
	}
}
