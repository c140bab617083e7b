package paper

import (
	"fmt"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

// StockList writes what lies on the shelves, kind by kind: of every material how much, what is past its date and what it cost, and under it its
// packs in the order in which they are picked. Packs of which nothing is left are counted only, unless all are asked for. Money is rounded where
// it is shown, half up to the cent.
func StockList(s stock.State, all bool) string {
	p := textPage()
	if len(s.Held) == 0 {
		p.wrapped("", `Nothing lies on the shelves yet. Write in what came, one line for each: pourbench stock receive "olive 5 kg 38.50 lot A12"`)
		return p.text()
	}
	materials := s.Materials()
	for _, kind := range lot.Kinds() {
		first := true
		for _, m := range materials {
			if m.Kind != kind {
				continue
			}
			if first {
				p.raw(strings.ToUpper(string(kind)))
				first = false
			}
			stockOf(p, s, m, all)
		}
	}
	for _, d := range s.Odd {
		p.alert(d.Entry + " " + d.Text)
	}
	return p.text()
}

// stockOf writes one material and its packs.
func stockOf(p *page, s stock.State, m lot.Material, all bool) {
	h, unit := s.Held[m], m.Kind.Unit()
	usable, blocked := h.Left(s.Today)
	_, cost := h.Layers.Total()
	words := []string{fmt.Sprintf("%s %s", usable, unit)}
	if blocked > 0 {
		words = append(words, fmt.Sprintf("%s %s past its date", blocked, unit))
	}
	if h.Reserved > 0 {
		words = append(words, fmt.Sprintf("%s %s reserved", h.Reserved, unit))
	}
	words = append(words, strings.TrimSpace("cost "+cost.Over(1, 2).Cents()+" "+s.Currency))
	empty := 0
	for _, k := range h.Packs {
		if k.Left <= 0 {
			empty++
		}
	}
	if empty > 0 && !all {
		words = append(words, fmt.Sprintf("used up: %d", empty))
	}
	p.wrapped("  ", stockName(h, m)+": "+strings.Join(words, "; "))
	for _, k := range h.Packs {
		if k.Left != 0 || all {
			p.wrapped("      ", stockPack(k, s))
		}
	}
}

// stockName is what a material is called: as its newest pack is.
func stockName(h lot.Holding, m lot.Material) string {
	name, at := m.ID, -1
	for i, k := range h.Packs {
		if k.Name != "" && (at < 0 || k.Bought >= h.Packs[at].Bought) {
			name, at = k.Name, i
		}
	}
	return name
}

// stockPack tells one pack.
func stockPack(k lot.Pack, s stock.State) string {
	words := []string{fmt.Sprintf("%s of %s %s", k.Left, k.Size, k.Material.Kind.Unit())}
	add := func(is bool, text string) {
		if is {
			words = append(words, text)
		}
	}
	add(k.Lot != "", "lot "+k.Lot)
	add(k.Supplier != "", "from "+k.Supplier)
	add(true, map[bool]string{true: "made ", false: "bought "}[k.Made]+k.Bought.String())
	add(k.Opened != 0, "opened "+k.Opened.String())
	add(k.Expires != 0 && !k.Blocked(s.Today), "expires "+k.Expires.String())
	add(k.Blocked(s.Today), "PAST ITS DATE "+k.Expires.String()+": blocked")
	return k.ID + "  " + strings.Join(words, ", ")
}
