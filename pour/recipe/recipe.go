// Package recipe understands a blend of oils as makers write it down or paste it: a line for each oil with its name, an amount and a unit.
// It turns text into the parts of a blend and says line by line what it understood and what it did not. It guesses nothing: a line that could
// be read in two ways is not taken, and says why.
package recipe

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour"
	"pourbench/pour/naming"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// What a recipe may hold. What is longer was not meant to be one.
const (
	mostLines   = 200
	mostLetters = 200
	mostG       = 1e6
)

// Kind is what a line was understood to be.
type Kind int

// What a line can be.
const (
	Blank Kind = iota // nothing, or a heading
	Taken             // an oil and how much of it
	Aside             // known, and not taken: water, lye, a scent, a sum
	Odd               // not understood, or not alone
)

// Line is one line of a recipe.
type Line struct {
	Text    string // as it stands, made safe
	Kind    Kind
	Oil     string // Taken: its id on the shelf
	Name    string // and its name
	Percent float64
	G       float64  // as written, g; 0 where the recipe goes by percent
	Why     string   // Aside, Odd: why it is not taken, and how it could be; Taken: what was assumed of it
	Near    []string // Odd: names of oils on the shelf that may be meant

	amount amount
}

// Recipe is what was understood of a text.
type Recipe struct {
	Lines []Line
	OilsG float64 // all its oils, those not understood too, g; 0 where it goes by percent
	Open  int     // lines not understood of a recipe by mass that hold no room, because how much of it there is cannot be read either
	Cut   int     // lines beyond those a recipe may hold
}

// Read understands a text, as far as it can be understood.
func Read(text string, shelf pour.Shelf) Recipe {
	lines := strings.Split(plain.Text(text), "\n")
	var r Recipe
	if over := len(lines) - mostLines; over > 0 {
		lines, r.Cut = lines[:mostLines], over
	}
	book := newBook(shelf)
	for _, text := range lines {
		r.Lines = append(r.Lines, book.read(text))
	}
	r.weigh()
	return r
}

// read understands a line by itself.
func (b *book) read(text string) Line {
	l := Line{Text: strings.TrimSpace(text)}
	if letters := []rune(l.Text); len(letters) > mostLetters {
		l.Text = string(letters[:mostLetters])
		return l.odd("it is too long to be a line of a recipe")
	}
	name, amount, why := split(l.Text)
	l.amount = amount
	words := naming.Words(name)
	switch oil, _ := b.oils.Find(words); {
	case len(words) == 0 && !amount.there():
		return l
	case oil.Key != "" && why == "" && amount.there():
		l.Kind, l.Oil, l.Name = Taken, oil.Key, oil.Name
	case oil.Key != "" && why == "":
		return l.odd("how much of it? Write an amount beside it, as in 12.5 %")
	case oil.Key == "" && b.aside(words) != "":
		l.Kind, l.Why = Aside, b.aside(words)
	case why != "":
		return l.odd(why)
	case amount.bare.Known && b.unitNot(l.Text) != "":
		l.amount.bare = pour.Figure{}
		return l.odd(b.unitNot(l.Text) + " is no unit known here: write %, g, kg, oz or lb")
	case !amount.there() && b.unread(words):
		return l.odd("how much of it? Write its amount as a number, as in 12.5 % or 100 g")
	case !amount.there():
		l.Why = "no amount"
	case len(words) == 0:
		return l.odd("of which oil? Write its name beside it")
	default:
		l.Near = b.oils.Near(words)
		return l.odd("no oil on the shelf has this name")
	}
	return l
}

// unread says whether words without a number end in a unit and begin with an oil: an amount in words.
func (b *book) unread(words []string) bool {
	if len(words) < 2 {
		return false
	}
	if _, unit := unitWords()[words[len(words)-1]]; !unit {
		return false
	}
	for n := len(words) - 1; n > 0; n-- {
		if b.oil(words[:n]) != "" {
			return true
		}
	}
	return false
}

// unitNot is the word at the end of a line, behind its one number, where all before that is an oil: it can only be a unit.
func (b *book) unitNot(text string) string {
	runes := []rune(naming.Unmarked(text))
	all, why := numbers(runes)
	if why != "" || len(all) != 1 {
		return ""
	}
	word, end := wordAt(runes, all[0].to)
	if b.oil(naming.Words(string(runes[:all[0].from]))) == "" || strings.ContainsFunc(string(runes[end:]), letterOrDigit) {
		return ""
	}
	return word
}

