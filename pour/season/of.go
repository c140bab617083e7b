package season

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// Of works a season out.
func Of(f Facts) Board {
	b := Board{Today: f.Today, House: f.File.House}
	b.Rows = f.rows()
	slices.SortStableFunc(b.Rows, func(x, y Row) int {
		return cmp.Or(later(!x.HasDate, !y.HasDate), cmp.Compare(x.Due, y.Due), cmp.Compare(strings.ToLower(x.For), strings.ToLower(y.For)),
			later(!x.Placed, !y.Placed), cmp.Compare(x.Pour, y.Pour))
	})
	for _, d := range f.File.Dates {
		b.Dates = append(b.Dates, DateRow{Date: d, Label: d.label()})
	}
	slices.SortStableFunc(b.Dates, func(x, y DateRow) int { return cmp.Compare(x.Day, y.Day) })
	for i, r := range b.Rows {
		if at := b.dateAt(r.For); at >= 0 {
			b.Dates[at].Rows = append(b.Dates[at].Rows, i)
		}
	}
	b.cover()
	b.collide()
	return b
}

// later puts what is so after what is not.
func later(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return 1
	}
	return -1
}

// label is the first day of labelling, by which bars must be dry.
func (d Date) label() day.Day { return d.Day - day.Day(d.LabelDays) }

// dateAt is the place of a date on the board; -1: it has none of that name.
func (b *Board) dateAt(name string) int {
	if name == "" {
		return -1
	}
	return slices.IndexFunc(b.Dates, func(d DateRow) bool { return same(d.Name, name) })
}

// rows are the pours of the season: those the file plans, and those of the logbook of which something is left to plan with.
func (f Facts) rows() []Row {
	byID := make(map[string]Standing, len(f.Standing))
	for _, s := range f.Standing {
		byID[s.ID] = s
	}
	dates := make(map[string]Date, len(f.File.Dates))
	for _, d := range f.File.Dates {
		dates[strings.ToLower(strings.TrimSpace(d.Name))] = d
	}
	named := map[string]bool{}
	keys := map[string]int{}
	out := make([]Row, 0, len(f.File.Pours)+len(f.Standing))
	done := f.done()
	for _, id := range done {
		named[id] = true
	}
	for i, p := range f.File.Pours {
		d, has := dates[strings.ToLower(strings.TrimSpace(p.For))]
		r := Row{Plan: p.Plan, Entry: i + 1, For: d.Name, HasDate: has, Due: d.Day, Label: d.label()}
		if id, poured := done[i]; poured {
			s, ok := byID[id]
			if r.stand(s, f.Today); !ok {
				r.Name, r.Fault, r.Placed = id, fmt.Errorf("the logbook has no pour %q that can be read", id), false
			}
			r.ID, r.Key = id, id
		} else {
			r.plan(f.Designs[p.Plan], p, f)
			r.Key = p.Plan + " for " + p.For
			if keys[r.Key]++; keys[r.Key] > 1 {
				r.Key = fmt.Sprintf("%s, %d", r.Key, keys[r.Key])
			}
		}
		r.judge(f.Today)
		out = append(out, r)
	}
	for _, s := range f.Standing {
		if !named[s.ID] && !s.gone() && !f.forgotten(s) {
			r := Row{Key: s.ID, ID: s.ID}
			r.stand(s, f.Today)
			out = append(out, r)
		}
	}
	return out
}

// done are the entries of the file that were poured, by their place, with the ids of the pours: what names one, and what was planned for a day
// on which the same design was poured, or the day before or after. No pour is that of two entries.
func (f Facts) done() map[int]string {
	out, taken := map[int]string{}, map[string]bool{}
	for i, p := range f.File.Pours {
		if p.Pour != "" {
			out[i], taken[p.Pour] = p.Pour, true
		}
	}
	for i, p := range f.File.Pours {
		if p.Pour != "" || p.Day == nil {
			continue
		}
		best := -1
		for k, s := range f.Standing {
			off := max(s.Poured-*p.Day, *p.Day-s.Poured)
			if off > 1 || taken[s.ID] || !sameDesign(s.Name, f.Designs[p.Plan].Name) || s.State == life.Trial {
				continue
			}
			if best < 0 || off < max(f.Standing[best].Poured-*p.Day, *p.Day-f.Standing[best].Poured) {
				best = k
			}
		}
		if best >= 0 {
			out[i], taken[f.Standing[best].ID] = f.Standing[best].ID, true
		}
	}
	return out
}

// How long the season goes on with what nobody has logged any further, days: our own choice.
const (
	uncountedDays = 365 // after the pour, with bars that nobody has counted
	silentDays    = 60  // after the pour of a loaf that is not cut, or after the bars are to be dry
)

