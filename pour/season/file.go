// Package season is what a maker has promised and planned: her markets and orders, the pours for them, her moulds, bench days and rack, in a
// plain file beside the logbook; each date worked backwards to the day by which to pour for it; what collides; and how each design did
// with whom. Nothing here reads the clock: today is handed on.
package season

import (
	"slices"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
)

// FileName is the season's file in the maker's folder of data.
const FileName = "season.toml"

// FileFormat is the version of the file this program writes and reads.
const FileFormat = 1

// Kind is what a date is.
type Kind string

// The kinds of date.
const (
	Market Kind = "market"
	Order  Kind = "order"
)

// File is what the season's file holds. The zero value is that of a maker who has none yet.
type File struct {
	House House
	Dates []Date
	Pours []Planned
}

// House is what the maker has to pour with and where her bars dry.
type House struct {
	RackBars  int            // places on the rack, bars; 0: not stated, and then nothing is too full
	BenchDays []time.Weekday // on which she pours; empty: any
	MostPours int            // on one day; 0: as many as she likes
	Moulds    []Mould        // that she owns; empty: not stated
}

// Mould is a kind of mould she owns. What is filled and cut of it is the plan's affair.
type Mould struct {
	Name                        string
	Count                       int // of them, at least 1
	Shape                       string
	LengthMM, WidthMM, HeightMM float64 // inside, as a plan has them
	Cavities                    int     // of single moulds: in one of them; 0: 1
}

// Date is a market or an order.
type Date struct {
	Name      string // no two have the same
	Day       day.Day
	Kind      Kind
	Audience  string // the maker's own word
	LabelDays int    // days before it that go into labelling and packing; 0: none
	Wants     []Want
}

// Want is how many bars of a design a date wants.
type Want struct {
	Design string // name of its plan
	Bars   int
}

// Planned is a pour that is planned.
type Planned struct {
	Plan string   // path of its plan file, absolute or from the folder of the season's file; empty: Pour is set
	Pour string   // id of a pour in the logbook: it stands there already; empty: Plan is set
	For  string   // name of the date it is for; empty: none
	Day  *day.Day // on which it is to be poured; nil: to be found
}

// Date is the one of that name; false: there is none.
func (f File) Date(name string) (Date, bool) {
	i := slices.IndexFunc(f.Dates, func(d Date) bool { return same(d.Name, name) })
	if i < 0 {
		return Date{}, false
	}
	return f.Dates[i], true
}

// same reports whether two names mean the same: capitals and spaces around them do not count.
func same(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }

// sameDesign reports whether two plans pour one design: a plan that pours another one's again is named after it.
func sameDesign(a, b string) bool {
	return same(pour.DesignName(strings.TrimSpace(a)), pour.DesignName(strings.TrimSpace(b)))
}

// weekdays are the words of a file for the days of the week, Sunday first as the standard library counts them.
func weekdays() []string { return []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"} }

// Weekdays lists the words for the days of the week, from Monday.
func Weekdays() []string {
	all := weekdays()
	return append(slices.Clone(all[1:]), all[0])
}

// Weekday is the day of the week that a word or its beginning of three letters names.
func Weekday(word string) (time.Weekday, bool) {
	const letters = 3
	word = strings.ToLower(word)
	for n, w := range weekdays() {
		if word == w || len(word) > letters && strings.HasPrefix(strings.ToLower(time.Weekday(n).String()), word) {
			return time.Weekday(n), true
		}
	}
	return 0, false
}

// Tell is the measures of a mould.
func (m Mould) Tell() string { return size(m.Shape, m.LengthMM, m.WidthMM, m.HeightMM) }
