package squeeze

// The model guesses each bit of a text from what came before it. Nine contexts
// guess: the last 0 to 6 bytes, the word so far with the byte before it, and the
// name of the JSON field that the text is in. Their guesses are mixed in the
// logistic domain by weights that follow what has proved right (M. Mahoney 2005, Adaptive
// Weighing of Context Models for Lossless Data Compression, Florida Tech.
// CS-2005-16). All arithmetic is on integers, so that every machine makes the
// same guesses; any change to it makes texts unreadable that were squeezed before.
const (
	numContexts = 9
	numInputs   = numContexts + 1 // and a constant
	tableBits   = 16
	certain     = 1 << 16 // a probability of 1
	limit       = 2047    // of a stretched probability
	countBits   = 10
	mostCounted = 250 // a bit counts for no less than the 250th did
	firstWeight = 20000
	learning    = 16 // how fast weights follow
)

type model struct {
	table   [numContexts][1 << tableBits]uint32 // probability of a 1 in 22 bits, times seen in 10
	slot    [numContexts]uint32                 // of the bit to come
	hash    [numContexts]uint32                 // of the bytes before
	input   [numInputs]int32
	weight  [8][numInputs]int32 // by the place of the bit in its byte; 1 is 1<<16
	stretch [4096]int16         // logit of a probability in 4096ths, times 256
	mixed   int32               // the guess, in 65536ths

	history uint64 // the last eight bytes
	partial uint32 // bits of this byte, after a leading 1
	place   int    // of the bit to come in its byte
	word    uint32 // hash of the letters since the last other byte
	name    uint32 // hash of the last word that a colon ended
	ended   uint32 // hash of the last word that another byte ended
}

func newModel() *model {
	m := &model{partial: 1}
	next := 0
	for x := int32(-limit); x <= limit; x++ {
		for top := int(squash(x) >> 4); next <= top; next++ {
			m.stretch[next] = int16(x)
		}
	}
	for ; next < len(m.stretch); next++ {
		m.stretch[next] = limit
	}
	for i := range m.table {
		for j := range m.table[i] {
			m.table[i][j] = 1 << 31
		}
	}
	for i := range m.weight {
		for j := range m.weight[i] {
			m.weight[i][j] = firstWeight
		}
	}
	m.aim()
	return m
}

// logistic is 65536/(1+exp(-x/256)) at x = -2048, -1920 … 2048.
var logistic = [33]int32{
	22, 36, 60, 98, 162, 267, 439, 720, 1179, 1921, 3108, 4971, 7812, 11955, 17625, 24743, 32768,
	40793, 47911, 53581, 57724, 60565, 62428, 63615, 64357, 64816, 65097, 65269, 65374, 65438, 65476, 65500, 65514,
}

// squash is the inverse of stretch: a probability in 65536ths.
func squash(x int32) int32 {
	x = min(max(x, -limit), limit) + 2048
	i, w := x>>7, x&127
	return (logistic[i]*(128-w) + logistic[i+1]*w) >> 7
}

// guess is the probability, in 65536ths, that the next bit is a 1; never 0 or 1.
func (m *model) guess() uint32 { return uint32(m.mixed) }

// aim finds the slots for the bit to come and mixes their guesses.
func (m *model) aim() {
	weights := &m.weight[m.place]
	sum := int64(0)
	for i := range numContexts {
		m.slot[i] = (m.hash[i] + m.partial*0x9E3779B1) * 0x85EBCA6B >> (32 - tableBits)
		m.input[i] = int32(m.stretch[m.table[i][m.slot[i]]>>20])
		sum += int64(weights[i]) * int64(m.input[i])
	}
	m.input[numContexts] = 256
	sum += int64(weights[numContexts]) * 256 >> 4
	m.mixed = min(max(squash(int32(min(max(sum>>16, -limit), limit))), 24), certain-24)
}

// learn takes the bit that came.
func (m *model) learn(bit uint32) {
	weights := &m.weight[m.place]
	wrong := (int64(bit)*certain - int64(m.mixed)) * learning
	for i := range weights {
		weights[i] += int32((int64(m.input[i])*wrong + 1<<17) >> 18)
	}
	for i := range numContexts {
		s := &m.table[i][m.slot[i]]
		seen := *s & (1<<countBits - 1)
		p := int64(*s >> countBits)
		p += (int64(bit)*(1<<22-1) - p) * 2 / int64(2*seen+3)
		*s = uint32(p)<<countBits | min(seen+1, mostCounted)
	}
	m.partial = m.partial<<1 | bit
	m.place++
	if m.place == 8 {
		m.byteDone(byte(m.partial))
		m.partial, m.place = 1, 0
	}
	m.aim()
}

// byteDone moves every context on by one byte.
func (m *model) byteDone(c byte) {
	m.history = m.history<<8 | uint64(c)
	letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80
	switch {
	case letter:
		m.word = (m.word + uint32(c) + 1) * 0x2F0B4C47
	case c == ':':
		m.name, m.word = m.ended, 0
	default:
		if m.word != 0 {
			m.ended = m.word
		}
		m.word = 0
	}
	for order := range 7 {
		seen := m.history & (1<<(8*order) - 1)
		m.hash[order] = mix(seen, uint32(order))
	}
	m.hash[7] = mix(uint64(m.word)<<8|m.history&0xff, 7)
	m.hash[8] = mix(uint64(m.name)<<16|m.history&0xffff, 8)
}

// mix hashes a context of one kind.
func mix(v uint64, kind uint32) uint32 {
	v = (v + uint64(kind)) * 0x9E3779B97F4A7C15
	return uint32(v>>32) ^ uint32(v>>13)
}
