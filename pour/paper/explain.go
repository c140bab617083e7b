package paper

import "pourbench/pour"

// Explain writes an account as text of at most 80 columns: the figure, its formula in words and in numbers, where these are from, its
// band, and the warnings it feeds.
func Explain(a pour.Account) string {
	const leadW = 7
	p := textPage()
	for i, l := range a.Tell() {
		switch {
		case i == 0:
			p.wrapped("", l.Lead+": "+l.Text)
		case l.Lead == "":
			p.wrapped(padded("", leadW), l.Text)
		default:
			p.wrapped(padded(l.Lead, leadW), l.Text)
		}
	}
	return p.text()
}
