package measure

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

func (m *meter) address() {
	st, g := &m.swing.Stance, &m.start
	m.add("address: trunk lean", "deg", g.lean())
	m.add("address: trunk side lean", "deg", st.Side/degree)
	m.add("address: knee flexion", "deg", st.Knee/degree)
	// Seen along the target line, as from behind the golfer.
	shaft := math.Atan2(-g.lines.Club.Z, -g.lines.Club.Y)
	arm := g.leadArm()
	hang := math.Atan2(-arm.Y, -arm.Z)
	m.add("address: shaft to the ground", "deg", shaft/degree)
	m.add("address: arms forward of vertical", "deg", st.Hang/degree)
	m.add("address: shaft to forearm", "deg", 90+(shaft+hang)/degree)
	butt := g.pose[swing.Grip].A
	m.add("address: butt height", "m", butt.Z)
	m.add("address: butt reach", "m", butt.Y-m.soleY(g))
	m.add("address: ball to toes", "m", st.BallToToes)
	m.add("address: stance width", "stature", st.StanceWidth/m.body.Stature)
	m.place("address: grip", g.lines.Hands)
	m.add("address: hub radius", "stature", m.radius(g))
	m.add("address: mid-shoulder z", "stature", m.statures(g.lines.Hub).Z)
	m.add("address: head top z", "stature", m.statures(g.crown()).Z)
}

// soleY returns where the shaft axis meets the ground.
func (m *meter) soleY(g *glimpse) float64 {
	return g.pose[swing.Shaft].B.Y + m.swing.Club().HeadRadius*g.lines.Club.Y
}

func (m *meter) top() {
	g := &m.crest
	shoulders, hips := turn(g.lines.Shoulders, m.start.lines.Shoulders), turn(g.lines.Hips, m.start.lines.Hips)
	m.add("top: shoulder turn", "deg", shoulders)
	m.add("top: pelvis turn", "deg", hips)
	m.add("top: separation", "deg", shoulders-hips)
	m.add("top: trunk lean", "deg", g.lean())
	m.add("top: lead arm above level", "deg", elevation(g.leadArm()))
	m.add("top: wrist hinge", "deg", g.hinge())
	m.add("top: shaft above level", "deg", elevation(g.lines.Club))
	m.add("top: hub radius", "stature", m.radius(g))
	m.place("top: grip", g.lines.Hands)
	m.add("top: grip above mid-shoulder", "stature", m.statures(g.lines.Hands).Z-m.statures(g.lines.Hub).Z)
	m.add("top: mid-shoulder z", "stature", m.statures(g.lines.Hub).Z)
	m.add("top: head top z", "stature", m.statures(g.crown()).Z)
	m.add("time: backswing", "s", g.t-m.swing.TimeOf(swing.Takeaway))
	m.plane("grip plane, backswing", m.away, m.peak, (*glimpse).hands)
}

func (m *meter) down() {
	s := m.swing
	down := s.ImpactTime() - s.TopTime()
	m.add("time: downswing", "s", down)
	m.add("time: backswing over downswing", "", (s.TopTime()-s.TimeOf(swing.Takeaway))/down)
	m.plane("grip plane, downswing", m.peak, m.strike, (*glimpse).hands)
	m.plane("grip plane, late downswing", m.armLevelDown(), m.strike, (*glimpse).hands)
	// The "25 frames" at 120 Hz that the recorded hands were fitted over.
	m.plane("grip plane, after impact", m.strike, min(m.strike+104, len(m.course)-1), (*glimpse).hands)
	m.add("speed: hands, peak", "m/s", m.fastest(m.peak, m.strike, (*glimpse).hands))
	m.add("speed: hands, impact", "m/s", m.speed(s.ImpactTime(), (*glimpse).hands))
	m.add("speed: clubhead, impact", "m/s", m.speed(s.ImpactTime(), (*glimpse).head))
	swirl := 0.0
	for i := m.peak + 1; i < m.strike; i++ {
		swirl = max(swirl, geom.Norm(r3.Sub(m.course[i+1].lines.Club, m.course[i-1].lines.Club))/(2*sampling))
	}
	m.add("speed: shaft turning, peak", "deg/s", swirl/degree)
	atTop, atBall := m.armPlane(&m.crest), m.armPlane(&m.hit)
	m.add("lead-arm plane, start of downswing slope", "deg", atTop)
	m.add("lead-arm plane, impact slope", "deg", atBall)
}

// armLevelDown returns the last sample before impact with the lead arm level.
func (m *meter) armLevelDown() int {
	i := m.strike
	for i > m.peak && m.course[i].leadArm().Z < 0 {
		i--
	}
	return i
}

