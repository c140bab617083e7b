package calendar

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/plain"
)

// Entry is one thing that stands in the calendar. Batch and Kind name it for good, see [UID].
type Entry struct {
	Batch string // id of the pour, or what the maker calls a market
	Kind  string // what it is of that batch: "cut", "weigh-7", "ready"
	What  string // one line, as the calendar shows it
	Words string // more about it; may have many lines

	Start, End time.Time // what the clock on the wall shows, kept as if that were UTC, to the second; the end is not part of it
	AllDay     bool      // whole days: both are midnights

	Reminded bool          // the calendar speaks up
	Remind   time.Duration // from the start, negative before it, whole minutes; from midnight where it is all day

	Done      bool      // it tells what was done, also when it is over; no calendar and no register says so
	Revised   time.Time // when the entry was last changed
	Sequence  int       // how often its dates have moved, from 0
	Cancelled bool      // it does not take place
}

// on makes an entry one whole day.
func (e Entry) on(d day.Day) Entry {
	e.Start, e.End, e.AllDay = midnightOf(d), midnightOf(d+1), true
	return e
}

// midnightOf is how a day is kept in an entry.
func midnightOf(d day.Day) time.Time { return d.At(0, 0, time.UTC) }

// mostSequence is the largest number that RFC 5545, 3.3.8, lets an integer be.
const mostSequence = 1<<31 - 1

// Check refuses an entry that no calendar could hold.
func (e Entry) Check() error {
	var problem string
	switch {
	case e.Batch == "" || e.Kind == "":
		problem = "it needs a batch and a kind: they are its name"
	case strings.Contains(e.Kind, "/"):
		problem = "a kind has no slash in it: with one, two batches could have one name"
	case e.What == "":
		problem = "it says nothing"
	case plain.Line(e.Batch) != e.Batch || plain.Line(e.Kind) != e.Kind || plain.Line(e.What) != e.What || plain.Text(e.Words) != e.Words:
		problem = "its text holds what cannot be shown"
	case !written(e.Start) || !written(e.End) || !written(e.Revised):
		problem = "its years must be 1 to 9999"
	case e.Start.Location() != time.UTC || e.End.Location() != time.UTC:
		problem = "what the clock on the wall shows is kept without a zone"
	case e.Start.Nanosecond() != 0 || e.End.Nanosecond() != 0:
		problem = "a calendar knows no parts of a second"
	case !e.Start.Before(e.End):
		problem = "it must end after it starts"
	case e.AllDay && (!midnight(e.Start) || !midnight(e.End)):
		problem = "whole days start at midnight"
	case e.Remind%time.Minute != 0:
		problem = "a reminder stands on a whole minute"
	case e.Sequence < 0 || e.Sequence > mostSequence:
		problem = fmt.Sprintf("its sequence must be 0 to %d", mostSequence)
	default:
		return nil
	}
	return fmt.Errorf("write %s into a calendar: %w", plain.Line(e.Batch+"/"+e.Kind), errors.New(problem))
}

// written reports whether a time has a year of four digits.
func written(t time.Time) bool {
	const last = 9999
	return t.Year() >= 1 && t.Year() <= last
}

func midnight(t time.Time) bool {
	return t.Hour() == 0 && t.Minute() == 0 && t.Second() == 0 && t.Nanosecond() == 0
}

// sound refuses a list in which an entry cannot be held, or has the name of another.
func sound(entries []Entry) error {
	named := make(map[string]bool, len(entries))
	for _, e := range entries {
		if err := e.Check(); err != nil {
			return err
		}
		if named[e.name()] {
			return fmt.Errorf("write %s into a calendar: it is there twice", e.name())
		}
		named[e.name()] = true
	}
	return nil
}
