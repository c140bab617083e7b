package presets

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// row reads one entry of a shelf file. A key that stands in the entry is checked and written; one that does not leaves
// what was there, so that a maker's entry changes only what it names.
type row struct {
	doc    *document
	table  string
	entry  int
	id     string
	fresh  bool // no entry of that id was there before
	prefix string
	keys   map[string]any
	known  []string // every key asked for
	faults *Faults
}

// confidences lists how far a source can have been checked; "own" is what a maker's file says without naming a source,
// "invented" an example's made-up figure.
func confidences() []string {
	return []string{"read", "derived", "mixed", "memory", "common practice", "own", "invented"}
}

func (r *row) fault(key, value, problem, mend string) {
	where := fmt.Sprintf("%s %q", r.table, r.id)
	if r.id == "" {
		where = fmt.Sprintf("%s, entry %d", r.table, r.entry+1)
	}
	if key != "" {
		where += ", " + r.prefix + key
	}
	*r.faults = append(*r.faults, Fault{
		File: r.doc.name, Line: r.doc.places.line(r.table, r.entry, r.prefix+key),
		Where: where, Value: value, Problem: problem, Mend: mend,
	})
}

func (r *row) value(key string) (any, bool) {
	r.known = append(r.known, key)
	v, ok := r.keys[key]
	return v, ok
}

// has reports whether the entry names the key.
func (r *row) has(key string) bool {
	_, ok := r.keys[key]
	return ok
}

// need faults keys that a new entry must have.
func (r *row) need(keys ...string) {
	for _, key := range keys {
		if r.fresh && !r.has(key) {
			r.fault("", "", fmt.Sprintf("%s is missing", key), "a new entry needs it; if you meant to change an entry of the shelf, check the id")
		}
	}
}

// text reads one line of text of at most most letters.
func (r *row) text(key string, to *string, most int) {
	v, ok := r.value(key)
	if !ok {
		return
	}
	s, ok := v.(string)
	if !ok {
		r.fault(key, show(v), "is not text", "put it in quotation marks")
		return
	}
	s = plain.Line(s)
	if n := len([]rune(s)); n > most {
		r.fault(key, show(s), fmt.Sprintf("is %d letters long", n), fmt.Sprintf("keep it to %d", most))
		return
	}
	*to = s
}

// number reads a number from low to high.
func (r *row) number(key string, to *float64, low, high float64) {
	v, ok := r.value(key)
	if !ok {
		return
	}
	f, ok := asNumber(v)
	switch {
	case !ok:
		r.fault(key, show(v), "is not a number", "write it without quotation marks, with a decimal point: 0.5")
	case math.IsNaN(f) || f < low || f > high:
		r.fault(key, show(v), "is outside what can be", fmt.Sprintf("write a number from %s to %s", short(low), short(high)))
	default:
		*to = f
	}
}

// figure reads a number from low to high that may stay unknown.
func (r *row) figure(key string, to *pour.Figure, low, high float64) {
	v, before := to.V, len(*r.faults)
	r.number(key, &v, low, high)
	if r.has(key) && len(*r.faults) == before {
		*to = pour.Know(v)
	}
}

func asNumber(v any) (float64, bool) {
	switch n := v.(type) {
	case int64:
		return float64(n), true
	case float64:
		return n, true
	}
	return 0, false
}

// flag reads true or false.
func (r *row) flag(key string, to *bool) {
	v, ok := r.value(key)
	if !ok {
		return
	}
	b, ok := v.(bool)
	if !ok {
		r.fault(key, show(v), "is neither true nor false", "write true or false, without quotation marks")
		return
	}
	*to = b
}

// word reads one of a set of words.
func (r *row) word(key string, to *string, words ...string) {
	if !r.has(key) {
		r.known = append(r.known, key)
		return
	}
	var s string
	before := len(*r.faults)
	r.text(key, &s, 100)
	if len(*r.faults) > before {
		return
	}
	for _, w := range words {
		if w == s {
			*to = s
			return
		}
	}
	r.fault(key, show(s), "is not a word this key knows", suggest(s, words))
}

// texts reads a list of short texts.
func (r *row) texts(key string, to *[]string) {
	v, ok := r.value(key)
	if !ok {
		return
	}
	list, ok := v.([]any)
	if !ok {
		r.fault(key, show(v), "is not a list", `write it as a list: ["one", "two"]`)
		return
	}
	out := make([]string, 0, len(list))
	for _, item := range list {
		s, ok := item.(string)
		if !ok {
			r.fault(key, show(item), "is not text", "put it in quotation marks")
			return
		}
		out = append(out, plain.Line(s))
	}
	*to = out
}

// colour reads "#rrggbb".
func (r *row) colour(key string, to *string) {
	var s string
	r.text(key, &s, 100)
	if s == "" {
		return
	}
	s = strings.ToLower(s)
	if len(s) != 7 || s[0] != '#' || strings.Trim(s[1:], "0123456789abcdef") != "" {
		r.fault(key, show(s), "is no colour", `write six hex digits after a hash, as in "#5566b0"`)
		return
	}
	*to = s
}

// source reads { text, confidence }. Where a maker's file changes one of the figures and names no source, the file itself is it.
func (r *row) source(key string, to *pour.Source, figures ...string) {
	v, ok := r.value(key)
	if !ok {
		if r.doc.preset {
			r.fault("", "", fmt.Sprintf("%s is missing", key), "say where the figures come from")
			return
		}
		touched := to.Text == ""
		for _, f := range figures {
			touched = touched || r.has(f)
		}
		if touched {
			*to = pour.Source{Text: "your shelf file " + r.doc.name, Confidence: "own"}
		}
		return
	}
	table, ok := v.(map[string]any)
	if !ok {
		r.fault(key, show(v), "is not a source", `write { text = "the certificate of lot 12", confidence = "read" }`)
		return
	}
	in := r.inside(key, table)
	in.text("text", &to.Text, 400)
	in.word("confidence", &to.Confidence, confidences()...)
	in.finish()
	if !in.has("text") || !in.has("confidence") || to.Text == "" {
		r.fault(key, "", "needs text and confidence", `write { text = "the certificate of lot 12", confidence = "read" }`)
	}
}

// inside reads a table within the entry.
func (r *row) inside(key string, table map[string]any) *row {
	in := *r
	in.prefix, in.keys, in.known = r.prefix+key+".", table, nil
	return &in
}

// finish faults every key nobody asked for.
func (r *row) finish() {
	known := map[string]bool{}
	for _, k := range r.known {
		known[k] = true
	}
	var strange []string
	for k := range r.keys {
		if !known[k] {
			strange = append(strange, k)
		}
	}
	sort.Strings(strange)
	for _, k := range strange {
		r.fault(plain.Line(k), "", "is no key of this table", suggest(k, r.known))
	}
}

// show draws a value for a fault, cut short.
func show(v any) string {
	s := fmt.Sprint(v)
	if text, ok := v.(string); ok {
		s = strconv.Quote(plain.Line(text))
	}
	if letters := []rune(plain.Line(s)); len(letters) > 40 {
		return string(letters[:39]) + "…"
	}
	return plain.Line(s)
}

func short(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
