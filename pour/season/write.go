package season

import (
	"fmt"
	"strconv"
	"strings"

	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// pair is a key of an entry as it stands in the file; without a value the key is left out.
type pair struct{ key, value string }

func (p pair) line() string { return p.key + " = " + p.value }

func text(key, v string) pair {
	if v == "" {
		return pair{key, ""}
	}
	return pair{key, strict.Quote(v)}
}

// count leaves out what is the default.
func count(key string, n, usual int) pair {
	if n == usual {
		return pair{key, ""}
	}
	return pair{key, strconv.Itoa(n)}
}

func number(key string, v float64) pair { return pair{key, strconv.FormatFloat(v, 'f', -1, 64)} }

func (h House) pairs() []pair {
	var days []string
	for _, d := range h.BenchDays {
		days = append(days, strict.Quote(weekdays()[d]))
	}
	bench := pair{"bench_days", ""}
	if len(days) > 0 {
		bench.value = "[" + strings.Join(days, ", ") + "]"
	}
	return []pair{count("rack_bars", h.RackBars, 0), bench, count("most_pours_a_day", h.MostPours, 0)}
}

func (m Mould) pairs() []pair {
	return []pair{
		text("name", m.Name), count("count", m.Count, 1), text("shape", m.Shape), number("length_mm", m.LengthMM), number("width_mm", m.WidthMM),
		number("height_mm", m.HeightMM), count("cavities", m.Cavities, 0),
	}
}

func (d Date) pairs() []pair {
	wants := pair{"wants", ""}
	for _, w := range d.Wants {
		wants.value += fmt.Sprintf("  { design = %s, bars = %d },\n", strict.Quote(w.Design), w.Bars)
	}
	if wants.value != "" {
		wants.value = "[\n" + wants.value + "]"
	}
	return []pair{
		text("name", d.Name), {"day", d.Day.String()}, text("kind", string(d.Kind)), text("audience", d.Audience), count("label_days", d.LabelDays, 0), wants,
	}
}

func (p Planned) pairs() []pair {
	on := pair{"day", ""}
	if p.Day != nil {
		on.value = p.Day.String()
	}
	return []pair{text("plan", p.Plan), text("pour", p.Pour), text("for", p.For), on}
}

// clean makes what was typed what a file would give back.
func (d Date) clean() Date {
	d.Name, d.Audience = strings.TrimSpace(plain.Line(d.Name)), strings.TrimSpace(plain.Line(d.Audience))
	if d.Kind == "" {
		d.Kind = Market
	}
	var wants []Want
	for _, w := range d.Wants {
		wants = append(wants, Want{strings.TrimSpace(plain.Line(w.Design)), w.Bars})
	}
	d.Wants = wants
	return d
}

func (p Planned) clean() Planned {
	p.Plan, p.Pour, p.For = plain.Line(p.Plan), plain.Line(p.Pour), strings.TrimSpace(plain.Line(p.For))
	return p
}

func (m Mould) clean() Mould {
	m.Name, m.Count = strings.TrimSpace(plain.Line(m.Name)), max(m.Count, 1)
	return m
}
