package logbook

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/pour/planfile"
)

// complaint is what is wrong with one key of an event.
type complaint struct{ key, value, what, mend string }

// faulty finds what is missing or cannot be in an event.
func (f eventForm) faulty(k EventKind) *complaint {
	const mostS = 400 * 24 * 3600
	switch {
	case f.Kind == "":
		return &complaint{"kind", "", "is missing", "write kind = \"note\", or whatever happened"}
	case !k.Known():
		words := make([]string, 0, len(eventKinds()))
		for _, known := range eventKinds() {
			words = append(words, string(known))
		}
		return &complaint{"kind", f.Kind, "is no kind of event", "write one of " + strings.Join(words, ", ")}
	case f.RunS == nil:
		return &complaint{"run_s", "", "is missing", "write run_s = the seconds since the run was opened"}
	case f.Wall == nil:
		return &complaint{"wall", "", "is missing", "write the time as in wall = 2026-12-05T10:00:00+01:00"}
	case !finite(*f.RunS) || math.Abs(*f.RunS) > mostS:
		return &complaint{"run_s", fmt.Sprint(*f.RunS), "is no time since the run was opened", "write seconds, as in 312.5"}
	case !finite(f.ClockS) || math.Abs(f.ClockS) > 1e10:
		return &complaint{"clock_s", fmt.Sprint(f.ClockS), "is no time", "write seconds, or take the line out together with clock"}
	case k.measures() && f.Value == nil:
		return &complaint{"value", "", "is missing", "write value = a number: g, °C or s, as the kind says"}
	case f.Value != nil && !finite(*f.Value):
		return &complaint{"value", fmt.Sprint(*f.Value), "is not a number", "write a number such as 12.5"}
	case f.Batch != "" && f.Batch != string(pour.Base) && f.Batch != string(pour.Icing):
		return &complaint{"batch", f.Batch, "is no batch", `write "base" or "icing"`}
	}
	return nil
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// problem is a complaint about the nth event (from 0), with its line.
func problem(file, src string, n int, c complaint) planfile.Problem {
	return planfile.Problem{
		File: plain.Line(file), Line: lineOf(src, n, c.key), Column: 1, Path: fmt.Sprintf("event[%d].%s", n, c.key),
		Value: plain.Line(c.value), What: c.what, Mend: c.mend,
	}
}

// lineOf finds a key of the nth event; without such a key, the event's first line.
func lineOf(src string, n int, key string) int {
	event, start := -1, 0
	for i, line := range strings.Split(src, "\n") {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, eventLine) {
			event++
			start = i + 1
		}
		name, _, assigned := strings.Cut(line, "=")
		if event == n && assigned && strings.TrimSpace(name) == key {
			return i + 1
		}
		if event > n {
			break
		}
	}
	if event < n {
		return 0
	}
	return start
}
