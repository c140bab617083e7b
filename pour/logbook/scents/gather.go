package scents

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"encoding/json"
	"runtime"
	"sync"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/life"
)

// keptName is the file that saves reading every pour again, and keptForm what has to change with what is kept in it. It can be thrown away
// at any time.
const (
	keptName = ".scents"
	keptForm = "pourbench scents 2"
)

// kept is what was gathered of the pours' files.
type kept struct {
	Sum   [sha256.Size]byte // of the shelf it was gathered with
	Pours map[string]gathered
}

type gathered struct {
	Size, Modified int64
	Uses           []use
}

// FromBook makes a page of every scent that was poured or sniffed, those that were poured most first, and returns beside them the pours that
// cannot be read or used. What was gathered once is kept in a file of the folder and used as long as pour and shelf are the same.
func FromBook(b logbook.Book, shelf pour.Shelf, lesson learn.Lesson) ([]Page, []learn.Unread, error) {
	entries, err := b.List()
	if err != nil {
		return nil, nil, err
	}
	sum := shelfSum(shelf)
	old := readKept(b, sum)
	found, faults, changed := old.look(b, entries, shelf)
	fresh := kept{Sum: sum, Pours: make(map[string]gathered, len(entries))}
	var uses []use
	var unread []learn.Unread
	for i, e := range entries {
		if faults[i] != nil {
			unread = append(unread, learn.Unread{ID: e.ID, Err: faults[i]})
			continue
		}
		fresh.Pours[e.ID] = found[i]
		uses = append(uses, found[i].Uses...)
	}
	if changed || len(old.Pours) != len(fresh.Pours) {
		writeKept(b, fresh)
	}
	return pages(uses, shelf, lesson), unread, nil
}

// look takes what is kept of each pour and, on every core, reads those that are not or have changed since.
func (k kept) look(b logbook.Book, entries []logbook.Entry, shelf pour.Shelf) (found []gathered, faults []error, changed bool) {
	found, faults = make([]gathered, len(entries)), make([]error, len(entries))
	var missing []int
	for i, e := range entries {
		known, ok := k.Pours[e.ID]
		if found[i] = known; !ok || known.Size != e.Size || known.Modified != e.Modified || e.Fault != nil {
			missing = append(missing, i)
		}
	}
	var group sync.WaitGroup
	workers := min(runtime.GOMAXPROCS(0), len(missing))
	for w := range workers {
		group.Go(func() {
			for n := w; n < len(missing); n += workers {
				i := missing[n]
				uses, err := read(b, entries[i], shelf)
				found[i], faults[i] = gathered{entries[i].Size, entries[i].Modified, uses}, err
			}
		})
	}
	group.Wait()
	return found, faults, len(missing) > 0
}

// read is what a pour's file says of its scents.
func read(b logbook.Book, e logbook.Entry, shelf pour.Shelf) ([]use, error) {
	if e.Fault != nil {
		return nil, e.Fault
	}
	p, err := b.Read(e.ID, shelf)
	if err == nil {
		err = p.PlanErr
	}
	if err != nil {
		return nil, err
	}
	return usesOf(p, life.Of(p, shelf, pour.Hand{}, 0), shelf), nil
}

// shelfSum stands for all of the shelf that a plan's browning rests on, and for the form of what is kept.
func shelfSum(shelf pour.Shelf) [sha256.Size]byte {
	h := sha256.New()
	// A shelf is plain data: encoding it cannot fail, and a NaN in it only makes the sum another.
	_ = json.NewEncoder(h).Encode([]any{keptForm, shelf.Oils, shelf.Scents, shelf.Extras, shelf.Colourants, shelf.Moulds})
	return [sha256.Size]byte(h.Sum(nil))
}

func readKept(b logbook.Book, sum [sha256.Size]byte) kept {
	var k kept
	if gob.NewDecoder(bytes.NewReader(b.Kept(keptName))).Decode(&k) != nil || k.Sum != sum {
		return kept{}
	}
	return k
}

func writeKept(b logbook.Book, k kept) {
	var out bytes.Buffer
	if gob.NewEncoder(&out).Encode(k) == nil {
		b.Keep(keptName, out.Bytes())
	}
}
