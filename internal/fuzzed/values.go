package fuzzed

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// changed is the value with a fault in it, or the other one, which is of the same type.
func changed(rnd *rand.Rand, v, other any) any {
	switch v := v.(type) {
	case string:
		return text(rnd, v, other.(string))
	case []byte:
		return []byte(text(rnd, string(v), string(other.([]byte))))
	case float64:
		return number(rnd, v, other.(float64))
	case float32:
		return float32(number(rnd, float64(v), float64(other.(float32))))
	case int:
		return int(whole(rnd, uint64(v), uint64(other.(int))))
	case int64:
		return int64(whole(rnd, uint64(v), uint64(other.(int64))))
	case uint64:
		return whole(rnd, v, other.(uint64))
	case uint8:
		return uint8(whole(rnd, uint64(v), uint64(other.(uint8))))
	case bool:
		return !v
	}
	panic(fmt.Sprintf("no inputs are made of a %T", v))
}

// text is the text with faults of Text, or with other bytes, or its beginning with the
// end of the other one.
func text(rnd *rand.Rand, s, other string) string {
	switch rnd.IntN(8) {
	case 0:
		return s[:rnd.IntN(len(s)+1)] + other[rnd.IntN(len(other)+1):]
	case 1, 2:
		b := []byte(s)
		for range 1 + rnd.IntN(3) {
			if len(b) == 0 {
				break
			}
			at := rnd.IntN(len(b))
			switch rnd.IntN(4) {
			case 0:
				b[at] ^= 1 << rnd.IntN(8)
			case 1:
				b[at] = byte(rnd.Uint32())
			case 2:
				b[at]++
			default:
				b[at]--
			}
		}
		return string(b)
	}
	return Text(rnd, s)
}

// oddNumbers are such as are often thought of too late.
var oddNumbers = []float64{0, math.Copysign(0, -1), 1, -1, 0.5, 1e-9, 1e-300, 5e-324, 1e9, math.MaxFloat64, math.Inf(1), math.Inf(-1), math.NaN(), 0.1, 90, 180, 360}

// number is another number: near, far, odd, the other one or one with another bit.
func number(rnd *rand.Rand, v, other float64) float64 {
	switch rnd.IntN(8) {
	case 0:
		return other
	case 1:
		return oddNumbers[rnd.IntN(len(oddNumbers))]
	case 2:
		return -v
	case 3:
		return math.Float64frombits(math.Float64bits(v) ^ 1<<rnd.IntN(64))
	case 4:
		return v + (other-v)*rnd.Float64()
	case 5:
		return v * 2 * rnd.Float64()
	case 6:
		return 6*rnd.Float64() - 3
	}
	return v + 0.1*rnd.NormFloat64()
}

// whole is another whole number, of whatever kind: any, near, the other one, or of few bits.
func whole(rnd *rand.Rand, v, other uint64) uint64 {
	switch rnd.IntN(4) {
	case 0:
		return other
	case 1:
		return v + uint64(rnd.IntN(9)) - 4
	case 2:
		return rnd.Uint64() >> rnd.IntN(64)
	}
	return rnd.Uint64()
}
