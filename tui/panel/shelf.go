package panel

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The lists that are picked from the shelf, named in a [grid.Cell].
const (
	listMoulds     = "moulds"
	listTechniques = "techniques"
	listOils       = "oils"
	listColourants = "colourants"
	listExtras     = "extras"
	listScents     = "scents"
	listToppings   = "toppings"
	listMarkets    = "markets"
	listReports    = "reports"
)

// Items lists a kind of things on the shelf, with all that is known of each.
func (f *Facts) Items(kind string) []dialog.Item {
	switch kind {
	case listOils:
		return each(f.Shelf.Oils, f.oilItem)
	case listColourants:
		return each(f.Shelf.Colourants, f.colourantItem)
	case listExtras:
		return append(each(f.Shelf.Extras, f.extraItem), each(f.Shelf.Colourants, f.colourantItem)...)
	case listScents:
		return each(f.Shelf.Scents, f.scentItem)
	case listEntries:
		return f.entryItems()
	case listToppings:
		return each(f.Shelf.Toppings, f.toppingItem)
	case listMarkets:
		return f.marketItems()
	case listReports:
		return f.reportItems()
	case listMoulds:
		return each(f.Shelf.MouldsToTake(), f.mouldItem)
	default:
		return each(f.Shelf.Techniques, f.techniqueItem)
	}
}

func each[T any](all []T, entry func(T) dialog.Item) []dialog.Item {
	out := make([]dialog.Item, len(all))
	for i, x := range all {
		out[i] = entry(x)
	}
	return out
}

func source(s pour.Source) string {
	if s.Text == "" {
		return ""
	}
	return "source: " + s.Told()
}

func (f *Facts) oilItem(o pour.Oil) dialog.Item {
	return dialog.Item{
		ID: o.ID, Name: o.Name, Also: o.Also, Aside: "SAP " + f.percent(o.Fat.Sap, 0),
		Detail: []string{
			o.Name, also(o.Also), "INCI " + o.INCI,
			fmt.Sprintf("%s mg KOH/g, published %s to %s", f.percent(o.Fat.Sap, 1), f.percent(o.Fat.LowSap(), 0), f.percent(o.Fat.HighSap(), 0)),
			pour.MakersWords(o.Note), source(o.SapSource),
		},
	}
}

// also lists the other names something goes by.
func also(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return "also " + strings.Join(names, ", ")
}

func (f *Facts) colourantItem(c pour.Colourant) dialog.Item {
	it := dialog.Item{ID: c.ID, Name: c.Name, Aside: c.Class}
	if colour, ok := screen.Hex(c.Colour); ok {
		it.Swatches = []screen.Colour{colour}
		it.Aside = look.ColourWord(colour) + ", " + c.Class
	}
	dust := ""
	if c.Dust {
		dust = "! fine dust: do not breathe it"
	}
	it.Detail = []string{
		c.Name + ", " + c.Class,
		fmt.Sprintf("usual dose %s to %s %% of the jug's batter", f.percent(c.DoseLowPercent, 2), f.percent(c.DoseHighPercent, 2)),
		fmt.Sprintf("wets in %s, %s g of carrier per gram", c.Disperse, f.percent(c.CarrierParts, 1)),
		"in alkali: " + c.Alkali, c.AlkaliNote, c.Caution, dust, source(c.Source),
	}
	return it
}

func (f *Facts) extraItem(x pour.Extra) dialog.Item {
	return dialog.Item{
		ID: x.ID, Name: x.Name, Aside: "in the " + x.In,
		Detail: []string{
			x.Name, "goes into the " + x.In,
			fmt.Sprintf("usual %s to %s %% of the oils", f.percent(x.DoseLowPercent, 2), f.percent(x.DoseHighPercent, 2)),
			x.Caution, source(x.Source),
		},
	}
}

func (f *Facts) scentItem(s pour.Scent) dialog.Item {
	behaviour := f.Shelf.BehaviourOf(s)
	limit := "no certificate on the shelf"
	if s.LimitPercent > 0 {
		limit = "at most " + f.percent(s.LimitPercent, 2) + " % of the cured bar"
	}
	vanillin := ""
	if s.VanillinPercent > 0 {
		vanillin = "vanillin " + f.percent(s.VanillinPercent, 1) + " %: browns"
	}
	rices := ""
	if s.Rices {
		rices = "! known to rice or separate"
	}
	invented := ""
	if s.Invented {
		invented = "an example, not a product"
	}
	return dialog.Item{
		ID: s.ID, Name: s.Name, Aside: behaviour,
		Detail: []string{s.Name, inBatter(behaviour), f.familyNotes(s), s.Notes, limit, vanillin, rices, invented, source(s.Source)},
	}
}

func (f *Facts) familyNotes(s pour.Scent) string {
	var parts []string
	for _, id := range s.Families {
		if f, ok := f.Shelf.Family(id); ok {
			parts = append(parts, f.Name+" ("+f.Behaviour+")")
		}
	}
	return strings.Join(parts, ", ")
}

func (f *Facts) mouldItem(m pour.MouldEntry) dialog.Item {
	size := f.Show.Len(m.Mould.LengthMM) + " × " + f.Show.Len(m.Mould.WidthMM) + " × " + f.Show.Len(m.Mould.HeightMM)
	if m.Mould.Shape == pour.ShapeTube {
		size = f.Show.Len(m.Mould.LengthMM) + " across, " + f.Show.Len(m.Mould.HeightMM) + " high"
	}
	aside := m.Mould.Shape
	if m.Own {
		aside = "yours, " + aside
	}
	return dialog.Item{
		ID: m.ID, Name: m.Name, Aside: aside,
		Detail: []string{m.Name, size, fmt.Sprintf("%d bars of %s", m.Mould.BarCount(), f.Show.Len(m.Mould.ThicknessMM())), source(m.Source)},
	}
}

func (f *Facts) techniqueItem(t pour.Technique) dialog.Item {
	return dialog.Item{
		ID: t.ID, Name: t.Name, Aside: t.Kind,
		Detail: []string{t.Name, t.Do, "wants batter at " + t.Suits() + " trace", source(t.Source)},
	}
}
