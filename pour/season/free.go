package season

import (
	"pourbench/pour/day"
)

// fits reports whether a row could be poured on a day beside all others: what it takes up itself has been taken out of the loads.
func (b *Board) fits(l *loads, r *Row, on day.Day) bool {
	h := b.House
	if on < b.Today || !h.pours(on) || h.MostPours > 0 && l.bench.at(on) >= h.MostPours {
		return false
	}
	cut, ready := r.at(on)
	if at, need, ok := h.mould(r.mould); ok && l.moulds[at].most(on, max(cut, on+1))+need > h.Moulds[at].Count {
		return false
	}
	return h.RackBars == 0 || !r.BarsKnown || r.Bars == 0 || cut >= ready.Late || l.rack.most(cut, ready.Late)+r.Bars <= h.RackBars
}

// free finds the nearest day before a row's own on which it could be poured, and the nearest after it.
func (b *Board) free(l *loads, row int) (before, after day.Day, hasBefore, hasAfter bool) {
	r := &b.Rows[row]
	l.use(r, b.House, r.Pour, -1)
	defer l.use(r, b.House, r.Pour, +1)
	for n := day.Day(1); n <= searchDays && r.Pour-n >= b.Today; n++ {
		if b.fits(l, r, r.Pour-n) {
			before, hasBefore = r.Pour-n, true
			break
		}
	}
	from := max(r.Pour+1, b.Today)
	for on := from; on < from+searchDays; on++ {
		if b.fits(l, r, on) {
			after, hasAfter = on, true
			break
		}
	}
	return before, after, hasBefore, hasAfter
}
