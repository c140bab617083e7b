// Package naming finds a thing by what makers call it: the words of a name in any order, run together or not, with or without the weak ones, and
// without what only says how it was made. It guesses nothing: where several could be meant, none is, and those near are named.
package naming

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/pour/strict"
)

// Entry is one thing with every name it goes by.
type Entry struct {
	Key, Name string
	names     [][]string // each as its words
}

// New is a thing with its key, the name it is shown by, and other names it goes by.
func New(key, name string, also ...string) Entry {
	e := Entry{Key: key, Name: name, names: [][]string{Words(name)}}
	for _, other := range also {
		e.names = append(e.names, Words(other))
	}
	return e
}

// Fits reports whether a thing has a name that is same as the words typed.
func (e Entry) Fits(typed []string, same func(typed, name []string) bool) bool {
	return slices.ContainsFunc(e.names, func(name []string) bool { return len(name) > 0 && same(typed, name) })
}

// qualities say how an oil was made or what it is for; it is the same oil to alkali.
const qualities = " organic bio natural raw pure virgin extra refined unrefined deodorised deodorized cold expeller pressed food cosmetic grade rbd the of degree degrees deg f c " //nolint:misspell // makers write it so too

// Words are the words of a name that tell which thing it is, in small letters.
func Words(name string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) }) {
		if !strings.Contains(qualities, " "+w+" ") && strings.Trim(w, "0123456789") != "" {
			out = append(out, w)
		}
	}
	return out
}

// weak words are left out in speech: "shea" is shea butter, "palm" is palm oil.
const weak = " oil butter seed nut bean fat "

// Book is things to be found, in the order in which those near are named.
type Book []Entry

// Find finds what words name: by the same words in any order, run together or not, or with a weak one left out, if that is one thing alone.
func (b Book) Find(typed []string) (Entry, bool) {
	if len(typed) == 0 {
		return Entry{}, false
	}
	for _, same := range []func(typed, name []string) bool{SameWords, runTogether, weakLeftOut} {
		if found := b.named(typed, same); len(found) == 1 {
			return found[0], true
		}
	}
	return Entry{}, false
}

// Both lists the things that go by the same words where there is more than one.
func (b Book) Both(typed []string) []Entry {
	for _, same := range []func(typed, name []string) bool{SameWords, runTogether, weakLeftOut} {
		if found := b.named(typed, same); len(found) > 1 && len(typed) > 0 {
			return found
		}
	}
	return nil
}

func (b Book) named(typed []string, same func(typed, name []string) bool) []Entry {
	var out []Entry
	for _, e := range b {
		if e.Fits(typed, same) {
			out = append(out, e)
		}
	}
	return out
}

// SameWords reports whether two names have the same words in whatever order.
func SameWords(typed, name []string) bool {
	return len(typed) == len(name) && Subset(typed, name) && Subset(name, typed)
}

func runTogether(typed, name []string) bool { return strings.Join(typed, "") == strings.Join(name, "") }

func weakLeftOut(typed, name []string) bool {
	return Subset(typed, name) && !slices.ContainsFunc(name, func(w string) bool { return !slices.Contains(typed, w) && !strings.Contains(weak, " "+w+" ") })
}

// Subset reports whether all words of one list are in the other.
func Subset(of, all []string) bool {
	return !slices.ContainsFunc(of, func(w string) bool { return !slices.Contains(all, w) })
}

// Near lists names of things that may be meant, few: those whose name is a slip of the finger away, those that say more than was typed, and those
// that say less.
func (b Book) Near(typed []string) []string {
	joined := strings.Join(typed, " ")
	var found []Entry
	for _, tell := range []func(_, name []string) bool{
		func(_, name []string) bool {
			return strict.Nearest(joined, []string{strings.Join(name, " "), strings.Join(strong(name), " ")}) != ""
		},
		func(typed, name []string) bool { return len(strong(typed)) > 0 && Subset(strong(typed), name) },
		func(typed, name []string) bool { return len(strong(name)) > 0 && Subset(strong(name), typed) },
	} {
		for _, e := range b {
			known := slices.ContainsFunc(found, func(f Entry) bool { return f.Key == e.Key })
			if !known && slices.ContainsFunc(e.names, func(name []string) bool { return tell(typed, name) }) {
				found = append(found, e)
			}
		}
	}
	const most = 3
	var out []string
	for _, e := range found[:min(len(found), most)] {
		out = append(out, e.Name)
	}
	return out
}

// strong are the words that are not weak.
func strong(name []string) []string {
	var out []string
	for _, w := range name {
		if !strings.Contains(weak, " "+w+" ") {
			out = append(out, w)
		}
	}
	return out
}

// Unmarked takes the mark of a list from the beginning of a line: a dash, a dot, a bullet, or its number where a later number is the amount. A
// minus stays.
func Unmarked(text string) string {
	rest := strings.TrimLeft(text, "-*•·–—> ")
	if head, tail, ok := strings.Cut(rest, " "); ok && len(head) > 1 && strings.Trim(head[:len(head)-1], "0123456789") == "" && strings.ContainsAny(head[len(head)-1:], ".)") &&
		strings.ContainsAny(tail, "0123456789") {
		rest = tail
	}
	digit := rest != "" && rest[0] >= '0' && rest[0] <= '9'
	if digit && rest != text && strings.HasPrefix(strings.TrimSpace(text), "-") && !strings.HasPrefix(strings.TrimSpace(text), "- ") {
		return text // a minus, not a dash
	}
	return rest
}
