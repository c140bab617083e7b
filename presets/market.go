package presets

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/strict"
)

// readMarket reads a [[market]]: what the label of a bar follows where it is sold.
func readMarket(r *row, m *label.Market) {
	r.need("name", "as_of")
	if r.fresh {
		m.Heading, m.ScentWord, m.FreePercent, m.Allergens, m.OverPercent, m.HeightBy = "Ingredients:", "Parfum", 1, label.AllergensLong, 0.01, label.HeightByMass
	}
	before := m.AsOf
	r.name(&m.Name)
	r.text("short", &m.Short, 16, "its name for narrow places")
	r.day("as_of", &m.AsOf, "the day it was looked up; alone, it is that of every row that was as old")
	if m.Short == "" {
		m.Short = m.ID
	}
	r.text("heading", &m.Heading, 60, "what stands before the list of ingredients")
	r.flag("whole_inci", &m.WholeINCI, "INCI names keep the English word in brackets")
	r.flag("eu_trivial", &m.EUTrivial, "but trivial names are those of the EU: Aqua, Cera Alba")
	r.flag("english", &m.English, "English names may stand instead of INCI names")
	r.text("scent_word", &m.ScentWord, 40, "the word for scent in the list")
	r.flag("scent_last", &m.ScentLast, "it stands at the end")
	r.flag("by_name", &m.ByName, "colourants by name rather than by number")
	r.number("free_percent", &m.FreePercent, 0, 100, "of the bar: below this any order is right")
	r.flag("free_at", &m.FreeAt, "and at it")
	r.word("allergens", &m.Allergens, "which list of allergens it follows", label.AllergensLong, label.AllergensOld, label.AllergensNone)
	r.number("over_percent", &m.OverPercent, 0, 100, "of the cured bar: allergens above this are named")
	r.flag("pounds", &m.Pounds, "ounces stand beside the grams")
	r.word("height_by", &m.HeightBy, "what the least height of the weight's figures goes by", label.HeightByMass, label.HeightByFace, label.HeightBySide)
	readHeights(r, &m.Heights)
	r.word("average", &m.Average, "how single packs are judged where the average counts; left out: not known, every pack must hold", label.AverageTNE, label.AverageFive)
	r.flag("after_packing", &m.AfterPacking, "the weight is judged after packing too")
	figures := float64(m.Figures)
	r.number("figures", &figures, 0, 9, "of a weight that count at most; 0: any")
	m.Figures = int(figures)
	r.number("kilo_from_g", &m.KiloFrom, 0, 1e6, "of a weight: from there on it is said in kilograms; 0: never")
	r.flag("only_soap", &m.OnlySoap, "sold only as soap: claims of more move it to another class")
	readPrint(r, &m.Print)
	source := pour.Source{Text: m.From, Confidence: m.Checked}
	r.source("source", &source, "allergens", "over_percent", "heights", "row")
	m.From, m.Checked = source.Text, source.Confidence
	if !readRows(r, m) && !r.fresh {
		lookAgain(m, before)
	}
}

// lookAgain gives a market's rows its new day: a maker who states only that she looked the market up anew looked up all that was as old as it.
func lookAgain(m *label.Market, before day.Day) {
	m.Rows = slices.Clone(m.Rows)
	for i := range m.Rows {
		if m.Rows[i].AsOf == before {
			m.Rows[i].AsOf = m.AsOf
		}
	}
}

// readHeights reads the table of heights, from the smallest; the last row holds for all above.
func readHeights(r *row, to *[]label.Height) {
	const key = "heights"
	if !r.ask(key, "list of { up_to, mm }, the last without up_to", "", "least height of the weight's figures, mm, up to so many g, cm² or mm as height_by says") {
		return
	}
	var out []label.Height
	list := r.in.List(key)
	last := 0.0
	for i, in := range list {
		in.Only("up_to", "mm")
		h := label.Height{}
		in.Within("up_to", &h.UpTo, 0, 1e6)
		in.Within("mm", &h.MM, 0, 100)
		switch end := i == len(list)-1; {
		case h.MM <= 0:
			r.fault(key, "", fmt.Sprintf("number %d has no mm", i+1), "write how high the figures must be at least")
		case end && in.Has("up_to"):
			r.fault(key, strict.Short(h.UpTo), "is the end of the last", "leave up_to out of the last: it holds for all above")
		case !end && h.UpTo <= last:
			r.fault(key, strict.Short(h.UpTo), "comes not after the one before", "write them from the smallest up")
		}
		last = math.Max(last, h.UpTo)
		out = append(out, h)
	}
	*to = out
}

