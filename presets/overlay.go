package presets

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// mostBytes bounds a shelf file: the built-in shelf is a tenth of it.
const mostBytes = 1 << 20

// mostEntries bounds a table of a shelf file.
const mostEntries = 2000

// Overlay reads a maker's shelf file from r and lays it over a shelf; name is what errors call the file. The base is not
// changed. The file has the tables of the built-in one: [[oil]], [[colourant]], [[extra]], [[family]], [[scent]],
// [[mould]] and [[technique]]. An entry whose id is on the shelf changes only the keys it names (a list or an inner table
// as a whole); one with a new id is added at the end of its table. A figure that is changed without a source gets the
// file itself as its source. Anything the file says that is not understood is an error of type [Faults].
func Overlay(base pour.Shelf, name string, r io.Reader) (pour.Shelf, error) {
	name = plain.Line(name)
	text, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return pour.Shelf{}, fmt.Errorf("read the shelf file %s: %w", name, err)
	}
	if len(text) > mostBytes {
		return pour.Shelf{}, Faults{{
			File: name, Problem: fmt.Sprintf("the file is larger than %d bytes", mostBytes),
			Mend: "a shelf file holds a few hundred entries: check that this is one",
		}}
	}
	s, err := lay(base, document{name: name, text: string(text)})
	if err != nil {
		return pour.Shelf{}, err
	}
	return s.Prepared()
}

// document is a shelf file being read.
type document struct {
	name    string
	text    string
	preset  bool // built in: every figure must name its source
	places  places
	decoded map[string]any // nil: not decoded yet
}

// tooDeep is the line on which a maker's file goes deeper than the decoder should be sent; 0: nowhere.
func (d document) tooDeep() int {
	if d.preset {
		return 0
	}
	return tooDeep(d.text)
}

// tables lists the tables a shelf file can have.
func tables() []string {
	return []string{"oil", "colourant", "extra", "family", "scent", "mould", "technique"}
}

// lay lays a document over a shelf.
func lay(base pour.Shelf, doc document) (pour.Shelf, error) {
	doc.text = strings.TrimPrefix(strings.ReplaceAll(doc.text, "\r\n", "\n"), "\ufeff")
	if line := doc.tooDeep(); line > 0 {
		return pour.Shelf{}, Faults{{
			File: doc.name, Line: line, Problem: "this goes deeper than any shelf file", Mend: "close brackets where they end; a key has at most one dot",
		}}
	}
	top := doc.decoded
	if top == nil {
		if _, err := toml.Decode(doc.text, &top); err != nil {
			return pour.Shelf{}, Faults{broken(doc.name, err)}
		}
	}
	if !doc.preset { // the built-in files are read at every start, and a test finds their faults
		doc.places = findPlaces(doc.text)
	}
	var faults Faults
	strangers(&doc, top, &faults)
	s := base
	s.Oils = layer(&doc, top, "oil", s.Oils, func(o *pour.Oil) *string { return &o.ID }, readOil, &faults)
	s.Colourants = layer(&doc, top, "colourant", s.Colourants, func(c *pour.Colourant) *string { return &c.ID }, readColourant, &faults)
	s.Extras = layer(&doc, top, "extra", s.Extras, func(x *pour.Extra) *string { return &x.ID }, readExtra, &faults)
	s.Families = layer(&doc, top, "family", s.Families, func(f *pour.Family) *string { return &f.ID }, readFamily, &faults)
	families := make([]string, len(s.Families))
	for i, f := range s.Families {
		families[i] = f.ID
	}
	scent := func(r *row, sc *pour.Scent) { readScent(r, sc, families) }
	s.Scents = layer(&doc, top, "scent", s.Scents, func(sc *pour.Scent) *string { return &sc.ID }, scent, &faults)
	s.Moulds = layer(&doc, top, "mould", s.Moulds, func(m *pour.MouldEntry) *string { return &m.ID }, readMould, &faults)
	s.Techniques = layer(&doc, top, "technique", s.Techniques, func(t *pour.Technique) *string { return &t.ID }, readTechnique, &faults)
	if len(faults) > 0 {
		slices.SortStableFunc(faults, func(a, b Fault) int { return a.Line - b.Line })
		return pour.Shelf{}, faults
	}
	return s, nil
}

