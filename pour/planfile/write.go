package planfile

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// headComment is the first line of every file: it warns a maker who would annotate the file by hand.
const headComment = "pourbench writes this file; comments you add here are not kept, use notes"

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
	for _, t := range p.Tables() {
		if t.Spare() {
			continue
		}
		if t.Key != "" {
			e.line("")
			e.line("[%s]", t.Key)
		}
		e.table(t.Key, t.Fields)
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
func (e *emitter) table(path string, fields []pour.Field) {
	lead := path
	if path != "" {
		lead += "."
	}
	for _, f := range fields {
		if f.List() && !f.Inline || f.Need == pour.Quiet && f.Zero() {
			continue
		}
		e.line("%s = %s", f.Key, e.value(lead+f.Key, f))
	}
	for _, f := range fields {
		if f.Inline {
			continue
		}
		f.Items(0, func(i int, fields []pour.Field) {
			at := lead + f.Key
			if strings.Count(at, ".") == 1 { // what belongs to an item follows it without a gap
				e.line("")
			}
			e.line("[[%s]]", strict.Header(at))
			e.table(fmt.Sprintf("%s[%d]", at, i), fields)
		})
	}
}

func (e *emitter) value(path string, f pour.Field) string {
	switch at := f.At.(type) {
	case *float64:
		return e.float(path, *at)
	case *int:
		return strconv.Itoa(*at)
	case *int64:
		return strconv.FormatInt(*at, 10)
	case *bool:
		return strconv.FormatBool(*at)
	case *string:
		if f.Takes == pour.TakesProse {
			return strict.QuoteLines(*at)
		}
		return strict.Quote(*at)
	case *time.Time:
		if y := at.Year(); y < 1 || y > 9999 {
			e.fail(fmt.Errorf("%s is in the year %d, which a plan file cannot hold; choose a year from 1 to 9999", path, y))
		}
		return at.Format(strict.WallLayout)
	case *[]float64:
		return e.numbers(path, *at)
	case *[]string:
		items := make([]string, len(*at))
		for i, s := range *at {
			items[i] = strict.Quote(s)
		}
		return "[" + strings.Join(items, ", ") + "]"
	}
	return e.inline(path, f)
}

// numbers writes a list of numbers.
func (e *emitter) numbers(path string, list []float64) string {
	items := make([]string, len(list))
	for i, v := range list {
		items[i] = e.float(fmt.Sprintf("%s[%d]", path, i), v)
	}
	return "[" + strings.Join(items, ", ") + "]"
}

// inline writes a list of parts on one line.
func (e *emitter) inline(path string, f pour.Field) string {
	var items []string
	f.Items(0, func(i int, fields []pour.Field) {
		var parts []string
		for _, f := range fields {
			parts = append(parts, f.Key+" = "+e.value(fmt.Sprintf("%s[%d].%s", path, i, f.Key), f))
		}
		items = append(items, "{ "+strings.Join(parts, ", ")+" }")
	})
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
