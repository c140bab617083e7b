package trace

import (
	"pourbench/pour/logbook"
)

// Recall is all that a thing went into, each once: what is to be found, told and called back.
type Recall struct {
	Of      Thing
	Packs   []Thing // that are of it or were made of it
	Batches []Thing
	Labels  []Thing
	Places  []Thing // of the bars of all these batches: every sale, gift and rest
	Bars    Whereabouts
	Doubts  []string // what makes the answer less than sure, each once
}

// Whereabouts is how many bars are where. All = Sold + Given + Kept + Seconds + Missing + Left.
type Whereabouts struct {
	All, Sold, Given, Kept, Seconds, Missing, Left int
	Unknown                                        int // batches of which nobody wrote how many bars they gave
}

// Recall gathers all that a thing went into. Of the bars of a batch all are named, whichever jug it went into.
func (g Graph) Recall(t Thing) Recall {
	r := Recall{Of: t}
	for _, x := range append([]Thing{t}, g.Reach(t, Forward)...) {
		switch x.Kind {
		case Pack:
			r.Packs = append(r.Packs, x)
		case Batch:
			r.Batches = append(r.Batches, x)
		case Bars:
			r.Labels = append(r.Labels, x)
		case Place:
			r.Places = append(r.Places, x)
			r.Bars.add(x.ID, g.places[x])
		}
	}
	r.Doubts = g.doubts(t)
	return r
}

// add counts the bars of a place.
func (w *Whereabouts) add(id string, p place) {
	w.All += p.bars
	switch {
	case p.event.Kind == logbook.Sold:
		w.Sold += p.bars
	case p.event.Kind == logbook.Given:
		w.Given += p.bars
	case p.event.Kind == logbook.Kept:
		w.Kept += p.bars
	case p.event.Kind != "":
		w.Seconds += p.bars
	case id == Missing:
		w.Missing += p.bars
	case id == Left:
		w.Left += p.bars
	default:
		w.Unknown++
	}
}

// doubts are what is odd on the way to a thing's batches and to what is in them.
func (g Graph) doubts(t Thing) []string {
	var out []string
	seen := map[string]bool{}
	for _, x := range append([]Thing{t}, g.Reach(t, Forward)...) {
		for _, l := range g.Links(x, Forward) {
			if l.Doubt == "" {
				continue
			}
			said := l.From.words() + " into " + l.To.words() + ": " + l.Doubt
			if !seen[said] {
				seen[said] = true
				out = append(out, said)
			}
		}
		if m := g.mark(x); m != "" && (x.Kind != Bars || x == t) {
			out = append(out, x.words()+": "+m)
		}
	}
	return out
}

// words names a thing in short.
func (t Thing) words() string {
	if t.ID == "" {
		return "something unnamed"
	}
	return string(t.Kind) + " " + t.ID
}

// Sources lists what has no further source: the lots, and the packs without one, that all goes back to. What was made here of other things is none.
func (g Graph) Sources(t Thing) []Thing {
	var out []Thing
	for _, x := range g.Reach(t, Backward) {
		made := x.Kind == Lot && g.madeHere(x)
		if len(g.Links(x, Backward)) == 0 && (x.Kind == Lot || x.Kind == Pack) && !made {
			out = append(out, x)
		}
	}
	return out
}

// madeHere reports whether a lot's number is the maker's own, of something she made of other things.
func (g Graph) madeHere(t Thing) bool {
	for _, l := range g.Links(t, Forward) {
		if p, ok := g.packs[l.To.ID]; ok && l.To.Kind == Pack && p.Made {
			return true
		}
	}
	return false
}
