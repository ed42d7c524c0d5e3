// Package ball flies a golf ball through a room: how it leaves the club, what
// it meets first, what an enclosure must catch, and what comes back.
//
// Frames and units are those of package plan: metres, seconds, kilograms and
// radians in the room frame (x to the target, y to the left, z up from the
// structural floor). Only plan.Ball keeps the degrees and rev/min people quote.
//
// Flight is drag, lift and weight on a ball to the Rules of Golf, with measured
// coefficients (Bearman and Harvey 1976). Over a room the result is close to a
// straight line, whichever published coefficients are used; what decides is the
// launch. Launch spread by skill, the give of cloth and the bounce of walls are
// hardly published at all. They are stated here as assumptions, with ranges, in
// the doc comment of each; a caller that shows a number built on one must say so.
package ball
