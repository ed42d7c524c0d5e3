package body

import "wideberth/internal/lean/fmt"

// line is a least-squares line on stature: y = slope·stature + intercept, with
// the standard deviation of what the line leaves over. Intercept and sd are
// millimetres, as in the tables they were taken from.
type line struct{ slope, intercept, sd float64 }

// at returns the line's value (m) at a stature (m).
func (l line) at(stature float64) float64 { return l.slope*stature + l.intercept/1000 }

// plane is a least-squares plane on stature and span; units as in line.
type plane struct{ stature, span, intercept, sd float64 }

func (p plane) at(stature, span float64) float64 {
	return p.stature*stature + p.span*span + p.intercept/1000
}

// survey is what ANSUR II says of one group of people.
//
// Source: C. C. Gordon et al., 2012 Anthropometric Survey of U.S. Army
// Personnel: Methods and Summary Statistics, NATICK/TR-15/007, 2014; public
// data files, 4,082 men and 1,986 women, aged 17–58, without shoes. All lines
// were computed from those files by ordinary least squares; the residual
// standard deviation has n−2 (planes: n−3) degrees of freedom. The survey
// under-represents the old, the very tall and the very short.
type survey struct {
	people            string  // as a note calls them
	shortest, tallest float64 // m, statures of the people measured
	shoulderHeight    line    // acromial height
	cervicaleHeight   line    // C7
	hipHeight         line    // trochanterion: level with the hip joint centre (from memory)
	kneeHeight        line    // mid-patella
	biacromial        line    // breadth between the shoulder tips
	upperArm          line    // acromion–radiale
	forearm           line    // radiale–stylion
	palm              line    // palm length; a fist's grip lies half way along it (assumption)
	armSD             float64 // mm, residual of upperArm + forearm + palm/2 on stature
	armOnSpan         plane   // upperArm + forearm + palm/2 on stature and span
	armShoulderCorr   float64 // between the residuals of that arm and of shoulderHeight
	shoulderRise      float64 // mm, mean of overhead fingertip reach less (seated shoulder height + arm)
	eyeToCrown        line    // sitting height − seated eye height
	headLength        line
	chestDepth        line
	footLength        line
	bodyMassIndex     float64 // kg/m², from the survey's mean mass and stature (from memory)
}

// surveyFor returns the regressions for a player's Sex: "man", "woman", or
// anything else for both sexes pooled.
func surveyFor(sex string) survey {
	switch sex {
	case "man":
		return survey{
			people: "men", shortest: 1.491, tallest: 1.993,
			shoulderHeight:  line{0.8926, -126.9, 16.2},
			cervicaleHeight: line{0.9084, -78.1, 11.2},
			hipHeight:       line{0.6098, -169.9, 25.9},
			kneeHeight:      line{0.3419, -112.1, 15.5},
			biacromial:      line{0.1486, 154.6, 16.2},
			upperArm:        line{0.2028, -20.9, 10.6},
			forearm:         line{0.1608, -14.4, 10.8},
			palm:            line{0.0534, 22.6, 5.0},
			armSD:           18.5,
			armOnSpan:       plane{0.0888, 0.2967, -32.8, 11.8},
			armShoulderCorr: 0.29,
			shoulderRise:    27.5,
			eyeToCrown:      line{0.0376, 47.8, 8.6},
			headLength:      line{0.0378, 133.1, 6.5},
			chestDepth:      line{0.0843, 105.8, 25.6},
			footLength:      line{0.1373, 30.1, 9.1},
			bodyMassIndex:   27.7,
		}
	case "woman":
		return survey{
			people: "women", shortest: 1.409, tallest: 1.829,
			shoulderHeight:  line{0.8793, -96.9, 13.7},
			cervicaleHeight: line{0.9126, -90.4, 10.5},
			hipHeight:       line{0.5970, -126.9, 23.0},
			kneeHeight:      line{0.3414, -106.9, 14.0},
			biacromial:      line{0.1612, 102.8, 15.1},
			upperArm:        line{0.2120, -34.0, 10.5},
			forearm:         line{0.1632, -24.5, 11.1},
			palm:            line{0.0550, 19.1, 4.8},
			armSD:           18.5,
			armOnSpan:       plane{0.0647, 0.3194, -28.6, 10.6},
			armShoulderCorr: 0.24,
			shoulderRise:    12.9,
			eyeToCrown:      line{0.0456, 34.7, 7.6},
			headLength:      line{0.0415, 122.2, 7.0},
			chestDepth:      line{0.0979, 88.0, 26.6},
			footLength:      line{0.1399, 18.5, 8.6},
			bodyMassIndex:   25.6,
		}
	}
	return survey{
		people: "men and women", shortest: 1.409, tallest: 1.993,
		shoulderHeight:  line{0.8613, -70.5, 15.6},
		cervicaleHeight: line{0.9285, -114.4, 11.2},
		hipHeight:       line{0.5302, -26.2, 26.1},
		kneeHeight:      line{0.3268, -84.7, 15.1},
		biacromial:      line{0.2595, -45.7, 19.2},
		upperArm:        line{0.1979, -11.9, 10.6},
		forearm:         line{0.1821, -52.9, 11.1},
		palm:            line{0.0569, 16.3, 5.0},
		armSD:           18.6,
		armOnSpan:       plane{0.0754, 0.3009, -16.4, 11.5},
		armShoulderCorr: 0.25,
		shoulderRise:    22.7,
		eyeToCrown:      line{0.0390, 45.3, 8.3},
		headLength:      line{0.0553, 101.5, 6.9},
		chestDepth:      line{0.0715, 129.1, 26.0},
		footLength:      line{0.1632, -16.8, 9.3},
		bodyMassIndex:   27.0,
	}
}

// outside returns how far (m) a stature lies outside the people measured; 0
// inside.
func (s survey) outside(stature float64) float64 {
	return max(s.shortest-stature, stature-s.tallest, 0)
}

func (s survey) outsideNote(stature float64) string {
	if stature < s.shortest {
		return fmt.Sprintf(
			"Shorter than anyone among the %s measured (shortest %.2f m): lengths are extended from theirs and are less sure, above all for a child.",
			s.people, s.shortest)
	}
	return fmt.Sprintf(
		"Taller than anyone among the %s measured (tallest %.2f m): lengths are extended from theirs and are less sure.",
		s.people, s.tallest)
}
