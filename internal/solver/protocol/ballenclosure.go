package protocol

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/fit"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// ballEnclosure is what screen and returns must be, over all players, clubs and
// tees.
type ballEnclosure struct {
	Rate      float64      `json:"rate"`
	Balls     int          `json:"balls"` // flown per player, club and tee
	Side      returnNeed   `json:"side"`
	Top       returnNeed   `json:"top"`
	Sentences []string     `json:"sentences"`
	Curve     []curvePoint `json:"curve"`
	Mishits   []mishitNeed `json:"mishits"`
	Launch    []launchLine `json:"launch"`
	Behind    string       `json:"behind"`

	Title       string `json:"title"` // the depths
	LaunchTitle string `json:"launchTitle"`
}

// returnNeed sets a return's depth against what the plan has, m.
type returnNeed struct {
	Need    float64     `json:"need"`
	All     float64     `json:"all"` // to catch every ordinary ball that was flown
	Have    float64     `json:"have"`
	Verdict fit.Verdict `json:"verdict"` // clear when it is deep enough, else strikes
	Text    string      `json:"text"`
}

// curvePoint is one depth against the share of ordinary balls that pass.
type curvePoint struct {
	Depth     float64 `json:"depth"`
	Side      float64 `json:"side"` // of the pair with the most
	Top       float64 `json:"top"`
	Label     string  `json:"label"`
	SideLabel string  `json:"sideLabel"`
	TopLabel  string  `json:"topLabel"`
}

// mishitNeed is what a named mishit asks of the enclosure, over all pairs.
type mishitNeed struct {
	Name string `json:"name"`
	Text string `json:"text"`
	OK   bool   `json:"ok"` // the plan's enclosure has it
}

// launchLine is how steeply a pair's ball may start.
type launchLine struct {
	Player string `json:"player"`
	Club   string `json:"club"`
	Tee    string `json:"tee"`
	Own    string `json:"own"`
	Screen string `json:"screen"`
	Spare  string `json:"spare"`
	Next   string `json:"next"`
	OK     bool   `json:"ok"`
}

func (b *balls) enclosure(e enclosure.Enclosure) *ballEnclosure {
	c := b.plan.Screen
	out := &ballEnclosure{
		Rate: e.Rate, Balls: e.Balls,
		Side: b.need(e.Side, c.SideReturn, "side returns", "sides"),
		Top:  b.need(e.Top, c.TopReturn, "top return", "top"),

		Title: "Returns: " + b.depths(e), LaunchTitle: steepest(e.Launch),
	}
	out.Sentences = []string{
		fmt.Sprintf("To catch %s of everybody's ordinary balls, half of what may miss going to the sides and half to the top:", words.ShareNear(e.Rate)),
		out.Side.Text, out.Top.Text,
	}
	out.Sentences = append(out.Sentences, b.lost(e)...)
	out.Sentences = append(out.Sentences, b.bottom(e.Bottom))
	for _, at := range thinned(e.Curve) {
		out.Curve = append(out.Curve, curvePoint{
			at.Depth, at.SideWorst, at.TopWorst,
			units.LabelShort(at.Depth, b.Units), words.ShareUp(at.SideWorst), words.ShareUp(at.TopWorst),
		})
	}
	out.Mishits = b.mishitNeeds(e)
	for _, m := range out.Mishits {
		if !m.OK {
			out.Sentences = append(out.Sentences, "All this is for ordinary balls. Mishits ask for more than the plan has, as the table says.")
			break
		}
	}
	for _, l := range e.Launch {
		out.Launch = append(out.Launch, b.launchLine(l))
	}
	out.Behind = b.behind(e.Behind)
	return out
}

