package presets

import (
	"fmt"
	"io"
	"slices"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/strict"
)

// form is the kind of file a shelf is: the built-in one is a tenth of the bytes.
func form() strict.Form {
	return strict.Form{Noun: "shelf file", Bytes: 1 << 20, Items: 2000, Letters: 200, Again: "correct the file there, or start it anew"}
}

// Overlay reads a maker's shelf file from r and lays it over a shelf; name is what errors call the file. The base is not
// changed. The file has the tables of the built-in one: [[oil]], [[colourant]], [[extra]], [[family]], [[scent]],
// [[mould]], [[technique]], [[topping]], [[name]], [[allergen]] and [[market]]. An entry whose id is on the shelf changes only the keys it names (a list or an
// inner table as a whole); one with a new id is added at the end of its table. A figure that is changed without a source gets the
// file itself as its source. Anything the file says that is not understood is a [*strict.Error].
func Overlay(base pour.Shelf, name string, r io.Reader) (pour.Shelf, error) {
	text, err := form().Slurp(name, r)
	if err != nil {
		return pour.Shelf{}, err
	}
	file, err := form().Open(name, text)
	if err != nil {
		return pour.Shelf{}, err
	}
	s, err := lay(base, file, name)
	if err != nil {
		return pour.Shelf{}, err
	}
	return s.Prepared()
}

// shelf is a shelf while files are laid over it.
type shelf struct {
	pour.Shelf
	own string // name of the maker's file; empty: built in
}

// tables lists the tables a shelf file can have, each with what reads its entries, and tells of its keys.
func (s *shelf) tables() []table {
	return []table{
		{"oil", "oils, butters, waxes and free acids", layered(&s.Oils, func(o *pour.Oil) *string { return &o.ID }, readOil)},
		{"colourant", "pigments, micas, dyes, lakes and plant colours", layered(&s.Colourants, func(c *pour.Colourant) *string { return &c.ID }, readColourant)},
		{"extra", "what goes into a whole batch before the split", layered(&s.Extras, func(x *pour.Extra) *string { return &x.ID }, readExtra)},
		{"family", "families of scents", layered(&s.Families, func(f *pour.Family) *string { return &f.ID }, readFamily)},
		{"allergen", "what labels name above a threshold, and what a scent may not bring", layered(&s.Allergens, func(a *label.Allergen) *string { return &a.Entry }, readAllergen)},
		{"scent", "fragrance and essential oils", layered(&s.Scents, func(sc *pour.Scent) *string { return &sc.ID }, s.readScent)},
		{"mould", "moulds and how they are cut", layered(&s.Moulds, func(m *pour.MouldEntry) *string { return &m.ID }, readMould)},
		{"technique", "ways for the jugs to meet in the mould", layered(&s.Techniques, func(t *pour.Technique) *string { return &t.ID }, readTechnique)},
		{"topping", "what is strewn, dusted, sprayed or drizzled on top", layered(&s.Toppings, func(m *pour.ToppingMaterial) *string { return &m.ID }, readTopping)},
		{"name", "what lists of ingredients call things that are no oils", layered(&s.Names, func(n *pour.ListName) *string { return &n.ID }, readName)},
		{"market", "where bars are sold, and what their labels follow there", layered(&s.Markets, func(m *label.Market) *string { return &m.ID }, readMarket)},
	}
}

// table is a table of a shelf file.
type table struct {
	name, means string
	layer
}

// layer is what is done with the entries of one table.
type layer struct {
	read func(name, own string, entries []*strict.Table) // lays entries over the list
	tell func(id string) ([]keyTold, bool)               // tells every key of an entry with what it has there; an empty id: of a blank one
}

// layered makes what is done with a list. fill reads the keys of an entry over what is there, or tells of them.
func layered[T any](list *[]T, id func(*T) *string, fill func(*row, *T)) layer {
	return layer{
		read: func(name, own string, entries []*strict.Table) { *list = laid(*list, id, fill, name, own, entries) },
		tell: func(want string) ([]keyTold, bool) {
			told, blank := []keyTold{}, *new(T)
			if want == "" {
				fill(&row{told: &told, own: "yours", fresh: true}, &blank)
				return told, true
			}
			at := indexOf(*list, want, id)
			if at < 0 {
				return nil, false
			}
			blank = (*list)[at]
			fill(&row{told: &told, own: "yours"}, &blank)
			return told, true
		},
	}
}

// laid lays entries of a file over a list.
func laid[T any](list []T, id func(*T) *string, fill func(*row, *T), name, own string, entries []*strict.Table) []T {
	out := slices.Clone(list)
	seen := map[string]bool{}
	for i, in := range entries {
		r := &row{in: in, own: own}
		if !r.identify(name, i, seen) {
			continue
		}
		at := indexOf(out, r.id, id)
		if r.fresh = at < 0; r.fresh {
			var blank T
			out, at = append(out, blank), len(out)
			*id(&out[at]) = r.id
		}
		fill(r, &out[at])
		in.Only(r.known...)
	}
	return out
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

// lay lays a file over a shelf; own is the name of a maker's file, empty for what is built in.
func lay(base pour.Shelf, file *strict.File, own string) (pour.Shelf, error) {
	s := shelf{Shelf: base, own: own}
	top, known := file.Top(), []string{"format"}
	format(top)
	for _, t := range s.tables() {
		known = append(known, t.name)
		t.read(t.name, own, top.List(t.name))
	}
	top.Only(known...)
	if err := file.Err(); err != nil {
		return pour.Shelf{}, err
	}
	return s.Shelf, nil
}

func format(top *strict.Table) {
	n := int64(pour.FormatVersion)
	if top.Whole("format", &n) && n != pour.FormatVersion {
		top.Say("format", fmt.Sprint(n), "is a format this program does not know", fmt.Sprintf("write format = %d, or use a newer program", pour.FormatVersion))
	}
}
