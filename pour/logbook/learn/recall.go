package learn

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"encoding/json"
	"math"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// recallName is the file that saves working every log's line out anew. It can be thrown away at any time.
const recallName = ".learnt"

// recall is what was worked out of the pours' files.
type recall struct {
	Sum   [sha256.Size]byte // of the shelf and the clock it was worked out with
	Pours map[string]recalled
}

type recalled struct {
	Size, Modified int64
	Logs           []Log
}

// Unread is a pour that could not be read, and why.
type Unread struct {
	ID  string
	Err error
}

// FromBook learns from every pour in the book, and returns beside the lesson the pours that cannot be read or used. What was worked
// out once is kept in a file of the folder and used as long as pour, shelf and clock are the same.
func FromBook(b logbook.Book, shelf pour.Shelf) (Lesson, []Unread, error) {
	entries, err := b.List()
	if err != nil {
		return Lesson{}, nil, err
	}
	old := readRecall(b, shelfSum(shelf))
	fresh := recall{Sum: old.Sum, Pours: make(map[string]recalled, len(entries))}
	var logs []Log
	var troubles []Unread
	changed := len(old.Pours) != len(entries)
	for _, e := range entries {
		if e.Fault != nil {
			troubles = append(troubles, Unread{e.ID, e.Fault})
			continue
		}
		known, ok := old.Pours[e.ID]
		if !ok || known.Size != e.Size || known.Modified != e.Modified {
			changed = true
			p, err := b.Read(e.ID, shelf)
			if err == nil {
				err = p.PlanErr
			}
			if err != nil {
				troubles = append(troubles, Unread{e.ID, err})
				continue
			}
			known = recalled{Size: e.Size, Modified: e.Modified, Logs: logsOf(p, shelf)}
		}
		fresh.Pours[e.ID] = known
		logs = append(logs, known.Logs...)
	}
	lesson := fromLogs(logs)
	if changed {
		writeRecall(b, fresh, lesson)
	}
	return lesson, troubles, nil
}

// shelfSum stands for everything outside the pours that a log's line rests on: the shelf, and the clock's own law, by what it
// says of one batch.
func shelfSum(shelf pour.Shelf) [sha256.Size]byte {
	probe := clock.Batter{
		OilG: 1000, Profiled: 1, SapKOHMgG: 200, Superfat: .05, Concentration: .33, StartC: 38, RoomC: 21, SplitMin: 2,
		Bursts: []clock.Burst{{AtMin: 0, S: 20}},
	}
	probe.Profile[chem.C12], probe.Profile[chem.C16], probe.Profile[chem.C18x1] = .3, .2, .5
	speed := math.NaN()
	if c, err := clock.New(probe, clock.Hand{}); err == nil {
		speed, _ = c.SpeedAt(clock.Jug{Fraction: .5}, chem.Thick, 12)
	}
	h := sha256.New()
	// A shelf is plain data: encoding it cannot fail, and a NaN in it only makes the sum another.
	_ = json.NewEncoder(h).Encode([]any{shelf.Oils, shelf.Scents, shelf.Families, shelf.Extras, shelf.Colourants, math.Float64bits(speed)})
	return [sha256.Size]byte(h.Sum(nil))
}

func readRecall(b logbook.Book, sum [sha256.Size]byte) recall {
	out := recall{Sum: sum}
	var r recall
	if gob.NewDecoder(bytes.NewReader(b.Kept(recallName))).Decode(&r) != nil || r.Sum != sum {
		return out
	}
	return r
}

// writeRecall keeps the logs with the lines the lesson drew.
func writeRecall(b logbook.Book, r recall, lesson Lesson) {
	type key struct{ pour, batch, jug string }
	lines := map[key]Line{}
	for _, list := range [][]LogResult{lesson.Logs, lesson.Left} {
		for _, l := range list {
			lines[key{l.Log.Pour, l.Log.Batch, l.Log.JugName}] = l.Log.Line
		}
	}
	for id, p := range r.Pours {
		for i, l := range p.Logs {
			p.Logs[i].Line = lines[key{l.Pour, l.Batch, l.JugName}]
		}
		r.Pours[id] = p
	}
	var out bytes.Buffer
	if gob.NewEncoder(&out).Encode(r) == nil {
		b.Keep(recallName, out.Bytes())
	}
}
