package published

import (
	"fmt"
	"strconv"
	"strings"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/rules"
	"wideberth/internal/sim/swing"
)

// ClubPath is one recorded swing with a driver.
type ClubPath struct {
	Name    string
	Samples []swing.PathSample // in order of time
}

// TeedHeight is how high the face's centre meets the ball above the surface the
// golfer stands on, m. The recordings do not say: it is assumed from where they
// begin, with the club soled and the face's centre 0.05 to 0.06 m lower than at
// impact. The centre of a driver's face is some 0.03 m above its sole.
const TeedHeight = 0.08

// RecordedHeight is the stature assumed of the recorded golfers, m: their hands
// and clubs fit men of about 1.80 to 1.88 m.
const RecordedHeight = 1.84

// teed is the recordings' origin, the face's centre at impact, in the frame of
// swing.Pose: it meets the ball at the ball's height, a ball's radius behind
// its centre.
var teed = geom.Vec{X: -rules.BallRadius, Z: TeedHeight}

// pathColumns are the recordings' heads.
const pathColumns = "swing,t,hands_x,hands_y,hands_z,face_x,face_y,face_z,speed"

// ClubPaths returns the recorded swings in the frame of swing.Pose: origin at
// the ball on the standing surface. The golfers are right-handed men of about
// RecordedHeight.
func ClubPaths() ([]ClubPath, error) {
	const file = "clubpath.csv"
	text, err := tables.ReadFile(file)
	if err != nil {
		return nil, err
	}
	paths, err := parsePaths(string(text))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return paths, nil
}

func parsePaths(text string) ([]ClubPath, error) {
	rows, err := rowsOf(text, pathColumns)
	if err != nil {
		return nil, err
	}
	var paths []ClubPath
	for i, row := range rows {
		var v [8]float64
		for j := range v {
			if v[j], err = strconv.ParseFloat(row[j+1], 64); err != nil {
				return nil, fmt.Errorf("sample %d: %s is not a number: %w", i+1, strings.Split(pathColumns, ",")[j+1], err)
			}
		}
		s := swing.PathSample{
			Time:  v[0],
			Hands: r3.Add(geom.Vec{X: v[1], Y: v[2], Z: v[3]}, teed),
			Face:  r3.Add(geom.Vec{X: v[4], Y: v[5], Z: v[6]}, teed),
			Speed: v[7],
		}
		last := len(paths) - 1
		if last < 0 || paths[last].Name != row[0] {
			paths = append(paths, ClubPath{Name: row[0]})
			last++
		}
		p := &paths[last]
		if n := len(p.Samples); n > 0 && s.Time <= p.Samples[n-1].Time {
			return nil, fmt.Errorf("sample %d: t %g does not follow %g", i+1, s.Time, p.Samples[n-1].Time)
		}
		p.Samples = append(p.Samples, s)
	}
	return paths, nil
}
