package body

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"

	"wideberth/internal/sim/plan"
)

const (
	// armMeanTol is how far off the guessed arm may be on average, m.
	armMeanTol = 0.005
	// sdShare is how far the spread of real errors may differ from the stated
	// one: twice the sampling error of 73 women, the smallest group.
	sdShare = 0.20
	// sigmas is how many standard errors a sample mean may stray: with 42
	// means, 3.5 is passed by chance about once in fifty draws, and the draw is
	// fixed.
	sigmas = 3.5
)

// person is one measured row, m.
type person struct {
	sex            string
	stature, span  float64
	arm            float64
	shoulderHeight float64
	measures       map[string]float64
	rise           float64
}

func readPeople(t *testing.T) []person {
	t.Helper()
	var people []person
	for _, r := range readRecords(t, "ansur2_sample.csv") {
		m := func(column string) float64 { return r.must(t, column+"_mm") / 1000 }
		p := person{
			sex:            map[string]string{"M": "man", "F": "woman"}[r["sex"]],
			stature:        m("stature"),
			span:           m("span"),
			shoulderHeight: m("acromialheight"),
		}
		wrist := m("acromionradialelength") + m("radialestylionlength")
		p.arm = wrist + m("palmlength")/2
		seatedShoulder := m("sittingheight") - (p.stature - p.shoulderHeight)
		p.rise = m("overheadfingertipreachsitting") - seatedShoulder - wrist - m("handlength")
		p.measures = map[string]float64{
			"acromial height":      p.shoulderHeight,
			"cervicale height":     m("cervicaleheight"),
			"trochanterion height": m("trochanterionheight"),
			"knee height":          m("kneeheightmidpatella"),
			"biacromial breadth":   m("biacromialbreadth"),
			"acromion-radiale":     m("acromionradialelength"),
			"radiale-stylion":      m("radialestylionlength"),
			"acromion to wrist":    wrist,
			"acromion to grip":     p.arm,
			"palm length":          m("palmlength"),
			"eye to crown":         m("sittingheight") - m("eyeheightsitting"),
			"head length":          m("headlength"),
			"chest depth":          m("chestdepth"),
			"foot length":          m("footlength"),
		}
		people = append(people, p)
	}
	return people
}

// groups runs f for the men by the men's lines, the women by the women's, and
// everybody by the pooled ones.
func groups(t *testing.T, f func(t *testing.T, sex string, people []person)) {
	all := readPeople(t)
	for _, sex := range []string{"man", "woman", ""} {
		var people []person
		for _, p := range all {
			if sex == "" || p.sex == sex {
				people = append(people, p)
			}
		}
		t.Run(fmt.Sprintf("sex %q", sex), func(t *testing.T) { f(t, sex, people) })
	}
}

func TestMeasuredPeople(t *testing.T) {
	groups(t, func(t *testing.T, sex string, people []person) {
		for measure, field := range fields {
			errs := make([]float64, len(people))
			for i, p := range people {
				errs[i] = field(New(plan.Player{Height: p.stature, Sex: sex})) - p.measures[measure]
			}
			mean, sd := stat.MeanStdDev(errs, nil)
			if tol := sigmas * stat.StdErr(sd, float64(len(errs))); math.Abs(mean) > tol {
				t.Errorf("%s: mean error %+.4f m over %d people, want 0 (tol %.4f)", measure, mean, len(errs), tol)
			}
			spread := spreads[measure]
			if spread == nil {
				continue
			}
			want := spread(New(plan.Player{Height: 1.70, Sex: sex}))
			if math.Abs(sd-want) > sdShare*want {
				t.Errorf("%s: SD of error %.4f m, want %.4f (tol %.0f %%)", measure, sd, want, 100*sdShare)
			}
		}
	})
}

func TestArmOfMeasuredPeople(t *testing.T) {
	groups(t, func(t *testing.T, sex string, people []person) {
		fromHeight := make([]float64, len(people))
		fromSpan := make([]float64, len(people))
		shoulder := make([]float64, len(people))
		rise := make([]float64, len(people))
		for i, p := range people {
			b := New(plan.Player{Height: p.stature, Sex: sex})
			fromHeight[i] = b.Arm() - p.arm
			shoulder[i] = b.ShoulderHeight - p.shoulderHeight
			fromSpan[i] = New(plan.Player{Height: p.stature, Span: p.span, Sex: sex}).Arm() - p.arm
			rise[i] = p.rise
		}
		b := New(plan.Player{Height: 1.70, Sex: sex})
		n := float64(len(people))

		mean := stat.Mean(fromHeight, nil)
		if math.Abs(mean) > armMeanTol {
			t.Errorf("arm from height: mean error %+.4f m, want 0 (tol %g)", mean, armMeanTol)
		}
		mean, sd := stat.MeanStdDev(fromSpan, nil)
		if math.Abs(mean) > armMeanTol {
			t.Errorf("arm from span: mean error %+.4f m, want 0 (tol %g)", mean, armMeanTol)
		}
		want := New(plan.Player{Height: 1.70, Span: 1.75, Sex: sex}).ArmSD
		if math.Abs(sd-want) > sdShare*want {
			t.Errorf("arm from span: SD of error %.4f m, want %.4f (tol %.0f %%)", sd, want, 100*sdShare)
		}
		corr := stat.Correlation(fromHeight, shoulder, nil)
		if tol := sigmas / math.Sqrt(n); math.Abs(corr-b.ArmShoulderCorr) > tol {
			t.Errorf("arm against shoulder height: correlation %.3f, want %.3f (tol %.3f)", corr, b.ArmShoulderCorr, tol)
		}
		mean, sd = stat.MeanStdDev(rise, nil)
		if tol := sigmas * stat.StdErr(sd, n); math.Abs(mean-b.ShoulderRise) > tol {
			t.Errorf("shoulder rise: mean %.4f m, want %.4f (tol %.4f)", mean, b.ShoulderRise, tol)
		}
	})
}
