package logbook

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"pourbench/pour/strict"
)

// FileFormat is the version of a pour's file.
const FileFormat = 1

// Suffix ends the name of a pour's file.
const Suffix = ".pour.toml"

const (
	headLine  = "# A pour, as it happened. You may mend this file by hand; events stand in the order they happened."
	eventLine = "[[event]]"
	wallForm  = "2006-01-02T15:04:05.000Z07:00"
)

// eventKeys are the keys of an event, in the order they are written. The last is in every event, so that a torn one shows.
func eventKeys() []string {
	return []string{
		"kind", "batch", "jug", "step", "stage", "what", "value", "lot", "text", "pack", "entry",
		"day", "bars", "masses_g", "crumbs_g", "count", "seconds", "price", "currency", "audience", "scent", "colour", "path", "market", "corrects",
		"id", "run_s", "clock", "clock_s", "clock_sleeps", "wall",
	}
}

// headText is the part of the file written once, when the pour is opened.
func headText(name, planText, trial string, opened time.Time) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\nformat = %d\nname = %s\nopened = %s\n", headLine, FileFormat, strict.Quote(name), opened.Format(wallForm))
	if trial != "" {
		fmt.Fprintf(&b, "trial_scent = %s\n", strict.Quote(trial))
	}
	if strings.Contains(planText, "'''") || strings.ContainsRune(planText, '\r') {
		fmt.Fprintf(&b, "plan = %s\n", strict.Quote(planText))
	} else {
		fmt.Fprintf(&b, "plan = '''\n%s'''\n", planText)
	}
	return b.String()
}

// text is the event as it stands in the file, an empty line before it.
func (e Event) text() string {
	var b strings.Builder
	b.WriteString("\n" + eventLine + "\n")
	word := func(key, v string) {
		if v != "" {
			fmt.Fprintf(&b, "%s = %s\n", key, strict.Quote(v))
		}
	}
	word("kind", string(e.Kind))
	word("batch", string(e.Batch))
	word("jug", e.Jug)
	word("step", e.Step)
	if e.Kind == Seen || e.Kind == NotYet {
		word("stage", e.Stage.String())
	}
	word("what", e.What)
	if e.Kind.measures() {
		fmt.Fprintf(&b, "value = %s\n", strconv.FormatFloat(e.Value, 'f', -1, 64))
	}
	word("lot", e.Lot)
	word("text", e.Text)
	word("pack", e.Pack)
	word("entry", e.Entry)
	b.WriteString(e.Life.text())
	word("corrects", e.Corrects)
	word("id", e.ID)
	if !e.Kind.OfLife() {
		fmt.Fprintf(&b, "run_s = %s\n", seconds(e.Run))
	}
	word("clock", e.Of)
	if e.Of != "" {
		fmt.Fprintf(&b, "clock_s = %s\n", seconds(e.Steady))
	}
	if e.Sleeps {
		b.WriteString("clock_sleeps = true\n")
	}
	fmt.Fprintf(&b, "wall = %s\n", e.Wall.Format(wallForm))
	return b.String()
}

// measures reports whether an event of that kind carries a value.
func (k EventKind) measures() bool {
	switch k {
	case Jumped, Blended, Read, Weighed, Cut, Cured, Discounted, Drew, Sniffed, Looked, Tested:
		return true
	}
	return false
}

// seconds writes a time exactly, so that what is read back is what was written.
func seconds(d time.Duration) string { return strconv.FormatFloat(d.Seconds(), 'f', -1, 64) }

func duration(s float64) time.Duration {
	return time.Duration(s*1e6+0.5*sign(s)) * time.Microsecond
}

func sign(v float64) float64 {
	if v < 0 {
		return -1
	}
	return 1
}
