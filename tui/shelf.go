package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The lists that are picked from the shelf.
const (
	listMoulds     = "moulds"
	listTechniques = "techniques"
	listOils       = "oils"
	listColourants = "colourants"
	listExtras     = "extras"
	listScents     = "scents"
)

// shelfList opens a list of the shelf for a cell: choosing makes the cell's edit.
func (m *Model) shelfList(cell grid.Cell) *dialog.List {
	l := &dialog.List{Title: "Pick from the " + cell.List + " on the shelf", Items: m.bench.items(cell.List)}
	l.Choose = func(id string) tea.Cmd {
		_ = m.edit(cell.Name, cell.Pick(id)) // a refusal is in the status line
		return nil
	}
	for i, it := range l.Items {
		if it.ID == cell.ID {
			l.At = i
		}
	}
	return l
}

// addList opens a list of the shelf for what a panel adds.
func (m *Model) addList(p layout.Panel) *dialog.List {
	n, shelf := batchName(p), m.session.Shelf()
	switch p.Kind {
	case layout.Extras:
		return m.shelfList(grid.Cell{List: listExtras, Name: "new extra", Pick: func(id string) pour.Edit {
			x, _ := shelf.Extra(id)
			return pour.AddExtra(n, id, middleDose(x.DoseLowPercent, x.DoseHighPercent))
		}})
	case layout.Scents:
		return m.shelfList(grid.Cell{List: listScents, Name: "new scent", Pick: func(id string) pour.Edit {
			return pour.AddScent(n, id, newScentPercent, []string{m.batch(p).Jugs[0].Name})
		}})
	default:
		return m.shelfList(grid.Cell{List: listOils, Name: "new oil", Pick: func(id string) pour.Edit { return pour.AddOil(n, id, newOilPercent) }})
	}
}

// What a new oil and a new scent start at, percent; they are typed over at once.
const (
	newOilPercent   = 5
	newScentPercent = 2
)

func middleDose(low, high float64) float64 {
	if low <= 0 && high <= 0 {
		return 1
	}
	return trim((low + high) / 2)
}

// items lists a kind of things on the shelf, with all that is known of each.
func (b *bench) items(kind string) []dialog.Item {
	switch kind {
	case listOils:
		return each(b.shelf.Oils, oilItem)
	case listColourants:
		return each(b.shelf.Colourants, colourantItem)
	case listExtras:
		return append(each(b.shelf.Extras, extraItem), each(b.shelf.Colourants, colourantItem)...)
	case listScents:
		return each(b.shelf.Scents, b.scentItem)
	case listMoulds:
		return each(b.shelf.Moulds, b.mouldItem)
	default:
		return each(b.shelf.Techniques, techniqueItem)
	}
}

func each[T any](all []T, entry func(T) dialog.Item) []dialog.Item {
	out := make([]dialog.Item, len(all))
	for i, x := range all {
		out[i] = entry(x)
	}
	return out
}

// detail drops what is empty.
func detail(parts ...string) []string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return out
}

func source(s pour.Source) string {
	if s.Text == "" {
		return ""
	}
	return "source: " + s.Text
}

func oilItem(o pour.Oil) dialog.Item {
	return dialog.Item{
		ID: o.ID, Name: o.Name, Aside: "SAP " + percent(o.Fat.Sap, 0),
		Detail: detail(o.Name, "INCI "+o.INCI,
			fmt.Sprintf("%s mg KOH/g, published %s to %s", percent(o.Fat.Sap, 1), percent(o.Fat.LowSap(), 0), percent(o.Fat.HighSap(), 0)),
			o.Note, source(o.SapSource)),
	}
}

func colourantItem(c pour.Colourant) dialog.Item {
	it := dialog.Item{ID: c.ID, Name: c.Name, Aside: c.Class}
	it.Swatch, _ = screen.Hex(c.Colour)
	dust := ""
	if c.Dust {
		dust = "! fine dust: do not breathe it"
	}
	it.Detail = detail(c.Name+", "+c.Class,
		fmt.Sprintf("usual dose %s to %s %% of the jug's batter", percent(c.DoseLowPercent, 2), percent(c.DoseHighPercent, 2)),
		fmt.Sprintf("wets in %s, %s g of carrier per gram", c.Disperse, percent(c.CarrierParts, 1)),
		"in alkali: "+c.Alkali, c.AlkaliNote, c.Caution, dust, source(c.Source))
	return it
}

func extraItem(x pour.Extra) dialog.Item {
	return dialog.Item{
		ID: x.ID, Name: x.Name, Aside: "in the " + x.In,
		Detail: detail(x.Name, "goes into the "+x.In,
			fmt.Sprintf("usual %s to %s %% of the oils", percent(x.DoseLowPercent, 2), percent(x.DoseHighPercent, 2)),
			x.Caution, source(x.Source)),
	}
}

func (b *bench) scentItem(s pour.Scent) dialog.Item {
	behaviour := b.shelf.BehaviourOf(s)
	limit := "no certificate on the shelf"
	if s.LimitPercent > 0 {
		limit = "at most " + percent(s.LimitPercent, 2) + " % of the cured bar"
	}
	vanillin := ""
	if s.VanillinPercent > 0 {
		vanillin = "vanillin " + percent(s.VanillinPercent, 1) + " %: browns"
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
		Detail: detail(s.Name, "in batter: "+behaviour, b.familyNotes(s), s.Notes, limit, vanillin, rices, invented, source(s.Source)),
	}
}

func (b *bench) familyNotes(s pour.Scent) string {
	var parts []string
	for _, id := range s.Families {
		if f, ok := b.shelf.Family(id); ok {
			parts = append(parts, f.Name+" ("+f.Behaviour+")")
		}
	}
	return strings.Join(parts, ", ")
}

func (b *bench) mouldItem(m pour.MouldEntry) dialog.Item {
	size := b.show.Len(m.Mould.LengthMM) + " × " + b.show.Len(m.Mould.WidthMM) + " × " + b.show.Len(m.Mould.HeightMM)
	return dialog.Item{
		ID: m.ID, Name: m.Name, Aside: m.Mould.Shape,
		Detail: detail(m.Name, size, fmt.Sprintf("%d bars of %s", m.Mould.BarCount(), b.show.Len(m.Mould.BarMM)), source(m.Source)),
	}
}

func techniqueItem(t pour.Technique) dialog.Item {
	return dialog.Item{
		ID: t.ID, Name: t.Name, Aside: t.Kind,
		Detail: detail(t.Name, t.Do, "wants "+look.StageName(t.From)+" to "+look.StageName(t.To)+" trace", source(t.Source)),
	}
}
