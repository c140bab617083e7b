package season

import (
	"cmp"
	"slices"

	"pourbench/pour/day"
)

// collide finds what cannot be as it is planned, by day.
func (b *Board) collide() {
	l := b.loads()
	order := b.inTurn()
	b.mouldClashes(l, order)
	b.benchClashes(l, order)
	b.rackClashes(l)
	b.dayClashes(l)
	b.coverClashes()
	slices.SortStableFunc(b.Collisions, func(x, y Collision) int { return cmp.Compare(x.Day, y.Day) })
}

// inTurn are the rows that are placed in the order in which they take what there is: by day, on one day those that stand before those that
// are planned.
func (b *Board) inTurn() []int {
	var out []int
	for i, r := range b.Rows {
		if r.Placed && !r.Missed && r.Fault == nil {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int {
		p, q := b.Rows[x], b.Rows[y]
		return cmp.Or(cmp.Compare(p.Pour, q.Pour), later(p.Planned(), q.Planned()))
	})
	return out
}

// mouldClashes finds every planned pour whose mould those before it have in use, on any of its days in it.
func (b *Board) mouldClashes(l *loads, order []int) {
	if len(b.House.Moulds) == 0 {
		return
	}
	users := make([][]int, len(b.House.Moulds)) // by mould, in turn
	for _, i := range order {
		r := &b.Rows[i]
		at, need, ok := b.House.mould(r.mould)
		switch {
		case !r.inMould:
			continue
		case !ok && r.Planned():
			b.say(Collision{Kind: MouldMissing, Day: r.Pour, Row: i, Text: b.tellNoMould(r), Help: b.helpNoMould(r)})
		case !ok:
		case r.Planned() && !b.mouldFree(users[at], i, at, need):
			with := b.sharing(users[at], i)
			b.say(Collision{Kind: MouldInUse, Day: r.Pour, Row: i, With: with, Text: b.tellMould(i, at, with), Help: b.helpMould(l, i, at)})
			fallthrough
		default:
			users[at] = append(users[at], i)
		}
	}
}

// until is the first day on which a row's mould is free again.
func (r *Row) until() day.Day { return max(r.Cut, r.Pour+1) }

// sharing are the rows among some that are in their moulds on a day on which another is in its own.
func (b *Board) sharing(users []int, row int) []int {
	var out []int
	r := &b.Rows[row]
	for _, u := range users {
		if o := &b.Rows[u]; o.Pour < r.until() && r.Pour < o.until() {
			out = append(out, u)
		}
	}
	return out
}

// mouldFree reports whether enough moulds of a kind are free for a row beside those that had their turn before it.
func (b *Board) mouldFree(users []int, row, at, need int) bool {
	r := &b.Rows[row]
	with := b.sharing(users, row)
	for on := r.Pour; on < r.until(); on++ {
		taken := need
		for _, u := range with {
			if o := &b.Rows[u]; o.Pour <= on && on < o.until() {
				_, n, _ := b.House.mould(o.mould)
				taken += n
			}
		}
		if taken > b.House.Moulds[at].Count {
			return false
		}
	}
	return true
}

// benchClashes finds the planned pours of a day that are more than she pours on one.
func (b *Board) benchClashes(l *loads, order []int) {
	most := b.House.MostPours
	if most == 0 {
		return
	}
	var today []int // those of one day, in turn
	for _, i := range order {
		r := &b.Rows[i]
		if len(today) > 0 && b.Rows[today[0]].Pour != r.Pour {
			today = today[:0]
		}
		today = append(today, i)
		if len(today) > most && r.Planned() {
			with := slices.Clone(today[:len(today)-1])
			b.say(Collision{Kind: BenchFull, Day: r.Pour, Row: i, With: with, Text: b.tellBench(i, with), Help: b.helpMove(l, i)})
		}
	}
}

// dayClashes finds planned pours on days that are none for it.
func (b *Board) dayClashes(l *loads) {
	for i := range b.Rows {
		r := &b.Rows[i]
		if !r.Planned() || r.Fault != nil || !r.Placed {
			continue
		}
		if r.Pour < b.Today {
			b.say(Collision{Kind: DayPast, Day: r.Pour, Row: i, Text: b.tellPast(r), Help: b.helpMove(l, i)})
		} else if !b.House.pours(r.Pour) {
			b.say(Collision{Kind: OffDay, Day: r.Pour, Row: i, Text: b.tellOff(r), Help: b.helpMove(l, i)})
		}
		if r.HasDate && r.Verdict != Gone && !r.Missed && r.LateDays > 0 {
			b.say(Collision{Kind: Late, Day: r.Pour, Row: i, Date: r.For, Text: b.tellLate(r), Help: b.helpLate(r)})
		}
		for _, e := range r.Embeds {
			if e.By < b.Today && r.Pour >= b.Today {
				b.say(Collision{Kind: EmbedsLate, Day: e.By, Row: i, Text: b.tellEmbed(r, e), Help: b.helpEmbed(r, e)})
			}
		}
	}
}

// rackClashes finds the weeks, from Monday, in which more bars dry than there are places: one for each week, however many of its days.
func (b *Board) rackClashes(l *loads) {
	places := b.House.RackBars
	if places == 0 {
		return
	}
	for from := monday(l.rack.first); int(from-l.rack.first) < len(l.rack.n); from += week {
		worst, over := day.Day(0), 0
		for on := max(from, b.Today); on < from+week; on++ {
			if n := l.rack.at(on) - places; n > over {
				worst, over = on, n
			}
		}
		if over == 0 {
			continue
		}
		with := b.drying(worst)
		row := -1
		for _, i := range with {
			if r := &b.Rows[i]; r.Planned() && (row < 0 || r.Pour >= b.Rows[row].Pour) {
				row = i
			}
		}
		c := Collision{Kind: RackFull, Day: worst, Row: row, With: with, Over: over, Text: b.tellRack(from, worst, over), Help: b.helpRack(l, row, over)}
		b.say(c)
	}
}

// drying are the rows whose bars are on the rack on a day.
func (b *Board) drying(on day.Day) []int {
	var out []int
	for i := range b.Rows {
		if r := &b.Rows[i]; r.Placed && r.Fault == nil && r.onRack && r.BarsKnown && r.Bars > 0 && r.Cut <= on && on < r.Ready.Late {
			out = append(out, i)
		}
	}
	return out
}

// monday is that of a day's week.
func monday(d day.Day) day.Day { return d - day.Day((int(d.Weekday())+week-1)%week) }

// coverClashes finds what dates to come want and do not get.
func (b *Board) coverClashes() {
	for _, d := range b.Dates {
		if d.Day < b.Today {
			continue
		}
		for _, c := range d.Covers {
			if c.Short > 0 {
				b.say(Collision{Kind: NotCovered, Day: d.Label, Row: -1, Date: d.Name, Text: tellShort(d, c), Help: b.helpShort(d, c)})
			}
		}
	}
}

func (b *Board) say(c Collision) { b.Collisions = append(b.Collisions, c) }
