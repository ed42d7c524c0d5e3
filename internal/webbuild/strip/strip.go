// Package strip makes Go programs for the browser lighter after they were linked.
package strip

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// Program empties a Go program's tables of file names, line numbers, function
// names and arguments. The runtime reads them for one thing only, the list of calls below a
// crash, which a visitor never sees; they are an eighth of what is transferred
// once it is compressed. So it does those that say where a function may be interrupted, which
// nobody does in a browser. What unwinds a stack and collects garbage stays as it
// is. The tables are those of Go 1.20 and later (runtime/symtab.go, pcHeader and
// _func); another layout is an error, and the program is to be shipped as it is.
func Program(program []byte) ([]byte, error) {
	section, start, end, err := dataSection(program)
	if err != nil {
		return nil, err
	}
	memory, err := readSegments(program[start:end])
	if err != nil {
		return nil, err
	}
	if err := emptyTables(memory); err != nil {
		return nil, err
	}
	data := writeSegments(memory)
	out := append(bytes.Clone(program[:section+1]), uleb(len(data))...)
	return append(append(out, data...), program[end:]...), nil
}

const dataSectionID = 11 // WebAssembly core specification, 5.5.2

// dataSection finds the data section: where its number stands, and where its
// bytes begin and end.
func dataSection(program []byte) (section, start, end int, err error) {
	const header = 8
	r := reader{program, min(header, len(program))}
	for r.at < len(program) {
		section := r.at
		id := r.byte()
		size := int(r.uleb())
		if size < 0 || size > len(program)-r.at {
			break
		}
		if id == dataSectionID {
			return section, r.at, r.at + size, nil
		}
		r.at += size
	}
	return 0, 0, 0, errors.New("the program has no data section")
}

// readSegments lays the segments of a data section out as the memory they start.
func readSegments(section []byte) ([]byte, error) {
	var memory []byte
	r := reader{section, 0}
	for range r.uleb() {
		const active, i32const, endOp = 0x00, 0x41, 0x0b
		if r.byte() != active || r.byte() != i32const {
			return nil, errors.New("a data segment is not placed by a plain number")
		}
		at := int(r.uleb())
		if r.byte() != endOp {
			return nil, errors.New("a data segment is not placed by a plain number")
		}
		n := int(r.uleb())
		const most = 1 << 30
		if at > most || n > len(section)-r.at {
			return nil, errors.New("a data segment lies outside the memory")
		}
		if grow := at + n - len(memory); grow > 0 {
			memory = append(memory, make([]byte, grow)...)
		}
		copy(memory[at:], section[r.at:r.at+n])
		r.at += n
	}
	return memory, nil
}

// writeSegments is the data section for a memory; memory starts as zeros, so
// that long runs of them are left out.
func writeSegments(memory []byte) []byte {
	const gap = 32 // zeros that cost more than another segment does
	var body []byte
	count := 0
	for at := 0; at < len(memory); {
		if memory[at] == 0 {
			at++
			continue
		}
		end, zeros := at, 0
		for k := at; k < len(memory) && zeros < gap; k++ {
			if zeros++; memory[k] != 0 {
				zeros, end = 0, k+1
			}
		}
		body = append(body, 0x00, 0x41)
		body = append(append(body, sleb(at)...), 0x0b)
		body = append(append(body, uleb(end-at)...), memory[at:end]...)
		count++
		at = end
	}
	return append(uleb(count), body...)
}

// The header of the table and what is used of a function's record, in bytes from
// their start. A record begins with the place of the function's code, which the index
// of the records has too.
const (
	headNames, headUnits, headFiles, headPCs, headFuncs = 32, 40, 48, 56, 64
	headSize                                            = 72

	funcName, funcPCSP, funcFile, funcLine, funcPCData, funcUnit, funcStart, funcData = 4, 16, 20, 24, 28, 32, 36, 43
	funcSize                                                                          = 44
)

// Of a function's further tables and data, behind its record, which nobody reads
// (internal/abi/symtab.go): where it is not safe to interrupt it, and which of its arguments
// are live where; what its arguments are, and where each is live.
const (
	pcUnsafePoint, pcArgLive = 0, 3
	dataArgs, dataArgLive    = 5, 6
	mostData                 = 8         // kinds of data
	none                     = 1<<32 - 1 // of data, and of the units of files
)

