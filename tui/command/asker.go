package command

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/mattn/go-isatty"

	"pourbench/pour/backup"
	"pourbench/pour/plain"
)

// errKept is the answer that a file stays as it is.
var errKept = errors.New("it is left as it is")

// asker gives leave to write over files: by an answer on the terminal, or by --replace.
type asker struct {
	in      *bufio.Reader // nil: there is nobody to ask
	out     io.Writer
	replace bool // leave is given for all
}

// asker asks on this terminal, if there is one.
func (g *program) asker(replace bool) *asker {
	a := &asker{out: g.Errs, replace: replace}
	if f, ok := g.In.(*os.File); ok && isatty.IsTerminal(f.Fd()) {
		a.in = bufio.NewReader(f)
	}
	return a
}

// leave asks for leave to write over a file. [errKept]: no; any other error ends the command.
func (a *asker) leave(why string) error {
	if a.replace {
		return nil
	}
	if a.in == nil {
		return fmt.Errorf("%s; nothing is written over without --replace", why)
	}
	for {
		_, _ = fmt.Fprintf(a.out, "%s. Replace it? y yes, n no, a all of them, q stop here: ", plain.Line(why))
		line, err := a.in.ReadString('\n')
		switch strings.ToLower(strings.TrimSpace(line)) {
		case "y", "yes":
			return nil
		case "n", "no":
			return errKept
		case "a", "all":
			a.replace = true
			return nil
		case "q", "quit", "stop":
			return errors.New("stopped; what is listed above was done")
		}
		if err != nil {
			return fmt.Errorf("%s, and there was no answer: %w", why, err)
		}
	}
}

// first refuses before anything is written when files differ, nobody can be asked and no leave was given.
func (a *asker) first(steps []backup.Step) error {
	if a.replace || a.in != nil {
		return nil
	}
	differ := 0
	var names []string
	const shown = 12
	for _, s := range steps {
		if s.State == backup.Other {
			if differ++; differ <= shown {
				names = append(names, s.Path)
			}
		}
	}
	if differ == 0 {
		return nil
	}
	if differ > shown {
		names = append(names, fmt.Sprintf("and %d more", differ-shown))
	}
	return fmt.Errorf("restore: %d files differ from those in the backup, nothing was written; --replace writes over them:\n%s", differ, strings.Join(names, "\n"))
}

// agree asks whether something may be done. With nobody to ask it may not.
func (a *asker) agree(question string) bool {
	if a.in == nil {
		return false
	}
	for {
		_, _ = fmt.Fprintf(a.out, "%s y yes, n no: ", plain.Line(question))
		line, err := a.in.ReadString('\n')
		switch strings.ToLower(strings.TrimSpace(line)) {
		case "y", "yes":
			return true
		case "n", "no":
			return false
		}
		if err != nil {
			return false
		}
	}
}
