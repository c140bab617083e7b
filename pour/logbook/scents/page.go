// Package scents is what a logbook says of every scent: how often it was poured, what the clock has learnt of it, trouble, browning, how
// strong it was week by week since the cut, her words and who it went to. No figure of how a scent evaporates is worked out: none was
// found, and a nose is no scale. A pour that teaches nothing is counted and not told of.
package scents

import (
	"cmp"
	"maps"
	"slices"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/learn"
)

// Page is all that is known of one scent.
type Page struct {
	ID, Name    string
	OnShelf     bool
	Behaviour   string // the shelf's word, one of pour's; empty: it has none
	Poured      int    // pours whose plan used it
	Trials      int    // of these, trials
	LeftOut     int    // of these, pours that teach nothing
	First, Last day.Day
	Clock       *learn.Finding // nil: the clock has learnt nothing of it
	Troubles    []Trouble
	Browning    []Browned
	Weeks       []Week // those in which it was sniffed, the first one first
	Unplaced    int    // sniffs before the cut, or of a loaf whose cut is not logged
	Shared      int    // sniffs of whole bars that hold other scents too
	Words       []Word
	Audiences   []Audience
}

// Trouble is one kind of trouble.
type Trouble struct {
	Word  string
	Pours int // in how many pours
	Alone int // in how many of these a jug that made it held no other scent
}

// Browned is one jug of one pour: what browning was predicted for it, and what was seen last.
type Browned struct {
	Pour, Jug string
	Poured    day.Day
	Alone     bool          // the jug held no other scent
	Predicted chem.Browning // of all vanillin in its part of the bar; empty: it could not be worked out
	Looked    bool
	Seen      float64 // 0 none to 4 very much
	Week      int     // since the cut
	Placed    bool    // the week is known
	Colour    string  // "#rrggbb" as seen; empty: not said
}

// Week is what was sniffed in one week since the cut; week 0 begins with the cut.
type Week struct {
	Week            int
	Mean, Low, High float64 // 0 nothing to 4 very strong
	N               int     // sniffs, at least 1
}

// Word is something she said of how it smelt.
type Word struct {
	Text  string
	Times int
}

// Audience is whom bars with it went to; an empty name: it was not said.
type Audience struct {
	Name              string
	Sold, Given, From int // bars, bars, pours
}

// pages makes a page of every scent that was used or sniffed, those that were poured most first. The order of the uses does not matter.
func pages(uses []use, shelf pour.Shelf, lesson learn.Lesson) []Page {
	by := map[string][]use{}
	for _, u := range uses {
		by[u.Scent] = append(by[u.Scent], u)
	}
	out := make([]Page, 0, len(by))
	for id, of := range by {
		slices.SortFunc(of, func(a, b use) int { return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Pour, b.Pour)) })
		out = append(out, page(id, of, shelf, lesson))
	}
	slices.SortFunc(out, func(a, b Page) int { return cmp.Or(cmp.Compare(b.Poured, a.Poured), cmp.Compare(a.ID, b.ID)) })
	return out
}

// page makes the page of one scent from its uses, the earliest first.
func page(id string, uses []use, shelf pour.Shelf, lesson learn.Lesson) Page {
	p := Page{ID: id, Name: id}
	if s, ok := shelf.Scent(id); ok {
		p = Of(s)
	}
	if i := slices.IndexFunc(lesson.Scents, func(f learn.Finding) bool { return f.ID == id && f.Pours > 0 }); i >= 0 {
		p.Clock = &lesson.Scents[i]
	}
	troubles, audiences, words := map[string]Trouble{}, map[string]Audience{}, map[string]int{}
	weeks := map[int][]float64{}
	for _, u := range uses {
		p.count(u)
		for _, t := range u.Troubles {
			sum := troubles[t.Word]
			sum.Word, sum.Pours, sum.Alone = t.Word, sum.Pours+1, sum.Alone+one(t.Alone)
			troubles[t.Word] = sum
		}
		p.Browning = append(p.Browning, u.Browning...)
		for _, s := range u.Sniffs {
			if s.Placed {
				weeks[s.Week] = append(weeks[s.Week], s.Value)
			}
			p.Unplaced += one(!s.Placed)
			for _, w := range s.words() {
				words[w]++
			}
		}
		p.Shared += u.Shared
		for _, g := range u.Gone {
			sum := audiences[g.Name]
			audiences[g.Name] = Audience{g.Name, sum.Sold + g.Sold, sum.Given + g.Given, sum.From + 1}
		}
	}
	for _, w := range slices.Sorted(maps.Keys(weeks)) {
		p.Weeks = append(p.Weeks, week(w, weeks[w]))
	}
	p.Troubles = slices.SortedFunc(maps.Values(troubles), func(a, b Trouble) int { return cmp.Or(b.Pours-a.Pours, cmp.Compare(a.Word, b.Word)) })
	p.Audiences = slices.SortedFunc(maps.Values(audiences), func(a, b Audience) int {
		return cmp.Or(b.Sold+b.Given-a.Sold-a.Given, cmp.Compare(a.Name, b.Name))
	})
	for text, n := range words {
		p.Words = append(p.Words, Word{text, n})
	}
	slices.SortFunc(p.Words, func(a, b Word) int { return cmp.Or(b.Times-a.Times, cmp.Compare(a.Text, b.Text)) })
	return p
}

// Of is the page of a scent of the shelf of which nothing is logged.
func Of(s pour.Scent) Page {
	return Page{ID: s.ID, Name: s.Name, OnShelf: true, Behaviour: s.Behaviour}
}

// count takes in that a pour used it.
func (p *Page) count(u use) {
	if !u.Poured {
		return
	}
	if p.Poured == 0 {
		p.First = u.Day
	}
	p.Last = u.Day
	p.Poured++
	p.Trials += one(u.Trial)
	p.LeftOut += one(u.LeftOut)
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// week sums up the sniffs of a week, of which there is one at least. They are added in order of size, so that their order says nothing.
func week(n int, values []float64) Week {
	slices.Sort(values)
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return Week{Week: n, Mean: sum / float64(len(values)), Low: values[0], High: values[len(values)-1], N: len(values)}
}
