// Package command is the program's commands, one file for each family of them: what they are called, what they are given and what they
// print. It opens the workbench and the live run and works nothing out. What the program was built with comes in as a value.
package command

import (
	"errors"
	"fmt"
	"io"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/plain"
	"pourbench/tui/lines"
	"pourbench/tui/terminal"
)

// Exit codes, part of the contract with scripts; 0 is done.
const (
	exitRefused     = 2 // a plan that cannot be read, or a wrong use of a command; 1 and 3 are those of check
	exitInterrupted = 130
)

// errInterrupted ends a command that was stopped with Ctrl+C.
var errInterrupted = errors.New("interrupted")

// Process is what the operating system hands to a program.
type Process struct {
	Args      []string // without the program's own name
	In        io.Reader
	Out, Errs io.Writer
	Environ   []string         // as "KEY=value"
	Now       func() time.Time // the clock on the wall; nil: the system's own
}

// Builtin is what the program was built with: its shelf and its example plans.
type Builtin struct {
	Shelf     func() (pour.Shelf, error)
	Overlay   func(base pour.Shelf, name string, r io.Reader) (pour.Shelf, error) // a maker's shelf file laid over a shelf
	Plans     func() []string                                                     // names of the examples; the first opens when none is named
	Plan      func(name string) ([]byte, error)                                   // the TOML of an example
	Entry     func(base pour.Shelf, of pour.EntryName) []pour.ShelfKey            // the keys of an entry on a shelf, of a blank one where it has no id
	Reference func() string                                                       // what can stand in a shelf file
}

// Main runs one command and returns the exit code of the process.
func Main(p Process, b Builtin) int {
	g := &program{Process: p, built: b}
	root := g.root()
	root.SetArgs(p.Args)
	root.SetOut(p.Out)
	root.SetErr(p.Errs)
	err := root.Execute()
	var ended terminal.EndedError
	switch {
	case err == nil:
		return g.exit
	case errors.As(err, &ended):
		return ended.Exit()
	case errors.Is(err, terminal.ErrInterrupted), errors.Is(err, errInterrupted):
		return exitInterrupted
	}
	g.say("%v", err)
	return exitRefused
}

// program is what the commands share.
type program struct {
	Process
	built      Builtin
	shelfFile  string
	colour     string
	background string
	pixels     string
	cells      string
	noMouse    bool
	plain      bool       // --plain
	talk       lines.Talk // what plain mode talks through, once it does
	exit       int
}

// say tells the maker something beside the result. An argument or the name of a file in it may hold anything, so it is made safe here.
func (g *program) say(format string, args ...any) {
	_, _ = fmt.Fprintln(g.Errs, plain.Text("pourbench: "+fmt.Sprintf(format, args...)))
}

// now is the moment by the clock on the wall, in the zone of the room. Nothing below the commands asks for it.
func (g *program) now() time.Time {
	if g.Now != nil {
		return g.Now()
	}
	return time.Now()
}

// today is the day of that clock.
func (g *program) today() day.Day { return day.Of(g.now()) }

// print writes a result.
func (g *program) print(text ...string) error {
	for _, t := range text {
		if _, err := io.WriteString(g.Out, t); err != nil {
			return err
		}
	}
	return nil
}
