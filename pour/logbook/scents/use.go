package scents

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// use is what one pour says of one scent.
type use struct {
	Scent, Pour string
	Day         day.Day // when it was poured
	Poured      bool    // its plan uses the scent; false: it was sniffed all the same
	Trial       bool
	LeftOut     bool // the pour teaches nothing; then it says no more
	Troubles    []troubled
	Browning    []Browned
	Sniffs      []sniff
	Shared      int // sniffs of the bar as a whole, which holds other scents too
	Gone        []Audience
}

type troubled struct {
	Word  string
	Alone bool
}

type sniff struct {
	Week   int
	Placed bool
	Value  float64
	Text   string
}

// words are what was said, part by part, in small letters.
func (s sniff) words() []string {
	var out []string
	for part := range strings.FieldsFuncSeq(strings.ToLower(s.Text), func(r rune) bool { return strings.ContainsRune(",;.\n", r) }) {
		if part = strings.Join(strings.Fields(part), " "); part != "" {
			out = append(out, part)
		}
	}
	return out
}

// holder is a jug with scents in it.
type holder struct {
	batch    pour.BatchName
	jug      string
	scents   []string
	vanillin float64 // percent of its part of the bar
}

// is reports whether an event is of the jug.
func (h holder) is(e logbook.Event) bool {
	return (e.Batch == "" || e.Batch == h.batch) && e.Jug == h.jug
}

// story is a pour whose scents are told of.
type story struct {
	pour    logbook.Pour
	batch   life.Batch
	holders []holder
	all     []string // scents of the plan, each once
}

// usesOf is what a pour says of each scent that is in its plan or was sniffed, by their ids. Its plan must be usable.
func usesOf(p logbook.Pour, b life.Batch, shelf pour.Shelf) []use {
	s := story{pour: p, batch: b}
	sheet := pour.Weigh(p.Plan, shelf)
	standing := logbook.Standing(p.Events)
	omitted := logbook.OmittedBy(standing)
	for _, batch := range sheet.Batches() {
		for _, j := range batch.Jugs {
			h := holder{batch: batch.Name, jug: j.Name, vanillin: j.VanillinPercent}
			for _, x := range j.Scents {
				if x.G > 0 && !omitted.Thing(batch.Name, j.Name, pour.WeighScent) && !slices.Contains(h.scents, x.ID) {
					h.scents = append(h.scents, x.ID)
				}
			}
			if len(h.scents) > 0 {
				s.holders = append(s.holders, h)
				s.all = append(s.all, h.scents...)
			}
		}
	}
	slices.Sort(s.all)
	s.all = slices.Compact(s.all)
	leftOut := logbook.IsLeftOut(standing)
	ids := slices.Clone(s.all)
	for _, e := range b.Events {
		if e.Kind == logbook.Sniffed && e.Life.Scent != "" && !leftOut {
			ids = append(ids, e.Life.Scent)
		}
	}
	slices.Sort(ids)
	var out []use
	for _, id := range slices.Compact(ids) {
		u := use{Scent: id, Pour: p.ID, Day: b.Poured, Poured: slices.Contains(s.all, id), Trial: p.TrialScent != "" || p.Plan.Trial, LeftOut: leftOut}
		if !leftOut {
			u.Troubles, u.Browning = s.troubles(id, standing), s.browning(id)
			u.Sniffs, u.Shared = s.sniffs(id)
			u.Gone = s.gone()
		}
		out = append(out, u)
	}
	return out
}

// troubles are the kinds of trouble of jugs that hold a scent, or of all of their batch, each once. What went wrong before the split was no scent's.
func (s story) troubles(id string, standing []logbook.Event) []troubled {
	found := map[string]bool{} // whether a jug alone with it made it
	for _, e := range standing {
		if e.Kind != logbook.Troubled || logbook.SplitAfter(standing, e) {
			continue
		}
		for _, h := range s.holders {
			if slices.Contains(h.scents, id) && (h.is(e) || e.Jug == "" && (e.Batch == "" || e.Batch == h.batch)) {
				found[e.What] = found[e.What] || len(h.scents) == 1 && e.Jug != ""
			}
		}
	}
	var out []troubled
	for _, word := range slices.Sorted(maps.Keys(found)) {
		out = append(out, troubled{word, found[word]})
	}
	return out
}

// browning is what was predicted and seen of every jug that holds a scent. A look at no jug's name is of the bar, and tells of a scent where
// no other is in it.
func (s story) browning(id string) []Browned {
	var out []Browned
	for _, h := range s.holders {
		if !slices.Contains(h.scents, id) {
			continue
		}
		b := Browned{Pour: s.pour.ID, Jug: h.jug, Poured: s.batch.Poured, Alone: len(h.scents) == 1, Predicted: chem.VanillinTint(h.vanillin)}
		for _, e := range s.batch.Of(logbook.Looked) {
			if !h.is(e) && (e.Jug != "" || len(s.all) > 1) {
				continue
			}
			switch {
			case e.What == logbook.LookBrowning:
				b.Looked, b.Seen = true, e.Value
				b.Week, b.Placed = s.week(e)
				b.Colour = e.Life.Colour
			case e.What == logbook.LookColour && e.Life.Colour != "" && h.is(e):
				b.Colour = e.Life.Colour
			}
		}
		out = append(out, b)
	}
	return out
}

// sniffs are those of a scent, or of the bar where it holds no other; and how many of the bar there are else.
func (s story) sniffs(id string) (out []sniff, shared int) {
	in := slices.Contains(s.all, id)
	for _, e := range s.batch.Of(logbook.Sniffed) {
		switch {
		case e.Life.Scent == id, e.Life.Scent == "" && in && len(s.all) == 1:
			x := sniff{Value: e.Value, Text: e.Text}
			x.Week, x.Placed = s.week(e)
			out = append(out, x)
		case e.Life.Scent == "" && in:
			shared++
		}
	}
	return out, shared
}

// week is the week since the cut in which something was; false: it was before, or no cut is logged.
func (s story) week(e logbook.Event) (week int, ok bool) {
	if s.batch.CutDay == nil {
		return 0, false
	}
	at, _ := e.When()
	days := day.Of(at) - *s.batch.CutDay
	return int(math.Floor(float64(days) / weekDays)), days >= 0
}

const weekDays = 7

// gone is whom the bars went to, by name.
func (s story) gone() []Audience {
	by := map[string]Audience{}
	for _, e := range s.batch.Events {
		a := by[e.Life.Audience]
		switch a.Name = e.Life.Audience; e.Kind {
		case logbook.Sold:
			a.Sold += e.Life.Count
		case logbook.Given:
			a.Given += e.Life.Count
		default:
			continue
		}
		by[a.Name] = a
	}
	return slices.SortedFunc(maps.Values(by), func(a, b Audience) int { return cmp.Compare(a.Name, b.Name) })
}
