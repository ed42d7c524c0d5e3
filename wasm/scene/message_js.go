package main

import (
	"encoding/binary"
	"math"
	"syscall/js"

	"wideberth/internal/render/scene/draw"
	"wideberth/internal/render/scene/wire"
)

// message is what the script asks for. It is copied out of the script's object
// at once and carried out by the next Update, so that the engine's loop and the
// script never wait for each other.
type message struct {
	kind   string
	name   string
	number [3]float64
	flag   bool
	bytes  []byte
	maps   [2][]draw.MapShape
	shade  *draw.Shade
}

// receive takes one message object from the script:
//
//	{type:"show", bytes:Uint8Array}       a recording to draw
//	{type:"seek", t}                      seconds; the page's clock sends one for each picture
//	{type:"view", name}                   behind, face-on, above, target, golfer, camera
//	{type:"orbit", yaw, pitch}            degrees, relative
//	{type:"zoom", factor}                 relative
//	{type:"pan", dx, dy}                  CSS pixels, relative
//	{type:"shift", dx, dy}                metres of the golfer over the floor, until the next recording
//	{type:"theme", dark}  {type:"motion", reduced}
//	{type:"ball", shown}                  the ball's flight and its fan
//	{type:"ghost", shown}                 the typical swing solid, the deciding one as an outline
//	{type:"maps", stand, hang}            lists of {name, rings} in room metres, or nothing
//	{type:"shade", runs:Uint8Array, …}    the shadow on the image: see shade; nothing takes it away
//	{type:"picture", t, width, height}    answered by a picture; all three may be missing
//
// Anything else is left out of account.
func (g *game) receive(_ js.Value, args []js.Value) any {
	if len(args) != 1 || args[0].Type() != js.TypeObject {
		return nil
	}
	o := args[0]
	m := message{kind: text(o, "type")}
	switch m.kind {
	case "show":
		b := o.Get("bytes")
		if b.Type() != js.TypeObject || !b.InstanceOf(js.Global().Get("Uint8Array")) {
			return nil
		}
		m.bytes = make([]byte, b.Length())
		js.CopyBytesToGo(m.bytes, b)
	case "seek":
		m.number[0] = number(o, "t")
	case "view":
		m.name = text(o, "name")
	case "orbit":
		m.number = [3]float64{number(o, "yaw"), number(o, "pitch")}
	case "pan", "shift":
		m.number = [3]float64{number(o, "dx"), number(o, "dy")}
	case "maps":
		m.maps = [2][]draw.MapShape{shapes(o.Get("stand")), shapes(o.Get("hang"))}
	case "shade":
		m.shade = shade(o)
	case "picture":
		m.number = [3]float64{number(o, "t"), number(o, "width"), number(o, "height")}
	case "zoom":
		m.number[0] = number(o, "factor")
	case "theme":
		m.flag = o.Get("dark").Truthy()
	case "motion":
		m.flag = o.Get("reduced").Truthy()
	case "ball", "ghost":
		m.flag = o.Get("shown").Truthy()
	default:
		return nil
	}
	g.mu.Lock()
	g.inbox = append(g.inbox, m)
	g.mu.Unlock()
	return nil
}

func text(o js.Value, name string) string {
	if v := o.Get(name); v.Type() == js.TypeString {
		return v.String()
	}
	return ""
}

// number is the named field, or not a number.
func number(o js.Value, name string) float64 {
	if v := o.Get(name); v.Type() == js.TypeNumber {
		return v.Float()
	}
	return math.NaN()
}

// shapes are the shapes of a map; what is not a list of them is none.
func shapes(list js.Value) []draw.MapShape {
	var out []draw.MapShape
	for i := range length(list) {
		one := draw.MapShape{Name: text(list.Index(i), "name")}
		rings := list.Index(i).Get("rings")
		for j := range length(rings) {
			var ring [][2]float32
			for k := range length(rings.Index(j)) {
				p := rings.Index(j).Index(k)
				if length(p) == 2 && p.Index(0).Type() == js.TypeNumber && p.Index(1).Type() == js.TypeNumber {
					ring = append(ring, [2]float32{float32(p.Index(0).Float()), float32(p.Index(1).Float())})
				}
			}
			one.Rings = append(one.Rings, ring)
		}
		out = append(out, one)
	}
	return out
}

