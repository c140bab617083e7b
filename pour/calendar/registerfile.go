package calendar

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pourbench/pour/strict"
)

// FileName is what the register is called in the maker's folder of data.
const FileName = "calendar.toml"

const (
	registerFormat = 1
	registerHead   = `# What was handed out to your calendar, entry by entry, so that a later export changes and cancels what is there. You may mend it by
# hand; without it all numbers begin anew, and what is not due any more is not cancelled.
`
)

// form is the kind of file the register is.
func form() strict.Form {
	return strict.Form{
		Noun: "calendar register", Bytes: 16 << 20, Items: 100_000, Letters: 10_000,
		Again: "mend it or move it away; without it all numbers begin anew",
	}
}

// keys are the keys of an entry, in the order they are written.
func keys() []string {
	return []string{"batch", "kind", "what", "words", "day", "days", "from", "to", "remind_min", "revised", "sequence", "cancelled"}
}

// text is the register as it stands in its file.
func (r Register) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%sformat = %d\n", registerHead, registerFormat)
	for _, e := range r.entries {
		fmt.Fprintf(&b, "\n[[entry]]\nbatch = %s\nkind = %s\nwhat = %s\n", strict.Quote(e.Batch), strict.Quote(e.Kind), strict.Quote(e.What))
		if e.Words != "" {
			fmt.Fprintf(&b, "words = %s\n", strict.QuoteLines(e.Words))
		}
		if e.AllDay {
			fmt.Fprintf(&b, "day = %s\n", e.Start.Format(time.DateOnly))
			if n := days(e.Start, e.End); n != 1 {
				fmt.Fprintf(&b, "days = %d\n", n)
			}
		} else {
			fmt.Fprintf(&b, "from = %s\nto = %s\n", e.Start.Format(strict.WallLayout), e.End.Format(strict.WallLayout))
		}
		if e.Reminded {
			fmt.Fprintf(&b, "remind_min = %d\n", e.Remind/time.Minute)
		}
		fmt.Fprintf(&b, "revised = %s\nsequence = %d\n", e.Revised.UTC().Format(time.RFC3339), e.Sequence)
		if e.Cancelled {
			b.WriteString("cancelled = true\n")
		}
	}
	return b.String()
}

// days is how many days lie between two midnights of UTC, which knows no summer time.
func days(from, to time.Time) int {
	const day = 24 * time.Hour
	return int(to.Sub(from) / day)
}

// parse reads a register. Any error is a [*strict.Error].
func parse(file, src string) (Register, error) {
	doc, err := form().Open(file, src)
	if err != nil {
		return Register{}, err
	}
	top := doc.Top()
	top.Only("format", "entry")
	n := registerFormat
	top.Missing("format")
	if top.Read("format", &n) && n != registerFormat {
		top.Say("format", fmt.Sprint(n), "is none this program reads", fmt.Sprintf("write format = %d, if this is a calendar register", registerFormat))
	}
	var r Register
	named := map[string]bool{}
	for _, t := range top.List("entry") {
		e := readEntry(t)
		if named[e.name()] {
			t.Say("kind", strict.Quote(e.Kind), "is there twice for this batch", "leave the one with the higher sequence")
		}
		named[e.name()] = true
		r.entries = append(r.entries, e)
	}
	if err := doc.Err(); err != nil {
		return Register{}, err
	}
	slices.SortFunc(r.entries, func(a, b Entry) int { return strings.Compare(a.name(), b.name()) })
	return r, nil
}

// readEntry reads one entry.
func readEntry(t *strict.Table) Entry {
	const mostDays, mostMinutes = 4000, 4000 * 24 * 60
	var e Entry
	t.Only(keys()...)
	sound := true
	for _, key := range []string{"batch", "kind", "what", "revised", "sequence"} {
		t.Missing(key)
		sound = sound && t.Has(key)
	}
	t.Read("batch", &e.Batch)
	t.Read("kind", &e.Kind)
	t.Read("what", &e.What)
	t.Prose("words", &e.Words)
	if e.AllDay = t.Has("day"); e.AllDay {
		n := 1.0
		sound = t.Day("day", &e.Start) && sound
		t.Within("days", &n, 1, mostDays)
		e.End = e.Start.AddDate(0, 0, int(n))
	} else {
		t.Missing("from")
		t.Missing("to")
		sound = t.Read("from", &e.Start) && t.Read("to", &e.End) && sound
	}
	var minutes float64
	e.Reminded = t.Within("remind_min", &minutes, -mostMinutes, mostMinutes)
	e.Remind = time.Duration(minutes) * time.Minute
	if t.Moment("revised", &e.Revised) {
		e.Revised = e.Revised.UTC().Truncate(time.Second)
	}
	sound = t.Read("sequence", &e.Sequence) && sound
	t.Flag("cancelled", &e.Cancelled)
	if err := e.Check(); sound && err != nil {
		t.Say("kind", strict.Quote(e.Kind), err.Error(), "mend its days or hours, or take this [[entry]] out")
	}
	return e
}
