// Package draw turns a show into triangles: the room as a paper model with
// its hidden edges dashed, the golfer as a jointed mannequin, the clubhead's
// path as a ribbon with ticks, the strike marks and the tape. It knows nothing
// of the engine that puts the triangles on the screen and nothing of the
// physics behind the show.
//
// A Scene keeps every slice it fills, so that drawing a frame allocates
// nothing; what only depends on the viewpoint is kept from frame to frame.
package draw
