package command

import (
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
)

// referenceCommands print what the program knows of itself, each from the table it goes by.
func (g *program) referenceCommands(root *cobra.Command) []*cobra.Command {
	return []*cobra.Command{
		g.keysCommand(),
		g.printed("codes", "Print the table of warnings", paper.CodeTable),
		g.printed("planfile", "Print what can stand in a plan file", planfile.Reference),
		g.printed("shelf", "Print what can stand in a shelf file", g.built.Reference),
		g.printed("man", "Print the man page", func() string { return g.manual(root) }),
	}
}

// printed makes a command that prints a text.
func (g *program) printed(use, short string, text func() string) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return g.print(text()) },
	}
}

// manual is the man page: the commands from their own descriptions, all else from the tables. Written here, not by the man printer of
// the command library, because that brings a Markdown and a YAML reader which every start would pay for.
func (g *program) manual(root *cobra.Command) string {
	page := ".TH POURBENCH 1 \"\" \"pourbench " + version() + "\"\n.SH NAME\npourbench \\- " + root.Short +
		"\n.SH SYNOPSIS\n.B pourbench\n[PLAN] [flags]\n.SH DESCRIPTION\n" + root.Long + "\n.SH COMMANDS\n"
	for _, c := range root.Commands() {
		page += ".TP\n.B " + c.Use + "\n" + c.Short + "\n"
	}
	page += asTyped("OPTIONS", root.LocalFlags().FlagUsages()) + g.bound().Man() + ".SH WARNINGS\n"
	for _, c := range pour.Codes() {
		page += ".TP\n.B " + c.Code + "\n" + string(c.Severity) + ": " + c.Meaning + "\n"
	}
	return page + asTyped("PLAN FILE", planfile.Reference()) + asTyped("SHELF FILE", g.built.Reference())
}

// asTyped is a section of the man page whose lines stay as they are.
func asTyped(title, text string) string {
	safe := strings.NewReplacer(`\`, `\e`, "\n.", "\n\\&.", "\n'", "\n\\&'").Replace("\n" + strings.TrimRight(text, "\n"))
	return ".SH " + title + "\n.nf" + safe + "\n.fi\n"
}