// readRows reads the list to work through, and reports whether there is one; a maker's list replaces the one that was there. A row's day is the market's
// where it names none.
func readRows(r *row, m *label.Market) bool {
	const key = "row"
	if !r.ask(key, "[[market.row]] with id, text, document, clause, confidence, as_of, finds", "", "what stands on a label there, or is done before sale; finds: what answers it by itself, "+strings.Join(label.Answers(), ", ")) {
		return false
	}
	list := r.in.List(key)
	out := make([]label.Row, len(list))
	seen := map[string]bool{}
	for i, in := range list {
		w := &out[i]
		in.Only("id", "text", "document", "clause", "confidence", "as_of", "finds")
		in.Line("id", &w.ID, 40)
		in.Line("text", &w.Text, 200)
		in.Line("document", &w.Document, 120)
		in.Line("clause", &w.Clause, 60)
		in.Word("confidence", &w.Confidence, "read", "read (2nd-hand)", "memory", "derived", "common practice", "own")
		in.Word("finds", &w.Finds, label.Answers()...)
		w.AsOf = m.AsOf
		dayOf(in, "as_of", &w.AsOf)
		switch {
		case !kebab(w.ID) || seen[w.ID]:
			in.Say("id", strict.Quote(w.ID), "is no id of its own", "give each row an id in small letters: it is what ticks name")
		case w.Text == "" || w.Document == "" || w.Confidence == "":
			in.Say("", "", "lacks its text, its document or its confidence", "say what is asked, where that stands, and how far you checked it")
		}
		seen[w.ID] = true
	}
	m.Rows = out
	return true
}

// day reads a day, as text: "2026-11-28".
func (r *row) day(key string, to *day.Day, means string) {
	standard := ""
	if *to != 0 {
		standard = to.String()
	}
	if r.ask(key, `a day, as "2026-11-28"`, standard, means) {
		dayOf(r.in, key, to)
	}
}

// dayOf reads a day of a table, where it stands there.
func dayOf(in *strict.Table, key string, to *day.Day) {
	text := ""
	if !in.Line(key, &text, 10) {
		return
	}
	d, err := day.Parse(text)
	if err != nil {
		in.Say(key, strict.Quote(text), "is no day", `write it as "2026-11-28"`)
		return
	}
	*to = d
}

// readPrint reads how a label is printed there.
func readPrint(r *row, p *label.Print) {
	const key = "print"
	keys := "identity, wants, made_for, not_food, by_capital, bold_net, lowest_percent, lowest_cm2, clear_mm, text_mm, small_cm2, small_mm, no_band"
	if !r.ask(key, "{ "+keys+" }", "", "how a label is printed there: heights in mm, faces in cm²; wants is a list of maker, contact, lot, date, ingredients") {
		return
	}
	in, ok := r.in.Section(key)
	if !ok {
		return
	}
	in.Only(strings.Split(keys, ", ")...)
	in.Line("identity", &p.Identity, 60)
	in.Lines("wants", &p.Wants)
	known := []string{label.WantsMaker, label.WantsContact, label.WantsLot, label.WantsDate, label.WantsIngredients}
	for _, w := range p.Wants {
		if !slices.Contains(known, w) {
			in.Add("wants", strict.NoWord("wants", w, known))
		}
	}
	in.Line("made_for", &p.MadeFor, 40)
	in.Line("not_food", &p.NotFood, 80)
	in.Flag("by_capital", &p.ByCapital)
	in.Flag("bold_net", &p.BoldNet)
	in.Within("lowest_percent", &p.Lowest, 0, 100)
	in.Within("lowest_cm2", &p.LowestCM2, 0, 1e4)
	in.Within("clear_mm", &p.ClearMM, 0, 50)
	in.Within("text_mm", &p.TextMM, 0, 20)
	in.Within("small_cm2", &p.SmallCM2, 0, 1e4)
	in.Within("small_mm", &p.SmallMM, 0, 20)
	in.Line("no_band", &p.NoBand, 120)
}
