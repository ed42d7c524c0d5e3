package swing

import (
	"fmt"
	"testing"

	"wideberth/internal/sim/swing/pendulum"
)

// TestModelledDownswingEnergy: every golfer's driven downswing gains the energy
// that its two torques do, summed over the run by the trapezium rule.
func TestModelledDownswingEnergy(t *testing.T) {
	for _, height := range []float64{1.3, 1.75, 2.1} {
		for _, club := range []string{"driver", "wedge"} {
			s, err := New(golfer(height), clubNamed(club), Style{})
			if err != nil {
				t.Fatal(err)
			}
			d := s.Downswing
			start := pendulum.State{Theta: s.curves.value[kTop][chTheta], Phi: s.curves.value[kTop][chPhi]}
			drive := d.drive(d.WristTorque)
			run, err := d.Pendulum.Swing(start, drive, s.curves.value[kImpact][chPhi], 1e-10)
			if err != nil {
				t.Fatal(err)
			}
			work := 0.0
			for i := 1; i < len(run.States); i++ {
				a, b := run.States[i-1], run.States[i]
				ta, tb := run.Times[i-1], run.Times[i]
				work += (drive.Hub(ta, a) + drive.Hub(tb, b)) / 2 * (a.Theta - b.Theta)
				if ta >= run.Release { // a held wrist does no work
					work += (drive.Wrist(ta, a) + drive.Wrist(tb, b)) / 2 * ((a.Phi - a.Theta) - (b.Phi - b.Theta))
				}
			}
			gain := d.Pendulum.Energy(run.Final) - d.Pendulum.Energy(start)
			const trapezium = 2e-3 // what the rule leaves over at the run's own steps
			near(t, fmt.Sprintf("%.2f m, %s: energy gained, J", height, club), gain, work, trapezium*gain)
		}
	}
}
