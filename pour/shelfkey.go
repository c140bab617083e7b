package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/money"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// KeyKind is what can stand at a key of an entry on the shelf.
type KeyKind int

// The kinds of keys.
const (
	KeyText   KeyKind = iota // one line of text
	KeyNumber                // a number from Low to High
	KeyWord                  // one of Words
	KeyFlag                  // yes or no
	KeyList                  // names, or ids of Words, with semicolons between them
	KeyColour                // "#rrggbb"
	KeyPrice                 // an amount of money, exact, written as text
	KeyParts                 // a table of Parts that are keys of their own: a source, fatty acids
	KeyRows                  // a list of tables, each of Parts: allergens
)

// ShelfKey is a key of an entry on the shelf as the shelf file writes it, with what the entry has there.
type ShelfKey struct {
	Key    string // as in the file: "density_g_ml"; of a part with what it is in, "source.text", "allergen[1].percent"
	Means  string // one clause
	Kind   KeyKind
	Low    float64 // of a number
	High   float64
	Judged bool       // what lies outside is left to the shelf's own reader, which says more of it than the range does
	Most   int        // letters of a text
	Words  []string   // what it can be
	Needed bool       // a new entry must have it
	Spare  bool       // of a row of a list: the row may do without it
	Value  string     // what stands there, as it is typed; empty: nothing
	Parts  []ShelfKey // of KeyParts; of KeyRows the keys of all rows, one after the other
	Row    []ShelfKey // of KeyRows: the keys of one row, empty
	Own    bool       // the maker's own shelf file says it
}

// TOML is what is typed at the key as a value of a shelf file. Nothing typed is an empty value: the key is taken out of the file.
func (k ShelfKey) TOML(typed string) (string, error) {
	typed = strings.TrimSpace(plain.Line(typed))
	if typed == "" {
		return "", nil
	}
	switch k.Kind {
	case KeyNumber:
		v, err := strict.ParseNumber(typed)
		if err != nil {
			return "", err
		}
		if !k.Judged && (v < k.Low || v > k.High) {
			f := strict.Outside(k.Key, v, k.Low, k.High)
			return "", fmt.Errorf("%s %s; %s", strict.Short(v), f.Problem, f.Mend)
		}
		return strict.Short(v), nil
	case KeyFlag:
		if typed != "yes" && typed != "no" {
			return "", fmt.Errorf("%q is neither yes nor no", typed)
		}
		return fmt.Sprint(typed == "yes"), nil
	case KeyWord:
		if !slices.Contains(k.Words, typed) {
			f := strict.NoWord(k.Key, typed, k.Words)
			return "", fmt.Errorf("%s %s; %s", f.Value, f.Problem, f.Mend)
		}
	case KeyList:
		return k.list(typed)
	case KeyPrice:
		price, err := money.Typed(typed)
		if err != nil {
			return "", err
		}
		typed = price
	case KeyText, KeyColour:
	case KeyParts, KeyRows:
		return "", fmt.Errorf("%s is changed part by part", k.Key)
	}
	return strict.Quote(typed), nil
}

// list is a line of names as a list of a shelf file.
func (k ShelfKey) list(typed string) (string, error) {
	var out []string
	for name := range strings.SplitSeq(typed, ";") {
		if name = strings.TrimSpace(name); name == "" {
			continue
		}
		if k.Words != nil && !slices.Contains(k.Words, name) {
			return "", fmt.Errorf("%q is not on the shelf; it can be %s", name, strings.Join(k.Words, ", "))
		}
		out = append(out, strict.Quote(name))
	}
	return "[" + strings.Join(out, ", ") + "]", nil
}

// Whole is the value of a table of parts, or of a list of them, as it stands in a shelf file. Parts in which nothing stands are left out.
func (k ShelfKey) Whole() string {
	if k.Kind == KeyRows {
		n := max(len(k.Row), 1)
		var rows []string
		for row := range slices.Chunk(k.Parts, n) {
			rows = append(rows, inlined(row))
		}
		return "[" + strings.Join(rows, ", ") + "]"
	}
	return inlined(k.Parts)
}

func inlined(parts []ShelfKey) string {
	var out []string
	for _, p := range parts {
		if v, err := p.TOML(p.Value); err == nil && v != "" {
			out = append(out, p.Last()+" = "+v)
		}
	}
	return "{ " + strings.Join(out, ", ") + " }"
}

// Last is the key's own name, without what it is in.
func (k ShelfKey) Last() string { return k.Key[strings.LastIndexByte(k.Key, '.')+1:] }

// With is a table of parts with one of them changed, by its place.
func (k ShelfKey) With(i int, typed string) ShelfKey {
	k.Parts = slices.Clone(k.Parts)
	k.Parts[i].Value = typed
	return k
}

// EntryName names an entry of the shelf: the table of the shelf file and the id in it.
type EntryName struct{ Table, ID string }

// ShelfChange is a change of one entry in the maker's own shelf file.
type ShelfChange struct {
	Of    EntryName
	Key   string // as in [ShelfKey]; empty: the entry itself is added, with New, or taken out of the file
	Value string // TOML text; empty: the key is taken out of the file
	In    string // the key of what this one is a part of; empty: of nothing
	Whole string // what that is with the change made: written where the file says nothing of it yet
	Added bool   // the value is one more row of the list In
	New   []strict.Pair
	Name  string // what it is called, for undo
}
