package pour

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/label"
)

// LabelSheet is what the plan's label has to say in its market. It is filled in by [Sheet.Time], since its weight follows from how the bars dry.
type LabelSheet struct {
	Market    string // id; empty: no label is asked for, and nothing of it is worked out
	Style     label.Style
	Lines     []label.Line
	Allergens []label.Found
	Unstated  []string // scents of which no allergen is stated, where the market wants allergens named
	Text      string   // the list as it is printed, with its heading
	AsBase    []string // embeds taken to be the base's own soap, its colours and scents with it, as the plan says
	Dried     string   // where water would stand by what is in the cured bar; empty: where it does
	MadeG     Figure   // mass of the average bar as it was made: what Lines sum to
	CuredG    Figure   // what allergens are judged on
	Net       label.Net
	HeightMM  Figure        // least height of the weight's figures
	Food      string        // why it could be taken for food; empty: nothing says so
	Claims    []label.Claim // in its title and what it says
	Checks    []label.Check
	Report    label.Verdict
	Refused   string // why nothing of this could be worked out; empty: it was
}

// Labelling is what became of a batch, and of its label once it was drawn, beside its plan. The zero value: nothing yet, all is as planned.
type Labelling struct {
	Went  []Went          // into its batches; nil: as planned
	Bars  PackedBars      // as they were weighed
	Ticks map[string]bool // rows of the market's list that the maker ticked
	Today day.Day         // the zero Day: not known, no row is old
	Lot   string          // of the batch; empty: it is not poured

	LetterMM float64 // height of the weight's figures as the label was drawn; 0: it was not
	Crowded  string  // why not all has room on it; empty: not known, or it has
	Fits     bool    // it was drawn, and all has room
}

// Labelled works out what the label of the plan says of such a batch, in the plan's market. The sheet is one that [Sheet.Time] made.
func (s *Sheet) Labelled(shelf Shelf, of Labelling) LabelSheet {
	plan := &s.Plan.Label
	l := LabelSheet{Market: plan.Market, Style: label.Style(cmp.Or(plan.List, string(label.AsSalts)))}
	m, ok := shelf.Market(plan.Market)
	if !ok {
		l.Refused = "no market " + plan.Market + " on the shelf"
		return l
	}
	c, err := s.charged(&shelf, of.Went)
	if err != nil {
		l.Refused = err.Error()
		return l
	}
	l.AsBase = c.asBase
	charges, made := c.out, c.sum()
	l.MadeG, l.CuredG = AsFigure(made), s.labelCuredG(made)
	entries, err := label.Made(l.Style, charges, m, plan.Names == NamesEnglish)
	if err != nil {
		l.Refused = err.Error()
		return l
	}
	l.Lines = label.List(entries, m)
	l.Allergens = label.Allergens(scentsIn(charges, shelf), made, l.CuredG.orUnknown(), m, shelf.Allergens)
	if m.Allergens != label.AllergensNone {
		l.Unstated = s.unstated(shelf, charges)
	}
	l.Text = label.Text(l.Lines, l.Allergens, m)
	l.Dried = label.Dried(l.Lines, l.CuredG.orUnknown(), m)
	l.Net = label.Declare(s.weighing(m, of.Bars))
	l.HeightMM = s.letterMM(m, l.Net)
	l.Food = s.labelFood(shelf)
	l.Claims = label.Claims(plan.Title+"\n"+plan.Says, m)
	l.Report = s.judged(&shelf, c.amounts(of.Went))
	l.Checks = label.Checks(m, s.labelDesign(shelf, &l, of), of.Ticks, of.Today)
	return l
}

// SameSoap says which embeds the list counts as the base's own soap; empty: none.
func (l *LabelSheet) SameSoap() string {
	if len(l.AsBase) == 0 {
		return ""
	}
	verb := " is"
	if len(l.AsBase) > 1 {
		verb = " are"
	}
	return strings.Join(l.AsBase, ", ") + verb + " counted as the base's own soap, its colours and scents in it"
}

// SameSoapWhy is that with the reason, as a sentence; empty: none is counted so.
func (l *LabelSheet) SameSoapWhy() string {
	if len(l.AsBase) == 0 {
		return ""
	}
	return l.SameSoap() + ": made as the base, the plan says."
}

// weighing is what the weight is declared from: of bars that were weighed or, before, of the forecast, where each bar of the cut dries as the usual one and
// to the light end of what is to be expected. What it loses after packing is all down to what it weighs at last.
func (s *Sheet) weighing(m label.Market, bars PackedBars) label.Weighing {
	w := label.Weighing{System: s.Plan.Label.System, Bars: bars.MassesG, ScaleErrorG: s.Plan.Label.ScaleErrorG, StatedG: s.Plan.Cure.LabelG, Market: m, FurtherLoss: math.NaN()}
	w.Unweighed, w.AtLeast = s.unweighed(bars)
	c := &s.Cure
	if !c.PackG.Mid.Known {
		return w
	}
	w.Forecast, w.ForecastLow, w.FurtherLoss = c.PackG.Mid.V, c.PackG.Low.V, max(0, 1-c.FinalG.V/c.PackG.Mid.V)
	late := s.strewnLate()
	for _, cut := range s.asCut(bars) {
		w.Expected = append(w.Expected, late+(c.PackG.Low.V-late)*cut/s.Bars.CutG)
	}
	return w
}

