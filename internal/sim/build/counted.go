package build

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/build/quantity"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// stud is the length that lumber is bought in, 8 ft, m.
const stud = 8 * units.MetresPerFoot

// quantities counts what the plan takes.
func (r *room) quantities() error {
	p, b := r.plan, r.spec.Build
	bill := quantity.NewBill(p.Units)
	label := func(m float64) string { return units.Label(m, p.Units) }
	r.countFloor(bill, label)
	if m := p.Floor.Mat; m != nil {
		bill.Pieces("hitting mat", len(r.out.Floor.Mats), "piece", fmt.Sprintf("one of %s × %s for each tee and each hand that plays from it", label(m.Length), label(m.Width)))
	}
	bill.Pieces("putting cup", len(b.Cups), "piece", "one for each cup in the plan")
	if s := p.Screen; s != nil {
		bill.Area("screen cloth", s.Width*s.Height, "width × height of the screen; hems and grommets are not in it")
		bill.Area("cloth for the returns", 2*s.SideReturn*s.Height+s.TopReturn*s.Width, "two side returns and the top return, depth × edge")
		pieces := frame(p.Screen.Width, p.Screen.Height, s.SideReturn, s.TopReturn)
		total := 0.0
		for _, v := range pieces {
			total += v
		}
		bill.Pieces("2×4, 8 ft, for the frame", quantity.Lengths(pieces, stud), "length",
			fmt.Sprintf("%d pieces, %s in all, cut from 8 ft: uprights, headers and rails around screen and returns, a saw cut between", len(pieces), label(total)))
		bill.Length("pad for the frame", 2*s.Height+s.Width, "both uprights and the header that face the golfer")
	}
	for cover, item := range [2]string{"foam padding", "curtain or net"} {
		area := 0.0
		for _, v := range p.Room.Solids {
			if v.Cover == [2]string{plan.CoverFoam, plan.CoverCloth}[cover] {
				area += padded(v)
			}
		}
		bill.Area(item, area, "the largest side of every solid that the plan covers with it")
	}
	room := p.Room
	painted := 2*(room.Length+room.Width)*room.Height + room.Length*room.Width
	bill.Volume("paint", painted*b.Finish.Coats/b.Finish.Coverage, fmt.Sprintf("walls and ceiling of the bare box × %v coats over %v m² a litre; nothing is taken off for doors", b.Finish.Coats, b.Finish.Coverage))
	bill.Area("acoustic absorber", b.Finish.Absorber, "the area that the plan asks for")
	if j := r.spec.Projector; j != nil {
		bill.Length("picture cable", r.run(b.Wiring.Source, j.Lens), "from the source up the wall, along the walls under the ceiling and to the lens, a tenth more and the slack")
		bill.Pieces("projector", 1, "piece", "one in the plan")
	}
	bill.Pieces("receptacle, by an electrician", int(b.Wiring.Receptacles), "piece", "as many as the plan asks for")
	for i := range bill.Lines {
		for _, s := range b.Stock {
			if s.Name == bill.Lines[i].Item {
				bill.Lines[i].Price = s.Price
			}
		}
	}
	bill.Charge(b.Prices)
	r.out.Quantities, r.out.Total, r.out.Unpriced, r.out.CSV = bill.Lines, bill.Total, bill.Unpriced, bill.CSV()
	return nil
}

// countFloor counts the layers of the plan, or where it has none those of the best
// stack.
func (r *room) countFloor(bill *quantity.Bill, label func(float64) string) {
	f := r.out.Floor
	names := []string{}
	for _, l := range r.plan.Floor.Layers {
		names = append(names, BoughtAs(l.Name))
	}
	if len(names) == 0 && len(f.Stacks) > 0 {
		names = f.Stacks[0].Layers
	}
	area := f.Panels.Area
	sheets := map[string]int{}
	for _, name := range names { // a panel that lies twice is one line
		if kindOf(r.spec.Build.Stock, name) == spec.Panel {
			sheets[name] += f.Panels.Sheets
		}
	}
	done := map[string]bool{}
	for _, name := range names {
		if done[name] {
			continue
		}
		done[name] = true
		switch kindOf(r.spec.Build.Stock, name) {
		case spec.Panel:
			bill.Pieces(name, sheets[name], "sheet", fmt.Sprintf("whole sheets, and the cut pieces of a layer nested into sheets with a saw cut between; %.0f %% of it is not laid", 100*f.Panels.Waste))
		case spec.Turf:
			bill.Area(name, f.Turf.Bought, fmt.Sprintf("%d × %s of a roll %s wide; %.0f %% of it is not laid", f.Turf.Strips, label(f.Turf.Long), label(f.Turf.Wide), 100*f.Turf.Waste))
		default:
			const spare = 1.05 // for cutting: an assumption
			bill.Area(name, area*spare, "the area covered and a twentieth for cutting")
		}
	}
}

// frame are the pieces (m) of a frame around a screen of this size, with returns of
// these depths: two uprights and a header at the screen, the same again at the front
// of the returns, and rails between.
func frame(width, height, side, top float64) []float64 {
	up, across := height+ball.Tube, width+2*ball.Tube
	out := []float64{up, up, across}
	depth := max(side, top)
	if depth > 0 {
		out = append(out, up, up, across, depth, depth) // the rails at the top corners
	}
	if side > 0 {
		out = append(out, side, side) // and at the foot
	}
	return out
}

// run is the length (m) of a cable from a to b: up and along the walls, never across
// the air, a tenth more and the slack.
func (r *room) run(a, b [3]float64) float64 {
	high := r.plan.Room.Height
	way := (high - a[2]) + max(a[0]-b[0], b[0]-a[0]) + max(a[1]-b[1], b[1]-a[1]) + (high - b[2])
	const more = 1.1 // common practice
	return way*more + r.spec.Build.Wiring.Slack
}
