package swing

// score is a whole swing on paper: every channel at every key moment.
type score [numChannels]keys

// degrees fills a channel from a row of degrees.
func degrees(row keys) keys {
	for i := range row {
		row[i] *= degree
	}
	return row
}

// turns holds what the word for a player's turn means, degrees: shoulder line
// and hips at the top, and the hands' and the club's angle there for a driver.
//
// Shoulder line over the acromia 85–105°, hips 40–55° (swing figures collected
// from McTeigue et al. 1994, read; Cheetham et al. 2001 and Myers et al. 2008,
// from memory). The hands' and the club's angles put the lead arm 20–50° above
// level and a driver's shaft about level (common practice, no source).
type turns struct{ chest, hips, hands, club float64 }

func turnsOf(word string) turns {
	switch word {
	case "compact":
		return turns{80, 43, 123, 237}
	case "long":
		return turns{103, 54, 145, 275}
	default:
		return turns{92, 49, 135, 259}
	}
}

// planesOf returns how much steeper than neutral (degrees) the club's and the
// hands' planes are.
func planesOf(word string) (club, hands float64) {
	switch word {
	case "upright":
		return 5, 5
	case "flat":
		return -5, -6
	default:
		return 0, 0
	}
}