// SizeMM is how wide and high the label is.
func (l Label) SizeMM() (wide, high float64) {
	const usualWide, usualHigh = 80, 55
	return orUsual(l.WideMM, usualWide), orUsual(l.HighMM, usualHigh)
}

// letterMM is the least height of the weight's figures, on a pack that is the bar as cut with its label.
func (s *Sheet) letterMM(m label.Market, n label.Net) Figure {
	wide, high, longest := s.labelFace()
	return aboveNothing(m.LetterMM(n.G, wide, high, longest))
}

// labelFace is the side of the pack on which the label stands (16 CFR 500.21(a)), however small the label: the bar's largest side as cut, or the label where
// that is larger; and the longest side of either, mm.
func (s *Sheet) labelFace() (wide, high, longest float64) {
	wide, high = s.Plan.Label.SizeMM()
	longest = max(wide, high)
	if box := s.dryingBox(nil); box.ThickMM > 0 { // no number where there is no bar
		sides := [3]float64{box.ThickMM, box.WideMM, s.Bars.StandsMM}
		longest = max(longest, sides[0], sides[1], sides[2])
		for i, a := range sides {
			if b := sides[(i+1)%len(sides)]; a*b > wide*high {
				wide, high = a, b
			}
		}
	}
	return wide, high, longest
}

// labelDesign is what of the design answers a market's list.
func (s *Sheet) labelDesign(shelf Shelf, l *LabelSheet, of Labelling) label.Design {
	maker, _ := shelf.Label.MakerIn(l.Market)
	d := label.Design{
		Maker: maker, Net: l.Net, LetterMM: of.LetterMM, LeastMM: l.HeightMM.V, Dated: s.labelDated(of), Lot: of.Lot,
		Listed: len(l.Lines) > 0, Unsure: l.unsure(), Unstated: l.Unstated, Crowded: of.Crowded, Fits: of.Fits, Claims: l.Claims, Food: l.Food, Verdict: l.Report,
	}
	for i := range l.Allergens {
		switch a := &l.Allergens[i]; {
		case a.Over:
			d.Prohibited = append(d.Prohibited, a.Name)
		case len(a.Either) > 0:
			d.Either = append(d.Either, a.Name)
		}
	}
	for _, t := range s.Toppings {
		for _, p := range t.Parts {
			if m := inList(shelf.Toppings, p.ID, func(m *ToppingMaterial) string { return m.ID }); m.Plastic && !slices.Contains(d.Glitter, m.Name) {
				d.Glitter = append(d.Glitter, m.Name)
			}
		}
	}
	return d
}

// labelDated reports whether a date or months stand on the label: a best-before is counted from a day on which it was made.
func (s *Sheet) labelDated(of Labelling) bool {
	return s.Plan.Label.OpenMo > 0 || s.Plan.Label.BestBeforeMo > 0 && (of.Lot != "" || !s.Plan.PourAt.IsZero())
}

// unsure are the lines of the list that are not sure.
func (l *LabelSheet) unsure() []string {
	var out []string
	for i := range l.Lines {
		if x := &l.Lines[i]; x.Unverified != "" && x.Class != label.Unlisted {
			out = append(out, x.Text)
		}
	}
	return out
}

// unstated are the scents in a bar of which no allergens are stated.
func (s *Sheet) unstated(shelf Shelf, charges []label.Charge) []string {
	var out []string
	for _, b := range s.Batches() {
		for _, x := range b.Scents {
			sc := inList(shelf.Scents, x.ID, func(x *Scent) string { return x.ID })
			in := slices.ContainsFunc(charges, func(c label.Charge) bool { return c.Kind == label.Scent && c.From == x.Name })
			if len(sc.Allergens) == 0 && in && !slices.Contains(out, x.Name) {
				out = append(out, x.Name)
			}
		}
	}
	return out
}

// labelCuredG is the cured mass of a bar that weighs so much as it was made: the usual bar's dry mass and final moisture in proportion.
func (s *Sheet) labelCuredG(made float64) Figure {
	return AsFigure(s.Bars.CuredG * made / s.MadeG().orUnknown())
}

// scentsIn are the scents of a bar, those of one kind added up.
func scentsIn(charges []label.Charge, shelf Shelf) []label.ScentIn {
	var out []label.ScentIn
	at := map[string]int{}
	for i := range charges {
		c := &charges[i]
		if c.Kind != label.Scent {
			continue
		}
		k, known := at[c.From]
		if !known {
			k = len(out)
			at[c.From] = k
			out = append(out, shelf.scentIn(c.From))
		}
		out[k].G += c.G
	}
	return out
}

// scentIn is a scent by its name, without a mass, with what its statement says is in it.
func (s *Shelf) scentIn(name string) label.ScentIn {
	x := inList(s.Scents, name, func(x *Scent) string { return x.Name })
	in := label.ScentIn{Name: name, Extract: x.Extract, Parts: make([]label.Part, 0, len(x.Allergens))}
	for _, a := range x.Allergens {
		in.Parts = append(in.Parts, label.Part{Name: a.Name, CAS: a.CAS, Percent: a.Percent})
	}
	return in
}

// label works out what the plan's label says where a market is stated.
func (s *Sheet) label(shelf Shelf) {
	if s.Plan.Label.Market != "" {
		s.Label = s.Labelled(shelf, Labelling{})
		s.inspectLabel()
	}
}
