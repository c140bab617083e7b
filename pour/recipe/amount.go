package recipe

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/pour"
	"pourbench/pour/lot"
	"pourbench/pour/naming"
	"pourbench/pour/strict"
)

// unit is what a recipe goes by.
type unit int

const (
	byPercent unit = iota
	byMass
)

// amount is how much a line says, in each way it says it.
type amount struct {
	percent, g pour.Figure
	bare       pour.Figure // a number without a unit
}

func (a amount) there() bool { return a.percent.Known || a.g.Known || a.bare.Known }

// as reads a number without a unit in the unit the recipe goes by.
func (a amount) as(by unit) amount {
	switch {
	case !a.bare.Known:
	case by == byPercent:
		a.percent = a.bare
	default:
		a.g = a.bare
	}
	return a
}

const (
	gramsPerPound = lot.PoundG
	gramsPerOunce = gramsPerPound / 16
)

// percentSign is the unit of a part.
const percentSign = "%"

// unitWords are the units as they are written; 0 is percent.
func unitWords() map[string]float64 {
	return map[string]float64{
		percentSign: 0, "percent": 0, "pct": 0, "g": 1, "gr": 1, "gm": 1, "gms": 1, "gram": 1, "grams": 1, "gramme": 1, "grammes": 1, "kg": 1000, "kgs": 1000, "kilo": 1000, "kilos": 1000,
		"oz": gramsPerOunce, "ozs": gramsPerOunce, "ounce": gramsPerOunce, "ounces": gramsPerOunce, "lb": gramsPerPound, "lbs": gramsPerPound, "pound": gramsPerPound, "pounds": gramsPerPound,
	}
}

// number is a number as it stands in a line.
type number struct {
	v        float64
	unit     string // empty: none follows
	from, to int    // in runes, its unit included
}

// betweenNumbers is what can stand between two numbers that are one amount, a range or a product: which it is, nobody can tell.
const betweenNumbers = " -–—~x×*+/'"

// split parts a line into a name and an amount; why says what cannot be read.
func split(text string) (name string, a amount, why string) {
	runes := []rune(naming.Unmarked(text))
	all, why := numbers(runes)
	if why != "" {
		return string(runes), amount{}, why
	}
	measured := 0
	for i, n := range all {
		if n.unit == "" {
			continue
		}
		measured++
		if i > 0 && all[i-1].unit == "" && strings.Trim(strings.ToLower(string(runes[all[i-1].to:n.from])), betweenNumbers) == "" {
			return string(runes), amount{}, "two numbers stand beside each other: write the amount without a gap in it"
		}
	}
	if why := unweighed(runes, all); why != "" {
		return string(runes), amount{}, why
	}
	if measured == 0 && len(all) > 1 {
		return string(runes), amount{}, "which of its numbers is the amount? Write a unit behind it: %, g, kg, oz or lb"
	}
	for i := len(all) - 1; i >= 0; i-- {
		n := all[i]
		if n.unit == "" && measured > 0 {
			word, end := wordAt(runes, n.to)
			if !spoons(word) {
				continue // it belongs to the name
			}
			n.to = end
		}
		for k := n.from; k < n.to; k++ {
			runes[k] = ' '
		}
	}
	return string(runes), amounts(all), why
}

// noWeights are words behind a number that measure something else than a weight: what a spoon of an oil weighs, no line says.
const noWeights = " tbsp tbsps tbs tsp tsps tablespoon tablespoons teaspoon teaspoons spoon spoons cup cups ml cl dl l litre litres liter liters fl fluid pint pints quart quarts gallon gallons drop drops part parts piece pieces " //nolint:misspell // makers write it so too

// unweighed says why a number that stands in a line without a unit is not understood: it measures no weight, or is one too many. A spoon beside
// a weight says the same once more.
func unweighed(runes []rune, all []number) string {
	measured := slices.ContainsFunc(all, func(n number) bool { return n.unit != "" })
	for _, n := range all {
		word, _ := wordAt(runes, n.to)
		switch {
		case n.unit != "":
		case spoons(word) && !measured:
			return word + " is no weight: write grams"
		case !measured || spoons(word) || listed(degrees, word):
		default:
			return "what is its " + strings.TrimSpace(string(runes[n.from:n.to])) + "? Leave the amount alone in the line, with its unit"
		}
	}
	return ""
}

func spoons(word string) bool { return listed(noWeights, word) }

func listed(list, word string) bool {
	return word != "" && strings.Contains(list, " "+strings.ToLower(word)+" ")
}

