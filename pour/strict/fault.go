package strict

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pourbench/pour/plain"
)

// mostFaults is how many faults an [Error] names; a file with more is mended in rounds.
const mostFaults = 20

// Fault is one thing that cannot be, in a file or in a plan at the bench: where, what stands there, what is wrong with it and how to put it right.
type Fault struct {
	File    string // as the caller named it, safe to print; empty: not in a file
	Line    int    // from 1; 0 where it is not known
	Column  int    // in letters, from 1; 0 where it is not known
	Path    string // the key, "base.jug[1].share_percent", arrays counted from 0, or `oil "olive", density_g_ml`; empty for the file as a whole
	Value   string // what stands there, as text; empty where something is missing
	Problem string // what is wrong, one clause
	Mend    string // how to put it right, one clause; empty where nothing can be said
}

// Error says where, which value, what is wrong and how to mend it, on one line.
func (f Fault) Error() string { return f.text("; ") }

func (f Fault) text(mend string) string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", f.Line, f.Column)
	}
	if f.File != "" {
		b.WriteString(": ")
	}
	if f.Path != "" {
		b.WriteString(f.Path)
		if f.Value != "" {
			b.WriteString(" = " + f.Value)
		}
		b.WriteString(": ")
	}
	b.WriteString(f.Problem)
	if f.Mend != "" {
		b.WriteString(mend + f.Mend)
	}
	return b.String()
}

// Error is why a file could not be read: every fault found, in the order of the file, at most 20.
type Error struct {
	Faults []Fault // at least one
	More   int     // faults beyond those named
	cause  error
}

// Error prints every fault on a line of its own and how to mend it on the next.
func (e *Error) Error() string {
	lines := make([]string, 0, len(e.Faults)+1)
	for _, f := range e.Faults {
		lines = append(lines, f.text("\n    to mend: "))
	}
	if e.More > 0 {
		lines = append(lines, fmt.Sprintf("%s: and %d more", e.Faults[0].File, e.More))
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the error of the file system, where that was the reason, so that [errors.Is] finds [fs.ErrNotExist].
func (e *Error) Unwrap() error { return e.cause }

// Refuse makes an error of a file as a whole.
func Refuse(file string, cause error, mend string) *Error {
	return &Error{Faults: []Fault{{File: plain.Line(file), Problem: plain.Line(cause.Error()), Mend: mend}}, cause: cause}
}

// Outside is the fault of a number that is none or lies outside its range.
func Outside(path string, v, low, high float64) Fault {
	problem := "is outside what can be"
	if math.IsNaN(v) || math.IsInf(v, 0) {
		problem = "is not a number"
	}
	return Fault{Path: path, Value: Short(v), Problem: problem, Mend: fmt.Sprintf("write a number from %s to %s", Short(low), Short(high))}
}

// NoWord is the fault of a word that is none of those a key knows.
func NoWord(path, word string, words []string) Fault {
	return Fault{Path: path, Value: show(word), Problem: "is not a word this key knows", Mend: Meant(word, words, "write one of "+strings.Join(words, ", "), "It can be "+strings.Join(words, ", "))}
}

// Short draws a number in its shortest form.
func Short(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
