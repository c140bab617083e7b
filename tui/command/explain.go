package command

import (
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/paper"
)

// explainCommand says where a figure comes from, or lists those it can explain.
func (g *program) explainCommand() *cobra.Command {
	return &cobra.Command{
		Use: "explain [FIGURE] [PLAN]", Short: "Say where a figure comes from, named as `figures` names it; without one, list them",
		Example: `  pourbench explain base.superfat_as_weighed_percent
  pourbench explain base.jugs[1].late_chance_percent meadow.toml
  pourbench explain meadow.toml      list every figure of that plan`,
		Args: cobra.MaximumNArgs(2),
		RunE: func(_ *cobra.Command, args []string) error {
			figure, plan := "", args
			if len(args) > 0 && !isPlan(args[0]) {
				figure, plan = args[0], args[1:]
			}
			sheet, shelf, hand, err := g.worked(plan)
			if err != nil {
				return err
			}
			if figure == "" {
				return g.print(strings.Join(sheet.Explained(), "\n") + "\n")
			}
			a, err := sheet.Explain(figure, shelf, hand)
			if err != nil {
				return err
			}
			return g.print(paper.Explain(a))
		},
	}
}

// isPlan says whether a word names a plan rather than a figure: no figure's name has such an end.
func isPlan(word string) bool { return word == "-" || strings.HasSuffix(word, ".toml") }
