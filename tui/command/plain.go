package command

import (
	"errors"
	"os"

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"

	"pourbench/tui/lines"
)

// plainFlag gives a command that opens a screen the choice of plain mode.
func (g *program) plainFlag(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&g.plain, "plain", g.accessible(), "talk in lines and questions, ASCII only, in place of a screen; ACCESSIBLE in the environment asks for it too")
}

// accessible says whether the environment asks for plain mode. As for other programs, 0 and nothing are no.
func (g *program) accessible() bool {
	value := g.env("ACCESSIBLE")
	return value != "" && value != "0"
}

// converses says whether to talk in lines: asked for, or on a terminal that cannot hold a screen. What the environment asks for counts on a
// terminal alone: a script that reads the checklist goes on reading it.
func (g *program) converses(args []string, asked bool) (bool, error) {
	onTerminal := g.outIsTerminal()
	fromInput := len(args) == 1 && args[0] == "-"
	switch {
	case asked && g.plain && fromInput:
		return false, errors.New("plain mode reads what you type from standard input, so the plan cannot come from there: name its file")
	case asked:
		return g.plain, nil
	}
	return onTerminal && !fromInput && (g.plain || g.dumb()), nil
}

// outIsTerminal says whether standard output is a terminal, however little it can.
func (g *program) outIsTerminal() bool {
	f, ok := g.Out.(*os.File)
	return ok && isatty.IsTerminal(f.Fd())
}

// dumb says whether the terminal says of itself that it cannot place a cursor.
func (g *program) dumb() bool { return g.env("TERM") == "dumb" }

// talking is what plain mode talks through: one for the whole process, since what was read ahead of the input is in it.
func (g *program) talking() lines.Talk {
	if g.talk.In == nil {
		g.talk = lines.Talk{In: lines.Open(g.In), Out: lines.NewPaper(g.Out)}
	}
	return g.talk
}
