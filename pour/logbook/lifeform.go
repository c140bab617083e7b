package logbook

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"pourbench/pour/strict"
)

// text is what a batch's life adds to an event in the file: only what it says.
func (l Life) text() string {
	var b strings.Builder
	word := func(key, v string) {
		if v != "" {
			fmt.Fprintf(&b, "%s = %s\n", key, strict.Quote(v))
		}
	}
	count := func(key string, n int) {
		if n != 0 {
			fmt.Fprintf(&b, "%s = %d\n", key, n)
		}
	}
	word("day", l.Day)
	if len(l.Bars) > 0 {
		fmt.Fprintf(&b, "bars = %s\n", list(l.Bars, strconv.Itoa))
	}
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	if len(l.MassesG) > 0 {
		fmt.Fprintf(&b, "masses_g = %s\n", list(l.MassesG, number))
	}
	if l.CrumbsG != 0 {
		fmt.Fprintf(&b, "crumbs_g = %s\n", number(l.CrumbsG))
	}
	count("count", l.Count)
	count("seconds", l.Seconds)
	word("price", l.Price)
	word("currency", l.Currency)
	word("audience", l.Audience)
	word("scent", l.Scent)
	word("colour", l.Colour)
	word("path", l.Path)
	word("market", l.Market)
	return b.String()
}

func list[T any](items []T, word func(T) string) string {
	words := make([]string, len(items))
	for i, x := range items {
		words[i] = word(x)
	}
	return "[" + strings.Join(words, ", ") + "]"
}

// The most a file may say: no loaf has more bars, no bar more grams.
const (
	mostBars = 100_000
	mostG    = 1e6
)

// readLife reads what a batch's life adds to an event.
func readLife(t *strict.Table, l *Life) {
	t.Read("day", &l.Day)
	if l.Day != "" && !isDay(l.Day) {
		t.Say("day", strict.Quote(l.Day), "is no day", `write it as year-month-day, such as "2026-12-06", with the hour where it counts: "2026-12-06 09:30"`)
	}
	var bars []float64
	t.Numbers("bars", &bars)
	for _, n := range bars {
		if n < 1 || n > mostBars || n != float64(int(n)) {
			t.Say("bars", fmt.Sprint(n), "is no number of a bar", "number the bars from 1 at end A")
			break
		}
		l.Bars = append(l.Bars, int(n))
	}
	t.Numbers("masses_g", &l.MassesG)
	for _, g := range l.MassesG {
		if !(g > 0 && g <= mostG) {
			t.Say("masses_g", fmt.Sprint(g), "is no mass of a bar", "write what it weighed, in g, above 0")
			break
		}
	}
	t.Within("crumbs_g", &l.CrumbsG, 0, mostG)
	count := func(key string, at *int) {
		var n int64
		if t.Whole(key, &n) && (n < 0 || n > mostBars) {
			t.Say(key, fmt.Sprint(n), "cannot be a number of bars", fmt.Sprintf("write 0 to %d", mostBars))
			return
		}
		*at = int(n)
	}
	count("count", &l.Count)
	count("seconds", &l.Seconds)
	t.Read("price", &l.Price)
	if l.Price != "" && !price().MatchString(l.Price) {
		t.Say("price", strict.Quote(l.Price), "is no price", `write a decimal number, such as "7.50"`)
	}
	t.Read("currency", &l.Currency)
	t.Read("audience", &l.Audience)
	t.Read("scent", &l.Scent)
	t.Read("colour", &l.Colour)
	if l.Colour != "" && !hex().MatchString(l.Colour) {
		t.Say("colour", strict.Quote(l.Colour), "is no colour", `write it as "#rrggbb"`)
	}
	t.Read("path", &l.Path)
	t.Read("market", &l.Market)
}

func price() *regexp.Regexp { return regexp.MustCompile(`^\d{1,9}(\.\d{1,6})?$`) }

func hex() *regexp.Regexp { return regexp.MustCompile(`^#[0-9a-fA-F]{6}$`) }

// isDay reports whether a text is a day, with or without its hour.
func isDay(s string) bool {
	for _, form := range []string{dayForm, momentForm} {
		if _, err := time.Parse(form, s); err == nil {
			return true
		}
	}
	return false
}
