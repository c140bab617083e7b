package strict

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"pourbench/pour/plain"
)

// Read puts the value of a key into at, by what at points to: *float64, *int, *int64, *bool, *string for a line of text,
// *[]string, *[]float64 or *time.Time for a time on the wall clock. It reports whether a value was put there.
func (t *Table) Read(key string, at any) bool {
	switch at := at.(type) {
	case *float64:
		return t.Number(key, at)
	case *int:
		n := int64(*at)
		ok := t.Whole(key, &n)
		*at = int(n)
		return ok
	case *int64:
		return t.Whole(key, at)
	case *bool:
		return t.Flag(key, at)
	case *string:
		return t.Line(key, at, t.file.form.Letters)
	case *[]string:
		return t.Lines(key, at)
	case *[]float64:
		return t.Numbers(key, at)
	case *time.Time:
		return t.Wall(key, at)
	}
	return false
}

// Number reads a finite number, whole or not.
func (t *Table) Number(key string, at *float64) bool {
	v, there := t.tree[key]
	return there && t.number(key, v, at)
}

func (t *Table) number(key string, v any, at *float64) bool {
	switch v := v.(type) {
	case int64:
		*at = float64(v)
		return true
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Say(key, show(v), "is not a number that can be weighed or measured", "write an ordinary number, as in 12.5")
			return false
		}
		*at = v + 0
		return true
	default:
		t.kind(key, v, "a number is wanted", numberMend(v))
		return false
	}
}

// Within reads a number from low to high.
func (t *Table) Within(key string, at *float64, low, high float64) bool {
	v := *at
	if !t.Number(key, &v) {
		return false
	}
	if v < low || v > high {
		t.Add(key, Outside("", v, low, high))
		return false
	}
	*at = v
	return true
}

// numberMend turns what was meant as a number into how to write it.
func numberMend(v any) string {
	if text, ok := v.(string); ok {
		digits := strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })
		if n, err := ParseNumber(digits); err == nil {
			return fmt.Sprintf("write %s, without quotes or a unit", strconv.FormatFloat(n, 'f', -1, 64))
		}
	}
	return "write a number with a decimal point and without quotes or a unit, as in 12.5"
}

// Whole reads a whole number; a float that is whole passes, as far as a float can count.
func (t *Table) Whole(key string, at *int64) bool {
	const mostFloat = 1 << 53
	switch v := t.tree[key].(type) {
	case nil:
		return false
	case int64:
		*at = v
		return true
	case float64:
		if v != math.Trunc(v) || math.Abs(v) > mostFloat {
			t.Say(key, show(v), "is no whole number", "write a whole number, as in 3")
			return false
		}
		*at = int64(v)
		return true
	default:
		t.kind(key, v, "a whole number is wanted", "write a whole number without quotes, as in 3")
		return false
	}
}

// Flag reads true or false.
func (t *Table) Flag(key string, at *bool) bool {
	v, there := t.tree[key]
	b, ok := v.(bool)
	switch {
	case ok:
		*at = b
	case there:
		t.kind(key, v, "true or false is wanted", "write true or false, without quotes")
	}
	return ok
}

// Line reads a text of at most most letters, made one line that is safe to show.
func (t *Table) Line(key string, at *string, most int) bool {
	v, there := t.tree[key]
	return there && t.line(key, v, at, most)
}

func (t *Table) line(key string, v any, at *string, most int) bool {
	text, ok := v.(string)
	if !ok {
		t.kind(key, v, "text is wanted", "put it in double quotes")
		return false
	}
	text = plain.Line(text)
	if n := utf8.RuneCountInString(text); n > most {
		mend := fmt.Sprintf("keep it to %d letters", most)
		if t.file.form.Long != "" {
			mend += "; " + t.file.form.Long
		}
		t.Say(key, show(text), fmt.Sprintf("is %d letters long", n), mend)
		return false
	}
	*at = text
	return true
}

// Word reads one of a set of words.
func (t *Table) Word(key string, at *string, words ...string) bool {
	word := ""
	if !t.Line(key, &word, t.file.form.Letters) {
		return false
	}
	for _, w := range words {
		if w == word {
			*at = word
			return true
		}
	}
	t.Add(key, NoWord("", word, words))
	return false
}

// Prose reads text of many lines, as it was written but for what could harm a terminal.
func (t *Table) Prose(key string, at *string) bool {
	v, there := t.tree[key]
	text, ok := v.(string)
	switch {
	case ok:
		*at = plain.Text(text)
	case there:
		t.kind(key, v, "text is wanted", `put it in double quotes, or in """ for many lines`)
	}
	return ok
}