func (l Line) odd(why string) Line {
	l.Kind, l.Why = Odd, why
	return l
}

// weigh decides whether the recipe goes by percent or by mass, and works the parts out.
func (r *Recipe) weigh() {
	by := r.unit()
	for i := range r.Lines {
		l := &r.Lines[i]
		if l.Kind == Taken && l.amount.bare.Known {
			l.Why = "no unit: taken as " + map[unit]string{byPercent: "percent", byMass: "grams"}[by]
		}
		l.amount = l.amount.as(by)
		if l.Kind == Taken {
			*l = l.measured(by)
		}
		switch {
		case by != byMass || l.Kind != Taken && l.Kind != Odd:
		case l.amount.g.Known:
			r.OilsG += l.amount.g.V // what is not understood is most likely an oil: its room is kept open
		default:
			r.Open++
		}
	}
	for i := range r.Lines {
		switch l := &r.Lines[i]; {
		case l.Kind != Taken:
		case by == byPercent:
			l.Percent = l.amount.percent.V
		case r.OilsG > 0:
			l.G, l.Percent = l.amount.g.V, math.Round(l.amount.g.V/r.OilsG*100*1e6)/1e6
		}
	}
}

// measured is a line whose amount can be taken, or why it cannot.
func (l Line) measured(by unit) Line {
	switch {
	case by == byPercent && !l.amount.percent.Known:
		return l.odd("the other oils are in percent: write this one in percent too")
	case by == byMass && !l.amount.g.Known:
		return l.odd("the other oils are weighed: write this one's weight too")
	case by == byPercent && l.amount.percent.V > 100:
		return l.odd("that is more than 100 %")
	case by == byMass && l.amount.g.V > mostG:
		l.amount.g = pour.Figure{}
		return l.odd("that is more than a bench holds")
	}
	return l
}

// unit is what the recipe goes by: what most of its oils are written in. Where no unit is written at all, numbers that come to a hundred or so
// are percent, and larger ones grams.
func (r *Recipe) unit() unit {
	const aboutAHundred = 110
	percent, mass, bare := 0, 0, 0.0
	for _, l := range r.Lines {
		switch {
		case l.Kind != Taken:
		case l.amount.percent.Known:
			percent++
		case l.amount.g.Known:
			mass++
		default:
			bare += l.amount.bare.V
		}
		if l.Kind == Taken && l.amount.percent.Known && l.amount.g.Known {
			mass++
		}
	}
	if mass > percent || percent+mass == 0 && bare > aboutAHundred {
		return byMass
	}
	return byPercent
}

// Count is how many lines are of each kind.
func (r *Recipe) Count(k Kind) int {
	n := 0
	for _, l := range r.Lines {
		if l.Kind == k {
			n++
		}
	}
	return n
}

// Parts are the parts of the blend, in the order they are written, each held as it is written; an oil that is written twice is added up.
func (r *Recipe) Parts() []pour.OilPart {
	var out []pour.OilPart
	at := map[string]int{}
	for _, l := range r.Lines {
		if l.Kind != Taken {
			continue
		}
		if i, twice := at[l.Oil]; twice {
			out[i].Percent += l.Percent
			continue
		}
		at[l.Oil] = len(out)
		out = append(out, pour.OilPart{Oil: l.Oil, Percent: l.Percent, Held: true})
	}
	return out
}

// Unfinished says how far the blend would be; empty: it is whole.
func (r *Recipe) Unfinished() string { return pour.Batch{Oils: r.Parts()}.Unfinished() }

// Edit puts the recipe in the place of a batch's blend.
func (r *Recipe) Edit(n pour.BatchName) pour.Edit {
	parts := r.Parts()
	if len(parts) == 0 {
		return func(p pour.Plan) (pour.Plan, error) {
			return p, fmt.Errorf("take the recipe: no line of it is an oil with its amount; write one to a line, as in %s", strict.Quote("olive oil 35 %"))
		}
	}
	return pour.SetBlend(n, parts, r.OilsG)
}
