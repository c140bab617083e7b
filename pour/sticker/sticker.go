// Package sticker is a bar's label as it is printed: its words, laid out in the size the maker wants and in letters as high as the market asks
// for, as text, as SVG in one piece, as PDF with several on a sheet, and as a band round the bar. It knows the sheet and works none of its
// figures out; whatever it cannot print as asked it refuses with the reason. It reads no file: a logo is handed in.
//
// Everything here is in mm, x from the left and y from the top; heights of letters are those of their printed outlines.
package sticker

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/vector"
)

// Details are what a label says of one batch, and the maker's logo.
type Details struct {
	Lot  string  // empty: the day of the pour, which names a lot
	Made day.Day // 0: not known; then the day of the pour stands for it
	Logo []byte  // a PNG or JPEG file; nil: none
}

// Label is everything that one label says, and how it is printed.
type Label struct {
	Market     label.Market
	Plan       string
	Title      string
	Identity   string
	Says       string
	Net        string // as it is printed; empty: there is none
	NetMM      float64
	List       string // with its heading
	Cautions   []string
	Maker      []string // a line each
	Lot        string
	Best       string // until when it is good; empty: not stated
	OpenMonths int    // how long once it was opened; 0: not stated
	Wide, High float64
	LetterMM   float64 // height of small letters; 0: as high as fits
	BandHigh   float64 // height of a band; 0: the bar but for what stays bare at both ends
	Bar        Bar     // what a band is wrapped round
	Old        bool    // of its market's rules some were looked up over twelve months ago
	months     int     // of best before
	netG       float64
	logo       *vector.Picture
	notes      []string
	gaps       []string // what its list lacks
}

// Of is the label of a sheet. The error is why there is none: no market is stated, or the sheet could not work it out.
func Of(s pour.Sheet, shelf pour.Shelf, d Details) (Label, error) {
	l := s.Plan.Label
	market, known := shelf.Market(s.Label.Market)
	switch {
	case s.Label.Market == "":
		return Label{}, errors.New("print the label: the plan states no market; give it one, label.market, such as \"eu\"")
	case s.Label.Refused != "":
		return Label{}, fmt.Errorf("print the label: %s", s.Label.Refused)
	case !known:
		return Label{}, fmt.Errorf("print the label: the shelf has no market %q", s.Label.Market)
	}
	out := Label{
		Market: market, Plan: s.Plan.Name, Title: cmp.Or(l.Title, s.Plan.Name), Identity: cmp.Or(market.Print.Identity, "Soap"), Says: l.Says,
		Net: s.Label.Net.Text, List: s.Label.Text, LetterMM: l.LetterMM,
		netG: s.Label.Net.G, NetMM: s.Label.HeightMM.V, OpenMonths: int(l.OpenMo), BandHigh: l.HighMM,
	}
	out.Wide, out.High = l.SizeMM()
	out.Bar, out.gaps = barOf(s), label.Gaps(s.Label.Lines)
	out.Old = slices.ContainsFunc(s.Label.Checks, func(c label.Check) bool { return c.Stale })
	if s.Label.Food != "" {
		out.Cautions = append(out.Cautions, cmp.Or(market.Print.NotFood, "Not food: do not eat."))
	}
	if l.Cautions != "" {
		out.Cautions = append(out.Cautions, l.Cautions)
	}
	out.dated(s.Plan, d)
	maker, found := shelf.Label.MakerIn(market.ID)
	out.made(maker)
	if d.Logo != nil {
		logo, err := vector.Photo(d.Logo, 1)
		if err != nil {
			return Label{}, fmt.Errorf("put your logo on the label: %w", err)
		}
		out.logo = &logo
	}
	out.lacks(s.Label, maker, found)
	return out, nil
}

// made is who stands on the label.
func (l *Label) made(m label.Maker) {
	name := m.Name
	if before := l.Market.Print.MadeFor; before != "" && name != "" {
		name = before + " " + name
	}
	for _, line := range []string{name, m.Address, m.Contact} {
		if line != "" {
			l.Maker = append(l.Maker, line)
		}
	}
}

// lacks notes what the market wants and the label has not, and what stands on it that is not sure.
func (l *Label) lacks(s pour.LabelSheet, m label.Maker, stated bool) {
	wants := func(word string) bool { return slices.Contains(l.Market.Print.Wants, word) }
	note := func(format string, args ...any) { l.notes = append(l.notes, fmt.Sprintf(format, args...)) }
	asks := func(what string) { note("%s asks for %s", l.Market.Name, what) }
	switch {
	case l.Net == "":
		note("no weight stands on it: %s", cmp.Or(s.Net.Why, "none could be worked out"))
	case s.Net.Why != "":
		note("its weight does not hold: %s", s.Net.Why)
	}
	if wants(label.WantsMaker) && (!stated || m.Name == "" || m.Address == "") {
		asks("who is responsible, with name and address: state her for " + l.Market.ID + " in your label file")
	}
	if wants(label.WantsContact) && m.Contact == "" {
		asks("a way to reach the maker: state it beside her name in your label file")
	}
	if wants(label.WantsLot) && l.Lot == "" {
		asks("a batch number: print the label of a batch, or give the plan the day of its pour")
	}
	switch {
	case l.Best != "":
	case l.months > 0:
		note("no best-before stands on it, since the day it was made is not known: print the label of a batch, or give the plan the day of its pour")
	case wants(label.WantsDate) && l.OpenMonths == 0:
		asks("best before or months after opening: label.best_before_months, label.open_months")
	}
	if wants(label.WantsIngredients) && l.List == "" {
		asks("ingredients, and there is no list")
	}
	for i := range s.Lines {
		if why := s.Lines[i].Unverified; why != "" && s.Lines[i].Class != label.Unlisted {
			note("%s: not verified, %s", s.Lines[i].Text, why)
		}
	}
}
