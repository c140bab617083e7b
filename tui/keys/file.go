package keys

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"pourbench/pour/strict"
)

// FileName is the file of a maker's own keys in her folder of settings.
const FileName = "keys.toml"

func form() strict.Form {
	return strict.Form{Noun: "file of keys", Bytes: 64 << 10, Items: 16, Letters: 24, Again: "start it anew: pourbench keys --file prints one"}
}

// Read lays a maker's file over the table: for each mode a section, in it an action with the list of its keys, "undo = ["u", "f9"]". What
// is not named keeps its keys. Anything that cannot be, be it a key that would do two things in one place, is a [*strict.Error] which
// says how to mend it, and nothing of the file counts then.
func Read(name string, r io.Reader) (*Map, error) {
	text, err := form().Slurp(name, r)
	if err != nil {
		return nil, err
	}
	file, err := form().Open(name, text)
	if err != nil {
		return nil, err
	}
	b := binder{rows: Table(), from: map[int]*strict.Table{}}
	top := file.Top()
	var places []string
	for mode := range Mode(modes) {
		places = append(places, mode.Word())
		if top.Has(mode.Word()) {
			if in, ok := top.Section(mode.Word()); ok {
				b.section(mode, in)
			}
		}
	}
	for _, key := range top.Keys() {
		if !slices.Contains(places, key) {
			top.Say(key, "", "is no place where keys act", strict.Meant(key, places, "the places are ["+strings.Join(places, "], [")+"]", "An action stands under its place"))
		}
	}
	b.clashes()
	if err := file.Err(); err != nil {
		return nil, err
	}
	return newMap(b.rows, false), nil
}

// binder is a table while a file is laid over it.
type binder struct {
	rows []Binding
	from map[int]*strict.Table // where the keys of a row stand in the file
}

// section takes the keys of a mode.
func (b *binder) section(mode Mode, in *strict.Table) {
	var free []string
	rows := map[string]int{}
	for i, row := range b.rows {
		if row.Mode == mode {
			rows[row.ID.Word()] = i
			free = append(free, row.ID.Word())
		}
	}
	for _, word := range in.Keys() {
		i, ok := rows[word]
		switch {
		case !ok:
			in.Say(word, "", "is no action "+mode.String(), strict.Meant(word, free, b.elsewhere(word), ""))
		case b.rows[i].Fixed:
			in.Say(word, "", "cannot have other keys: it is what is typed", "take this line out")
		default:
			b.bind(i, in)
		}
	}
}

// elsewhere says where an action belongs that is none of the mode it stands in.
func (b *binder) elsewhere(word string) string {
	for _, row := range b.rows {
		if row.ID.Word() == word {
			return "move it: " + word + " belongs under [" + row.Mode.Word() + "]"
		}
	}
	return "take it out; pourbench keys --file prints every action"
}

// bind takes the keys of an action.
func (b *binder) bind(i int, in *strict.Table) {
	row := &b.rows[i]
	word := row.ID.Word()
	var list []string
	if !in.Lines(word, &list) {
		return
	}
	ok := true
	for k, key := range list {
		problem, mend := b.unfit(*row, key)
		if problem == "" && slices.Contains(list[:k], key) {
			problem, mend = "stands there twice", "take one out"
		}
		if problem != "" {
			in.Say(fmt.Sprintf("%s[%d]", word, k), strict.Quote(key), problem, mend)
			ok = false
		}
	}
	switch {
	case !ok:
		return
	case row.Must && len(list) == 0:
		in.Say(word, "", "would be left without a key", fmt.Sprintf("give it one, or take this line out: then it is %q", row.Keys[0]))
		return
	case row.Each != nil && len(list) != len(row.Each):
		in.Say(word, "", fmt.Sprintf("has %d keys", len(list)), fmt.Sprintf("give it %d, one each for %s", len(row.Each), strings.Join(row.Each, ", ")))
		return
	}
	if row.ID == Quit && !slices.Contains(list, Leaves) {
		list = append(list, Leaves)
	}
	row.Keys, b.from[i] = list, in
}

