package invoice

import (
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/lot"
)

// detail is what a word in a line brings behind it.
type detail struct {
	words []string
	does  func(*reader) // reads what stands behind the words
}

// details are the words that bring something behind them, the longer ones of the same beginning first.
func details() []detail {
	list := func(does func(*reader), phrases ...string) []detail {
		var out []detail
		for _, p := range phrases {
			out = append(out, detail{strings.Fields(p), does})
		}
		return out
	}
	var out []detail
	for _, group := range [][]detail{
		list((*reader).lot, "lot no", "lot number", "lot nr", "batch no", "batch number", "batch nr", "lot", "batch"),
		list((*reader).expires, "best before end", "best before", "use by", "good until", "exp date", "expiry date", "expires on", "expires", "expiry", "exp", "bbe", "bb", "until"),
		list((*reader).bought, "bought on", "invoice date", "order date", "received on", "bought", "received", "dated", "date"),
		list((*reader).post, "p&p", "post", "postage", "shipping", "delivery", "freight", "carriage"),
		list((*reader).supplier, "bought from", "sold by", "from", "supplier"),
		list((*reader).tare, "tare"),
		list((*reader).loss, "usual loss", "loss"),
		list((*reader).article, "art no", "art nr", "article no", "article", "art", "item no", "sku", "ref", "code"),
		list((*reader).free, "free of charge", "for free", "gift", "free"),
		list((*reader).each, "each", "apiece", "per pack", "per bottle", "per bag", "per tub", "ea"),
		list((*reader).all, "all together", "together", "altogether", "in all", "in total", "grand total", "total"),
	} {
		out = append(out, group...)
	}
	return out
}

// detailAt is the detail whose words stand at the front of some runs of letters; nil: none.
func (w words) detailAt(chunks []string) *detail {
	for i := range w.details {
		d := &w.details[i]
		if len(d.words) > len(chunks) {
			continue
		}
		same := true
		for i, w := range d.words {
			same = same && strings.EqualFold(strings.Trim(chunks[i], ".:#"), w)
		}
		if same {
			return d
		}
	}
	return nil
}

// reading is what was read of a line.
type reading struct {
	words    []string // the name, as it stands
	count    int      // packs; 0: none is named
	sizes    []measure
	prices   []price
	post     *price
	lot      string
	supplier string
	bought   day.Day
	expires  day.Day
	tare     *measure
	loss     *measure // or percent
	free     bool
	notes    []string
	why      string // what cannot be read
}

// measure is an amount with its unit; or, of a loss, percent.
type measure struct {
	text    string
	unit    lot.Unit
	percent bool
}

// empty reports whether nothing is said of a thing itself: its name, size or price.
func (r reading) empty() bool {
	return len(r.words) == 0 && len(r.sizes) == 0 && len(r.prices) == 0 && r.count == 0 && !r.free
}

// add takes what another line says of the same thing, and tells what of it there was already.
func (r *reading) add(more reading) (twice string) {
	for _, d := range []struct {
		name       string
		has, comes bool
	}{
		{"a lot", r.lot != "", more.lot != ""},
		{"a day it expires", r.expires != 0, more.expires != 0},
		{"a tare", r.tare != nil, more.tare != nil},
		{"a loss", r.loss != nil, more.loss != nil},
		{"postage", r.post != nil, more.post != nil},
	} {
		if d.has && d.comes {
			return d.name
		}
	}
	r.lot, r.expires, r.tare, r.loss, r.post = firstOf(r.lot, more.lot), firstOf(r.expires, more.expires), firstOf(r.tare, more.tare), firstOf(r.loss, more.loss), firstOf(r.post, more.post)
	r.supplier, r.bought = firstOf(more.supplier, r.supplier), firstOf(more.bought, r.bought)
	r.notes = append(r.notes, more.notes...)
	return ""
}
