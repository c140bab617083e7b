package stock

import (
	"fmt"
	"math"
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

// Parse reads the text of a ledger. Any error is a [*strict.Error]. What a crash left half written at the end is an entry of the kind [Torn].
func Parse(file, src string) ([]Entry, error) {
	src, err := form().Slurp(file, strings.NewReader(src))
	if err != nil {
		return nil, err
	}
	body, torn := cutTorn(evened(src))
	out, err := parseWhole(file, body, 0)
	if err == nil && torn != "" {
		out = append(out, tornEntry(plain.Line(torn)))
	}
	return out, err
}

// parseWhole reads the text of a ledger in which nothing is torn. Before is how many entries stand before those of the text.
func parseWhole(file, body string, before int) ([]Entry, error) {
	doc, err := form().Open(file, body)
	if err != nil {
		return nil, err
	}
	top := doc.Top()
	n := int64(0)
	if top.Whole("format", &n); n != FileFormat && strings.TrimSpace(body) != "" {
		top.Say("format", fmt.Sprint(n), "is none this program reads", fmt.Sprintf("write format = %d, if this is a ledger", FileFormat))
	}
	top.Only("format", "entry")
	tables := top.List("entry")
	out, seen := make([]Entry, 0, len(tables)), make(map[string]bool, len(tables))
	for i, t := range tables {
		e := readEntry(t)
		if e.ID == "" { // written by hand: it needs a name to be taken back by
			e.ID = fmt.Sprintf("line-%d", before+i+1)
		}
		if seen[e.ID] {
			t.Say("id", strict.Quote(e.ID), "is the id of another entry, too", "give one of them another id")
		}
		seen[e.ID] = true
		out = append(out, e)
	}
	return out, doc.Err()
}

func readEntry(t *strict.Table) Entry {
	t.Only(keys()...)
	var e Entry
	kind, formula := "", ""
	t.Word("kind", &kind, words(kinds())...)
	e.Kind = Kind(kind)
	t.Read("id", &e.ID)
	readDay(t, "day", &e.Day)
	t.Read("pack", &e.Pack)
	read(t, "material", &e.Material, lot.ParseMaterial)
	for _, f := range e.lines() {
		t.Read(f.key, f.at)
	}
	readDay(t, "expires", &e.Expires)
	readQuantity(t, "quantity", &e.Q)
	readQuantity(t, "tare_g", &e.Tare)
	readQuantity(t, "usual_loss", &e.Loss)
	read(t, "price", &e.Price, money.Parse)
	read(t, "postage", &e.Postage, money.Parse)
	t.Word("formula", &formula, string(lot.FIFO), string(lot.Average))
	e.Formula = lot.Formula(formula)
	t.Flag("planned", &e.Planned)
	t.Moment("wall", &e.Wall)
	if e.Day == 0 && !e.Wall.IsZero() && e.Corrects == "" && !t.Has("day") {
		e.Day = day.Of(e.Wall)
	}
	check(t, e)
	return e
}

// line is a key of an entry whose value is a line of text.
type line struct {
	key string
	at  *string
}

// lines are the keys of an entry that hold a line of text of any kind.
func (e *Entry) lines() []line {
	return []line{
		{"name", &e.Name},
		{"lot", &e.Lot},
		{"supplier", &e.Supplier},
		{"for", &e.For},
		{"jug", &e.Jug},
		{"currency", &e.Currency},
		{"text", &e.Text},
		{"of", &e.Of},
		{"corrects", &e.Corrects},
	}
}

func words(kinds []Kind) []string {
	out := make([]string, len(kinds))
	for i, k := range kinds {
		out[i] = string(k)
	}
	return out
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
		t.Say(key, strict.Short(v), "is no quantity", "write grams or pieces, from 0 to a hundred tonnes")
		return
	}
	const slack = 1e-7 // of a float64, far below what any scale shows
	if math.Abs(q.V()-v) > slack {
		t.Say(key, strict.Short(v), "is finer than a ledger keeps", "write at most four digits after the point")
		q = max(q, 1)
	}
	*at = q
}

// cutTorn parts the text from an entry at its end that was being written when the machine stopped. One that was written by hand, with whole lines and
// no id, may lack the moment of its writing: this program writes the id right after the kind.
func cutTorn(src string) (body, torn string) {
	body, torn = strict.CutTorn(src, entryLine, lastKey)
	if torn == "" || !strings.HasSuffix(torn, "\n") {
		return body, torn
	}
	others := 0
	for line := range strings.Lines(torn) {
		key, _, is := strings.Cut(line, "=")
		switch key = strings.TrimSpace(key); {
		case is && key == "id":
			return body, torn
		case is && key != "kind":
			others++
		}
	}
	if others > 0 {
		return src, ""
	}
	return body, torn
}
