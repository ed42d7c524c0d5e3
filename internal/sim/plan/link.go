package plan

import (
	"bytes"
	"encoding/base64"
	"errors"
	"reflect"
	"strings"

	"wideberth/internal/sim/say"
	"wideberth/internal/sim/squeeze"
)

// A link is "#p=", one character that names the format, and base64 (URL
// alphabet, no padding) of three bytes of checksum and the JSON, squeezed. Format
// "a" squeezes with sampleA. A later format gets another character; this one
// stays readable, so neither sampleA nor package squeeze may change what they do.
const (
	linkPrefix  = "#p="
	linkFormatA = 'a'
	sumBytes    = 3

	// maxLink is the longest link read: far above any plan, far below what would
	// keep the page busy.
	maxLink = 64 << 10

	// maxLinked is the longest plan read from a link, in bytes: more than one at
	// every limit takes, and unpacked in a fraction of a second.
	maxLinked = 200_000
)

// sampleA is what a link need not spell out: the schema's words and usual values,
// in the order of a plan.
const sampleA = `"title":""metric","layers":[{"name":"concrete"foam"underlay"plywood","thickness":0.018},{"name":"rubber"turf"` +
	`"sensor":{"name":"ball sensor","min":[,"max":["seats":[{"name":"stool","x":0.5,"y":0.6,"radius":0.35},{"name":"bench"` +
	`"hung":[{"name":"projector","min":[2.1,2,2.45],"max":[2.5,2.45,2.8],"throwRatio":0.8,"lensHeight":2.5,"lumens":3500}]` +
	`"slopes":[{"name":"rafters","wall":"left","kneeHeight":2.1,"run":0.9},"wall":"right","front","back"` +
	`"solids":[{"name":"boxed beam"duct"column","min":[0,0,0],"max":[` +
	`"kind":"wood","kind":"hybrid","fairway wood"5-iron"9-iron"` +
	`,"sex":"man","sex":"woman","span":1.,"arm":0.,"clubs":["driver","7-iron"],"tees":["middle"]` +
	`"hand":"left","shoe":0.025,"turn":"compact","plane":"upright","follow":"held","skill":"steady"` +
	`"turn":"long","plane":"flat","follow":"loose","skill":"wild"` +
	`{"version":1,"title":"","units":"imperial","margin":0.15,"room":{"length":6.4,"width":4.4,"height":2.8},` +
	`"floor":{"mat":{"thickness":0.04,"length":1.5,"width":1.5,"inset":true}},` +
	`"screen":{"x":6,"centre":2.2,"bottom":0.05,"width":3.5,"height":2,"sideReturn":1,"topReturn":0.9},` +
	`"tees":[{"name":"middle","x":2.9,"y":2.2}],` +
	`"clubs":[{"name":"driver","kind":"driver","length":1.1557,"lie":58,"loft":10.5,"ball":{"speed":62,"launch":12.5,"spin":2700}},` +
	`{"name":"7-iron","kind":"iron","length":0.9398,"lie":62,"loft":34,"ball":{"speed":44,"launch":18,"spin":6500}},` +
	`{"name":"pitching wedge","kind":"wedge","length":0.9081,"lie":64,"loft":46,"ball":{"speed":37.5,"launch":26,"spin":8500}}],` +
	`"players":[{"name":"guest","height":1.78,"hand":"right","shoe":0.025,"turn":"full","plane":"neutral","follow":"full","skill":"average"}],` +
	`"air":{"temperature":20,"altitude":0}}`

// errBadLink is what every damaged link comes to.
var errBadLink = errors.New("the link is damaged or cut short: ask for it again, or open the page without it")

// Link encodes the plan, its numbers rounded to four decimals (0.1 mm), as the
// part of the page's address from "#p=" on. A plan that Validate refuses has no
// link: the error is Validate's.
func (p Plan) Link() (string, error) {
	rounded, err := p.rounded()
	if err != nil {
		return "", err
	}
	if err := rounded.Validate(); err != nil {
		return "", err
	}
	data := rounded.JSON()
	packed := append(checksum(data), squeeze.Pack(data, []byte(sampleA))...)
	return linkPrefix + string(linkFormatA) + base64.RawURLEncoding.EncodeToString(packed), nil
}

// FromLink reads what Link wrote, with or without the "#p=". A damaged link is
// one plain error; a link that holds an invalid plan gives the error of Parse.
func FromLink(s string) (Plan, error) {
	s = strings.TrimPrefix(strings.TrimSpace(s), linkPrefix)
	switch {
	case s == "":
		return Plan{}, errors.New("the link holds no plan")
	case len(s) > maxLink:
		return Plan{}, say.Errorf("the link is too long to hold a plan (%d characters)", len(s))
	case s[0] != linkFormatA:
		return Plan{}, errors.New("the link is damaged, or made by a newer program: reload the page, or ask for the link again")
	}
	packed, err := base64.RawURLEncoding.Strict().DecodeString(s[1:])
	if err != nil || len(packed) < sumBytes {
		return Plan{}, errBadLink
	}
	data, err := squeeze.Unpack(packed[sumBytes:], []byte(sampleA), maxLinked)
	if err != nil || !bytes.Equal(checksum(data), packed[:sumBytes]) {
		return Plan{}, errBadLink
	}
	p, err := Parse(data)
	if err != nil {
		return Plan{}, say.Errorf("the link holds a plan that does not work: %w", err)
	}
	return p, nil
}

// checksum is the low three bytes of 32-bit FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo): nothing else would tell a changed
// letter from another plan.
func checksum(data []byte) []byte {
	h := uint32(2166136261)
	for _, b := range data {
		h = (h ^ uint32(b)) * 16777619
	}
	return []byte{byte(h >> 16), byte(h >> 8), byte(h)}
}

// rounded is the plan with its defaults and every number to four decimals.
func (p Plan) rounded() (Plan, error) {
	if err := p.Validate(); err != nil {
		return Plan{}, err
	}
	p = p.WithDefaults() // shares nothing with the caller's
	roundNumbers(reflect.ValueOf(&p))
	return p, nil
}

// roundNumbers rounds every number that can be reached from v.
func roundNumbers(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(roundTenthMM(v.Float()))
	case reflect.Pointer:
		if !v.IsNil() {
			roundNumbers(v.Elem())
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			roundNumbers(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			roundNumbers(v.Field(i))
		}
	}
}
