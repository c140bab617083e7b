package paper

import (
	"fmt"
	"math"
	"strings"

	"pourbench/chem"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/scents"
)

// ScentList writes one line for every scent that was poured or sniffed.
func ScentList(pages []scents.Page, unread []learn.Unread) string {
	p := textPage()
	if len(pages) == 0 {
		p.wrapped("", "No scent was poured or sniffed yet.")
	}
	for _, s := range pages {
		p.wrapped("  ", s.ID+": "+s.Sentence())
	}
	if len(pages) > 0 {
		p.raw("")
		p.wrapped("", "All of one scent: pourbench scent "+pages[0].ID)
	}
	p.unread(unread)
	return p.text()
}

// unread names the pours that could not be read, with the reason.
func (p *page) unread(unread []learn.Unread) {
	for _, u := range unread {
		p.wrapped("", "not read: "+u.ID+": "+u.Err.Error())
	}
}

// ScentText writes the page of one scent, for paper or for a screen of so many columns, 60 at the least.
func ScentText(s scents.Page, columns int) string {
	p := &page{format: format{wide: max(columns, leastScent)}}
	p.wrapped("", "SCENT: "+s.Name)
	p.wrapped("", s.Sentence()+".")
	p.raw("")
	scentPoured(p, s)
	scentClock(p, s)
	scentTroubles(p, s)
	scentBrowning(p, s)
	scentWeeks(p, s)
	scentAudiences(p, s)
	return p.text()
}

// Columns of a scent's page: of paper, of the narrowest screen with its frame, and the least that its weeks take.
const (
	ScentOnPaper  = 80
	ScentOnScreen = 74
	leastScent    = 60
)

func scentPoured(p *page, s scents.Page) {
	text := s.ID
	if !s.OnShelf {
		text += ", which is not on the shelf today"
	}
	switch {
	case s.Poured == 1:
		text += fmt.Sprintf(": poured once, on %s", s.First)
	case s.Poured > 1:
		text += fmt.Sprintf(": poured %d times, from %s to %s", s.Poured, s.First, s.Last)
	case len(s.Weeks) > 0 || s.Unplaced > 0:
		text += ": in no plan that was poured; what follows was sniffed all the same"
	default:
		text += ": in no plan that was poured"
	}
	if s.LeftOut > 0 {
		text += fmt.Sprintf("; %d of these teach nothing, and nothing more is told of them", s.LeftOut)
	}
	p.wrapped("", text+".")
}

func scentClock(p *page, s scents.Page) {
	p.raw("")
	if s.Clock == nil {
		believed := ""
		if s.Behaviour != "" {
			believed = " The shelf says: " + s.Behaviour + "."
		}
		p.wrapped("CLOCK  ", "has learnt nothing of it: no stage was marked in a jug that held it."+believed)
		return
	}
	f := s.Clock
	p.wrapped("CLOCK  ", fmt.Sprintf("%s: %.2f times the speed at %g %% of oils, 80 %% band %.2f to %.2f; believed %.2f before; nearest word %s; from %d of your pours.",
		s.Pace(), f.Factor, f.LoadPercent, f.Low, f.High, f.Prior, f.Behaviour, f.Pours))
}

func scentTroubles(p *page, s scents.Page) {
	p.raw("")
	if len(s.Troubles) == 0 {
		p.wrapped("TROUBLE  ", "none was marked.")
		return
	}
	for i, t := range s.Troubles {
		alone := "never in a jug that held it alone"
		if t.Alone > 0 {
			alone = fmt.Sprintf("in %d with it alone in the jug", t.Alone)
		}
		p.wrapped(hung("TROUBLE  ", i), fmt.Sprintf("%s in %d of your pours, %s.", t.Word, t.Pours, alone))
	}
}

// hung is a lead before the first of several lines, and room before the others.
func hung(lead string, i int) string {
	if i == 0 {
		return lead
	}
	return strings.Repeat(" ", width(lead))
}

// mostLooks is how many jugs that were looked at are told one by one, the latest ones.
const mostLooks = 8

func scentBrowning(p *page, s scents.Page) {
	p.raw("")
	words, jugs := s.Tints()
	var predicted []string
	for i, w := range words {
		predicted = append(predicted, fmt.Sprintf("%s in %s", tint(w), counted(jugs[i], "jug")))
	}
	if len(predicted) == 0 {
		p.wrapped("BROWNING  ", "was predicted of no jug.")
		return
	}
	p.wrapped("BROWNING  ", "predicted: "+strings.Join(predicted, ", ")+".")
	var looked []scents.Browned
	for _, b := range s.Browning {
		if b.Looked || b.Colour != "" {
			looked = append(looked, b)
		}
	}
	if len(looked) == 0 {
		p.wrapped(hung("BROWNING  ", 1), "nobody has looked yet: pourbench logbook look.")
	}
	if more := len(looked) - mostLooks; more > 0 {
		looked = looked[more:]
		p.wrapped(hung("BROWNING  ", 1), fmt.Sprintf("seen in %s, the last %d of them:", counted(more+mostLooks, "jug"), mostLooks))
	}
	for _, b := range looked {
		p.wrapped(hung("BROWNING  ", 1), lookText(b))
	}
}

