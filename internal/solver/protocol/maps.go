package protocol

import (
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// What a request of kind maps asks for, by its "of".
const (
	ofStand = "stand" // where to put the tee
	ofHang  = "hang"  // what may hang how low
	ofWatch = "watch" // where others may be
	ofMarks = "marks" // where everybody stands
)

// shape is a region or a line on the floor, as rings in room coordinates, m.
// Rings fill by the even-odd rule.
type shape struct {
	Name  string            `json:"name"`
	Label string            `json:"label"`
	Rings [][]drawing.Point `json:"rings"`
}

// standAnswer is the map of where to put the tee, in words and lines.
type standAnswer struct {
	Summary string   `json:"summary"`
	Sharing string   `json:"sharing,omitempty"`
	Limits  []string `json:"limits"` // what keeps a tee off parts of the floor
	Shapes  []shape  `json:"shapes"` // strike, margin, comfort: at or above; barred: no tee may be here

	Reading dragAnswer `json:"reading"`        // of the tee in the focus, where it is
	Best    *place     `json:"best,omitempty"` // for everybody; without it no place is free
	Players []place    `json:"players"`        // for each alone
	Hands   []place    `json:"hands"`          // for each hand, where one tee does not serve both
	Grid    [2]float64 `json:"cell"`           // size of the map's cells, m
}

// place is a spot for a tee.
type place struct {
	Name    string      `json:"name"` // whose
	X       float64     `json:"x"`
	Y       float64     `json:"y"`
	Verdict fit.Verdict `json:"verdict"`
	Lead    string      `json:"lead"`              // best, or least bad, for whom
	Text    string      `json:"text"`              // where, and what is tightest there
	Players []string    `json:"players,omitempty"` // of a hand
}

// hangAnswer is the map of what may hang how low.
type hangAnswer struct {
	Summary string  `json:"summary"`
	Shapes  []shape `json:"shapes"` // closed: nothing may hang; level: nothing lower than its label
	Things  []thing `json:"things"`

	Spot hangAnswerAt `json:"spot"` // over the place asked about
}

// thing is one hung thing, and what would help.
type thing struct {
	Name     string       `json:"name"`
	Verdict  fit.Verdict  `json:"verdict"`
	Text     string       `json:"text"`
	Remedies []remedyText `json:"remedies"`
}

// watchAnswer is the map of where others may be.
type watchAnswer struct {
	Summary string      `json:"summary"`
	Note    string      `json:"note,omitempty"` // what the dotted part is, where the summary is of seats
	Shapes  []shape     `json:"shapes"`         // region: onlookers may be here; club, ball: who may come within the margin
	Seats   []seatWords `json:"seats"`
}

// seatWords is one seat.
type seatWords struct {
	Name    string      `json:"name"`
	Verdict fit.Verdict `json:"verdict"`
	Text    string      `json:"text"`
}

// mapsOf serves a request of kind maps, for everybody with every club or for the
// player and the club in the focus.
func (s *Solver) mapsOf(req request) (any, error) {
	doc, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	p := doc.Plan()
	w := words.WordsOf(p)
	lab := &s.cache.lab
	players, clubs := chosen(p, req.Focus)
	switch req.Of {
	case ofStand:
		m, err := maps.Stand(lab, doc, maps.StandOptions{Players: players, Clubs: clubs})
		if err != nil {
			return nil, err
		}
		out := standOf(w, p, &m, req.Focus.Player)
		tee, ok := p.Tee(req.Focus.Tee)
		if !ok {
			tee = p.Tees[0]
		}
		out.Reading, err = s.reading(doc, tee.Name, tee.X, tee.Y)
		return out, err
	case ofHang:
		m, err := maps.Hang(lab, doc, maps.HangOptions{Players: players, Clubs: clubs, Ball: true})
		if err != nil {
			return nil, err
		}
		out := hangOf(w, p, &m)
		out.Spot, err = s.spot(doc, req)
		return out, err
	case ofWatch:
		m, err := maps.Onlookers(lab, doc, maps.OnlookOptions{Players: players, Clubs: clubs})
		if err != nil {
			return nil, err
		}
		return watchOf(w, &m), nil
	case ofMarks:
		return s.marks(doc, w)
	}
	return nil, fmt.Errorf("a map of %q was asked for, which this program does not know: reload the page", fmt.Clip(req.Of))
}

func raster(g *maps.Grid) drawing.Raster {
	return drawing.Raster{NX: g.NX, NY: g.NY, Cell: g.Cell, Origin: g.Origin}
}

// chosen are the names of those a map is drawn for; none stands for all. What
// the plan has not got, or a club the player does not swing, is not asked for.
func chosen(p plan.Plan, f Focus) (players, clubs []string) {
	own := p.Clubs
	if pl, ok := p.Player(f.Player); ok {
		players, own = []string{f.Player}, p.ClubsOf(pl)
	}
	for _, c := range own {
		if c.Name == f.Club {
			clubs = []string{f.Club}
		}
	}
	return players, clubs
}

func standOf(w words.Words, p plan.Plan, m *maps.StandMap, who string) standAnswer {
	if who == "" {
		who = "everybody"
	}
	out := standAnswer{Limits: w.Limits(m), Players: []place{}, Hands: []place{}, Grid: m.Grid.Cell}
	// One tee that serves both hands is only said of one that serves somebody.
	if m.Best.Found && !(m.Sharing.One && m.Best.Verdict == fit.Strikes) {
		out.Sharing = w.Sharing(m.Sharing)
	}
	labels := map[string]string{"strike": "touches outside this line", "margin": "clear by " + units.LabelShort(p.Margin, w.Units), "comfort": "clear by " + units.LabelShort(max(maps.Comfort, p.Margin), w.Units)}
	for _, c := range m.Contours {
		rings := make([][]drawing.Point, len(c.Rings))
		for i, ring := range c.Rings {
			rings[i] = make([]drawing.Point, len(ring))
			for k, at := range ring {
				rings[i][k] = at
			}
		}
		out.Shapes = append(out.Shapes, shape{c.Name, labels[c.Name], rings})
	}
	out.Shapes = append(out.Shapes, shape{"barred", "no place for a tee", raster(&m.Grid).Outline(func(k int) float64 {
		if m.Mask[k] != 0 {
			return -1
		}
		return 1
	})})
	out.Summary = w.BestPlace(m.Best, who)
	if m.Best.Found {
		b := placeOf(w, who, m.Best)
		out.Best = &b
	}
	for _, q := range m.Players {
		if q.Best.Found {
			out.Players = append(out.Players, placeOf(w, q.Player, q.Best))
		}
	}
	if m.Sharing.Both && !m.Sharing.One {
		for _, h := range m.Hands {
			if h.Best.Found {
				b := placeOf(w, string(h.Hand)+"-handers", h.Best)
				b.Players = h.Players
				out.Hands = append(out.Hands, b)
			}
		}
	}
	return out
}

func placeOf(w words.Words, name string, b maps.Best) place {
	lead, text := w.BestFor(name, b)
	return place{Name: name, X: b.X, Y: b.Y, Verdict: b.Verdict, Lead: lead, Text: text}
}

func hangOf(w words.Words, p plan.Plan, m *maps.HangMap) hangAnswer {
	out := hangAnswer{Things: []thing{}}
	r := raster(&m.Grid)
	ceiling := make([]float64, len(m.Grid.Values))
	lowest, highest, closed := p.Room.Height, 0.0, 0
	for k := range ceiling {
		ceiling[k] = p.Room.CeilingAt(r.Origin[0]+float64(k%r.NX)*r.Cell[0], r.Origin[1]+float64(k/r.NX)*r.Cell[1])
		switch v := float64(m.Grid.Values[k]) / 1000; {
		case v >= ceiling[k]:
			closed++
		case v > 0:
			lowest, highest = min(lowest, v), max(highest, v)
		}
	}
	value := func(k int) float64 { return float64(m.Grid.Values[k]) / 1000 }
	for level := w.LevelStep(); level < highest; level += w.LevelStep() {
		if level >= lowest {
			out.Shapes = append(out.Shapes, shape{"level", w.Level(level), r.Outline(func(k int) float64 { return level - value(k) })})
		}
	}
	out.Shapes = append(out.Shapes,
		shape{"swept", "something passes", r.Outline(func(k int) float64 {
			if value(k) > 0 {
				return -1
			}
			return 1
		})},
		shape{"closed", "nothing may hang", r.Outline(func(k int) float64 { return ceiling[k] - value(k) })})
	out.Summary = w.HangSummary(highest, closed)
	for _, h := range m.Things {
		t := thing{Name: h.Name, Verdict: h.Verdict, Text: w.HungThing(h), Remedies: []remedyText{}}
		for _, r := range h.Remedies {
			t.Remedies = append(t.Remedies, remedyOf(w, p, r))
		}
		out.Things = append(out.Things, t)
	}
	return out
}

func watchOf(w words.Words, m *maps.OnlookMap) watchAnswer {
	out := watchAnswer{Summary: w.SeatsSummary(m.Seats), Note: w.WatchSummary(m), Seats: []seatWords{}}
	if out.Summary == "" {
		out.Summary, out.Note = out.Note, ""
	}
	rings := make([][]drawing.Point, len(m.Region.Rings))
	for i, ring := range m.Region.Rings {
		for _, at := range ring {
			rings[i] = append(rings[i], at)
		}
	}
	r := raster(&m.Grid)
	within := func(reason string) [][]drawing.Point {
		bit := int16(1) << slices.Index(m.Reasons, reason)
		return r.Outline(func(k int) float64 {
			if m.Mask[k]&bit != 0 {
				return -1 // inside
			}
			return 1
		})
	}
	out.Shapes = []shape{{"region", "others may be here", rings}, {"club", "clubs and golfers", within("club")}, {"ball", "balls on their first flight", within("ball")}}
	for _, c := range m.Seats {
		out.Seats = append(out.Seats, seatWords{c.Name, c.Verdict, w.Seat(c)})
	}
	return out
}