// unfit says why a key cannot ask for an action.
func (b *binder) unfit(row Binding, key string) (problem, mend string) {
	if problem, mend := wrong(key); problem != "" {
		return problem, mend
	}
	typing := slices.Contains([]Mode{Typing, Line, List, Pad, Form}, row.Mode)
	switch {
	case key == Leaves && row.ID != Quit:
		return "always leaves the program", "take another key"
	case row.Mode == Bench && strings.Contains("0123456789,.", key):
		return "types a number at the bench", "take a letter, a sign or a key with Ctrl or Alt"
	case typing && types(key), row.Mode == Asking && types(key):
		return "is typed as text " + row.Mode.String(), "take a key with Ctrl or Alt, or one that has a name, as f9"
	case (typing || row.Mode == Page) && slices.Contains(edits(), key):
		return "edits what is typed " + row.Mode.String(), "take another key"
	}
	return "", ""
}

// clashes faults every key that would do two things in one place, at what the file says.
func (b *binder) clashes() {
	for i, row := range b.rows {
		for j, other := range b.rows[:i] {
			if row.Mode != other.Mode || isApart(row.Needs, other.Needs) {
				continue
			}
			for _, key := range row.Keys {
				if slices.Contains(other.Keys, key) {
					b.clash(i, j, key)
				}
			}
		}
	}
}

func (b *binder) clash(i, j int, key string) {
	if b.from[i] == nil {
		i, j = j, i
	}
	at, row, other := b.from[i], b.rows[i], b.rows[j]
	if at == nil {
		return // the table's own test holds that this cannot be
	}
	at.Say(fmt.Sprintf("%s[%d]", row.ID.Word(), row.Nth(key)), strict.Quote(key), "does "+other.ID.Word()+" already "+row.Mode.String(),
		fmt.Sprintf("take another key%s, or give %s one of its own in this file", b.free(row.Mode), other.ID.Word()))
}

// free names some letters that do nothing in a mode.
func (b *binder) free(mode Mode) string {
	if mode != Bench && mode != Pouring && mode != Batching && mode != Stocking {
		return ""
	}
	var out []string
	for _, r := range "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ" {
		if !slices.ContainsFunc(b.rows, func(row Binding) bool { return row.Mode == mode && slices.Contains(row.Keys, string(r)) }) && len(out) < 5 {
			out = append(out, string(r))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return ", as " + strings.Join(out, " ")
}

// isApart says whether no place has what two bindings need.
func isApart(a, b Need) bool {
	return slices.ContainsFunc(apart(), func(p [2]Need) bool {
		return a&p[0] != 0 && b&p[1] != 0 || a&p[1] != 0 && b&p[0] != 0
	})
}

// Sample is a file that changes nothing, to begin with: every action with its keys, each line a comment.
func (m *Map) Sample() string {
	var out strings.Builder
	out.WriteString("# Keys of pourbench. Take the # away before an action and write its keys; what stays a comment keeps the keys it has.\n" +
		"# A key: \"u\" \"U\" \"ctrl+u\" \"alt+u\" \"shift+left\" \"f9\" \"space\" \"enter\" \"tab\" \"esc\" \"pgup\" \"delete\". Ctrl+C always leaves.\n" +
		"# An action can have several keys, or none: [] leaves it to the palette. pourbench keys --check says what cannot be.\n")
	for mode := range Mode(modes) {
		fmt.Fprintf(&out, "\n[%s]\n", mode.Word())
		for _, b := range m.Of(mode) {
			if b.Fixed {
				continue
			}
			quoted := make([]string, len(b.Keys))
			for i, k := range b.Keys {
				quoted[i] = strict.Quote(k)
			}
			fmt.Fprintf(&out, "# %s = [%s]  # %s\n", b.ID.Word(), strings.Join(quoted, ", "), b.Help)
		}
	}
	return out.String()
}