var tableMagic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8} // and steps of 1 byte, pointers of 8

func emptyTables(memory []byte) error {
	odd := errors.New("the table of functions is not as Go 1.20 and later have it")
	at := bytes.Index(memory, tableMagic)
	if at < 0 || len(memory) < at+headSize || bytes.Contains(memory[at+1:], tableMagic) {
		return odd
	}
	table := memory[at:]
	num := func(i int) int { return int(binary.LittleEndian.Uint32(table[i:])) }
	funcs, names, units, files, pcs, records := num(8), num(headNames), num(headUnits), num(headFiles), num(headPCs), num(headFuncs)
	if !(headSize <= names && names < units && units < files && files < pcs && pcs < records && records+8*funcs < len(table)) {
		return odd
	}
	// What a field says where something starts is held to that: names and tables stand
	// one behind another, each with a zero at its end.
	starts := func(from, end, offset int) bool {
		return offset == 0 || offset < end-from && table[from+offset-1] == 0
	}
	kept, dropped := map[int]bool{}, map[int]bool{}
	for k := range funcs {
		f := records + num(records+8*k+4)
		if f+funcSize > len(table) || f+funcSize+4*(num(f+funcPCData)+int(table[f+funcData])) > len(table) {
			return odd
		}
		dropped[num(f+funcFile)], dropped[num(f+funcLine)] = true, true
		kept[num(f+funcPCSP)] = true
		fine := num(f) == num(records+8*k) && starts(names, units, num(f+funcName)) &&
			starts(pcs, records, num(f+funcFile)) && starts(pcs, records, num(f+funcLine)) && starts(pcs, records, num(f+funcPCSP)) &&
			(num(f+funcUnit) == none || 4*num(f+funcUnit) < files-units) && table[f+funcData] <= mostData
		further := table[f+funcSize:]
		for i := range num(f + funcPCData) {
			offset := num(f + funcSize + 4*i)
			fine = fine && starts(pcs, records, offset)
			if i != pcUnsafePoint && i != pcArgLive {
				kept[offset] = true
				continue
			}
			dropped[offset] = true
			clear(further[4*i:][:4])
		}
		further = further[4*num(f+funcPCData):]
		for _, i := range []int{dataArgs, dataArgLive} {
			if i < int(table[f+funcData]) {
				binary.LittleEndian.PutUint32(further[4*i:], none)
			}
		}
		if !fine {
			return odd
		}
		for _, field := range []int{funcName, funcFile, funcLine, funcUnit, funcStart} {
			clear(table[f+field : f+field+4]) // 0 stands for nothing known
		}
	}
	for offset := range dropped {
		if !kept[offset] {
			if err := emptyRun(table[pcs:records], offset); err != nil {
				return err
			}
		}
	}
	clear(table[names:pcs]) // with the units and their files
	return nil
}

// emptyRun clears one table of values by program counter: pairs of numbers up
// to a zero, which only as the first one is a value.
func emptyRun(pcs []byte, offset int) error {
	r := reader{pcs, offset}
	for first := true; ; first = false {
		if r.at >= len(pcs) {
			return fmt.Errorf("a table at %d does not end", offset)
		}
		if r.uleb() == 0 && !first {
			break
		}
		r.uleb()
	}
	clear(pcs[offset:r.at])
	return nil
}

// reader reads bytes and numbers; past the end it reads zeros.
type reader struct {
	data []byte
	at   int
}

func (r *reader) byte() byte {
	if r.at >= len(r.data) {
		return 0
	}
	r.at++
	return r.data[r.at-1]
}

// uleb reads a number in LEB128; for positive signed ones it gives the same.
func (r *reader) uleb() (v uint64) {
	for shift := 0; ; shift += 7 {
		b := r.byte()
		v |= uint64(b&0x7f) << shift
		if b < 0x80 {
			return v
		}
	}
}

func uleb(v int) []byte { return binary.AppendUvarint(nil, uint64(v)) }

// sleb writes a number that is not negative in signed LEB128.
func sleb(v int) (out []byte) {
	for ; v >= 0x40; v >>= 7 {
		out = append(out, byte(v&0x7f)|0x80)
	}
	return append(out, byte(v))
}
