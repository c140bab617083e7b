package pour

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"pourbench/chem"
)

// inspectToppings finds what speaks against a topping without the clock.
func (s *Sheet) inspectToppings(shelf Shelf) {
	for i := range s.Toppings {
		t := topper{Sheet: s, line: &s.Toppings[i], blended: shelf.blend(s.Plan.Top.Toppings[i])}
		t.alkali()
		t.wet()
		t.warmRoom()
		t.bench()
		t.plastic()
		t.wire()
		t.dose()
	}
	s.inspectToppingOrder()
}

// placeOfTopping is where a warning of a topping stands.
func placeOfTopping(name string) string { return "topping " + name }

// topper inspects one topping.
type topper struct {
	*Sheet
	blended
	line *ToppingLine
}

// say warns of the topping; the text begins with its name, or with that of the materials it is about.
func (t *topper) say(code, text, do string) {
	t.warn(warning(code, placeOfTopping(t.line.Name), text, do))
}

// names lists the materials of which something is true.
func (t *topper) names(is func(ToppingMaterial) bool) (names string, first ToppingMaterial) {
	var list []string
	for i, m := range t.of {
		if t.Parts[i].Percent > 0 && is(m) {
			if len(list) == 0 {
				first = m
			}
			list = append(list, m.Name)
		}
	}
	return strings.Join(list, ", "), first
}

// because gives the shelf's own word as the reason, where it has one.
func because(note string) string {
	if note == "" {
		return ""
	}
	return " (" + note + ")"
}

// alkali says what fresh soap does to it. A cured bar is dry and has hardly any alkali left: there it is left alone.
func (t *topper) alkali() {
	if t.line.When == StrewCure {
		return
	}
	if names, m := t.names(func(m ToppingMaterial) bool { return m.Alkali.Bleeds == ToppingDoes }); names != "" {
		t.say("topping-bleeds", names+": the colour runs on fresh soap"+because(m.Alkali.Note), "try one bar first, strew it on the cured bars, or take one whose colour holds")
	}
	if names, m := t.names(func(m ToppingMaterial) bool { return m.Alkali.Browns == ToppingDoes }); names != "" {
		t.say("topping-browns", names+": turns brown on fresh soap"+because(m.Alkali.Note), "strew it on the cured bars, take one that keeps its colour, or accept the brown")
	}
	untested := func(m ToppingMaterial) bool {
		a := m.Alkali
		return a.Bleeds != ToppingDoes && a.Browns != ToppingDoes && (a.Bleeds == ToppingMay || a.Browns == ToppingMay)
	}
	if names, m := t.names(untested); names != "" {
		t.say("topping-untested", names+": may bleed or brown on fresh soap, by its packet"+because(m.Alkali.Note), "try it on a piece of your own soap")
	}
}

// wet says what the wet of the top and the damp of the room do to it.
func (t *topper) wet() {
	if names, _ := t.names(func(m ToppingMaterial) bool { return m.Wet.Dissolves }); names != "" && t.line.When == StrewWet {
		t.say("topping-dissolves", names+": dissolves where it touches a top without a skin, however dry the room", "wait until the top has skinned but still grips")
	}
	limit, room := t.line.WeepsRH, t.Plan.Room.HumidityPercent
	names, m := t.names(func(m ToppingMaterial) bool { return m.Wet.WeepsRH.Known || len(m.Wet.Crystals) > 0 })
	switch show := t.Plan.Show; {
	case !limit.Known:
	case room == 0:
		t.say("topping-damp", fmt.Sprintf("%s: draws water until it is wet from %s of humidity on; the room's is not stated", names, show.Percent(limit.V, 0)),
			"put the room's humidity in; keep the bars dry and wrap them once they are cured")
	case room >= limit.V:
		t.say("topping-weeps", fmt.Sprintf("%s: at %s of humidity it draws water until it is wet, from %s on%s%s", names, show.Percent(room, 0), show.Percent(limit.V, 0), because(m.Wet.Note), sweat(room)),
			"keep the bars in drier air and wrap them once they are cured, or take one without sugar or salt")
	}
}

// sweat says what the glycerin of the soap does in air so damp.
func sweat(rhPercent float64) string {
	_, water, ok := chem.GlycerinAt(rhPercent)
	if !ok {
		return ""
	}
	return fmt.Sprintf("; the soap sweats too: its glycerin holds %.1f g of water a gram there", water)
}

