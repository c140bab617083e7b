package pour

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Change is one place in which a plan differs from another: where, in words, and what stood and stands there, as in the plan's file.
// What is not there is "–".
type Change struct {
	Table    string // of the plan's file; empty: what stands above the sections
	Where    string
	Was, Now string
}

// noValue stands for what a plan does not have.
const noValue = "–"

// Differences lists every field in which a plan differs from what it was, numbers by their first six figures, in the order of the plan's file; what is gone comes last.
// Oils, jugs and the like are told apart by their names; of two with one name, by their order.
func Differences(was, now Plan) []Change {
	out, _ := Compared(was, now)
	return out
}

// Compared is [Differences], and how many fields say the same in both.
func Compared(was, now Plan) (out []Change, same int) {
	before, after := laidOut(was), laidOut(now)
	old := make(map[string]string, len(before))
	for _, x := range before {
		old[x.where] = x.value
	}
	for _, x := range after {
		v, there := old[x.where]
		switch {
		case !there:
			v = noValue
		case v == x.value:
			delete(old, x.where)
			same++
			continue
		}
		delete(old, x.where)
		out = append(out, Change{x.table, x.where, v, x.value})
	}
	for _, x := range before {
		if _, left := old[x.where]; left {
			out = append(out, Change{x.table, x.where, x.value, noValue})
		}
	}
	return out, same
}

// laid is one field of a plan that says something, and its value.
type laid struct{ table, where, value string }

// layout lays a plan out field by field.
type layout struct {
	table string
	out   []laid
	seen  map[string]int
}

func laidOut(p Plan) []laid {
	l := layout{seen: map[string]int{}}
	for _, t := range p.Tables() {
		l.table = t.Key
		l.rows(t.Key, t.Fields)
	}
	return l.out
}

func (l *layout) rows(lead string, fields []Field) {
	for _, f := range fields {
		if f.List() {
			what := strings.TrimSpace(lead + " " + strings.ReplaceAll(f.Key, "_", " "))
			f.Items(0, func(i int, rows []Field) { l.rows(what+" "+called(i, rows), rows) })
			continue
		}
		if f.Need == Quiet && f.Zero() {
			continue
		}
		where := f.Label
		if lead != "" {
			where = lead + ": " + f.Label
		}
		l.seen[where]++
		if n := l.seen[where]; n > 1 {
			where += " (" + strconv.Itoa(n) + ")"
		}
		l.out = append(l.out, laid{l.table, where, f.value()})
	}
}

// called is what an item of a list is told apart by: what it is, or its place where it is nothing in particular.
func called(i int, rows []Field) string {
	if len(rows) > 0 {
		if name, ok := rows[0].At.(*string); ok && *name != "" {
			return *name
		}
	}
	return strconv.Itoa(i + 1)
}

// shortNumber is a number as it is read: to so many figures as a scale or a cook can tell apart.
func shortNumber(v float64) string {
	const figures = 6
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', figures, 64), 64)
	if err != nil {
		short = v
	}
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// value is what stands in a field that is no list of parts, in words; numbers with their unit, as in the plan's file.
func (f Field) value() string {
	switch at := f.At.(type) {
	case *float64:
		return strings.TrimSpace(shortNumber(*at) + " " + string(f.Unit))
	case *bool:
		return map[bool]string{true: "yes", false: "no"}[*at]
	case *string:
		return strconv.Quote(*at)
	case *[]string:
		return strings.Join(*at, ", ")
	case *[]float64:
		words := make([]string, len(*at))
		for i, v := range *at {
			words[i] = shortNumber(v)
		}
		return strings.TrimSpace(strings.Join(words, ", ") + " " + string(f.Unit))
	case *time.Time:
		return at.Format("2006-01-02 15:04")
	case *int:
		return strconv.Itoa(*at)
	case *int64:
		return strconv.FormatInt(*at, 10)
	}
	return fmt.Sprint(f.At)
}
