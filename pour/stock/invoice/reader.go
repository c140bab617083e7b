package invoice

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"pourbench/pour/lot"
	"pourbench/pour/strict"
)

// reader goes through a line piece by piece.
type reader struct {
	line
	i       int // the piece that is read next
	r       reading
	pending basis // what the next price is of, by a word before it
}

// readLine reads a line.
func (w words) readLine(text string) reading {
	p := reader{line: w.lined(text)}
	for p.i < len(p.tokens) && p.r.why == "" {
		p.step()
	}
	return p.r
}

// step reads what comes next.
func (p *reader) step() {
	if p.starts() {
		if d := p.detailAt(p.chunks[p.tokens[p.i].chunk:]); d != nil {
			p.past(p.tokens[p.i].chunk + len(d.words) - 1)
			d.does(p)
			return
		}
	}
	t := p.tokens[p.i]
	switch {
	case t.sort == number:
		p.number()
	case t.sort == currency && p.sortAt(1) == number:
		p.i++
		p.price(t.text)
	case t.sort == times && p.sortAt(1) == number && p.sortAt(2) != unit:
		p.i++
		p.counted(p.tokens[p.i].text)
		p.i++
	case t.sort == at:
		p.pending = ofEach
		p.i++
	case t.sort == word && dayLike(t.text):
		p.refuse(fmt.Sprintf("what is %s? Write exp before it where it is the day it expires, and bought where it is the day it came", t.text))
	case (t.sort == word || t.sort == unit) && p.starts():
		p.word(t.text)
	default:
		p.i++ // a sign by itself
	}
}

// word is a word of the name.
func (p *reader) word(text string) {
	if strings.ContainsFunc(text, func(r rune) bool { return unicode.IsNumber(r) && !unicode.IsDigit(r) }) {
		p.refuse("write its fraction as a decimal, as in 0.5")
		return
	}
	p.r.words = append(p.r.words, text)
	p.past(p.tokens[p.i].chunk)
}

func (p *reader) refuse(why string) {
	if p.r.why == "" {
		p.r.why = why
	}
}

// starts reports whether the next piece begins a run of letters.
func (p *reader) starts() bool { return p.i == 0 || p.tokens[p.i-1].chunk != p.tokens[p.i].chunk }

// sortAt is what stands so many pieces further on; at the end of the line it is a column's end.
func (p *reader) sortAt(n int) sort {
	if p.i+n >= len(p.tokens) {
		return apart
	}
	return p.tokens[p.i+n].sort
}

// past goes behind a run of letters.
func (p *reader) past(chunk int) {
	for p.i < len(p.tokens) && p.tokens[p.i].chunk <= chunk {
		p.i++
	}
}

// rest is the runs of letters that are not read yet, as far as the column goes.
func (p *reader) rest() []string {
	if p.i >= len(p.tokens) {
		return nil
	}
	from := p.tokens[p.i].chunk
	to := from
	for _, t := range p.tokens[p.i:] {
		if t.sort == apart {
			break
		}
		to = t.chunk + 1
	}
	return p.chunks[from:to]
}

// skip goes over a mark that stands alone, behind a word that brings something.
func (p *reader) skip() {
	for p.i < len(p.tokens) && p.tokens[p.i].sort == apart {
		p.i++
	}
}

// holders are words for what a thing comes in: a number before one is how many came.
const holders = " bottle bottles bag bags tub tubs bucket buckets canister canisters can cans drum drums jar jars tin tins pack packs packet packets sack sacks pail pails jerrycan jerrycans flask flasks tube tubes carton cartons unit units "

func holds(word string) bool { return strings.Contains(holders, " "+strings.ToLower(word)+" ") }

// spoons are measures nobody can weigh.
const spoons = " fl fluid cup cups tbsp tsp tablespoon tablespoons teaspoon teaspoons pint pints quart quarts gallon gallons gal drop drops "

// number reads a number and what is beside it.
func (p *reader) number() {
	t := p.tokens[p.i]
	if _, err := strict.ParseNumber(t.text); err != nil {
		p.refuse(err.Error())
		return
	}
	whole := strings.Trim(t.text, "0123456789") == ""
	next := p.sortAt(1)
	switch {
	case next == unit:
		p.size()
	case next == times && whole:
		p.counted(t.text)
		p.i += 2
	case next == percent:
		p.i += 2 // of a name: a solution, a tax
	case next == word && strings.Contains(spoons, " "+strings.ToLower(p.tokens[p.i+1].text)+" "):
		p.refuse(p.tokens[p.i+1].text + ": not the same everywhere, write g or ml")
	case next == word && whole && holds(p.tokens[p.i+1].text):
		p.counted(t.text)
		p.i++ // the word is one of the name's, if it has one
	case next == number && p.sortAt(2) == unit && whole && len(t.text) <= 3:
		second, name := p.tokens[p.i+1].text, p.tokens[p.i+2].text
		p.refuse(fmt.Sprintf("two numbers stand beside each other: write %s%s %s, or %s x %s %s", t.text, second, name, t.text, second, name))
	default:
		p.price("")
	}
}

// counted is how many packs came.
func (p *reader) counted(text string) {
	const mostPacks = 200
	n, err := strconv.Atoi(text)
	switch {
	case err != nil || n < 1 || n > mostPacks:
		p.refuse(fmt.Sprintf("%s packs cannot be: write a number from 1 to %d", text, mostPacks))
	case p.r.count > 0 && p.r.count != n:
		p.refuse(fmt.Sprintf("it came %d times and %d times: leave one", p.r.count, n))
	default:
		p.r.count = n
	}
}

// size reads a number with a unit.
func (p *reader) size() {
	m, ok := p.measure()
	if !ok {
		return
	}
	p.r.sizes = append(p.r.sizes, m)
}

// measure reads a number with its unit.
func (p *reader) measure() (measure, bool) {
	if p.sortAt(0) != number || p.sortAt(1) != unit {
		p.refuse("how much? Write a number and its unit behind the word, as in tare 350 g")
		return measure{}, false
	}
	text, name := p.tokens[p.i].text, p.tokens[p.i+1].text
	p.i += 2
	plain, why := decimal(text)
	u, _ := lot.UnitOf(name)
	if why == "" && u.Small() {
		why = strict.PointThousands(plain)
	}
	if why != "" {
		p.refuse(why)
		return measure{}, false
	}
	return measure{text: plain, unit: u}, true
}

// decimal is a number with a decimal point, or why it cannot be read.
func decimal(text string) (plain, why string) {
	_, err := strict.ParseNumber(text)
	switch {
	case err != nil:
		return "", err.Error()
	case strings.HasPrefix(text, "-"):
		return "", "an amount cannot be below 0"
	}
	plain = strings.Replace(text, ",", ".", 1)
	if strings.HasPrefix(plain, ".") {
		plain = "0" + plain
	}
	return plain, ""
}