// roomMarginC is how far under its melting the room must stay for a topping to keep its shape, K: common practice, no source, by what is said of
// chocolate, which softens from 28 °C and is kept under 26.
const roomMarginC = 2

// warmRoom says whether the room melts it, or the batter it is strewn on.
func (t *topper) warmRoom() {
	melts, show := t.line.MeltsC, t.Plan.Show
	room, batter := t.Plan.Room.TemperatureC, t.Base.Heat.MixC
	names, _ := t.names(func(m ToppingMaterial) bool { return m.Heat.MeltsC.Known })
	switch {
	case !melts.Known:
	case room >= melts.V-roomMarginC:
		t.say("topping-melts", fmt.Sprintf("%s: softens from %s on, and the room is at %s", names, show.Temp(melts.V), show.Temp(room)), "wait for cooler days, or take soap made to look so")
	case t.line.When == StrewWet && batter >= melts.V:
		t.say("topping-melts", fmt.Sprintf("%s: softens from %s on, and the batter is at %s", names, show.Temp(melts.V), show.Temp(batter)), "put it on after the cut")
	}
}

// inspectToppingHeat says which toppings the loaf's own heat can melt. How warm its top gets is not known: it stays cooler than the middle, so
// the edge stands for what it reaches likely and the middle for what it reaches at most.
func (s *Sheet) inspectToppingHeat(shelf Shelf) {
	if s.Gel.Word == "" {
		return
	}
	for i := range s.Toppings {
		t := topper{Sheet: s, line: &s.Toppings[i], blended: shelf.blend(s.Plan.Top.Toppings[i])}
		melts, show, said := t.line.MeltsC, s.Plan.Show, placeOfTopping(t.line.Name)
		if !melts.Known || !t.line.OnLoaf() || slices.ContainsFunc(s.Warnings, func(w Warning) bool { return w.Code == "topping-melts" && w.Where == said }) {
			continue
		}
		names, _ := t.names(func(m ToppingMaterial) bool { return m.Heat.MeltsC.Known })
		const do = "put it on after the cut, or keep the loaf cool"
		switch edge, most := s.Gel.EdgeC, s.Gel.MiddleC.High; {
		case edge.Known && edge.V >= melts.V:
			t.say("topping-melts", fmt.Sprintf("%s: softens from %s on; the loaf warms to near %s at its edge, gel %s", names, show.Temp(melts.V), show.Temp(edge.V), s.Gel.Word), do)
		case s.Gel.Word != GelUnlikely && most.Known && most.V >= melts.V:
			t.say("topping-melts", fmt.Sprintf("%s: softens from %s on; gel is %s, and then the loaf's middle may reach %s, its top less", names, show.Temp(melts.V), s.gelWord(), show.Temp(most.V)), do)
		}
	}
}

// gelWord is how likely the loaf gels, as it is said in a sentence.
func (s *Sheet) gelWord() string {
	if s.Gel.Word == GelInPart {
		return "possible"
	}
	return s.Gel.Word
}

// bench says what hurts whoever puts it on.
func (t *topper) bench() {
	if names, _ := t.names(func(m ToppingMaterial) bool { return m.Flammable }); names != "" {
		t.say("topping-flammable", names+": its vapour burns", "no flame, no spark and no hot plate near; open a window, mist little at a time, let it dry before the loaf is covered; its label and safety data sheet come first")
	}
	if names, _ := t.names(func(m ToppingMaterial) bool { return m.Dust }); names != "" {
		t.say("topping-dust", names+": goes into the air as it is put on", "no draught, a dust mask, brush or sieve close to the top, wipe up damp; its safety data sheet comes first")
	}
}

// PlasticPercent is the share of a product by mass from which plastic particles in it count: Regulation (EU) 2023/2055 (read, by way of
// several summaries of it). The days from which they are no longer sold, loose and in rinse-off products: the same.
const PlasticPercent = 0.01

func plasticDays() (loose, rinseOff time.Time) {
	return time.Date(2023, time.October, 17, 0, 0, 0, 0, time.UTC), time.Date(2027, time.October, 17, 0, 0, 0, 0, time.UTC)
}

