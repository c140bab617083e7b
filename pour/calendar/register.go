package calendar

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"pourbench/pour/day"
)

// Register is what was handed out of every entry the last time, by its name. The zero value knows nothing: everything is new.
type Register struct {
	entries []Entry // in the order of [Entry.name], each once
}

// name is what an entry is known by.
func (e Entry) name() string { return e.Batch + "/" + e.Kind }

// find is the entry of a name.
func (r Register) find(name string) (Entry, bool) {
	at, ok := slices.BinarySearchFunc(r.entries, name, func(e Entry, name string) int { return strings.Compare(e.name(), name) })
	if !ok {
		return Entry{}, false
	}
	return r.entries[at], true
}

// Revise compares what is due with what was handed out, and returns what is to be handed out now, in the order of its dates, with the
// register of it. An entry that is due keeps its sequence number and its revision while nothing about it has changed; the number rises by one
// when its dates have (RFC 5545, 3.8.7.4). What was handed out and is due no more is cancelled until its days are over; what is over then is
// left as her calendar has it, and what was to be done on days that are over before it was ever handed out is left out.
//
// Only entries of batches for which within holds are looked at: an export of one batch says nothing of the others. At is the moment of the
// export, in the maker's zone.
func (r Register) Revise(due []Entry, within func(batch string) bool, at time.Time) ([]Entry, Register) {
	out, today := make([]Entry, 0, len(due)), midnightOf(day.Of(at))
	named := make(map[string]bool, len(due))
	for _, e := range due {
		e.Sequence, e.Cancelled, e.Revised = 0, false, e.Revised.UTC().Truncate(time.Second)
		if !e.Reminded {
			e.Remind = 0
		}
		done := e.Done
		named[e.name()], e.Done = true, false
		if old, ok := r.find(e.name()); ok {
			e = e.after(old)
		} else if !done && !e.End.After(today) {
			continue
		}
		out = append(out, e)
	}
	next := Register{}
	for _, old := range r.entries {
		switch {
		case named[old.name()]:
		case !within(old.Batch):
			next.entries = append(next.entries, old)
		case !old.End.After(today): // it is over
		default:
			out = append(out, old.cancelled(at))
		}
	}
	next.entries = append(next.entries, out...)
	slices.SortFunc(next.entries, func(a, b Entry) int { return strings.Compare(a.name(), b.name()) })
	byDate(out)
	return out, next
}

// byDate puts entries in the order of their dates.
func byDate(entries []Entry) {
	slices.SortStableFunc(entries, func(a, b Entry) int { return cmp.Or(a.Start.Compare(b.Start), a.End.Compare(b.End)) })
}

// after is an entry with the number and the revision it has in the place of the one handed out before.
func (e Entry) after(old Entry) Entry {
	given := e.Revised
	e.Sequence, e.Revised = old.Sequence, old.Revised
	if e == old {
		return e
	}
	if old.Cancelled || e.AllDay != old.AllDay || e.Start != old.Start || e.End != old.End {
		e.Sequence = min(old.Sequence+1, mostSequence)
	}
	if given.After(old.Revised) {
		e.Revised = given
	}
	return e
}

// cancelled is an entry that does not take place any more.
func (e Entry) cancelled(at time.Time) Entry {
	if e.Cancelled {
		return e
	}
	e.Cancelled, e.Reminded, e.Remind = true, false, 0
	e.Sequence = min(e.Sequence+1, mostSequence)
	if at = at.UTC().Truncate(time.Second); at.After(e.Revised) {
		e.Revised = at
	}
	return e
}
