package floor

import (
	"cmp"
	"slices"
)

// Size is a rectangle that may lie either way, m.
type Size struct{ Long, Wide float64 }

// Nest cuts pieces from as few sheets as it finds, with straight cuts from edge to
// edge (a saw makes no others in a sheet) that each take kerf (m), and says which
// sheet every piece comes from. Few pieces are tried in every order, many in a few
// orders. A piece that no sheet holds gets −1.
func Nest(pieces []Size, sheet Size, kerf float64) (from []int, sheets int) {
	order := make([]int, 0, len(pieces))
	from = make([]int, len(pieces))
	for i, p := range pieces {
		if fits(p, sheet.Long, sheet.Wide) || fits(turnedSize(p), sheet.Long, sheet.Wide) {
			order = append(order, i)
		} else {
			from[i] = -1
		}
	}
	sheets = len(order) + 1
	try := func(order []int) {
		for _, rule := range [2]bool{false, true} {
			got, n := cutInOrder(pieces, order, sheet, kerf, rule, sheets)
			if n < sheets {
				sheets = n
				for k, i := range order {
					from[i] = got[k]
				}
			}
		}
	}
	area := func(i int) float64 { return pieces[i].Long * pieces[i].Wide }
	for _, key := range []func(i int) float64{area,
		func(i int) float64 { return max(pieces[i].Long, pieces[i].Wide) },
		func(i int) float64 { return min(pieces[i].Long, pieces[i].Wide) },
		func(i int) float64 { return pieces[i].Long + pieces[i].Wide },
	} {
		by := slices.Clone(order)
		slices.SortStableFunc(by, func(a, b int) int { return cmp.Compare(key(b), key(a)) })
		try(by)
	}
	const everyOrder = 6
	if len(order) <= everyOrder {
		permute(order, 0, try)
	}
	if len(order) == 0 {
		sheets = 0
	}
	return from, sheets
}

func permute(order []int, k int, try func([]int)) {
	if k == len(order) {
		try(order)
		return
	}
	for i := k; i < len(order); i++ {
		order[k], order[i] = order[i], order[k]
		permute(order, k+1, try)
		order[k], order[i] = order[i], order[k]
	}
}

const slack = 1e-9 // m, of sums that come out a hair long

func fits(p Size, long, wide float64) bool { return p.Long <= long+slack && p.Wide <= wide+slack }

func turnedSize(p Size) Size { return Size{p.Wide, p.Long} }

// offcut is what is left of a sheet, m.
type offcut struct {
	sheet int
	Size
}

// cutInOrder takes each piece from the offcut that it leaves least of, or from a new
// sheet; across says which of the two cuts beside a piece goes from edge to edge.
// It stops when it needs enough sheets.
func cutInOrder(pieces []Size, order []int, sheet Size, kerf float64, across bool, enough int) (from []int, sheets int) {
	var left []offcut
	for _, i := range order {
		best, turned, least := -1, false, 0.0
		for k, o := range left {
			for _, t := range [2]bool{false, true} {
				p := pieces[i]
				if t {
					p = turnedSize(p)
				}
				if !fits(p, o.Long, o.Wide) {
					continue
				}
				// How much the better-filled side still has over.
				if over := min(o.Long-p.Long, o.Wide-p.Wide); best < 0 || over < least {
					best, turned, least = k, t, over
				}
			}
		}
		if best < 0 {
			if sheets++; sheets >= enough {
				return nil, enough
			}
			left = append(left, offcut{sheets - 1, sheet})
			best, turned = len(left)-1, !fits(pieces[i], sheet.Long, sheet.Wide)
		}
		o, p := left[best], pieces[i]
		if turned {
			p = turnedSize(p)
		}
		left = slices.Delete(left, best, best+1)
		rest := Size{max(0, o.Long-p.Long-kerf), max(0, o.Wide-p.Wide-kerf)}
		end, side := Size{rest.Long, o.Wide}, Size{p.Long, rest.Wide}
		if across {
			end, side = Size{rest.Long, p.Wide}, Size{o.Long, rest.Wide}
		}
		left = append(left, offcut{o.sheet, end}, offcut{o.sheet, side})
		from = append(from, o.sheet)
	}
	return from, sheets
}