// plastic says which rules plastic glitter comes under, and whether these bars are ready too late.
func (t *topper) plastic() {
	names, _ := t.names(func(m ToppingMaterial) bool { return m.Plastic })
	if names == "" {
		return
	}
	loose, rinseOff := plasticDays()
	p, show := t.line.PlasticPercent, t.Plan.Show
	text := names + ": particles of plastic"
	if p.Known {
		under := "under"
		if p.V >= PlasticPercent {
			under = "over"
		}
		text += fmt.Sprintf(", %s of the cured bar, %s the line of %s", show.Percent(p.V, 3), under, show.Percent(PlasticPercent, 2))
	}
	text += fmt.Sprintf("; in the EU no longer sold loose since %s, in rinse-off products not from %s on", dateOf(loose), dateOf(rinseOff))
	if at := t.Plan.PourAt; !at.IsZero() {
		ready := at.Add(time.Duration(t.Plan.Bed.CutAfterH*float64(time.Hour)) + time.Duration(t.Plan.Bed.CureDays*24*float64(time.Hour)))
		if !ready.Before(rinseOff) {
			text += "; these bars are ready after that, on " + dateOf(ready)
		}
	}
	t.say("topping-plastic", text, "take glitter of mica or glass; read Regulation (EU) 2023/2055 or the rules of where you sell: their own text counts")
}

// dateOf writes a date.
func dateOf(at time.Time) string { return at.Format("2 January 2006") }

// wire says what the cut does to grains that lie on the loaf.
func (t *topper) wire() {
	names, _ := t.names(func(m ToppingMaterial) bool {
		return (m.Kind == ToppingGrain || m.Kind == ToppingPiece) && m.Use.SizeMM > 0 && !m.Use.Flat
	})
	if names == "" || !t.line.OnLoaf() {
		return
	}
	how := t.Plan.Cut.Laid()
	if how.Lay == LaySide {
		return
	}
	hits := ""
	if h := t.line.CutHits; h.Known && h.V >= 1 {
		hits = fmt.Sprintf(", about %.0f at each cut", h.V)
	}
	t.say("topping-wire", names+": the cut meets "+how.Passes+", and "+how.Does+hits, "cut with the loaf on its side, keep the lanes over the cuts free, or strew after the cut")
}

// dose compares what goes on with what is usual, where it is one material.
func (t *topper) dose() {
	if len(t.of) > 1 {
		return
	}
	use, show := t.of[0].Use, t.Plan.Show
	name, covers, g := t.of[0].Name, t.line.CoversPercent, t.line.PerBarG
	const do = "try one bar first; too much falls off, too little looks spilt"
	switch {
	case !g.Known:
		t.warn(warning("figure-unknown", placeOfTopping(t.line.Name), name+": the shelf has no size of its grains, so no grams follow from a coverage", "type the grams for a bar"))
	case use.CoverHighPercent > 0 && covers.Known && (covers.V < use.CoverLowPercent-noise || covers.V > use.CoverHighPercent+noise):
		t.say("topping-dose", fmt.Sprintf("%s: covers %s of the top, %s to %s is usual", name, show.Percent(covers.V, 1), show.Percent(use.CoverLowPercent, 0), show.Percent(use.CoverHighPercent, 0)), do)
	case use.DoseHighG > 0 && (g.V < use.DoseLowG-noise || g.V > use.DoseHighG+noise):
		t.say("topping-dose", fmt.Sprintf("%s: %s on a bar, %s to %s is usual", name, show.grams(g.V, doseStepG), show.grams(use.DoseLowG, doseStepG), show.grams(use.DoseHighG, doseStepG)), do)
	}
}

// inspectToppingOrder says which topping goes on too early: what wets comes first, then pieces, then grains, powder last.
func (s *Sheet) inspectToppingOrder() {
	kinds := []string{ToppingDrizzle, ToppingSpray, ToppingPiece, ToppingGrain, ToppingDust}
	rank := func(l ToppingLine) int { return slices.Index(kinds, l.Kind) }
	for _, l := range s.Toppings {
		next, found := math.MaxInt, ToppingLine{}
		for _, later := range s.Toppings {
			if later.When == l.When && later.Turn > l.Turn && later.Turn < next && rank(later) < rank(l) {
				next, found = later.Turn, later
			}
		}
		if next < math.MaxInt {
			s.warn(warning("topping-order", placeOfTopping(l.Name), fmt.Sprintf("%s: goes on before %s, which then wets or buries it", l.Name, found.Name), "put on what wets first, then pieces, then grains, powder and glitter last"))
		}
	}
}