// armPlane returns the slope to the floor of the plane through the foot of the
// neck (C7), the lead shoulder and the lead wrist, deg.
func (m *meter) armPlane(g *glimpse) float64 {
	b := &m.body
	neck := r3.Add(g.lines.Hub, r3.Scale(b.NeckBaseHeight-b.ShoulderHeight, g.lines.Up))
	normal := r3.Cross(r3.Sub(g.pose[swing.LeadUpperArm].A, neck), r3.Sub(g.pose[swing.LeadForearm].B, neck))
	return math.Acos(math.Abs(normal.Z)/geom.Norm(normal)) / degree
}

func (m *meter) impact() {
	g := &m.hit
	m.add("impact: shoulders open", "deg", -turn(g.lines.Shoulders, m.start.lines.Shoulders))
	m.add("impact: pelvis open", "deg", -turn(g.lines.Hips, m.start.lines.Hips))
	m.add("impact: trunk lean", "deg", g.lean())
	m.add("impact: lead arm above level", "deg", elevation(g.leadArm()))
	m.add("impact: wrist hinge", "deg", g.hinge())
	m.add("impact: shaft lean", "deg", math.Atan2(-g.lines.Club.X, -g.lines.Club.Z)/degree)
	m.add("impact: hub radius", "stature", m.radius(g))
	m.place("impact: grip", g.lines.Hands)
	a, b := m.statures(m.start.lines.Hands), m.statures(g.lines.Hands)
	m.add("impact: grip above address", "stature", b.Z-a.Z)
	m.add("impact: grip farther out than address", "stature", b.Y-a.Y)
	m.add("impact: mid-shoulder z", "stature", m.statures(g.lines.Hub).Z)
	m.add("impact: head top z", "stature", m.statures(g.crown()).Z)
}

func (m *meter) through() {
	g := &m.last
	m.add("finish: shoulders open", "deg", -turn(g.lines.Shoulders, m.start.lines.Shoulders))
	m.add("finish: pelvis open", "deg", -turn(g.lines.Hips, m.start.lines.Hips))
	m.add("finish: trunk lean", "deg", g.lean())
	m.add("finish: lead arm above level", "deg", elevation(g.leadArm()))
	m.add("finish: hub radius", "stature", m.radius(g))
	m.place("finish: grip", g.lines.Hands)
	m.add("finish: mid-shoulder z", "stature", m.statures(g.lines.Hub).Z)
	m.add("finish: head top z", "stature", m.statures(g.crown()).Z)
	m.add("time: through", "s", m.swing.TimeOf(swing.Finish)-m.swing.ImpactTime())
}

// extremes adds how far hands, elbows and head go in the whole swing.
func (m *meter) extremes() {
	for _, part := range []struct {
		name  string
		point func(*glimpse) geom.Vec
	}{
		{"grip", (*glimpse).hands},
		{"lead elbow", func(g *glimpse) geom.Vec { return g.pose[swing.LeadUpperArm].B }},
		{"trail elbow", func(g *glimpse) geom.Vec { return g.pose[swing.TrailUpperArm].B }},
		{"head top", (*glimpse).crown},
	} {
		lo, hi := m.reaches(0, len(m.course)-1, part.point)
		m.add(part.name+": most to the trail side", "stature", lo.X)
		m.add(part.name+": most to the target", "stature", hi.X)
		m.add(part.name+": most behind", "stature", lo.Y)
		m.add(part.name+": most to the ball", "stature", hi.Y)
		m.add(part.name+": highest", "stature", hi.Z)
	}
	back, high := m.reaches(0, m.peak, (*glimpse).hands)
	m.add("grip: most behind in the backswing", "stature", back.Y)
	m.add("grip: highest in the backswing", "stature", high.Z)
	_, up := m.reaches(0, m.peak, (*glimpse).head)
	_, over := m.reaches(m.strike, len(m.course)-1, (*glimpse).head)
	r, h := m.swing.Club().HeadRadius, m.body.Stature
	m.add("clubhead: highest in the backswing", "m", up.Z*h+r+m.origin.Z)
	m.add("clubhead: highest in the follow-through", "m", over.Z*h+r+m.origin.Z)
}

// reaches returns the least and the greatest coordinates of a point's path, in
// the frame of the measurements.
func (m *meter) reaches(from, to int, point func(*glimpse) geom.Vec) (lo, hi geom.Vec) {
	far := math.Inf(1)
	lo, hi = geom.Vec{X: far, Y: far, Z: far}, geom.Vec{X: -far, Y: -far, Z: -far}
	for i := from; i <= to; i++ {
		p := m.statures(point(&m.course[i]))
		lo = geom.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = geom.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	return lo, hi
}