// shade is the shadow of {rate, nx, ny, x, right, bottom, width, height, runs}: of every
// moment how many numbers it has and these numbers, as draw.Shade has them, four bytes
// each, the lowest first. Nothing if anything is missing or wrong.
func shade(o js.Value) *draw.Shade {
	b := o.Get("runs")
	if b.Type() != js.TypeObject || !b.InstanceOf(js.Global().Get("Uint8Array")) {
		return nil
	}
	bytes := make([]byte, b.Length())
	js.CopyBytesToGo(bytes, b)
	float := func(name string) float32 { return float32(number(o, name)) }
	s := &draw.Shade{
		Rate: number(o, "rate"), NX: int(number(o, "nx")), NY: int(number(o, "ny")),
		X: float("x"), Right: float("right"), Bottom: float("bottom"), Width: float("width"), Height: float("height"),
	}
	if !(s.Rate > 0 && s.NX > 0 && s.NY > 0 && s.Width > 0 && s.Height > 0) {
		return nil
	}
	for len(bytes) >= 4 {
		n := int(binary.LittleEndian.Uint32(bytes))
		if bytes = bytes[4:]; n > len(bytes)/4 {
			return nil
		}
		moment := make([]int32, n)
		for i := range moment {
			moment[i] = int32(binary.LittleEndian.Uint32(bytes[4*i:]))
			if moment[i] < 0 {
				return nil
			}
		}
		s.Runs = append(s.Runs, moment)
		bytes = bytes[4*n:]
	}
	return s
}

// length is how many items a list has, 0 for what is none.
func length(list js.Value) int {
	if list.Type() != js.TypeObject || !list.InstanceOf(js.Global().Get("Array")) {
		return 0
	}
	return list.Length()
}

// carryOut does what the waiting messages ask.
func (g *game) carryOut() {
	g.mu.Lock()
	waiting := g.inbox
	g.inbox = g.spare[:0]
	g.mu.Unlock()
	for _, m := range waiting {
		if m.kind == "seek" {
			g.dirty = g.head.Seek(m.number[0]) || g.dirty
			continue
		}
		g.do(m)
		g.dirty, g.news = true, true
	}
	clear(waiting) // lets go of a recording's bytes
	g.spare = waiting[:0]
}

func (g *game) do(m message) {
	n := m.number
	switch m.kind {
	case "show":
		g.load(m.bytes)
	case "view":
		g.turnTo(m.name)
	case "orbit":
		g.turn(n[0], n[1])
	case "zoom":
		g.zoom(n[0])
	case "pan":
		g.pan(n[0], n[1])
	case "shift":
		if !math.IsNaN(n[0] + n[1]) {
			g.picture.Shift(float32(n[0]), float32(n[1]))
		}
	case "ghost":
		g.ghost = m.flag
		g.picture.ShowGhost(m.flag)
	case "maps":
		g.maps = m.maps
		g.picture.ShowMaps(m.maps[0], m.maps[1])
	case "shade":
		g.shade = m.shade
		g.picture.ShowShade(m.shade)
	case "picture":
		g.orders = append(g.orders, order{n[0], n[1], n[2]})
	case "theme":
		g.dark = m.flag
	case "ball":
		g.noBall = !m.flag
		g.picture.ShowBall(m.flag)
	case "motion":
		g.calm = m.flag
	}
}

// load shows what the bytes hold; a recording that cannot be read leaves the one
// before it.
func (g *game) load(b []byte) {
	s, err := wire.Decode(b)
	if err != nil {
		tell("failed", map[string]any{"message": "The 3D view got something it cannot draw: " + err.Error() + "."})
		return
	}
	g.recording, g.picture = s, draw.New(s)
	g.head.Load(len(s.Frames), float64(s.Rate))
	g.picture.ShowBall(!g.noBall)
	g.lettered = 0
	if g.preset != "" {
		g.stand, _ = g.picture.Preset(g.preset)
	}
	g.picture.ShowGhost(g.ghost)
	g.picture.ShowMaps(g.maps[0], g.maps[1])
	g.picture.ShowShade(g.shade)
}
