package presets

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"pourbench/pour"
	"pourbench/pour/money"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// row reads one entry of a shelf file. A key that stands in the entry is checked and written; one that does not leaves
// what was there, so that a maker's entry changes only what it names. The same calls tell the reference what keys there are.
type row struct {
	in     *strict.Table
	told   *[]keyTold // the reference is being made: nothing is read
	own    string     // name of the maker's file; empty: built in, where every figure must name its source
	id     string
	fresh  bool     // no entry of that id was there before
	known  []string // every key asked for
	needed []string // those a new entry must have
}

// confidences lists how far a source can have been checked; "read (2nd-hand)" is a copy or a transcription of the document by somebody else, "own" is
// what a maker's file says without naming a source, "invented" an example's made-up figure.
func confidences() []string {
	return []string{"read", "read (2nd-hand)", "derived", "mixed", "memory", "common practice", "own", "invented"}
}

// ask notes that a key is one of the table, and reports whether the entry names it.
func (r *row) ask(key, takes, standard, means string) bool {
	r.known = append(r.known, key)
	if r.told != nil {
		needed := slices.Contains(r.needed, key)
		*r.told = append(*r.told, keyTold{key: key, takes: takes, standard: standard, means: means, needed: needed, is: pour.ShelfKey{Key: key, Means: means, Needed: needed}})
	}
	return r.has(key)
}

// is tells more of the key that was asked for last: what can stand there, and what the entry has.
func (r *row) is(more func(k *pour.ShelfKey)) {
	if r.told != nil {
		more(&(*r.told)[len(*r.told)-1].is)
	}
}

// has reports whether the entry names the key.
func (r *row) has(key string) bool { return r.in != nil && r.in.Has(key) }

func (r *row) fault(key, value, problem, mend string) {
	if r.in != nil {
		r.in.Say(key, value, problem, mend)
	}
}

// need faults keys that a new entry must have.
func (r *row) need(keys ...string) {
	r.needed = keys
	for _, key := range keys {
		if r.fresh && !r.has(key) {
			r.fault("", "", fmt.Sprintf("%s is missing", key), "a new entry needs it; if you meant to change an entry of the shelf, check the id")
		}
	}
}

// text reads one line of text of at most most letters.
func (r *row) text(key string, to *string, most int, means string) {
	asked := r.ask(key, fmt.Sprintf("text, %d letters", most), *to, means)
	r.is(func(k *pour.ShelfKey) { k.Most, k.Value = most, *to })
	if asked {
		r.in.Line(key, to, most)
	}
}

// name reads the name of an entry, which no entry can be without.
func (r *row) name(to *string) {
	r.text("name", to, 60, "what it is called on screens and papers")
	if r.has("name") && *to == "" {
		r.fault("name", `""`, "is empty", "give it a name")
	}
}

// number reads a number from low to high.
func (r *row) number(key string, to *float64, low, high float64, means string) bool {
	return r.numberUnless(key, to, low, high, means, nil)
}

// numberUnless reads a number from low to high, unless odd says what about it cannot be, and how to put it right, better than that range does.
func (r *row) numberUnless(key string, to *float64, low, high float64, means string, odd func(v float64) (problem, mend string)) bool {
	asked := r.ask(key, fmt.Sprintf("%s to %s", strict.Short(low), strict.Short(high)), standardOf(*to), means)
	r.is(func(k *pour.ShelfKey) {
		k.Kind, k.Low, k.High, k.Value, k.Judged = pour.KeyNumber, low, high, strict.Short(*to), odd != nil
	})
	if v := 0.; asked && odd != nil {
		if !r.in.Number(key, &v) {
			return false
		}
		if problem, mend := odd(v); problem != "" {
			r.fault(key, strict.Short(v), problem, mend)
			return false
		}
	}
	return asked && r.in.Within(key, to, low, high)
}

// standardOf draws the number a new entry has where its key is left out; 0 is nothing to tell of.
func standardOf(v float64) string {
	if v == 0 {
		return ""
	}
	return strict.Short(v)
}

// price reads what a kilogram costs, as text, so that it stays exact.
func (r *row) price(to *money.Amount) {
	const key = "price_per_kg"
	text := ""
	asked := r.ask(key, `amount, as "7.70"`, "", "what a kilogram usually costs, for what no pack of yours says; in the currency of your costs")
	r.is(func(k *pour.ShelfKey) {
		if k.Kind = pour.KeyPrice; to.Sign() > 0 {
			k.Value = to.Exact()
		}
	})
	if !asked || !r.in.Read(key, &text) {
		return
	}
	price, err := money.Parse(text)
	if err != nil {
		r.fault(key, strict.Quote(text), "is no amount of money", `write it between quotation marks with a point, without a currency: "7.70"`)
		return
	}
	*to = price
}

// figure reads a number from low to high that may stay unknown.
func (r *row) figure(key string, to *pour.Figure, low, high float64, means string) {
	v := to.V
	if r.number(key, &v, low, high, means) {
		*to = pour.Know(v)
	}
	if !to.Known {
		r.is(func(k *pour.ShelfKey) { k.Value = "" })
	}
}

// ordered faults a low figure that is above its high one.
func (r *row) ordered(lowKey string, low float64, highKey string, high float64) {
	if low > high {
		r.fault(lowKey, strict.Short(low), fmt.Sprintf("is above %s = %s", highKey, strict.Short(high)), "put the smaller first, and write both when you change one")
	}
}

// flag reads true or false.
func (r *row) flag(key string, to *bool, means string) {
	asked := r.ask(key, "true or false", fmt.Sprint(*to), means)
	r.is(func(k *pour.ShelfKey) { k.Kind, k.Value = pour.KeyFlag, map[bool]string{true: "yes", false: "no"}[*to] })
	if asked {
		r.in.Flag(key, to)
	}
}

