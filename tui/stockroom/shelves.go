package stockroom

import (
	"cmp"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

// row is a line of the list: a material, or a pack of it below.
type row struct {
	material lot.Material
	name     string
	holding  lot.Holding
	pack     lot.Pack
	isPack   bool
	words    string // what the search finds it by, in small letters
}

// id names a row, so that the chosen one stays when the ledger is read again.
func (r row) id() string { return r.material.String() + " " + r.pack.ID }

// moved is an entry with what it did: how much it took out of its pack, and what was left then.
type moved struct {
	stock.Entry
	out, left lot.Quantity
	moves     bool
}

// shelves is what lies there, put in order once when the ledger was read.
type shelves struct {
	state   stock.State
	rows    []row              // every material and its packs, used up or not
	entries map[string][]moved // of a pack, by its name
	value   money.Amount       // of all that lies there
	packs   int                // in which something is left
}

// shelved puts what was read in order: by kind, by name, and packs as they are picked.
func shelved(s stock.State) shelves {
	out := shelves{state: s, entries: map[string][]moved{}}
	book := map[string]lot.Quantity{}
	did := map[string]moved{}
	stock.Moved(s.Entries, book, func(e stock.Entry, q lot.Quantity) { did[e.ID] = moved{e, q, book[e.Pack], true} })
	for _, e := range s.Entries {
		m, ok := did[e.ID]
		if !ok {
			m = moved{Entry: e}
		}
		if e.Pack != "" {
			out.entries[e.Pack] = append(out.entries[e.Pack], m)
		}
	}
	var materials []row
	for m, h := range s.Held {
		materials = append(materials, row{material: m, name: called(m, h), holding: h})
	}
	slices.SortFunc(materials, func(a, b row) int {
		return cmp.Or(cmp.Compare(slices.Index(lot.Kinds(), a.material.Kind), slices.Index(lot.Kinds(), b.material.Kind)), strings.Compare(a.name, b.name), strings.Compare(a.material.ID, b.material.ID))
	})
	for _, r := range materials {
		_, cost := r.holding.Layers.Total()
		out.value = out.value.Plus(cost)
		r.words = found(r.name, r.material.String())
		out.rows = append(out.rows, r)
		for _, p := range r.holding.Packs {
			if p.Left > 0 {
				out.packs++
			}
			out.rows = append(out.rows, row{material: r.material, name: r.name, holding: r.holding, pack: p, isPack: true, words: found(r.name, r.material.String(), p.Name, p.ID, p.Lot, p.Supplier, stateWords(p, s.Today))})
		}
	}
	return out
}

// called is what a material is called: as its newest pack is.
func called(m lot.Material, h lot.Holding) string {
	name, at := m.ID, day.Day(0)
	for _, p := range h.Packs {
		if p.Name != "" && p.Bought >= at {
			name, at = p.Name, p.Bought
		}
	}
	return name
}

// found is words in the form in which they are searched for.
func found(words ...string) string { return strings.ToLower(strings.Join(words, " ")) }

// soonDays is how many days before its date a pack wants an eye: a month.
const soonDays = 31

// expiry is how a pack stands to its date.
type expiry int

const (
	undated expiry = iota
	good
	soon
	past
)

func expiryOf(p lot.Pack, today day.Day) expiry {
	switch {
	case p.Expires == 0:
		return undated
	case p.Blocked(today):
		return past
	case p.Expires-today <= soonDays:
		return soon
	}
	return good
}

// stateWords are words for how a pack stands.
func stateWords(p lot.Pack, today day.Day) string {
	words := []string{map[bool]string{true: "opened", false: "unopened"}[p.Opened != 0], map[bool]string{true: "made", false: "bought"}[p.Made]}
	switch expiryOf(p, today) {
	case past:
		words = append(words, "expired", "blocked", "past its date")
	case soon:
		words = append(words, "expires soon")
	}
	if p.Left <= 0 {
		words = append(words, "used up")
	}
	return strings.Join(words, " ")
}

// sift makes the list anew: what holds every word that is searched for, with the material over each pack; what is used up only where that is wanted.
// The chosen line stays as long as it is shown.
func (m *Model) sift() {
	was, had := m.chosen()
	want := strings.Fields(strings.ToLower(m.search.Text()))
	m.shown = m.shown[:0:0]
	head := -1
	for i, r := range m.shelves.rows {
		if !r.isPack {
			head = i
		}
		if !holds(r.words, want) || r.isPack && r.pack.Left == 0 && !m.emptied && !slices.Contains(want, "used") {
			continue
		}
		if r.isPack && (len(m.shown) == 0 || m.shown[len(m.shown)-1].material != r.material) {
			m.shown = append(m.shown, m.shelves.rows[head])
		}
		m.shown = append(m.shown, r)
	}
	at := -1
	if m.follow != "" {
		at = slices.IndexFunc(m.shown, func(r row) bool { return r.isPack && r.pack.ID == m.follow })
	}
	if at < 0 && had {
		at = slices.IndexFunc(m.shown, func(r row) bool { return r.id() == was.id() })
	}
	if at >= 0 {
		m.list.At = at
	} else if !had {
		m.list.At = 0
	}
	m.settle()
}

func holds(words string, want []string) bool {
	return !slices.ContainsFunc(want, func(w string) bool { return !strings.Contains(words, w) })
}