// need says how deep a return must be and what the plan has.
func (b *balls) need(n enclosure.Need, have float64, name, where string) returnNeed {
	out := returnNeed{Need: n.Depth, All: n.All, Have: have, Verdict: fit.VerdictOf(have-n.Depth, 0)}
	has := "there is none"
	if have > 0 {
		has = b.has(have)
	}
	switch {
	case n.All == 0:
		out.Text = fmt.Sprintf("The %s: no ordinary ball flown goes past the screen's %s, so none is needed for them.", name, where)
		return out
	case n.Depth == 0:
		out.Text = fmt.Sprintf("The %s: none needed for that; %s to catch every ordinary ball flown; %s.", name, b.Up(n.All), has)
		return out
	}
	whose := ""
	if n.Player != "" {
		whose = fmt.Sprintf(" (%s asks the most)", swing3(n.Player, n.Club, n.Tee))
	}
	if have < n.Depth {
		has += fmt.Sprintf(", %s too little", b.Up(n.Depth-have))
	}
	out.Text = fmt.Sprintf("The %s must be %s deep%s; %s. Every ordinary ball flown would take %s.", name, b.Up(n.Depth), whose, has, b.Up(n.All))
	return out
}

// lost says what no return can catch, the worst of each thing.
func (b *balls) lost(e enclosure.Enclosure) []string {
	var out []string
	seen := map[string]bool{}
	for _, l := range e.Lost { // worst first
		if seen[l.Surface] || l.Share == 0 {
			continue
		}
		seen[l.Surface] = true
		n := oneIn(l.Share, false)
		out = append(out, fmt.Sprintf("Whatever the returns: %s.", plural(n, n+" "+lostWhere(l.Surface)+fmt.Sprintf(" (%s, %s)", swing3(l.Player, l.Club, l.Tee), words.ShareUp(l.Share)))))
	}
	return out
}

// lostWhere says where a ball goes that no return can catch.
func lostWhere(surface string) string {
	switch surface {
	case "under the screen":
		return "passes under the screen"
	case "under the return":
		return "passes under the side return"
	}
	return "meets " + words.Surface(surface) + " before any return could catch it"
}

// bottom says how low the screen must hang.
func (b *balls) bottom(m enclosure.Bottom) string {
	have := b.plan.Screen.Bottom
	hangs := fmt.Sprintf("it hangs at %s", b.Near(have))
	roll := fmt.Sprintf("no higher than %s that none rolls under", b.Down(m.Rolling))
	if m.Flying == nil {
		return fmt.Sprintf("The screen's lower edge, above the bare floor: %s; %s.", roll, hangs)
	}
	if have > min(*m.Flying, m.Rolling) {
		hangs += ", which is too high"
	}
	return fmt.Sprintf("The screen's lower edge, above the bare floor: no higher than %s to catch %s of those that come as far, and %s; %s.", b.Down(*m.Flying), words.ShareNear(b.rate), roll, hangs)
}

// mishitNeeds gathers the named mishits over all pairs, the deepest of each.
func (b *balls) mishitNeeds(e enclosure.Enclosure) []mishitNeed {
	type worst struct {
		deepest enclosure.MissDepth // that a return catches
		lost    enclosure.MissDepth // one that none can
		n, bad  int
		screen  bool
	}
	var names []string
	by := map[string]*worst{}
	for _, m := range e.Miss {
		w := by[m.Name]
		if w == nil {
			w = &worst{screen: true}
			by[m.Name] = w
			names = append(names, m.Name)
		}
		w.n++
		switch {
		case m.Meets == string(ball.KindScreen):
		case m.Depth > 0:
			w.screen = false
			if m.Depth > w.deepest.Depth {
				w.deepest = m
			}
		default:
			w.screen = false
			w.lost, w.bad = m, w.bad+1
		}
	}
	out := []mishitNeed{}
	for _, name := range names {
		w := by[name]
		need := mishitNeed{Name: words.UpperFirst(name)}
		switch d := w.deepest; {
		case w.screen:
			need.Text, need.OK = "Meets the screen.", true
		case w.bad > 0 && d.Depth == 0:
			need.Text = fmt.Sprintf("No return can catch it in %d of %d cases: it %s first.", w.bad, w.n, meets(w.lost.Meets))
		default:
			have := b.plan.Screen.SideReturn
			if d.Meets == string(ball.KindTopReturn) {
				have = b.plan.Screen.TopReturn
			}
			need.OK = w.bad == 0 && have >= d.Depth
			need.Text = fmt.Sprintf("Takes a %s %s deep (%s); %s.", d.Meets, b.Up(d.Depth), swing3(d.Player, d.Club, d.Tee), b.has(have))
			if w.bad > 0 {
				need.Text += fmt.Sprintf(" In %d of %d cases no return can catch it: it %s first.", w.bad, w.n, meets(w.lost.Meets))
			}
		}
		out = append(out, need)
	}
	return out
}

