package stock

import (
	"fmt"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

func form() strict.Form {
	return strict.Form{Noun: "ledger", Bytes: 64 << 20, Items: 1_000_000, Letters: 10_000, Again: "look at what was changed last"}
}

// Parse reads the text of a ledger. Any error is a [*strict.Error]. What a crash left half written at the end is left out.
func Parse(file, src string) ([]Entry, error) {
	body, _ := cutTorn(strings.TrimPrefix(strings.ReplaceAll(src, "\r\n", "\n"), "\ufeff"))
	doc, err := form().Open(file, body)
	if err != nil {
		return nil, err
	}
	top := doc.Top()
	n := int64(0)
	if top.Whole("format", &n); n != FileFormat && body != "" {
		top.Say("format", fmt.Sprint(n), "is none this program reads", fmt.Sprintf("write format = %d, if this is a ledger", FileFormat))
	}
	top.Only("format", "entry")
	var out []Entry
	for i, t := range top.List("entry") {
		e := readEntry(t)
		if e.ID == "" { // written by hand: it needs a name to be taken back by
			e.ID = fmt.Sprintf("line-%d", i+1)
		}
		out = append(out, e)
	}
	return out, doc.Err()
}

func readEntry(t *strict.Table) Entry {
	t.Only(keys()...)
	var e Entry
	t.Missing("kind")
	read(t, "kind", &e.Kind, func(s string) (Kind, error) { return Kind(s), nil })
	t.Read("id", &e.ID)
	readDay(t, "day", &e.Day)
	t.Read("pack", &e.Pack)
	read(t, "material", &e.Material, lot.ParseMaterial)
	for key, at := range map[string]*string{
		"name": &e.Name, "lot": &e.Lot, "supplier": &e.Supplier, "for": &e.For, "jug": &e.Jug, "currency": &e.Currency,
		"text": &e.Text, "of": &e.Of, "corrects": &e.Corrects,
	} {
		t.Read(key, at)
	}
	readDay(t, "expires", &e.Expires)
	readQuantity(t, "quantity", &e.Q)
	readQuantity(t, "tare_g", &e.Tare)
	readQuantity(t, "usual_loss", &e.Loss)
	read(t, "price", &e.Price, money.Parse)
	read(t, "postage", &e.Postage, money.Parse)
	read(t, "formula", &e.Formula, func(s string) (lot.Formula, error) { return lot.Formula(s), nil })
	t.Flag("planned", &e.Planned)
	t.Moment("wall", &e.Wall)
	return e
}

// read reads a line of text as something else.
func read[T any](t *strict.Table, key string, at *T, parse func(string) (T, error)) {
	s := ""
	if !t.Read(key, &s) {
		return
	}
	v, err := parse(s)
	if err != nil {
		t.Say(key, strict.Quote(s), "cannot be read", err.Error())
		return
	}
	*at = v
}

func readDay(t *strict.Table, key string, at *day.Day) {
	var at0 time.Time
	if t.Day(key, &at0) {
		*at = day.Of(at0)
	}
}

func readQuantity(t *strict.Table, key string, at *lot.Quantity) {
	v := 0.0
	if !t.Number(key, &v) {
		return
	}
	q, ok := lot.Weighed(v)
	if !ok {
		t.Say(key, fmt.Sprint(v), "is no quantity", "write grams or pieces, 0 or more")
		return
	}
	*at = q
}

// cutTorn parts the text from an entry at its end that was being written when the machine stopped.
func cutTorn(src string) (body, torn string) {
	at := strings.LastIndex(src, "\n[")
	if at < 0 || !strings.HasPrefix(entryLine, src[at+1:min(len(src), at+1+len(entryLine))]) {
		return src, ""
	}
	last := src[at+1:]
	for _, line := range strings.SplitAfter(last, "\n") {
		key, v, _ := strings.Cut(strings.TrimRight(line, "\n"), "=")
		if strings.TrimSpace(key) == "wall" && (wallOK(v) || strings.HasSuffix(line, "\n")) {
			return src, ""
		}
	}
	return src[:at+1], plain.Line(last)
}