// lookText is what was predicted and seen of one jug.
func lookText(b scents.Browned) string {
	text := fmt.Sprintf("%s, %s: predicted %s", b.Pour, b.Jug, tint(b.Predicted))
	if b.Looked {
		text += fmt.Sprintf("; seen %s of 4", tenth(b.Seen))
		if b.Placed {
			text += fmt.Sprintf(" in week %d", b.Week)
		}
	}
	if b.Colour != "" {
		text += ", " + b.Colour
	}
	if !b.Alone {
		text += "; other scents in the jug too"
	}
	return text + "."
}

func tint(w chem.Browning) string {
	switch w {
	case "":
		return "not known"
	case chem.BrowningNone:
		return "no browning"
	}
	return string(w)
}

// tenth is a number with at most one decimal.
func tenth(v float64) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0")
}

// strengthWidth is how wide the bar of the greatest strength is.
const strengthWidth = 20

func scentWeeks(p *page, s scents.Page) {
	p.raw("")
	if len(s.Weeks) == 0 {
		p.wrapped("STRENGTH  ", "nobody has sniffed it since a cut: pourbench logbook sniff.")
	} else {
		p.wrapped("STRENGTH  ", "by week since the cut, 0 nothing to 4 very strong, as you sniffed it. How a scent goes off a drying bar was measured nowhere that was found, so nothing is reckoned: weeks without a sniff stay empty.")
		weekRows(p, s.Weeks)
	}
	if s.Unplaced > 0 {
		p.wrapped("  ", fmt.Sprintf("%s before the cut, or of a loaf whose cut is not logged, are in no week.", counted(s.Unplaced, "sniff")))
	}
	if s.Shared > 0 {
		p.wrapped("  ", fmt.Sprintf("%s of whole bars that hold other scents too are not counted: name the scent to count one.", counted(s.Shared, "sniff")))
	}
	if len(s.Words) > 0 {
		p.wrapped("  ", "Your words: "+wordsText(s.Words)+".")
	}
}

// weekRows draws the weeks, each as a bar with its mean, range and number; more than one week in a row without a sniff take one line.
func weekRows(p *page, weeks []scents.Week) {
	row := func(week, bar, rest string) {
		p.raw(strings.TrimRight("  "+padded(week, 16)+padded(bar, strengthWidth+2)+rest, " "))
	}
	next := 0
	for _, w := range weeks {
		switch gap := w.Week - next; {
		case gap == 1:
			row(fmt.Sprintf("week %d", next), "", "")
		case gap > 1:
			row(fmt.Sprintf("weeks %d to %d", next, w.Week-1), "", "")
		}
		bar := strings.Repeat("#", int(math.Round(min(max(w.Mean, 0), 4)/4*strengthWidth)))
		rest := fmt.Sprintf("%.1f %s", w.Mean, scents.Strength(w.Mean))
		if w.N > 1 {
			rest += fmt.Sprintf(", %s to %s", tenth(w.Low), tenth(w.High))
		}
		row(fmt.Sprintf("week %d", w.Week), bar, rest+", "+counted(w.N, "sniff"))
		next = w.Week + 1
	}
}

// mostWords is how many of her words are told.
const mostWords = 12

func wordsText(words []scents.Word) string {
	var out []string
	for _, w := range words[:min(len(words), mostWords)] {
		text := w.Text
		if w.Times > 1 {
			text += fmt.Sprintf(" (%d times)", w.Times)
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}

func scentAudiences(p *page, s scents.Page) {
	p.raw("")
	if len(s.Audiences) == 0 {
		p.wrapped("WENT TO  ", "no bar with it was sold or given yet.")
		return
	}
	for i, a := range s.Audiences {
		name := a.Name
		if name == "" {
			name = "no audience named"
		}
		var how []string
		if a.Sold > 0 {
			how = append(how, counted(a.Sold, "bar")+" sold")
		}
		if a.Given > 0 {
			how = append(how, counted(a.Given, "bar")+" given")
		}
		p.wrapped(hung("WENT TO  ", i), fmt.Sprintf("%s: %s, of %s.", name, strings.Join(how, ", "), counted(a.From, "pour")))
	}
}
