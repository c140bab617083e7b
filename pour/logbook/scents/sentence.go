package scents

import (
	"fmt"
	"math"
	"strings"

	"pourbench/chem"
)

// Strengths are the words for how strong a scent is, from 0 to 4 (own words).
func Strengths() []string { return []string{"gone", "faint", "clear", "strong", "very strong"} }

// Strength is the word for a strength from 0 to 4, the nearer one, the stronger on the middle.
func Strength(value float64) string {
	words := Strengths()
	return words[int(min(max(math.Floor(value+0.5), 0), float64(len(words)-1)))]
}

// Sentence is the page in one line, as "poured 7 times: quick, browns to tan, strong at week 0, faint by week 8".
func (p Page) Sentence() string {
	var says []string
	for _, s := range []string{p.Pace(), p.trouble(), p.browns(), p.strong()} {
		if s != "" {
			says = append(says, s)
		}
	}
	if len(says) == 0 {
		says = []string{"nothing is logged of how it did"}
	}
	return p.times() + ": " + strings.Join(says, ", ")
}

func (p Page) times() string {
	if p.Poured == 0 {
		return "never poured"
	}
	text := "poured " + times(p.Poured)
	if p.Trials > 0 {
		text += fmt.Sprintf(", %d of them as a trial", p.Trials)
	}
	return text
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// Paces of a scent.
const (
	Quick  = "quick"
	Slow   = "slow"
	Unsure = "may be quick or slow" // its band reaches to both sides
)

// Pace is the clock's verdict; empty: it has learnt nothing of it.
func (p Page) Pace() string {
	switch {
	case p.Clock == nil:
		return ""
	case p.Clock.Low > 1:
		return Quick
	case p.Clock.High < 1:
		return Slow
	}
	return Unsure
}

// trouble names what it made in any pour.
func (p Page) trouble() string {
	var words []string
	for _, t := range p.Troubles {
		words = append(words, fmt.Sprintf("%s %s", t.Word, times(t.Pours)))
	}
	return strings.Join(words, ", ")
}

// Tints is how many jugs were predicted to brown how far, the most first; those that were to stay as they are come last.
func (p Page) Tints() (words []chem.Browning, jugs []int) {
	for _, w := range []chem.Browning{chem.BrowningDark, chem.BrowningMid, chem.BrowningTan, chem.BrowningCream, chem.BrowningNone} {
		n := 0
		for _, b := range p.Browning {
			n += one(b.Predicted == w)
		}
		if n > 0 {
			words, jugs = append(words, w), append(jugs, n)
		}
	}
	return words, jugs
}

// browns is what was seen of its browning beside what was predicted. Jugs that hold other scents too do not speak for it.
func (p Page) browns() string {
	looked, seen, most := 0, 0, chem.BrowningNone
	rank := map[chem.Browning]int{chem.BrowningCream: 1, chem.BrowningTan: 2, chem.BrowningMid: 3, chem.BrowningDark: 4}
	for _, b := range p.Browning {
		if !b.Alone {
			continue
		}
		if rank[b.Predicted] > rank[most] {
			most = b.Predicted
		}
		looked += one(b.Looked)
		seen += one(b.Looked && b.Seen > 0)
	}
	to := map[bool]string{true: " to " + string(most)}[most != chem.BrowningNone]
	switch {
	case seen > 0:
		return "browns" + to
	case looked > 0 && to != "":
		return "was to brown" + to + " and did not"
	case looked > 0:
		return "does not brown"
	case to != "":
		return "should brown" + to + ", not looked at yet"
	}
	return ""
}

// strong is how strong it was at first and last.
func (p Page) strong() string {
	if len(p.Weeks) == 0 {
		return ""
	}
	first, last := p.Weeks[0], p.Weeks[len(p.Weeks)-1]
	text := fmt.Sprintf("%s at week %d", Strength(first.Mean), first.Week)
	if last.Week == first.Week {
		return text
	}
	if Strength(last.Mean) == Strength(first.Mean) {
		return fmt.Sprintf("%s and still so at week %d", text, last.Week)
	}
	return fmt.Sprintf("%s, %s by week %d", text, Strength(last.Mean), last.Week)
}
