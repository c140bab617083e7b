package planfile

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// mostLetters bounds a text of one line. Nothing that long fits a screen or a sheet of paper.
const mostLetters = 200

// mostItems bounds every list. It is above what [pour.Plan.Check] lets pass, which has the better words for a list that is only somewhat too long.
const mostItems = 256

// put puts a value of the file where its field stands in the plan; a value of the wrong kind is a problem and leaves the place alone.
func (r *reader) put(path string, v, at any) {
	switch at := at.(type) {
	case *float64:
		r.putNumber(path, v, at)
	case measured:
		*at.known = r.putNumber(path, v, at.v)
	case *int:
		if n, ok := r.whole(path, v); ok {
			*at = int(n)
		}
	case *int64:
		if n, ok := r.whole(path, v); ok {
			*at = n
		}
	case *bool:
		if b, ok := v.(bool); ok {
			*at = b
			return
		}
		r.kind(path, v, "true or false is wanted", "write true or false, without quotes")
	case *string:
		r.putLine(path, v, at)
	case *prose:
		if text, ok := v.(string); ok {
			*at = prose(plain.Text(text))
			return
		}
		r.kind(path, v, "text is wanted", `put it in double quotes, or in """ for many lines`)
	case *[]string:
		r.putLines(path, v, at)
	case *time.Time:
		r.putTime(path, v, at)
	case list:
		r.putItems(path, v, at)
	}
}

func (r *reader) putNumber(path string, v any, at *float64) bool {
	switch v := v.(type) {
	case int64:
		*at = float64(v)
		return true
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			r.say(path, show(v), "is not a number that can be weighed or measured", "write an ordinary number, as in 12.5")
			return false
		}
		*at = v + 0
		return true
	}
	r.kind(path, v, "a number is wanted", numberMend(v))
	return false
}

// numberMend turns what was meant as a number into how to write it.
func numberMend(v any) string {
	if text, ok := v.(string); ok {
		digits := strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })
		if n, err := pour.ParseNumber(digits); err == nil {
			return fmt.Sprintf("write %s, without quotes or a unit", strconv.FormatFloat(n, 'f', -1, 64))
		}
	}
	return "write a number with a decimal point and without quotes or a unit, as in 12.5"
}

// whole reads a whole number; a float that is whole passes, as far as a float can count.
func (r *reader) whole(path string, v any) (int64, bool) {
	const mostFloat = 1 << 53
	switch v := v.(type) {
	case int64:
		return v, true
	case float64:
		if v == math.Trunc(v) && math.Abs(v) <= mostFloat {
			return int64(v), true
		}
		r.say(path, show(v), "is no whole number", "write a whole number, as in 3")
		return 0, false
	}
	r.kind(path, v, "a whole number is wanted", "write a whole number without quotes, as in 3")
	return 0, false
}

func (r *reader) putLine(path string, v any, at *string) {
	text, ok := v.(string)
	if !ok {
		r.kind(path, v, "text is wanted", `put it in double quotes, as in "pot"`)
		return
	}
	if n := utf8.RuneCountInString(text); n > mostLetters {
		r.say(path, show(text), fmt.Sprintf("is %d letters long", n), fmt.Sprintf("keep it under %d letters; longer text goes into notes", mostLetters))
		return
	}
	*at = plain.Line(text)
}

func (r *reader) putLines(path string, v any, at *[]string) {
	items, ok := v.([]any)
	if !ok {
		r.kind(path, v, "a list of texts is wanted", `write a list in brackets, as in ["pot", "fern"]`)
		return
	}
	if r.tooMany(path, len(items)) {
		return
	}
	var out []string
	for i, item := range items {
		text := ""
		r.putLine(fmt.Sprintf("%s[%d]", path, i), item, &text)
		out = append(out, text)
	}
	*at = out
}

// putTime reads a wall clock time. It carries no zone: what counts is the clock on the wall of the room, so it is kept as if that were UTC.
func (r *reader) putTime(path string, v any, at *time.Time) {
	const local = "datetime-local" // how the TOML library names the zone of a time written without one
	t, ok := v.(time.Time)
	if !ok {
		r.kind(path, v, "a date with a time is wanted", "write it without quotes, as in 2026-12-05T10:00:00")
		return
	}
	if t.Location().String() != local {
		r.say(path, show(v), "is not a date with a time and nothing after it",
			"write what the clock on the wall will say, without a zone, as in 2026-12-05T10:00:00")
		return
	}
	*at = wall(t)
}

// wall keeps what a clock shows and drops where it hangs.
func wall(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
}

func (r *reader) putItems(path string, v any, at list) {
	items, ok := tables(v)
	if !ok {
		r.kind(path, v, "a list of tables is wanted", fmt.Sprintf("start each item with a line [[%s]]", bare(path)))
		return
	}
	if r.tooMany(path, len(items)) {
		return
	}
	at.grow(len(items))
	for i, item := range items {
		r.table(fmt.Sprintf("%s[%d]", path, i), item, at.item(i), nil)
	}
}

func (r *reader) tooMany(path string, n int) bool {
	if n > mostItems {
		r.say(path, "", fmt.Sprintf("has %d items", n), fmt.Sprintf("keep to %d; this cannot be a plan for one bench", mostItems))
	}
	return n > mostItems
}

// tables reads an array of tables in either way of writing one.
func tables(v any) ([]map[string]any, bool) {
	switch v := v.(type) {
	case []map[string]any:
		return v, true
	case []any:
		out := make([]map[string]any, len(v))
		for i, item := range v {
			t, ok := item.(map[string]any)
			if !ok {
				return nil, false
			}
			out[i] = t
		}
		return out, true
	}
	return nil, false
}

// kind reports a value of the wrong kind.
func (r *reader) kind(path string, v any, what, mend string) {
	r.say(path, show(v), what+", but this is "+kindOf(v), mend)
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
		text := []rune(plain.Line(v))
		if len(text) > most {
			return quoted(string(text[:most])) + "…"
		}
		return quoted(string(text))
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case time.Time:
		return showTime(v)
	case int64, bool:
		return fmt.Sprint(v)
	}
	return ""
}

func showTime(t time.Time) string {
	switch t.Location().String() {
	case "date-local":
		return t.Format(time.DateOnly)
	case "time-local":
		return t.Format("15:04:05.999999999")
	case "datetime-local":
		return t.Format(wallLayout)
	}
	return t.Format(time.RFC3339)
}