// degrees are the words behind the melting point in a name.
const degrees = " degree degrees deg f c "

// amounts puts the numbers of a line together: pounds and ounces add up, and where a mass is given in grams too that one counts.
func amounts(all []number) amount {
	var a amount
	metric, pounds := pour.Figure{}, pour.Figure{}
	units := unitWords()
	for _, n := range all {
		switch per := units[n.unit]; {
		case n.unit == "":
			a.bare = pour.Know(n.v)
		case per == 0:
			a.percent = pour.Know(n.v)
		case per == 1 || per == 1000:
			metric = pour.Know(n.v * per)
		default:
			pounds = pour.Know(pounds.V + n.v*per)
		}
	}
	if a.g = metric; !metric.Known {
		a.g = pounds
	}
	if a.percent.Known || a.g.Known {
		a.bare = pour.Figure{}
	}
	return a
}

// numbers finds the numbers of a line with their units. A number that could be read in two ways, or of which a unit is written twice, gives why.
func numbers(runes []rune) (all []number, why string) {
	seen := map[string]bool{}
	for i := 0; i < len(runes); {
		if !startsNumber(runes, i) {
			if unicode.IsNumber(runes[i]) && !isDigit(runes[i]) {
				return nil, "write its fraction as a decimal, as in 0.5"
			}
			i++
			continue
		}
		n, next, why := oneNumber(runes, i)
		if why != "" {
			return nil, why
		}
		i = next
		if next < len(runes) && runes[next] == '°' {
			continue // the melting point in a name
		}
		if kind := kindOf(n.unit); n.unit != "" {
			if seen[kind] {
				return nil, "it has two amounts in " + kind + ": leave one"
			}
			seen[kind] = true
		}
		all = append(all, n)
	}
	return all, ""
}

// kindOf is the unit by the name it is shown by.
func kindOf(unit string) string {
	switch unitWords()[unit] {
	case 0:
		return percentSign
	case gramsPerOunce:
		return "oz"
	case gramsPerPound:
		return "lb"
	}
	return "g"
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func letterOrDigit(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) }

// startsNumber says whether a number begins at a place: a digit that does not stand in a word, or a point before one.
func startsNumber(runes []rune, i int) bool {
	if i > 0 && letterOrDigit(runes[i-1]) {
		return false
	}
	return isDigit(runes[i]) || runes[i] == '.' && i+1 < len(runes) && isDigit(runes[i+1])
}

// oneNumber reads the number that begins at a place and the unit behind it.
func oneNumber(runes []rune, from int) (n number, next int, why string) {
	to := from
	for to < len(runes) && (isDigit(runes[to]) || (runes[to] == '.' || runes[to] == ',') && to+1 < len(runes) && isDigit(runes[to+1])) {
		to++
	}
	text := string(runes[from:to])
	v, err := strict.ParseNumber(text)
	switch {
	case err != nil:
		return n, to, err.Error()
	case to < len(runes) && strings.ContainsRune("/'’-–", runes[to]) && to+1 < len(runes) && unicode.IsNumber(runes[to+1]):
		return n, to, "write one number for its amount, with a point or a comma and nothing else in it"
	case from > 0 && runes[from-1] == '-' && (from == 1 || runes[from-2] == ' '):
		return n, to, "an amount cannot be below 0"
	}
	n = number{v: v, from: from, to: to}
	unit, end := unitAt(runes, to)
	if unit != "" {
		n.unit, n.to = unit, end
	}
	if (unit == "" || kindOf(unit) == "g" && unitWords()[unit] == 1) && strict.PointThousands(text) != "" {
		return n, to, strict.PointThousands(text)
	}
	return n, n.to, ""
}

// wordAt reads the word that stands at a place, blanks before it left out, and where it ends.
func wordAt(runes []rune, at int) (string, int) {
	for at < len(runes) && runes[at] == ' ' {
		at++
	}
	end := at
	for end < len(runes) && unicode.IsLetter(runes[end]) {
		end++
	}
	return string(runes[at:end]), end
}

// unitAt reads the unit that stands at a place, blanks before it left out.
func unitAt(runes []rune, at int) (string, int) {
	for at < len(runes) && runes[at] == ' ' {
		at++
	}
	if at < len(runes) && runes[at] == '%' {
		return percentSign, at + 1
	}
	word, end := wordAt(runes, at)
	word = strings.ToLower(word)
	if _, ok := unitWords()[word]; ok && (end == len(runes) || !unicode.IsNumber(runes[end])) {
		return word, end
	}
	return "", at
}