// word reads one of a set of words.
func (r *row) word(key string, to *string, means string, words ...string) {
	asked := r.ask(key, strings.Join(words, ", "), *to, means)
	r.is(func(k *pour.ShelfKey) { k.Kind, k.Words, k.Value = pour.KeyWord, words, *to })
	if asked {
		r.in.Word(key, to, words...)
	}
}

// ids reads a list of ids that must be known.
func (r *row) ids(key string, to *[]string, means, kind string, known []string) {
	asked := r.ask(key, "list of ids", "", means)
	r.is(func(k *pour.ShelfKey) { k.Kind, k.Words, k.Value = pour.KeyList, known, strings.Join(*to, "; ") })
	if !asked || !r.in.Lines(key, to) {
		return
	}
	for _, id := range *to {
		if !slices.Contains(known, id) {
			all := strings.Join(known, ", ")
			r.fault(key, strict.Quote(id), fmt.Sprintf("is no %s on the shelf", kind), strict.Meant(id, known, "it can be "+all, "It can be "+all))
		}
	}
}

// names reads a list of names.
func (r *row) names(key string, to *[]string, means string) {
	const most = 120
	asked := r.ask(key, "list of names", "", means)
	r.is(func(k *pour.ShelfKey) { k.Kind, k.Value = pour.KeyList, strings.Join(*to, "; ") })
	if !asked || !r.in.Lines(key, to) {
		return
	}
	for _, name := range *to {
		if strings.TrimSpace(name) == "" || utf8.RuneCountInString(name) > most {
			r.fault(key, strict.Quote(name), "is no name", "write a name of 1 to 120 letters, or leave it out")
		}
	}
}

// colour reads "#rrggbb".
func (r *row) colour(key string, to *string, means string) {
	hex := ""
	asked := r.ask(key, `"#rrggbb"`, "", means)
	r.is(func(k *pour.ShelfKey) { k.Kind, k.Value = pour.KeyColour, *to })
	if !asked || !r.in.Read(key, &hex) {
		return
	}
	if hex = strings.ToLower(hex); len(hex) != 7 || hex[0] != '#' || strings.Trim(hex[1:], "0123456789abcdef") != "" {
		r.fault(key, strict.Quote(hex), "is no colour", `write six hex digits after a hash, as in "#5566b0"`)
		return
	}
	*to = hex
}

// sourceOr is source where the built-in shelf leaves out what most of its entries would say.
func (r *row) sourceOr(key string, to *pour.Source, most pour.Source, figures ...string) {
	if r.own == "" && r.told == nil && !r.has(key) {
		r.known, *to = append(r.known, key), most
		return
	}
	r.source(key, to, figures...)
}

// source reads { text, confidence }. Where a maker's file changes one of the figures and names no source, the file itself is it.
func (r *row) source(key string, to *pour.Source, figures ...string) {
	means := "source of the figures"
	if len(figures) <= 3 {
		means = "source of " + strings.Join(figures, ", ")
	}
	asked := r.ask(key, "{ text, confidence }", "", means)
	r.is(func(k *pour.ShelfKey) {
		k.Kind, k.Parts = pour.KeyParts, []pour.ShelfKey{
			{Key: key + ".text", Means: means, Most: mostSource, Value: to.Text},
			{Key: key + ".confidence", Means: "how far that source was checked", Kind: pour.KeyWord, Words: confidences(), Value: to.Confidence},
		}
	})
	if asked {
		r.statedSource(key, to)
		return
	}
	if r.own == "" {
		r.fault("", "", fmt.Sprintf("%s is missing", key), "say where the figures come from")
		return
	}
	if to.Text == "" || slices.ContainsFunc(figures, r.has) {
		*to = pour.Source{Text: "your shelf file " + r.own, Confidence: "own"}
	}
}

// mostSource is the letters of the longest source.
const mostSource = 400

func (r *row) statedSource(key string, to *pour.Source) {
	const example = `write { text = "the certificate of lot 12", confidence = "read" }`
	in, ok := r.in.Section(key)
	if !ok {
		return
	}
	in.Only("text", "confidence")
	in.Line("text", &to.Text, mostSource)
	in.Word("confidence", &to.Confidence, confidences()...)
	if !in.Has("text") || !in.Has("confidence") || to.Text == "" {
		r.fault(key, "", "needs text and confidence", example)
	}
}

// identify reads the id of an entry, which is the nth of its table, from 0.
func (r *row) identify(table string, n int, seen map[string]bool) bool {
	r.in.Called(fmt.Sprintf("%s, entry %d", table, n+1))
	id := ""
	r.text("id", &id, 100, "")
	switch {
	case !r.has("id"):
		r.fault("", "", "has no id", `give it one in small letters: id = "my-olive"`)
		return false
	case !kebab(id):
		r.fault("id", strict.Quote(id), "is no id", "use small letters, digits and single hyphens, 40 at most: \"my-olive\"")
		return false
	}
	r.in.Called(fmt.Sprintf("%s %q", table, plain.Line(id)))
	if seen[id] {
		r.fault("id", strict.Quote(id), "stands in this file twice", "make one entry of the two, or give one another id")
		return false
	}
	r.id, seen[id] = id, true
	return true
}

// kebab reports whether id is made of small letters and digits joined by single hyphens, at most 40 in all.
func kebab(id string) bool {
	return len(id) <= 40 && strings.Trim(id, "abcdefghijklmnopqrstuvwxyz0123456789-") == "" && !slices.Contains(strings.Split(id, "-"), "")
}
