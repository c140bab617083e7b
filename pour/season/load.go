package season

import "pourbench/pour/day"

// days is something that is counted day by day over the stretch that a board's pours take up.
type days struct {
	first day.Day
	n     []int
}

func newDays(first, last day.Day) days {
	return days{first, make([]int, max(int(last-first)+1, 0))}
}

// at is the count of a day; 0 outside the stretch.
func (d days) at(on day.Day) int {
	if i := int(on - d.first); i >= 0 && i < len(d.n) {
		return d.n[i]
	}
	return 0
}

// add adds to every day from one up to, and not with, another.
func (d days) add(from, to day.Day, n int) {
	for on := max(from, d.first); on < to && int(on-d.first) < len(d.n); on++ {
		d.n[on-d.first] += n
	}
}

// most is the highest count from one day up to, and not with, another.
func (d days) most(from, to day.Day) int {
	most := 0
	for on := max(from, d.first); on < to && int(on-d.first) < len(d.n); on++ {
		most = max(most, d.n[on-d.first])
	}
	return most
}

// loads is what every day has to hold: pours at the bench, moulds of each kind that are in use, bars on the rack.
type loads struct {
	bench  days
	moulds []days // by the place of the mould in the house
	rack   days
}

// use adds what a row takes up if it is poured on a day, or with a sign of -1 takes it away again. A mould is free again on the day its
// loaf is cut; bars leave the rack when they are dry by the late end of their band. Nothing counts twice: a loaf that is cut is in no mould.
func (l *loads) use(r *Row, house House, on day.Day, sign int) {
	if r.Missed {
		return
	}
	l.bench.add(on, on+1, sign)
	cut, ready := r.at(on)
	if at, need, ok := house.mould(r.mould); ok && r.inMould {
		l.moulds[at].add(on, max(cut, on+1), sign*need)
	}
	if r.onRack && r.BarsKnown {
		l.rack.add(cut, ready.Late, sign*r.Bars)
	}
}

// searchDays is how far around its day a free one is looked for.
const searchDays = 200

// loads adds up what all rows take up.
func (b *Board) loads() *loads {
	first, last := b.Today, b.Today
	for i := range b.Rows {
		if r := &b.Rows[i]; r.Placed {
			first, last = min(first, r.Pour), max(last, r.Ready.Late, r.Pour)
		}
	}
	const longest = 200 * 366 // two hundred years: what lies further apart was not meant, and is not counted
	last = min(last, b.Today+longest) + searchDays
	first = max(first, b.Today-longest) - searchDays
	l := &loads{bench: newDays(first, last), rack: newDays(first, last), moulds: make([]days, len(b.House.Moulds))}
	for i := range l.moulds {
		l.moulds[i] = newDays(first, last)
	}
	for i := range b.Rows {
		if r := &b.Rows[i]; r.Placed && r.Fault == nil {
			l.use(r, b.House, r.Pour, +1)
		}
	}
	return l
}
