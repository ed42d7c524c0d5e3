package swing

import "testing"

// benchTimes is about how many instants a swing is sampled at when a family is
// run through a room.
const benchTimes = 150

func benchFamily(b *testing.B) (*Family, []Variation, []Pose) {
	f, err := NewFamily(golfer(1.78), clubNamed("driver"), Style{})
	if err != nil {
		b.Fatal(err)
	}
	times := make([]float64, benchTimes)
	for i := range times {
		times[i] = f.Central.Duration() * float64(i) / (benchTimes - 1)
	}
	f.SetTimes(times)
	return f, Variations(256, 20), make([]Pose, benchTimes)
}

// BenchmarkMember is one member of a family, modelled and posed.
func BenchmarkMember(b *testing.B) {
	f, vs, poses := benchFamily(b)
	b.ReportAllocs()
	var s Swing
	for i := 0; b.Loop(); i++ {
		if err := f.Fill(vs[i%len(vs)], &s); err != nil {
			b.Fatal(err)
		}
		f.Poses(&s, AllParts, poses)
	}
}

// BenchmarkMemberOnly leaves the poses out.
func BenchmarkMemberOnly(b *testing.B) {
	f, vs, _ := benchFamily(b)
	b.ReportAllocs()
	var s Swing
	for i := 0; b.Loop(); i++ {
		if err := f.Fill(vs[i%len(vs)], &s); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkNew is the central swing with its downswing integrated.
func BenchmarkNew(b *testing.B) {
	body, club := golfer(1.78), clubNamed("driver")
	for b.Loop() {
		if _, err := New(body, club, Style{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPoses is one member that is modelled already: all of it, its club, and that
// with an arm.
func BenchmarkPoses(b *testing.B) {
	f, vs, poses := benchFamily(b)
	s, err := f.Member(vs[0])
	if err != nil {
		b.Fatal(err)
	}
	for _, of := range []struct {
		name string
		want Parts
	}{
		{"all", AllParts}, {"club", ClubParts}, {"club and arm", ClubParts | LeadForearm.Set()},
	} {
		b.Run(of.name, func(b *testing.B) {
			for b.Loop() {
				f.Poses(s, of.want, poses)
			}
		})
	}
}