// forgotten reports whether a pour is old and nobody has said what became of it: from before she kept account of it, or left lying.
func (f Facts) forgotten(s Standing) bool {
	switch {
	case s.uncut():
		return f.Today-s.Poured > silentDays
	case s.onRack() && f.Today-s.Ready.Late <= silentDays:
		return false
	}
	return !s.Bars.Known && f.Today-s.Poured > uncountedDays
}

// plan fills in the days of a pour that is planned, backwards from its date and forwards from its day.
func (r *Row) plan(d Design, p Planned, f Facts) {
	r.Name, r.Fault, r.mould, r.cut, r.span = d.Name, d.Fault, d.Mould, d.CutDays, d.Cure
	r.Bars, r.BarsKnown, r.Needs = d.Bars, d.BarsKnown, d.Needs
	if d.Fault == nil && d.Name == "" {
		r.Fault = fmt.Errorf("the plan %q was not read", p.Plan)
	}
	if r.Name == "" {
		r.Name = p.Plan
	}
	if r.Fault != nil {
		r.BarsKnown = false
		if p.Day != nil {
			r.Pour = *p.Day
		}
		return
	}
	house := f.File.House
	if r.HasDate {
		last := r.Label - day.Day(d.CutDays)
		r.By = Band{
			Early:  house.onOrBefore(last - day.Day(d.Cure.Early)),
			Middle: house.onOrBefore(last - day.Day(d.Cure.Middle)),
			Late:   house.onOrBefore(last - day.Day(d.Cure.Late)),
		}
	}
	switch {
	case p.Day != nil && *p.Day < f.Today:
		r.missed(*p.Day, house.onOrAfter(f.Today))
		return
	case p.Day != nil:
		r.Pour, r.Placed, r.Fixed = *p.Day, true, true
	case r.HasDate && r.By.Late >= f.Today:
		r.Pour, r.Placed = r.By.Late, true
	case r.HasDate:
		r.Pour, r.Placed = house.onOrAfter(f.Today), true
	}
	if !r.Placed {
		return
	}
	r.Cut, r.Ready = r.at(r.Pour)
	r.inMould, r.onRack = true, true
	for _, e := range d.Embeds {
		r.Embeds = append(r.Embeds, EmbedBy{e.Name, r.Pour - day.Day(e.Days)})
	}
}

// missed says that a pour was planned for a day that is over, without a pour in the logbook to show for it. Its loaf stands nowhere; what comes
// after it is reckoned from the next day on which it could be poured.
func (r *Row) missed(planned, next day.Day) {
	r.Pour, r.Placed, r.Fixed, r.Missed, r.next = planned, true, true, true, next
	r.Cut, r.Ready = r.at(next)
}

// at is when the row is cut and dry if it is poured on a day.
func (r *Row) at(poured day.Day) (cut day.Day, ready Band) {
	cut = poured + day.Day(r.cut)
	return cut, Band{cut + day.Day(r.span.Early), cut + day.Day(r.span.Middle), cut + day.Day(r.span.Late)}
}

// stand fills in the days of a pour that has happened, forwards from what happened.
func (r *Row) stand(s Standing, today day.Day) {
	r.Name, r.State, r.mould = s.Name, s.State, s.Mould
	r.Placed, r.Fixed, r.Pour, r.Cut, r.Ready = true, true, s.Poured, s.Cut, s.Ready
	r.Bars, r.BarsKnown = s.Bars.Left, s.Bars.Known
	r.uncut, r.lawless = s.uncut(), s.Lawless
	r.inMould, r.onRack = s.inMould(), s.uncut() || s.onRack() && today-s.Ready.Late <= silentDays
	if r.onRack { // what dries is not dry yet
		r.Ready = Band{max(r.Ready.Early, today), max(r.Ready.Middle, today), max(r.Ready.Late, today)}
	}
	r.cut, r.span = int(r.Cut-r.Pour), Span{int(r.Ready.Early - r.Cut), int(r.Ready.Middle - r.Cut), int(r.Ready.Late - r.Cut)}
	if s.State == life.Failed || s.State == life.Trial {
		r.Bars, r.BarsKnown = 0, true
	}
}

// judge says how the row stands to its date.
func (r *Row) judge(today day.Day) {
	if !r.HasDate || !r.Placed {
		return
	}
	r.LateDays = int(r.Ready.Middle - r.Label)
	switch {
	case r.Due < today:
		r.Verdict = Gone
	case r.Missed:
		r.Verdict = Past
	case r.Ready.Late <= r.Label:
		r.Verdict = InTime
	case r.Ready.Middle <= r.Label:
		r.Verdict = Likely
	case r.Ready.Early <= r.Label:
		r.Verdict = Luck
	default:
		r.Verdict = TooLate
	}
}
