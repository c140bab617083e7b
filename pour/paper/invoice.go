package paper

import (
	"fmt"

	"pourbench/pour/stock"
	deeds "pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
)

// InvoiceText writes line by line what was understood of an invoice and what not, and what does not add up.
func InvoiceText(inv invoice.Invoice) string {
	p := textPage()
	for _, l := range inv.Lines {
		if l.Text == "" {
			continue
		}
		mark := "    "
		switch l.Kind {
		case invoice.Odd:
			mark = " ?? "
		case invoice.Taken:
			mark = " ok "
		}
		p.wrapped(mark, l.Text)
		p.wrapped("      > ", l.Tell())
	}
	if inv.Cut > 0 {
		p.alert(fmt.Sprintf("%d lines beyond these were not read", inv.Cut))
	}
	for _, odd := range inv.Check() {
		p.alert(odd)
	}
	p.wrapped("", fmt.Sprintf("%d understood, %d not understood.", inv.Count(invoice.Taken), inv.Count(invoice.Odd)))
	return p.text()
}

// EntryList writes the entries of the ledger that count, in the order of their days.
func EntryList(s stock.State, last int) string {
	p := textPage()
	if len(s.Entries) == 0 {
		p.wrapped("", "Nothing is in the ledger yet.")
	}
	for _, e := range s.Entries[max(0, len(s.Entries)-last):] {
		p.wrapped(e.Day.String()+"  ", e.ID+"  "+deeds.Tell(e))
	}
	return p.text()
}

// LedgerDoubts writes what about the ledger can hardly be.
func LedgerDoubts(s stock.State) string {
	p := textPage()
	for _, d := range s.Odd {
		p.wrapped("", d.Entry+" "+d.Text)
	}
	if len(s.Odd) == 0 {
		p.wrapped("", fmt.Sprintf("%d entries, and nothing in them that cannot be.", len(s.Entries)))
	}
	return p.text()
}
