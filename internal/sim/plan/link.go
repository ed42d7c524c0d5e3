package plan

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"strconv"
	"strings"
)

// A link is "#p=", one character that names the format, and base64 (URL
// alphabet, no padding) of three bytes of checksum and the deflated JSON. Format
// "a" deflates with dictionaryA. A later format gets another character; this one
// stays readable, so dictionaryA must never change.
const (
	linkPrefix  = "#p="
	linkFormatA = 'a'
	sumBytes    = 3

	// maxLink is the longest link read: far above any plan, far below what would
	// keep the page busy.
	maxLink = 64 << 10
)

// dictionaryA is what a link need not spell out: the schema's words, the most
// telling last, as deflate reaches back more cheaply the nearer they are.
const dictionaryA = `"title":""metric","layers":[{"name":"concrete"foam"underlay"plywood","thickness":0.018},{"name":"rubber"turf"` +
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
	var packed bytes.Buffer
	packed.Write(checksum(data))
	w, err := flate.NewWriterDict(&packed, flate.BestCompression, []byte(dictionaryA))
	if err != nil {
		return "", fmt.Errorf("the plan cannot be made a link: %w", err)
	}
	if _, err := w.Write(data); err != nil {
		return "", fmt.Errorf("the plan cannot be made a link: %w", err)
	}
	if err := w.Close(); err != nil {
		return "", fmt.Errorf("the plan cannot be made a link: %w", err)
	}
	return linkPrefix + string(linkFormatA) + base64.RawURLEncoding.EncodeToString(packed.Bytes()), nil
}

// FromLink reads what Link wrote, with or without the "#p=". A damaged link is
// one plain error; a link that holds an invalid plan gives the error of Parse.
func FromLink(s string) (Plan, error) {
	s = strings.TrimPrefix(strings.TrimSpace(s), linkPrefix)
	switch {
	case s == "":
		return Plan{}, errors.New("the link holds no plan")
	case len(s) > maxLink:
		return Plan{}, fmt.Errorf("the link is too long to hold a plan (%d characters)", len(s))
	case s[0] != linkFormatA:
		return Plan{}, errors.New("the link is damaged, or made by a newer program: reload the page, or ask for the link again")
	}
	packed, err := base64.RawURLEncoding.Strict().DecodeString(s[1:])
	if err != nil || len(packed) < sumBytes {
		return Plan{}, errBadLink
	}
	r := flate.NewReaderDict(bytes.NewReader(packed[sumBytes:]), []byte(dictionaryA))
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	switch {
	case err != nil:
		return Plan{}, errBadLink
	case len(data) > maxBytes:
		return Plan{}, errors.New("the link unpacks to more than the 1 MB a plan may have")
	case !bytes.Equal(checksum(data), packed[:sumBytes]):
		return Plan{}, errBadLink
	}
	p, err := Parse(data)
	if err != nil {
		return Plan{}, fmt.Errorf("the link holds a plan that does not work: %w", err)
	}
	return p, nil
}

// checksum is the low three bytes of FNV-1a: deflate alone would take a changed
// letter for another number.
func checksum(data []byte) []byte {
	h := fnv.New32a()
	h.Write(data)
	v := h.Sum32()
	return []byte{byte(v >> 16), byte(v >> 8), byte(v)}
}

// rounded is the plan with its defaults and every number to four decimals.
func (p Plan) rounded() (Plan, error) {
	if err := p.Validate(); err != nil {
		return Plan{}, err
	}
	tree, err := decodeTree(p.WithDefaults().JSON())
	if err != nil {
		return Plan{}, err
	}
	data, err := json.Marshal(roundNumbers(tree))
	if err != nil {
		return Plan{}, fmt.Errorf("the plan cannot be rounded: %w", err)
	}
	var out Plan
	if err := json.Unmarshal(data, &out); err != nil {
		return Plan{}, fmt.Errorf("the plan cannot be rounded: %w", err)
	}
	return out, nil
}

// roundNumbers rounds every number in a decoded document.
func roundNumbers(v any) any {
	switch v := v.(type) {
	case json.Number:
		if f, err := strconv.ParseFloat(string(v), 64); err == nil {
			return roundTenthMM(f)
		}
	case []any:
		for i := range v {
			v[i] = roundNumbers(v[i])
		}
	case map[string]any:
		for k := range v {
			v[k] = roundNumbers(v[k])
		}
	}
	return v
}