func (b *balls) has(depth float64) string {
	return "the plan has " + b.had(depth)
}

// had is the depth of a return, if there is one.
func (b *balls) had(depth float64) string {
	if depth <= 0 {
		return "none"
	}
	return b.Down(depth)
}

// meets says what is in a mishit's way, which may be "under the screen".
func meets(what string) string {
	switch what {
	case "", string(ball.KindNone):
		return "meets nothing that was looked for"
	case "under the screen", "under the side return", "under the top return":
		return "passes " + what
	}
	return "meets " + words.Surface(what)
}

func (b *balls) launchLine(l enclosure.HighestLoft) launchLine {
	out := launchLine{Player: l.Player, Club: l.Club, Tee: l.Tee, Own: degreesUp(l.Own)}
	if l.Screen < 0 {
		out.Screen, out.Next = "none meets it", words.UpperFirst(l.Blocked)
		return out
	}
	out.Screen, out.Next = degreesDown(l.Screen), words.UpperFirst(l.Next)
	out.Spare = degreesDown(l.Spare)
	out.OK = l.Spare >= 0 && l.Blocked == ""
	return out
}

// steepest is the least that a launch has to spare.
func steepest(launches []enclosure.HighestLoft) string {
	least := launches[0]
	for _, l := range launches {
		if l.Screen < 0 {
			return "Steepest start: none of " + l.Player + "'s with the " + l.Club + " meets the screen"
		}
		if l.Spare < least.Spare {
			least = l
		}
	}
	return "Steepest start: " + degreesDown(least.Spare) + " to spare (" + swing3(least.Player, least.Club, least.Tee) + ")"
}

func (b *balls) behind(s enclosure.StandOff) string {
	text := fmt.Sprintf("The wall is %s behind the screen. A cloth that stretches %s to %s under a driver's ball, which is assumed, wants %s to %s.", b.Down(s.Have), b.Near(enclosure.StretchLeast), b.Near(enclosure.StretchMost), b.Up(s.Low), b.Up(s.High))
	switch s.Verdict {
	case fit.Clear:
		return text + " That is more than the whole range."
	case fit.Tight:
		return text + " That is inside the range: press a ball into the cloth and measure."
	}
	return text + " That is less than the range: a ball can reach the wall through the cloth."
}

// thinned leaves at most maxCurve points of a curve, its ends among them.
func thinned(curve []enclosure.DepthPoint) []enclosure.DepthPoint {
	const maxCurve = 24
	step := (len(curve) - 1 + maxCurve - 2) / (maxCurve - 1) // rounded up
	if step <= 1 {
		return curve
	}
	var out []enclosure.DepthPoint
	for i := 0; i < len(curve)-1; i += step {
		out = append(out, curve[i])
	}
	return append(out, curve[len(curve)-1])
}

// degreesDown and degreesUp write an angle to a tenth of a degree.
func degreesDown(d float64) string { return degreesLabel(words.Floor(10 * d)) }
func degreesUp(d float64) string   { return degreesLabel(words.Ceil(10 * d)) }

func degreesLabel(tenths float64) string {
	sign := ""
	if tenths < 0 {
		sign, tenths = words.Minus, -tenths
	}
	return sign + fmt.Sprintf("%.1f°", tenths/10)
}
