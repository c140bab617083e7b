package stock

import (
	"crypto/sha256"
	"encoding/binary"
	"os"
	"path/filepath"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// What is kept of a ledger that was read, so that a long one opens fast: its entries in a form that is read at once, and the sum of the text they were
// read from. It can be thrown away at any time; a text that was mended by hand is another text and is read anew.
const (
	keptName = ".ledger"
	keptHead = "pourbench ledger kept 1\n"
	// A ledger, or what grew since, is read without keeping it below this many bytes.
	keptFrom = 64 << 10
)

// readKept reads the whole entries of a ledger's text, as far as it is the one that was kept from there.
func (l Ledger) readKept(body string) ([]Entry, error) {
	if len(body) < keptFrom {
		return parseWhole(l.Path(), body, 0)
	}
	kept, upTo := l.kept(body)
	if tail := body[upTo:]; upTo > 0 {
		grown, err := parseWhole(l.Path(), head()+tail, len(kept))
		if err == nil && apart(kept, grown) {
			entries := append(kept, grown...)
			if len(tail) >= keptFrom {
				l.keep(body, entries)
			}
			return entries, nil
		}
	}
	entries, err := parseWhole(l.Path(), body, 0)
	if err == nil && strings.HasSuffix(body, "\n") {
		l.keep(body, entries)
	}
	return entries, err
}

// apart reports whether no entry has the id of one of the others.
func apart(kept, grown []Entry) bool {
	ids := make(map[string]bool, len(grown))
	for _, e := range grown {
		ids[e.ID] = true
	}
	if len(ids) == 0 {
		return true
	}
	for _, e := range kept {
		if ids[e.ID] {
			return false
		}
	}
	return true
}

// keep keeps entries with the text they were read from. A folder that cannot be written only makes the next reading slower.
func (l Ledger) keep(body string, entries []Entry) {
	sum := sha256.Sum256([]byte(body))
	rows := binary.AppendUvarint(nil, uint64(len(body)))
	rows = append(rows, sum[:]...)
	rows = binary.AppendUvarint(rows, uint64(len(entries)))
	for i := range entries {
		rows = entries[i].appendRow(rows)
	}
	own := sha256.Sum256(rows)
	_ = l.Disk.Save(filepath.Join(l.Dir, keptName), disk.Bytes(append(append([]byte(keptHead), own[:]...), rows...)), disk.Want{Mode: disk.Private})
}

// kept gives what was kept of a text and how many bytes of it that is; 0 where it is of another text.
func (l Ledger) kept(body string) (entries []Entry, upTo int) {
	content, err := os.ReadFile(filepath.Join(l.Dir, keptName))
	rest, ok := strings.CutPrefix(string(content), keptHead)
	if err != nil || !ok || len(rest) < sha256.Size {
		return nil, 0
	}
	r := rows{left: rest[sha256.Size:]}
	if own := sha256.Sum256([]byte(r.left)); string(own[:]) != rest[:sha256.Size] {
		return nil, 0
	}
	n := int(r.number())
	if n > len(body) || n <= 0 || len(r.left) < sha256.Size {
		return nil, 0
	}
	if sum := sha256.Sum256([]byte(body[:n])); string(sum[:]) != r.left[:sha256.Size] {
		return nil, 0
	}
	r.left = r.left[sha256.Size:]
	entries = make([]Entry, r.number())
	for i := range entries {
		r.entry(&entries[i])
	}
	return entries, n
}

// texts are the parts of an entry that are kept as they are.
func (e *Entry) texts() []*string {
	return []*string{
		&e.ID, &e.Pack, &e.Material.ID, &e.Name, &e.Lot, &e.Supplier, &e.For, &e.Jug, &e.Currency, &e.Text, &e.Of, &e.Corrects,
	}
}

// appendRow writes an entry behind others.
func (e *Entry) appendRow(out []byte) []byte {
	wall, _ := e.Wall.MarshalBinary() // fails for zones of odd seconds only, which no file has
	for _, s := range []string{string(e.Kind), string(e.Material.Kind), string(e.Formula), amount(e.Price), amount(e.Postage), string(wall)} {
		out = appendText(out, s)
	}
	for _, s := range e.texts() {
		out = appendText(out, *s)
	}
	for _, n := range []int64{int64(e.Day), int64(e.Expires), int64(e.Q), int64(e.Tare), int64(e.Loss)} {
		out = binary.AppendUvarint(out, uint64(n))
	}
	if e.Planned {
		return append(out, 1)
	}
	return append(out, 0)
}

func amount(a money.Amount) string {
	if a.Sign() == 0 {
		return ""
	}
	return a.String()
}

func appendText(out []byte, s string) []byte {
	return append(binary.AppendUvarint(out, uint64(len(s))), s...)
}

// rows reads what was kept. Its sum was right, so that it is what was written.
type rows struct{ left string }

func (r *rows) number() uint64 {
	n, shift := uint64(0), 0
	for i := range len(r.left) {
		b := r.left[i]
		n |= uint64(b&0x7f) << shift
		shift += 7
		if b < 0x80 {
			r.left = r.left[i+1:]
			break
		}
	}
	return n
}

func (r *rows) text() string {
	n := int(r.number())
	s := r.left[:n]
	r.left = r.left[n:]
	return s
}

func (r *rows) entry(e *Entry) {
	e.Kind, e.Material.Kind, e.Formula = Kind(r.text()), lot.Kind(r.text()), lot.Formula(r.text())
	e.Price, e.Postage = r.amount(), r.amount()
	_ = (&e.Wall).UnmarshalBinary([]byte(r.text()))
	for _, s := range e.texts() {
		*s = r.text()
	}
	e.Day, e.Expires = day.Day(int64(r.number())), day.Day(int64(r.number()))
	e.Q, e.Tare, e.Loss = lot.Quantity(r.number()), lot.Quantity(r.number()), lot.Quantity(r.number())
	e.Planned = r.left[0] == 1
	r.left = r.left[1:]
}

func (r *rows) amount() money.Amount {
	s := r.text()
	if s == "" {
		return money.Amount{}
	}
	a, _ := money.Parse(s) // written by this program
	return a
}