// broken turns the decoder's error into a fault.
func broken(name string, err error) Fault {
	f := Fault{File: name, Problem: "this is not TOML: " + plain.Line(err.Error()), Mend: "correct the file there, or start it anew"}
	var parse toml.ParseError
	if errors.As(err, &parse) {
		f.Line, f.Column = parse.Position.Line, parse.Position.Col
		f.Problem = "this is not TOML: " + plain.Line(parse.Message)
		f.Mend = `an entry is a [[table]] header and lines of key = value; text stands in quotation marks, decimals have a point`
	}
	return f
}

// strangers faults what stands at the top of the file and is no table of a shelf.
func strangers(doc *document, top map[string]any, faults *Faults) {
	for key, v := range top {
		if key == "format" {
			if v != int64(pour.FormatVersion) {
				*faults = append(*faults, Fault{
					File: doc.name, Line: doc.places.top[key], Where: key, Value: show(v), Problem: "is a format this program does not know",
					Mend: fmt.Sprintf("write format = %d, or use a newer program", pour.FormatVersion),
				})
			}
			continue
		}
		if !slices.Contains(tables(), key) {
			*faults = append(*faults, Fault{
				File: doc.name, Line: doc.places.top[key], Where: plain.Line(key), Problem: "is no table of a shelf", Mend: suggest(key, tables()),
			})
		}
	}
}

// indexOf finds an entry by its id; -1: none has it.
func indexOf[T any](list []T, want string, id func(*T) *string) int {
	for i := range list {
		if *id(&list[i]) == want {
			return i
		}
	}
	return -1
}

// layer lays one table over a list. fill reads the keys of an entry over what is there.
func layer[T any](doc *document, top map[string]any, table string, have []T, id func(*T) *string, fill func(*row, *T), faults *Faults) []T {
	entries, ok := entriesOf(doc, top, table, faults)
	if !ok {
		return have
	}
	out := slices.Clone(have)
	seen := map[string]bool{}
	for i, keys := range entries {
		r := &row{doc: doc, table: table, entry: i, keys: keys, faults: faults}
		if !r.identify(seen) {
			continue
		}
		at := indexOf(out, r.id, id)
		if r.fresh = at < 0; r.fresh {
			var blank T
			out, at = append(out, blank), len(out)
			*id(&out[at]) = r.id
		}
		fill(r, &out[at])
		r.finish()
	}
	return out
}

// entriesOf returns the entries of a table.
func entriesOf(doc *document, top map[string]any, table string, faults *Faults) ([]map[string]any, bool) {
	v, ok := top[table]
	if !ok {
		return nil, false
	}
	complain := func(problem, mend string) {
		*faults = append(*faults, Fault{File: doc.name, Line: doc.places.top[table], Where: table, Problem: problem, Mend: mend})
	}
	entries, ok := tablesIn(v)
	switch {
	case !ok:
		complain("is not a list of entries", fmt.Sprintf("begin each entry with [[%s]], in two pairs of brackets", table))
	case len(entries) > mostEntries:
		complain(fmt.Sprintf("has %d entries", len(entries)), fmt.Sprintf("keep to %d", mostEntries))
		return nil, false
	}
	return entries, ok
}

// identify reads the id of an entry.
func (r *row) identify(seen map[string]bool) bool {
	var id string
	r.text("id", &id, 100)
	switch {
	case !r.has("id"):
		r.fault("", "", "has no id", `give it one in small letters: id = "my-olive"`)
		return false
	case !kebab(id):
		r.fault("id", show(id), "is no id", "use small letters, digits and single hyphens, 40 at most: \"my-olive\"")
		return false
	case seen[id]:
		r.id = id
		r.fault("id", show(id), "stands in this file twice", "make one entry of the two, or give one another id")
		return false
	}
	r.id, seen[id] = id, true
	return true
}

// kebab reports whether id is made of small letters and digits joined by single hyphens, at most 40 in all.
func kebab(id string) bool {
	if len(id) > 40 || strings.Trim(id, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
		return false
	}
	for _, part := range strings.Split(id, "-") {
		if part == "" {
			return false
		}
	}
	return true
}
