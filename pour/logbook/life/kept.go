package life

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"encoding/json"
	"runtime/debug"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// keptName is the file that saves reading every pour anew for a list of batches. It can be thrown away at any time.
const keptName = ".life"

// keptForm is raised when what a story holds changes its meaning.
const keptForm = 7

// kept is the stories of pours whose files and plans can be used.
type kept struct {
	Sum   [sha256.Size]byte // of the shelf and the program they were worked out with
	Pours map[string]keptStory
}

type keptStory struct {
	Size, Modified int64
	Story          story
}

// stories tells the story of every pour of a book, reading only files that have changed since the last time.
func stories(book logbook.Book, shelf pour.Shelf, entries []logbook.Entry) []story {
	old := readKept(book, keptSum(shelf))
	fresh := kept{Sum: old.Sum, Pours: make(map[string]keptStory, len(entries))}
	out, changed := make([]story, len(entries)), false
	var missing []int
	for i, e := range entries {
		known, ok := old.Pours[e.ID]
		if !ok || e.Fault != nil || known.Size != e.Size || known.Modified != e.Modified {
			missing = append(missing, i)
			continue
		}
		out[i], fresh.Pours[e.ID] = known.Story, known
	}
	share(len(missing), func(k int) {
		i := missing[k]
		out[i] = read(book, shelf, entries[i])
	})
	for _, i := range missing {
		e := entries[i]
		if s := out[i]; s.Fault == nil && s.PlanErr == nil {
			fresh.Pours[e.ID], changed = keptStory{e.Size, e.Modified, s}, true
		}
	}
	if changed || len(fresh.Pours) != len(old.Pours) {
		writeKept(book, fresh)
	}
	return out
}

// keptSum stands for everything outside the pours' files that a story rests on: the shelf, and the program that works its figures out.
func keptSum(shelf pour.Shelf) [sha256.Size]byte {
	build := []string{}
	if info, ok := debug.ReadBuildInfo(); ok {
		build = append(build, info.GoVersion, info.Main.Version, info.Main.Sum)
		for _, s := range info.Settings {
			build = append(build, s.Key, s.Value)
		}
	}
	h := sha256.New()
	// A shelf is plain data: encoding it cannot fail, and a NaN in it only makes the sum another.
	_ = json.NewEncoder(h).Encode([]any{keptForm, build, shelf.Oils, shelf.Scents, shelf.Families, shelf.Extras, shelf.Colourants, shelf.Toppings, shelf.Moulds, shelf.Techniques})
	return [sha256.Size]byte(h.Sum(nil))
}

func readKept(b logbook.Book, sum [sha256.Size]byte) kept {
	out := kept{Sum: sum}
	var k kept
	if gob.NewDecoder(bytes.NewReader(b.Kept(keptName))).Decode(&k) != nil || k.Sum != sum {
		return out
	}
	return k
}

func writeKept(b logbook.Book, k kept) {
	var out bytes.Buffer
	if gob.NewEncoder(&out).Encode(k) == nil {
		b.Keep(keptName, out.Bytes())
	}
}
