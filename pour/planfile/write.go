package planfile

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"pourbench/pour"
)

// headComment is the first line of every file: it warns a maker who would annotate the file by hand.
const headComment = "pourbench writes this file; comments you add here are not kept, use notes"

// wallLayout is how a time on the wall clock is written: TOML's local date-time.
const wallLayout = "2006-01-02T15:04:05.999999999"

// Write writes the plan as a TOML file that [Read] reads back as the same plan. Every key is written, in a fixed order,
// but for those that would be 0, false or empty and whose default is just that. A time keeps what its clock shows and
// loses its zone; a batter temperature that does not count as measured is left out.
// A plan with a number that is not finite, or a pour outside the years 1 to 9999, is refused.
func Write(w io.Writer, p pour.Plan) error {
	src, err := encode(p)
	if err != nil {
		return err
	}
	if _, err := io.WriteString(w, src); err != nil {
		return fmt.Errorf("write plan %q: %w", p.Name, err)
	}
	return nil
}

func encode(p pour.Plan) (string, error) {
	var e emitter
	e.line("# %s", headComment)
	e.line("format = %d", pour.FormatVersion)
	e.table("", topFields(&p))
	for _, s := range sections(&p) {
		e.line("")
		e.line("[%s]", s.key)
		e.table(s.key, s.fields)
	}
	if e.err != nil {
		return "", fmt.Errorf("write plan %q: %w", p.Name, e.err)
	}
	return e.out.String(), nil
}

// emitter writes lines and keeps the first thing that could not be written.
type emitter struct {
	out strings.Builder
	err error
}

func (e *emitter) line(format string, args ...any) {
	fmt.Fprintf(&e.out, format+"\n", args...)
}

// table writes the keys of one table, then the arrays of tables inside it.
func (e *emitter) table(path string, fields []field) {
	for _, f := range fields {
		if l, ok := f.at.(list); ok && !l.inline || f.need == quiet && zero(f.at) {
			continue
		}
		e.line("%s = %s", f.key, e.value(join(path, f.key), f.at))
	}
	for _, f := range fields {
		l, ok := f.at.(list)
		if !ok || l.inline {
			continue
		}
		at := join(path, f.key)
		for i := range l.size() {
			if strings.Count(at, ".") == 1 { // what belongs to an item follows it without a gap
				e.line("")
			}
			e.line("[[%s]]", bare(at))
			e.table(fmt.Sprintf("%s[%d]", at, i), l.item(i))
		}
	}
}

func (e *emitter) value(path string, at any) string {
	switch at := at.(type) {
	case *float64:
		return e.float(path, *at)
	case measured:
		return e.float(path, *at.v)
	case *int:
		return strconv.Itoa(*at)
	case *int64:
		return strconv.FormatInt(*at, 10)
	case *bool:
		return strconv.FormatBool(*at)
	case *string:
		return quoted(*at)
	case *prose:
		return quotedLines(string(*at))
	case *time.Time:
		if y := at.Year(); y < 1 || y > 9999 {
			e.fail(fmt.Errorf("%s is in the year %d, which a plan file cannot hold; choose a year from 1 to 9999", path, y))
		}
		return at.Format(wallLayout)
	case *[]string:
		items := make([]string, len(*at))
		for i, s := range *at {
			items[i] = quoted(s)
		}
		return "[" + strings.Join(items, ", ") + "]"
	case list:
		return e.inline(path, at)
	}
	return `""`
}

// inline writes an array of tables on one line.
func (e *emitter) inline(path string, l list) string {
	items := make([]string, l.size())
	for i := range items {
		var parts []string
		for _, f := range l.item(i) {
			parts = append(parts, f.key+" = "+e.value(fmt.Sprintf("%s[%d].%s", path, i, f.key), f.at))
		}
		items[i] = "{ " + strings.Join(parts, ", ") + " }"
	}
	return "[ " + strings.Join(items, ", ") + " ]"
}

func (e *emitter) fail(err error) {
	if e.err == nil {
		e.err = err
	}
}

// float writes the shortest form that reads back as the same number, without an exponent for ordinary sizes.
func (e *emitter) float(path string, v float64) string {
	const small, large = 1e-6, 1e15 // beyond 2^53 a whole number without an exponent would be read as an integer
	switch a := math.Abs(v); {
	case math.IsNaN(v) || math.IsInf(v, 0):
		e.fail(fmt.Errorf("%s is %v, which is no number to pour by; set it again", path, v))
		return "0"
	case a == 0:
		return "0"
	case a < small || a >= large:
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// quoted writes a TOML basic string.
func quoted(s string) string { return `"` + escaped(s, false) + `"` }

// quotedLines writes a TOML basic string, over many lines where the text has many.
func quotedLines(s string) string {
	if !strings.Contains(s, "\n") {
		return quoted(s)
	}
	return "\"\"\"\n" + escaped(s, true) + `"""`
}

// escaped hides what may not stand in a basic string. With lines it leaves the ends of lines, which count there, and
// single quotes that cannot be taken for the closing three.
func escaped(s string, lines bool) string {
	var b strings.Builder
	quoteBefore := false
	for i, r := range s {
		last := i == len(s)-1
		switch {
		case r == '"' && lines && !quoteBefore && !last:
			b.WriteRune(r)
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case r == '\n' && lines:
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r < ' ' || r >= 0x7f && r <= 0x9f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default: // a broken byte comes out of the range loop as U+FFFD, which is good UTF-8
			b.WriteRune(r)
		}
		quoteBefore = r == '"'
	}
	return b.String()
}
