package invoice

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/pour/lot"
	"pourbench/pour/naming"
	"pourbench/pour/plain"
)

// book is what can come, ready to be looked up, and what is read against.
type book struct {
	words
	things naming.Book
}

func newBook(k Known) *book {
	b := book{words: words{details(), k.Currency}}
	add := func(kind lot.Kind, id, name string, also ...string) {
		b.things = append(b.things, naming.New(lot.Material{Kind: kind, ID: id}.String(), name, append(also, id)...))
	}
	for _, x := range k.Shelf.Oils {
		add(lot.Oil, x.ID, x.Name, append([]string{x.INCI}, x.Also...)...)
	}
	add(lot.Alkali, lot.NaOH, "sodium hydroxide", "caustic soda", "soda lye", "NaOH lye", "sodium hydroxide NaOH")
	add(lot.Alkali, lot.KOH, "potassium hydroxide", "caustic potash", "potash lye", "KOH lye", "potassium hydroxide KOH")
	add(lot.Other, lot.Water, "water", "distilled water", "deionised water", "deionized water") //nolint:misspell // makers write it so too
	for _, x := range k.Shelf.Colourants {
		add(lot.Colourant, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Extras {
		add(lot.Extra, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Scents {
		add(lot.Scent, x.ID, x.Name)
	}
	for _, x := range k.Shelf.Toppings {
		add(lot.Topping, x.ID, x.Name)
	}
	b.held(k.Held)
	return &b
}

// held adds what came before and is on no shelf.
func (b *book) held(s lot.Stock) {
	var more []naming.Entry
	for m, h := range s.Held {
		if len(h.Packs) == 0 || slices.ContainsFunc(b.things, func(e naming.Entry) bool { return e.Key == m.String() }) {
			continue
		}
		more = append(more, naming.New(m.String(), firstOf(h.Packs[len(h.Packs)-1].Name, m.ID), m.ID))
	}
	slices.SortFunc(more, func(a, b naming.Entry) int { return strings.Compare(a.Key, b.Key) })
	b.things = append(b.things, more...)
}

// material finds what a name is; new says that it is neither on the shelf nor came before.
func (b *book) material(r reading) (m lot.Material, name string, isNew bool, why string, near []string) {
	kind, words := kindAt(r.words)
	things := b.things
	if kind != "" {
		things = slices.DeleteFunc(slices.Clone(things), func(e naming.Entry) bool { return !strings.HasPrefix(e.Key, string(kind)+" ") })
	}
	for _, try := range [][]string{words, unheld(words)} {
		typed := naming.Words(strings.Join(try, " "))
		if e, ok := things.Find(typed); ok {
			m, _ = lot.ParseMaterial(e.Key)
			return m, e.Name, false, "", nil
		}
		if both := things.Both(typed); len(both) > 0 {
			return m, "", false, severalWhy(both, strings.Join(try, " ")), nil
		}
	}
	typed := naming.Words(strings.Join(unheld(words), " "))
	near = things.Near(typed)
	switch {
	case len(words) == 0:
		return m, "", false, "of what? Write its name", nil
	case kind != "" && fresh(kind) && slug(words) != "":
		return lot.Material{Kind: kind, ID: slug(words)}, strings.Join(words, " "), true, "", nil
	case b.labelled(words, things) != "":
		code := b.labelled(words, things)
		return m, "", false, "what is " + code + "? If it is its lot, write lot " + code, nil
	case len(near) == 0 && r.pieces() && slug(words) != "":
		return lot.Material{Kind: lot.Packaging, ID: slug(words)}, strings.Join(words, " "), true, "", nil
	}
	return m, "", false, "nothing on the shelf has this name, and none came before; write packaging: or other: before it where it is on no shelf", near
}

// pieces reports whether a line counts pieces and weighs nothing.
func (r reading) pieces() bool {
	return len(r.sizes) > 0 && !slices.ContainsFunc(r.sizes, func(m measure) bool { return m.unit.Of != lot.Pieces })
}

// severalWhy says that a name means several things and how each is written.
func severalWhy(both []naming.Entry, typed string) string {
	var ways []string
	for _, e := range both[:min(len(both), 3)] {
		kind, _, _ := strings.Cut(e.Key, " ")
		way := kind + ": " + e.Name
		if strings.EqualFold(e.Name, typed) || slices.Contains(ways, way) {
			way = kind + ": " + typed
		}
		ways = append(ways, way)
	}
	return "several things are called so: write " + strings.Join(ways, ", or ")
}

// fresh reports whether a kind is on no shelf, so that a new one of it may come.
func fresh(k lot.Kind) bool {
	return slices.Contains([]lot.Kind{lot.Packaging, lot.Other, lot.Embed, lot.Blend}, k)
}

// kindAt takes the kind from the front of a name.
func kindAt(words []string) (lot.Kind, []string) {
	if len(words) < 2 {
		return "", words
	}
	for _, k := range lot.Kinds() {
		if strings.EqualFold(strings.TrimSuffix(words[0], ":"), string(k)) && (strings.HasSuffix(words[0], ":") || fresh(k)) {
			return k, words[1:]
		}
	}
	return "", words
}

// unheld is a name without the words for what a thing comes in.
func unheld(words []string) []string {
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return holds(w) || strings.EqualFold(w, "of") })
}

// labelled is the word of a name without which it is understood, if it has letters and digits as a lot has.
func (b *book) labelled(words []string, things naming.Book) string {
	for i, w := range words {
		if !strings.ContainsFunc(w, unicode.IsDigit) {
			continue
		}
		if _, ok := things.Find(naming.Words(strings.Join(unheld(slices.Delete(slices.Clone(words), i, i+1)), " "))); ok {
			return w
		}
	}
	return ""
}

// slug makes an id of a name.
func slug(words []string) string { return plain.Slug(strings.Join(words, " "), "") }
