package protocol

import (
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// Figures in these sentences are rounded to the less reassuring side: shares
// that are caught, and what there is, down; shares that are not, speeds, and
// what is needed, up.

// summary says what the well-struck ball meets and how many ordinary ones are
// caught.
func (b *balls) summary(o ball.Outcome) string {
	return swing3(o.Player, o.Club, o.Tee) + ": a well-struck ball " + b.meeting(o.Struck.Contact) + ". " + b.caught(o)
}

// swing3 names who swings what from where, as swinger does of a check.
func swing3(player, club, tee string) string {
	if !strings.HasSuffix(strings.ToLower(tee), "tee") {
		tee += " tee"
	}
	return player + ", " + club + ", " + tee
}

// meeting says what a ball meets and where: "meets the ceiling 1 ft 2 in before
// the screen, at 88 mph".
func (b *balls) meeting(c ball.Contact) string {
	at := ", at " + b.SpeedUp(c.Speed)
	switch c.Kind {
	case ball.KindNone:
		return "meets nothing within the time that was followed"
	case ball.KindScreen:
		if c.Caught {
			return "meets the screen " + units.LabelShort(c.Point[2], b.Units) + " above the bare floor" + at
		}
	case ball.KindGap:
		return passing(c.Beside) + " the screen and meets " + words.Surface(c.Surface) + " behind it" + at
	case ball.KindSideReturn, ball.KindTopReturn:
		if c.Caught {
			return "is caught by " + words.Surface(c.Surface) + at
		}
		return "meets " + words.Surface(c.Surface) + " from outside" + at
	}
	return "meets " + words.Surface(c.Surface) + b.before(c.Short) + at
}

// passing says how a ball gets behind the screen.
func passing(beside string) string {
	if beside == "behind" {
		return "gets in behind"
	}
	return "passes " + beside
}

// before says how far short of the screen something is met, rounded up.
func (b *balls) before(short float64) string {
	if b.plan.Screen == nil || short <= 0 {
		return ""
	}
	return " " + b.Up(short) + " before the screen"
}

// caught says how many ordinary balls screen and returns catch.
func (b *balls) caught(o ball.Outcome) string {
	n := words.Thousands(o.Balls)
	switch {
	case b.plan.Screen == nil:
		return "The plan has no screen to catch it."
	case o.Caught.Share == 1:
		return fmt.Sprintf("Screen and returns caught all %s ordinary balls that were flown; of all such balls it may be as few as %s.", n, words.ShareDown(o.Caught.Low))
	case o.Caught.Share == 0:
		return fmt.Sprintf("Screen and returns caught none of %s ordinary balls that were flown.", n)
	}
	return fmt.Sprintf("Screen and returns catch %s of ordinary balls (95 %% interval %s to %s, of %s flown).", words.ShareDown(o.Caught.Share), words.ShareDown(o.Caught.Low), words.ShareDown(o.Caught.High), n)
}

// sentences says what the ordinary balls meet, those that are not caught first.
func (b *balls) sentences(o ball.Outcome) []string {
	out := []string{}
	for _, caught := range [2]bool{false, true} {
		for _, s := range o.Shares {
			if isCaught(s) == caught {
				out = append(out, b.share(s, o.Club, caught))
			}
		}
	}
	return append(out, b.backSentence(o.Struck))
}

// isCaught reports whether a share is of balls that met cloth.
func isCaught(s ball.Share) bool {
	switch s.Kind {
	case ball.KindScreen, ball.KindSideReturn, ball.KindTopReturn:
		return true
	}
	return false
}

// share says of one surface how many balls meet it: "1 ball in 40 with the wedge
// meets the ceiling, up to 1 ft 2 in before the screen".
func (b *balls) share(s ball.Share, club string, caught bool) string {
	text, verb := oneIn(s.Share, caught), "meets "
	with := " with the " + club + " "
	tail := fmt.Sprintf(" (%s, 95 %% interval %s to %s).", words.ShareNear(s.Share), words.ShareDown(s.Low), words.ShareUp(s.High))
	switch {
	case s.Kind == ball.KindNone:
		return text + with + "meets nothing within the time that was followed" + tail
	case s.Kind == ball.KindGap:
		verb = passing(s.Beside) + " the screen and meets "
		return plural(text, text+with+verb+words.Surface(s.Surface)+" behind it"+tail)
	case caught:
		return plural(text, text+with+verb+words.Surface(s.Surface)+" first"+tail)
	}
	far := b.before(s.FarShort)
	if far != "" {
		far = ", up to" + far
	}
	return plural(text, text+with+verb+words.Surface(s.Surface)+" first"+far+tail)
}

// plural makes a sentence agree with balls when its subject is more than one.
func plural(subject, sentence string) string {
	if !strings.Contains(subject, "balls") {
		return sentence
	}
	s := sentence[len(subject):]
	for _, v := range [][2]string{{" meets ", " meet "}, {" passes ", " pass "}, {" gets ", " get "}} {
		s = strings.ReplaceAll(s, v[0], v[1])
	}
	return subject + s
}

// oneIn writes a share as people say it: "1 ball in 40", or "7 balls in 10".
func oneIn(share float64, good bool) string {
	if share >= 1 {
		return "Every ball"
	}
	n := 1 / share
	if n >= 2 {
		if good {
			n = words.Ceil(n)
		} else {
			n = words.Floor(n)
		}
		return "1 ball in " + words.Thousands(int(n))
	}
	tenths := words.Ceil(10 * share)
	if good {
		tenths = words.Floor(10 * share)
	}
	if tenths >= 10 {
		return "Nearly every ball"
	}
	return strconv.Itoa(int(tenths)) + " balls in 10"
}

// backSentence says how the well-struck ball comes back.
func (b *balls) backSentence(r ball.Rebound) string {
	if r.Contact.Kind == ball.KindNone {
		return "No ball comes back within the time that was followed."
	}
	return fmt.Sprintf("Off %s the well-struck ball %s; likely it %s.", words.Surface(r.Contact.Surface), b.back(r.High, "may come back"), b.back(r.Likely, "comes back"))
}

// back says where a return gets: past the golfer, or how near.
func (b *balls) back(r ball.Return, verb string) string {
	if r.Reaches {
		return fmt.Sprintf("%s past the golfer at up to %s, about %s up", verb, b.SpeedUp(r.Speed), b.Rough(r.Height))
	}
	if r.Nearest <= 0 {
		return "comes to rest at the golfer's feet"
	}
	return "comes to rest " + b.Down(r.Nearest) + " short of the golfer"
}
