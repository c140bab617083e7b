package planfile

import (
	"fmt"
	"strings"

	"pourbench/pour/plain"
)

// mostProblems is how many problems an [Error] names; a file with more is mended in rounds.
const mostProblems = 20

// Problem is one thing wrong with a plan file.
type Problem struct {
	File   string // as the caller named it, safe to print
	Line   int    // from 1; 0 where it is not known
	Column int    // in letters, from 1; 0 where it is not known
	Path   string // key, "base.jug[1].share_percent", arrays counted from 0; empty for the file as a whole
	Value  string // what stands there, as text; empty where something is missing
	What   string // what is wrong, one clause
	Mend   string // how to put it right, one clause; empty where nothing can be said
}

// Error prints the problem as "file:line:column: key = value: what is wrong" and a second line that says how to mend it.
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", p.Line, p.Column)
	}
	b.WriteString(": ")
	if p.Path != "" {
		b.WriteString(p.Path)
		if p.Value != "" {
			b.WriteString(" = " + p.Value)
		}
		b.WriteString(": ")
	}
	b.WriteString(p.What)
	if p.Mend != "" {
		b.WriteString("\n    to mend: " + p.Mend)
	}
	return b.String()
}

// Error is why a plan file could not be read: every problem found, in the order of the file, at most 20.
type Error struct {
	Problems []Problem // at least one
	More     int       // problems beyond those named
	cause    error
}

// Error prints every problem on lines of its own.
func (e *Error) Error() string {
	lines := make([]string, 0, len(e.Problems)+1)
	for _, p := range e.Problems {
		lines = append(lines, p.Error())
	}
	if e.More > 0 {
		lines = append(lines, fmt.Sprintf("%s: and %d more", e.Problems[0].File, e.More))
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the error of the file system, where that was the reason, so that [errors.Is] finds [fs.ErrNotExist].
func (e *Error) Unwrap() error { return e.cause }

func failed(file string, cause error, mend string) *Error {
	return &Error{Problems: []Problem{{File: plain.Line(file), What: plain.Line(cause.Error()), Mend: mend}}, cause: cause}
}