// Lines reads a list of lines of text.
func (t *Table) Lines(key string, at *[]string) bool {
	v, there := t.tree[key]
	items, ok := v.([]any)
	if there && !ok {
		t.kind(key, v, "a list of texts is wanted", `write a list in brackets: ["one", "two"]`)
	}
	if !ok || t.tooMany(key, len(items)) {
		return false
	}
	out := make([]string, len(items))
	for i, item := range items {
		ok = t.line(fmt.Sprintf("%s[%d]", key, i), item, &out[i], t.file.form.Letters) && ok
	}
	if len(out) == 0 {
		out = nil
	}
	*at = out
	return ok
}

// Numbers reads a list of finite numbers.
func (t *Table) Numbers(key string, at *[]float64) bool {
	v, there := t.tree[key]
	items, ok := v.([]any)
	if there && !ok {
		t.kind(key, v, "a list of numbers is wanted", "write a list in brackets: [12.5, 38]")
	}
	if !ok || t.tooMany(key, len(items)) {
		return false
	}
	out := make([]float64, len(items))
	for i, item := range items {
		ok = t.number(fmt.Sprintf("%s[%d]", key, i), item, &out[i]) && ok
	}
	if len(out) == 0 {
		out = nil
	}
	*at = out
	return ok
}

// How the TOML library names the zones of what is written without one.
const (
	zoneless   = "datetime-local"
	dateAlone  = "date-local"
	clockAlone = "time-local"
)

// Wall reads a wall clock time. It carries no zone: what counts is the clock on the wall of the room, so it is kept as if that were UTC.
func (t *Table) Wall(key string, at *time.Time) bool {
	v, there := t.tree[key]
	w, ok := v.(time.Time)
	switch {
	case !there:
		return false
	case !ok:
		t.kind(key, v, "a date with a time is wanted", "write it without quotes, as in 2026-12-05T10:00:00")
		return false
	case w.Location().String() != zoneless:
		t.Say(key, show(v), "is not a date with a time and nothing after it",
			"write what the clock on the wall will say, without a zone, as in 2026-12-05T10:00:00")
		return false
	}
	*at = time.Date(w.Year(), w.Month(), w.Day(), w.Hour(), w.Minute(), w.Second(), w.Nanosecond(), time.UTC)
	return true
}

// Day reads a date without a time of day. It is kept as its midnight, as if that were UTC, so that no zone and no summer time moves it.
func (t *Table) Day(key string, at *time.Time) bool {
	v, there := t.tree[key]
	d, ok := v.(time.Time)
	if ok && d.Location().String() == dateAlone {
		*at = time.Date(d.Year(), d.Month(), d.Day(), 0, 0, 0, 0, time.UTC)
		return true
	}
	switch {
	case ok:
		t.Say(key, show(v), "is more than a day or none", "write the day alone, as in 2026-12-05")
	case there:
		t.kind(key, v, "a day is wanted", "write it without quotes, as in 2026-12-05")
	}
	return false
}

// Moment reads a moment: a date with a time and its zone. One without a zone is taken to be in that of this machine.
func (t *Table) Moment(key string, at *time.Time) bool {
	v, there := t.tree[key]
	w, ok := v.(time.Time)
	if ok && w.Location().String() != dateAlone && w.Location().String() != clockAlone {
		*at = w
		return true
	}
	if there {
		t.kind(key, v, "a date with a time and its zone is wanted", "write it without quotes, as in 2026-12-05T10:00:00+01:00")
	}
	return false
}

// kind reports a value of the wrong kind.
func (t *Table) kind(key string, v any, what, mend string) {
	t.Say(key, show(v), what+", but this is "+kindOf(v), mend)
}

func kindOf(v any) string {
	switch v.(type) {
	case string:
		return "text"
	case bool:
		return "true or false"
	case int64, float64:
		return "a number"
	case time.Time:
		return "a date or time"
	case map[string]any:
		return "a table"
	}
	return "a list"
}

// show draws a value as it stands in the file, shortened; lists and tables are left to the reader's own eyes.
func show(v any) string {
	const most = 40
	switch v := v.(type) {
	case string:
		text, cut := clipped(plain.Line(v), most)
		return Quote(text) + cut
	case float64:
		return Short(v)
	case time.Time:
		return showTime(v)
	case int64, bool:
		return fmt.Sprint(v)
	}
	return ""
}

// clipped is the first letters of a text, and a sign where there are more.
func clipped(text string, most int) (first, cut string) {
	for i := range text {
		if most--; most < 0 {
			return text[:i], "…"
		}
	}
	return text, ""
}

func showTime(t time.Time) string {
	switch t.Location().String() {
	case dateAlone:
		return t.Format(time.DateOnly)
	case clockAlone:
		return t.Format("15:04:05.999999999")
	case zoneless:
		return t.Format(WallLayout)
	}
	return t.Format(time.RFC3339)
}

// WallLayout is how a time on the wall clock is written: TOML's local date-time.
const WallLayout = "2006-01-02T15:04:05.999999999"
