package sweep

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Near marks in near, one for each of the shared times of the tree's tracks, the
// times at which any part of any track is within look (m) of a box, and returns
// the first part that ever is, or swing.NumParts. The tracks must share their
// times.
func (t *Tree) Near(b geom.Box, look float64, near []bool) swing.Part {
	first := swing.NumParts
	h := t.hull
	for i, piece := range pieces {
		for leaf := range h.leaves {
			if b.Gap(h.union[i*2*h.leaves+h.leaves+leaf]) >= look {
				continue
			}
			from, to := t.tracks[0].leafSteps(leaf)
			for k, track := range t.tracks {
				if from >= to || b.Gap(*h.box(i, leaf, k)) >= look {
					continue
				}
				for j := from; j <= to; j++ {
					if b.Gap(track.poses[j][piece.part].Bounds()) < look {
						near[j] = true
						first = min(first, piece.part)
					}
				}
			}
		}
	}
	return first
}
