package label

import "pourbench/pour/day"

// House is what a maker states once for all her labels. It is laid over the shelf; the zero value: nothing is stated.
type House struct {
	Makers  []Maker
	Reports []Report
	Logo    string // path of a PNG or JPEG file of her own; empty: none
}

// Maker is who stands on a label in a market.
type Maker struct {
	Market  string // id of a market; empty: wherever no other is stated
	Name    string // the responsible person, maker or packer
	Address string
	Contact string // telephone, website or e-mail
}

// Report is what an assessor looked at: the ranges a design stays inside.
type Report struct {
	ID     string
	Of     string // what it is about
	On     day.Day
	Ranges []Range
}

// MakerIn is who stands on a label in that market.
func (h House) MakerIn(market string) (Maker, bool) {
	at := -1
	for i, m := range h.Makers {
		if m.Market == market {
			return m, true
		}
		if m.Market == "" && at < 0 {
			at = i
		}
	}
	if at < 0 {
		return Maker{}, false
	}
	return h.Makers[at], true
}

// Report is the report of that id.
func (h House) Report(id string) (Report, bool) {
	for _, r := range h.Reports {
		if r.ID == id {
			return r, true
		}
	}
	return Report{}, false
}
