// Package link reads and writes a plan as the part of the page's address from
// "#p=" on, for the command line. The page does the same with the browser's own
// compressor, in public/app/link.js: its tests hold the two against each other.
//
// A link is base64 (URL alphabet, no padding) of three bytes of checksum and the
// sparse JSON of the plan, deflated without a head (RFC 1951).
package link

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"net/url"
	"strings"

	"wideberth/internal/sim/plan"
)

const (
	// Prefix is what a plan's link starts with.
	Prefix = "#p="

	sumBytes = 3
	// longest is the longest link read, in characters: far above any plan.
	longest = 64 << 10
	// most is the longest plan read from a link, in bytes: more than one at every
	// limit takes.
	most = 200_000
)

var errDamaged = errors.New("the link is damaged or cut short: ask for it again")

// Encode writes a plan as a link.
func Encode(c plan.Checked) (string, error) { return encode(c.Plan().Sparse().JSON()) }

func encode(data []byte) (string, error) {
	packed := bytes.NewBuffer(checksum(data))
	w, err := flate.NewWriter(packed, flate.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err := w.Write(data); err != nil {
		return "", err
	}
	if err := w.Close(); err != nil {
		return "", err
	}
	return Prefix + base64.RawURLEncoding.EncodeToString(packed.Bytes()), nil
}

// Decode reads a link, or any address with one in it. What mail and chat put behind
// an address is left out, and an address that they escaped is read as it was.
func Decode(address string) (plan.Checked, error) {
	if plain, err := url.PathUnescape(address); err == nil {
		address = plain
	}
	_, s, _ := strings.Cut(strings.Join(strings.Fields(address), ""), Prefix)
	if s == "" || s[0] == '&' {
		return plan.Checked{}, errors.New("the link holds no plan")
	}
	if end := strings.IndexFunc(s, notOfLink); end >= 0 {
		s = s[:end]
	}
	if len(s) > longest {
		return plan.Checked{}, fmt.Errorf("the link is too long to hold a plan (%d characters)", len(s))
	}
	packed, err := base64.RawURLEncoding.Strict().DecodeString(s)
	if err != nil || len(packed) < sumBytes {
		return plan.Checked{}, errDamaged
	}
	rest := bytes.NewReader(packed[sumBytes:])
	data, err := io.ReadAll(io.LimitReader(flate.NewReader(rest), most+1))
	if err != nil || rest.Len() > 0 || len(data) > most || !bytes.Equal(checksum(data), packed[:sumBytes]) {
		return plan.Checked{}, errDamaged
	}
	p, err := plan.Parse(data)
	if err != nil {
		return plan.Checked{}, fmt.Errorf("the link holds a plan that does not work: %w", err)
	}
	return p, nil
}

// notOfLink tells the letters that links are not made of.
func notOfLink(r rune) bool {
	return !strings.ContainsRune("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_", r)
}

// checksum is the low three bytes of 32-bit FNV-1a (G. Fowler, L. C. Noll,
// K.-P. Vo), the highest first: nothing else would tell a changed letter from
// another plan.
func checksum(data []byte) []byte {
	h := fnv.New32a()
	h.Write(data)
	return h.Sum(nil)[1:]
}
