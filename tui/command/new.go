package command

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/fresh"
	"pourbench/pour/plain"
	"pourbench/pour/planfile"
)

// newCommand makes a plan of a few wishes, as the bench does when it asks for them.
func (g *program) newCommand() *cobra.Command {
	var w fresh.Wishes
	var file string
	var ounces bool
	cmd := &cobra.Command{
		Use: "new -o FILE.toml", Short: "Make a new plan: mould or bars, technique, colours, scents, icing, name", Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			if ounces {
				w.Show = pour.Avoirdupois()
			}
			return g.newPlan(w, file)
		},
	}
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write, which must not be there; \"-\" is standard output")
	cmd.Flags().StringVar(&w.Name, "name", "", "what it is called")
	cmd.Flags().StringVar(&w.Mould, "mould", "", "a mould on the shelf, by its id or words of its name (default: a loaf of 10 bars)")
	cmd.Flags().IntVar(&w.Bars, "bars", 0, "a loaf of so many bars instead")
	cmd.Flags().StringVar(&w.Technique, "technique", "", "a technique on the shelf (default: hanger)")
	cmd.Flags().StringArrayVar(&w.Colours, "colour", nil, "a colourant, a jug each; say it again for more")
	cmd.Flags().StringArrayVar(&w.Scents, "scent", nil, "a scent; say it again for more")
	cmd.Flags().BoolVar(&w.Icing, "icing", false, "with an icing on top")
	cmd.Flags().BoolVar(&ounces, "ounces", false, "in ounces, °F and inches")
	return cmd
}

// newPlan writes the plan that wishes give.
func (g *program) newPlan(w fresh.Wishes, file string) error {
	if file == "" {
		return errors.New("make a new plan: say where to, as in -o hay-day.toml")
	}
	if w.Bars != 0 && w.Mould != "" {
		return errors.New("make a new plan: --mould and --bars are both said; take one of the two")
	}
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	w.Name = plain.Line(w.Name)
	plan, err := fresh.Plan(w, shelf, g.hand(shelf))
	if err != nil {
		return err
	}
	if file == "-" {
		return planfile.Write(g.Out, plan)
	}
	if _, err := planfile.Save(file, plan, planfile.SaveOptions{}); err != nil {
		return err
	}
	jugs := make([]string, len(plan.Base.Jugs))
	for i, j := range plan.Base.Jugs {
		jugs[i] = j.Name
	}
	return g.print(fmt.Sprintf("%s (%s) is written to %s\n", plan.Name, strings.Join(jugs, ", "), file))
}
