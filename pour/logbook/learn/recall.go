package learn

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"encoding/json"
	"math"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/chem/cure"
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
	Drying         Drying
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
	var dried []Drying
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
			known = recalled{Size: e.Size, Modified: e.Modified, Logs: logsOf(p, shelf), Drying: dryingOf(p, shelf)}
		}
		fresh.Pours[e.ID] = known
		logs, dried = append(logs, known.Logs...), append(dried, known.Drying)
	}
	lesson := fromLogs(logs)
	lesson.rack(dried)
	if changed {
		writeRecall(b, fresh, lesson)
	}
	return lesson, troubles, nil
}

// shelfSum stands for everything outside the pours that a log's line and a batch's drying rest on: the shelf, and the laws of clock and drying, by what
// they say of one batch.
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
	_ = json.NewEncoder(h).Encode([]any{shelf.Oils, shelf.Scents, shelf.Families, shelf.Extras, shelf.Colourants, math.Float64bits(speed), lawOfDrying()})
	return [sha256.Size]byte(h.Sum(nil))
}

// lawOfDrying is what the law of drying says of one bar.
func lawOfDrying() []float64 {
	box := cure.Box{ThickMM: 25, WideMM: 80, HighMM: 62}
	p, err := cure.FromRecipe(0.19, 0.10, cure.FinalMoistureSD)
	if err != nil {
		return nil
	}
	w := []cure.Weighing{{Day: 0, G: 125}, {Day: 1, G: 122.1}, {Day: 4, G: 119.5}, {Day: 10, G: 117}, {Day: 21, G: 114.6}, {Day: 35, G: 113.4}}
	f, err := cure.Of(box, p, w, cure.WeighingSDG)
	if err != nil {
		return nil
	}
	said := f.Says(0.19)
	return []float64{p.Loss, p.LossSD, said.LnD.Mean, said.LnD.Variance, said.Moisture.Mean, said.Moisture.Variance}
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
