package season

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/day"
)

// sureDays is how far off a day may be that can be said without its year.
const sureDays = 300

// told is a day as a maker says it, with its year where it is far off.
func (b *Board) told(d day.Day) string {
	text := d.Weekday().String()[:3] + " " + d.Short()
	if max(d-b.Today, b.Today-d) > sureDays {
		text += " " + d.String()[:4]
	}
	return text
}

// counted is a number with its thing.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// names are the designs of some rows, three at most by name.
func (b *Board) names(rows []int) string {
	const most = 3
	var out []string
	for _, i := range rows {
		if n := b.Rows[i].Name; !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	if len(out) > most {
		out = append(out[:most-1], fmt.Sprintf("%d others", len(out)-most+1))
	}
	if len(out) < 2 {
		return strings.Join(out, "")
	}
	return strings.Join(out[:len(out)-1], ", ") + " and " + out[len(out)-1]
}

// size tells a mould by its measures.
func size(shape string, length, width, height float64) string {
	n := func(v float64) string { return fmt.Sprint(math.Round(v*10) / 10) }
	return fmt.Sprintf("%s of %s × %s × %s mm", shape, n(length), n(width), n(height))
}

func sizeOf(m pour.Mould) string { return size(m.Shape, m.LengthMM, m.WidthMM, m.HeightMM) }

func (b *Board) tellNoMould(r *Row) string {
	return fmt.Sprintf("%s is planned in a %s, and the season lists none", r.Name, sizeOf(r.mould))
}

func (b *Board) helpNoMould(r *Row) string {
	for _, m := range b.House.Moulds {
		if m.Shape == r.mould.Shape {
			return fmt.Sprintf("give the plan your %s (%s), or add the mould", m.Name, size(m.Shape, m.LengthMM, m.WidthMM, m.HeightMM))
		}
	}
	return "add the mould if you have it, or give the plan another"
}

func (b *Board) tellMould(row, at int, with []int) string {
	r, m := &b.Rows[row], b.House.Moulds[at]
	return fmt.Sprintf("%s on %s: %s in use by %s", r.Name, b.told(r.Pour), owned(m, "is", "are"), b.names(with))
}

// owned are all of a kind of mould.
func owned(m Mould, is, are string) string {
	if m.Count == 1 {
		return fmt.Sprintf("your one %s %s", m.Name, is)
	}
	return fmt.Sprintf("your %d of %s %s", m.Count, m.Name, are)
}

// helpMould offers another day, and another mould that is free then.
func (b *Board) helpMould(l *loads, row, at int) string {
	help := b.helpMove(l, row)
	r := &b.Rows[row]
	for i, m := range b.House.Moulds {
		if i != at && m.Shape == r.mould.Shape && l.moulds[i].most(r.Pour, r.until()) < m.Count {
			return fmt.Sprintf("%s; or fit the plan to your %s, which is free then", help, m.Name)
		}
	}
	return help
}

func (b *Board) tellBench(row int, with []int) string {
	r := &b.Rows[row]
	return fmt.Sprintf("%s on %s: %s that day beside %s, and you pour %d at most", r.Name, b.told(r.Pour), counted(len(with)+1, "pour"), b.names(with), b.House.MostPours)
}

func (b *Board) tellPast(r *Row) string {
	return fmt.Sprintf("%s was to be poured on %s, and the logbook has no such pour under this entry", r.Name, b.told(r.Pour))
}

func (b *Board) tellOff(r *Row) string {
	return fmt.Sprintf("%s on %s: that is no bench day of yours", r.Name, b.told(r.Pour))
}

func (b *Board) tellLate(r *Row) string {
	verb := "poured"
	if r.Planned() {
		verb = "if it is poured"
	}
	return fmt.Sprintf("%s, %s on %s, is dry about %s (%s to %s): %s too late for %s", r.Name, verb, b.told(r.Pour), b.told(r.Ready.Middle),
		b.told(r.Ready.Early), b.told(r.Ready.Late), counted(r.LateDays, "day"), r.For)
}

// helpLate says what is left when a pour cannot be dry in time.
func (b *Board) helpLate(r *Row) string {
	switch others := b.without(r); {
	case others != "":
		return fmt.Sprintf("it is not needed for %s, which has all it wants of it %s", r.For, others)
	case r.By.Middle >= b.Today:
		return fmt.Sprintf("pour it by %s; to be sure, by %s", b.told(r.By.Middle), b.told(r.By.Late))
	case r.By.Early >= b.Today:
		return fmt.Sprintf("poured by %s it would do if it dries as fast as the early end of its band; else take bars that are dry already", b.told(r.By.Early))
	}
	return "take bars that are dry already, or another design whose cure is shorter"
}

// without says of what a row's date has all that it wants of the design; nothing where it is short, or wants none. Who is too late
// for a date gives nothing to it, so these are others.
func (b *Board) without(r *Row) string {
	at := b.dateAt(r.For)
	if at < 0 {
		return ""
	}
	for _, c := range b.Dates[at].Covers {
		if !sameDesign(c.Design, r.Name) || c.Short > 0 || len(c.From) == 0 {
			continue
		}
		if slices.ContainsFunc(c.From, func(s Share) bool { return b.Rows[s.Row].Planned() }) {
			return "from other pours"
		}
		return "from bars that stand"
	}
	return ""
}

func (b *Board) tellEmbed(r *Row, e EmbedBy) string {
	return fmt.Sprintf("%s for %s on %s: to be made by %s, %s ago", e.Name, r.Name, b.told(r.Pour), b.told(e.By), counted(int(b.Today-e.By), "day"))
}

func (b *Board) helpEmbed(r *Row, e EmbedBy) string {
	on := b.House.onOrAfter(b.Today + r.Pour - e.By)
	return fmt.Sprintf("if they are not made yet, make them today and pour on %s", b.told(on))
}

func (b *Board) tellRack(from, worst day.Day, over int) string {
	return fmt.Sprintf("week of %s: %s dry on %s, %d more than the rack has places", b.told(from), counted(b.House.RackBars+over, "bar"), b.told(worst), over)
}

// tellRacks tells weeks in a row that are too full.
func (b *Board) tellRacks(weeks []Collision, worst Collision) string {
	return fmt.Sprintf("%d weeks from %s: %s dry on %s, %d more than the rack has places", len(weeks), b.told(monday(weeks[0].Day)),
		counted(b.House.RackBars+worst.Over, "bar"), b.told(worst.Day), worst.Over)
}

func (b *Board) helpRack(l *loads, row, over int) string {
	room := "make room for " + counted(over, "bar")
	if row < 0 {
		return room
	}
	return fmt.Sprintf("%s, or %s", room, b.helpMove(l, row))
}

// helpMove says to which day a planned pour could go: an earlier one where there is one, else a later one and what that costs.
func (b *Board) helpMove(l *loads, row int) string {
	r := &b.Rows[row]
	before, after, hasBefore, hasAfter := b.free(l, row)
	switch {
	case r.Missed && hasAfter:
		return fmt.Sprintf("if it was poured, name its pour of the logbook; else the next free day is %s%s", b.told(after), b.cost(r, after))
	case hasBefore:
		return fmt.Sprintf("pour %s on %s, the next free day before", r.Name, b.told(before))
	case hasAfter:
		return fmt.Sprintf("no day before it is free; the next free after is %s%s", b.told(after), b.cost(r, after))
	}
	return fmt.Sprintf("no free day is near %s", b.told(r.Pour))
}

// cost is what another day does to the date a pour is for.
func (b *Board) cost(r *Row, on day.Day) string {
	if !r.HasDate {
		return ""
	}
	_, ready := r.at(on)
	switch {
	case ready.Late <= r.Label:
		return ", which is still in time for " + r.For
	case ready.Middle <= r.Label:
		return ", likely still in time for " + r.For
	}
	return fmt.Sprintf(", %s too late for %s", counted(int(ready.Middle-r.Label), "day"), r.For)
}

func tellShort(d DateRow, c Cover) string {
	text := fmt.Sprintf("%s wants %s of %s and gets %d: %d short", d.Name, counted(c.Wanted, "bar"), c.Design, c.Wanted-c.Short, c.Short)
	if c.Unknown > 0 {
		text += fmt.Sprintf("; of %s of it nobody knows how many bars are left", counted(c.Unknown, "pour"))
	}
	return text
}

// helpShort says how many pours more would do, by what is known of the design.
func (b *Board) helpShort(d DateRow, c Cover) string {
	var like *Row
	for i := range b.Rows {
		if r := &b.Rows[i]; sameDesign(r.Name, c.Design) && r.Fault == nil && r.Placed && (like == nil || r.Planned()) {
			like = r
		}
	}
	count := ""
	if c.Unknown > 0 {
		count = fmt.Sprintf("count what is left of %s, or ", counted(c.Unknown, "pour"))
	}
	if like == nil || !like.Planned() || !like.BarsKnown || like.Bars == 0 {
		return count + "plan a pour of it"
	}
	last := d.Label - day.Day(like.cut)
	by, sure := b.House.onOrBefore(last-day.Day(like.span.Middle)), b.House.onOrBefore(last-day.Day(like.span.Late))
	more := (c.Short + like.Bars - 1) / like.Bars
	if by < b.Today {
		return fmt.Sprintf("%sa pour of it would be dry %s too late", count, counted(int(b.House.onOrAfter(b.Today)-last)+like.span.Middle, "day"))
	}
	text := fmt.Sprintf("%splan %s more of it (%d bars each) by %s", count, counted(more, "pour"), like.Bars, b.told(by))
	if sure >= b.Today && sure < by {
		text += ", to be sure by " + b.told(sure)
	}
	return text
}
