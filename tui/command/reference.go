package command

import (
	"github.com/spf13/cobra"

	"pourbench/pour/paper"
	"pourbench/tui/keys"
)

// referenceCommands print what the program knows of itself, each from the table it goes by.
func (g *program) referenceCommands(root *cobra.Command) []*cobra.Command {
	return []*cobra.Command{
		g.printed("keys", "Print the table of keys", keys.Markdown),
		g.printed("codes", "Print the table of warnings", paper.CodeTable),
		g.printed("man", "Print the man page", func() string { return manual(root) }),
	}
}

// printed makes a command that prints a text.
func (g *program) printed(use, short string, text func() string) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return g.print(text()) },
	}
}

// manual is the man page: the commands from their own descriptions, the keys from their table. Written here, not by the man printer of
// the command library, because that brings a Markdown and a YAML reader which every start would pay for.
func manual(root *cobra.Command) string {
	page := ".TH POURBENCH 1 \"\" \"pourbench " + version() + "\"\n.SH NAME\npourbench \\- " + root.Short +
		"\n.SH SYNOPSIS\n.B pourbench\n[PLAN] [flags]\n.SH DESCRIPTION\n" + root.Long + "\n.SH COMMANDS\n"
	for _, c := range root.Commands() {
		page += ".TP\n.B " + c.Use + "\n" + c.Short + "\n"
	}
	return page + ".SH OPTIONS\n.nf\n" + root.LocalFlags().FlagUsages() + ".fi\n" + keys.Man()
}
