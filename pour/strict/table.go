package strict

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
)

// Table is one table of a file, to be read key by key. A key that is not there leaves the place it would be put in alone,
// and so does one whose value is refused.
type Table struct {
	file *File
	path string // of the table in the file: "base.jug[1]"
	lead string // what stands before a key of it in messages: "base.jug[1]." or `oil "olive", `
	tree map[string]any
}

// Top is the table of what stands above the first header, and of the sections.
func (f *File) Top() *Table { return &Table{file: f, tree: f.tree} }

// Called gives the table a name that messages use instead of its path.
func (t *Table) Called(name string) *Table {
	t.lead = name + ", "
	return t
}

// Has reports whether the table names the key.
func (t *Table) Has(key string) bool {
	_, ok := t.tree[key]
	return ok
}

// Keys lists what the table names, in the order of the alphabet.
func (t *Table) Keys() []string { return slices.Sorted(maps.Keys(t.tree)) }

// at is the path of a key of the table.
func (t *Table) at(key string) string {
	if key == "" {
		return t.path
	}
	return join(t.path, key)
}

// Say notes a fault at a key, or with no key at the table itself.
func (t *Table) Say(key, value, problem, mend string) {
	t.Add(key, Fault{Value: value, Problem: problem, Mend: mend})
}

// Add notes a fault at a key, or with no key at the table itself.
func (t *Table) Add(key string, f Fault) {
	f.Path = t.lead + key
	if key == "" {
		f.Path = strings.TrimRight(t.lead, ",. ")
	}
	t.file.add(t.at(key), f)
}

// Missing faults a key that is not there and was not taken for a slip.
func (t *Table) Missing(key string) {
	if t.Has(key) || slices.Contains(t.file.told, t.at(key)) {
		return
	}
	mend := fmt.Sprintf("write %s = … under [%s]", key, t.path)
	switch {
	case t.path == "":
		mend = fmt.Sprintf("write %s = … above the first [section]", key)
	case strings.Contains(t.path, "["):
		mend = fmt.Sprintf("write %s = … in this [[%s]]", key, Header(t.path))
	}
	t.Say(key, "", "is missing", mend)
}

// Header drops the indices of a path, which gives it as a header has it.
func Header(path string) string { return regexp.MustCompile(`\[\d+\]`).ReplaceAllString(path, "") }

// Only faults every key of the table but these, each with the key that was probably meant or the place it belongs to.
func (t *Table) Only(keys ...string) {
	var strange []string
	for key := range t.tree {
		if !slices.Contains(keys, key) {
			strange = append(strange, key)
		}
	}
	slices.Sort(strange)
	free := slices.DeleteFunc(slices.Clone(keys), t.Has)
	for _, key := range strange[:min(len(strange), mostNoted)] {
		t.strange(key, keys, free)
	}
}

func (t *Table) strange(key string, keys, free []string) {
	if near := Nearest(key, free); near != "" {
		t.Say(key, "", "is no key of a "+t.file.form.Noun, fmt.Sprintf("did you mean %s?", near))
		t.file.told = append(t.file.told, t.at(near))
		return
	}
	mend := "take it out; the keys here are " + strings.Join(keys, ", ")
	var homes []string
	if t.file.form.Home != nil {
		homes = t.file.form.Home(key)
	}
	if len(homes) > 0 {
		mend = fmt.Sprintf("move it: %s belongs %s", key, strings.Join(homes, " or "))
		if t.path == "" {
			mend += ", not above the first [section]"
		}
	}
	t.Say(key, "", fmt.Sprintf("is no key of a %s here", t.file.form.Noun), mend)
}

// Section returns the table at a key, empty when it is not there: its absence means its defaults. False: what stands there is no table.
func (t *Table) Section(key string) (*Table, bool) {
	v, there := t.tree[key]
	sub, ok := v.(map[string]any)
	if there && !ok {
		t.kind(key, v, "a section is wanted", fmt.Sprintf("write a line [%s] and its keys under it", t.at(key)))
		return nil, false
	}
	return t.inside(key, sub), true
}

// List returns the tables of a list, in either way TOML has of writing one; nil when it is not there or is refused.
func (t *Table) List(key string) []*Table {
	v, ok := t.tree[key]
	if !ok {
		return nil
	}
	items, ok := tables(v)
	if !ok {
		t.kind(key, v, "a list of tables is wanted", fmt.Sprintf("start each item with a line [[%s]]", Header(t.at(key))))
		return nil
	}
	if t.tooMany(key, len(items)) {
		return nil
	}
	out := make([]*Table, len(items))
	for i, item := range items {
		out[i] = t.inside(fmt.Sprintf("%s[%d]", key, i), item)
	}
	return out
}

func (t *Table) inside(key string, tree map[string]any) *Table {
	return &Table{file: t.file, path: t.at(key), lead: t.lead + key + ".", tree: tree}
}

func (t *Table) tooMany(key string, n int) bool {
	most := t.file.form.Items
	if n > most {
		t.Say(key, "", fmt.Sprintf("has %d items", n), fmt.Sprintf("keep to %d; no %s needs more", most, t.file.form.Noun))
	}
	return n > most
}

// tables reads an array of tables in either way of writing one.
func tables(v any) ([]map[string]any, bool) {
	switch v := v.(type) {
	case []map[string]any:
		return v, true
	case []any:
		out := make([]map[string]any, len(v))
		for i, item := range v {
			t, ok := item.(map[string]any)
			if !ok {
				return nil, false
			}
			out[i] = t
		}
		return out, true
	}
	return nil, false
}
