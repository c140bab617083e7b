package command

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
	"pourbench/pour/season"
	"pourbench/pour/strict"
)

// seasonCommand prints the season's board, and changes its file.
func (g *program) seasonCommand() *cobra.Command {
	design := false
	cmd := &cobra.Command{
		Use: "season", Short: "Markets and orders worked backwards to the day to pour by, what collides, how each design did", Args: cobra.NoArgs,
		Long: `Print the season: every market and order backwards through labels, drying, cut and
embeds to the day by which to pour, in three answers: by the middle of the drying's
band; to be sure, by its late end; with luck, by its early end. Then the weeks as a
strip, and what collides: moulds, bench days, places on the rack, bars that are
missing; each with what would help.

It stands in season.toml beside your pours, a plain file: what you write into it by
hand, comments too, stays. Dry is dry by your criterion, never safe.`,
		Example: `  pourbench season
  pourbench season --design                                how each design did, with whom
  pourbench season house --rack 120 --bench-days sat,sun --most 1
  pourbench season add-mould "loaf 10" meadow.toml --count 2
  pourbench season add-date "winter market" 2026-12-19 --audience town --label-days 2 --wants "Alpine Meadow=12"
  pourbench season add-pour meadow.toml --for "winter market"`,
		RunE: func(*cobra.Command, []string) error { return g.season(design) },
	}
	cmd.Flags().BoolVar(&design, "design", false, "how each design did, by audience and channel")
	cmd.AddCommand(g.addDateCommand(), g.changeDateCommand(), g.seasonStep("remove-date NAME", "Take a date out; its pours stay", 1, `remove-date "winter market"`,
		g.removeDate))
	cmd.AddCommand(g.addPourCommand(), g.changePourCommand(), g.seasonStep("remove-pour NUMBER", "Take a planned pour out", 1, "remove-pour 2", g.removePour))
	cmd.AddCommand(g.houseCommand(), g.addMouldCommand(), g.seasonStep("remove-mould NAME", "Take a mould out", 1, `remove-mould "loaf 10"`,
		func(s season.Store, args []string) (string, error) {
			return args[0] + " is out of your moulds", s.RemoveMould(args[0])
		}))
	return cmd
}

// season prints the board, or how each design did.
func (g *program) season(design bool) error {
	if !design {
		b, err := g.seasonBoard()
		if err != nil {
			return err
		}
		return g.print(paper.SeasonText(b))
	}
	all, err := g.logged()
	if err != nil {
		return err
	}
	return g.print(paper.ResultText(season.Results(all.batches)))
}

// loggedPours is the logbook with what it teaches, and the batches in it; where there is none yet, none.
type loggedPours struct {
	book    logbook.Book
	shelf   pour.Shelf
	hand    pour.Hand
	batches []life.Batch
}

// logged reads the logbook. It says nothing: a screen may have the terminal.
func (g *program) logged() (loggedPours, error) {
	var l loggedPours
	var err error
	if l.shelf, err = g.shelf(); err != nil {
		return l, err
	}
	if _, err := os.Stat(g.bookDir()); err != nil {
		return l, nil //nolint:nilerr // there is no logbook yet
	}
	if l.book, err = logbook.OpenBook(g.bookDir()); err != nil {
		return l, err
	}
	if lesson, _, err := g.taught(l.shelf); err == nil { // without it bars dry as they do for everybody
		l.hand = lesson.Taught()
	}
	l.batches, err = life.All(l.book, l.shelf, l.hand, g.today())
	return l, err
}

// seasonBoard works the season out. It says nothing either.
func (g *program) seasonBoard() (season.Board, error) {
	l, err := g.logged()
	if err != nil {
		return season.Board{}, err
	}
	facts, err := season.Gather(g.dataDir(), l.book, l.shelf, l.hand, l.batches, g.today())
	if err != nil {
		return season.Board{}, err
	}
	return season.Of(facts), nil
}

// seasonStep is a command that changes the season's file and says what it did.
func (g *program) seasonStep(use, short string, most int, example string, do func(season.Store, []string) (string, error)) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Example: "  pourbench season " + example, Args: takes(most),
		RunE: func(_ *cobra.Command, args []string) error {
			said, err := do(season.NewStore(g.dataDir()), args)
			if err != nil {
				return err
			}
			return g.print(said + "\n")
		},
	}
}

// wants reads what a date wants, as DESIGN=BARS.
func wants(typed []string) ([]season.Want, error) {
	var out []season.Want
	for _, text := range typed {
		at := strings.LastIndex(text, "=")
		if at < 1 {
			return nil, fmt.Errorf(`read --wants %q: write DESIGN=BARS, as in --wants "Alpine Meadow=12"`, text)
		}
		n, err := strconv.Atoi(strings.TrimSpace(text[at+1:]))
		if err != nil || n < 1 {
			return nil, fmt.Errorf(`read --wants %q: %q is no number of bars; write DESIGN=BARS, as in --wants "Alpine Meadow=12"`, text, text[at+1:])
		}
		out = append(out, season.Want{Design: strings.TrimSpace(text[:at]), Bars: n})
	}
	return out, nil
}

// dateFlags are what of a date can be typed behind its name.
type dateFlags struct {
	kind, audience string
	labelDays      int
	wants          []string
}

func (f *dateFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.kind, "kind", string(season.Market), "market or order")
	cmd.Flags().StringVar(&f.audience, "audience", "", "who it is for, in your own word")
	cmd.Flags().IntVar(&f.labelDays, "label-days", 0, "days before it for labels and packing")
	cmd.Flags().StringArrayVar(&f.wants, "wants", nil, "bars of a design, as DESIGN=BARS; once for each design")
}

// on lays the flags that were typed over a date.
func (f *dateFlags) on(cmd *cobra.Command, d season.Date) (season.Date, error) {
	typed := cmd.Flags().Changed
	if typed("kind") || d.Kind == "" {
		if k := season.Kind(f.kind); k != season.Market && k != season.Order {
			return d, strict.NoWord("--kind", f.kind, []string{string(season.Market), string(season.Order)})
		}
		d.Kind = season.Kind(f.kind)
	}
	if typed("audience") {
		d.Audience = f.audience
	}
	if typed("label-days") {
		d.LabelDays = f.labelDays
	}
	if typed("wants") {
		w, err := wants(slices.DeleteFunc(slices.Clone(f.wants), func(s string) bool { return s == "" }))
		if err != nil {
			return d, err
		}
		d.Wants = w
	}
	return d, nil
}

func (g *program) addDateCommand() *cobra.Command {
	var flags dateFlags
	var cmd *cobra.Command
	cmd = g.seasonStep("add-date NAME DAY", "Add a market or an order", 2, `add-date "winter market" 2026-12-19 --audience town --wants "Alpine Meadow=12"`,
		func(s season.Store, args []string) (string, error) {
			on, err := g.day(args[1])
			if err != nil {
				return "", err
			}
			d, err := flags.on(cmd, season.Date{Name: args[0], Day: on})
			if err != nil {
				return "", err
			}
			if on < g.today() {
				g.say("%s is over already", on)
			}
			if err := s.AddDate(d); err != nil {
				return "", err
			}
			g.unheard(d.Wants)
			return fmt.Sprintf("%s on %s %s is in the season", d.Name, on.Weekday(), on), nil
		})
	flags.add(cmd)
	return cmd
}

func (g *program) changeDateCommand() *cobra.Command {
	var flags dateFlags
	name, to := "", ""
	var cmd *cobra.Command
	cmd = g.seasonStep("change-date NAME", "Change a date; what is not named stays", 1, `change-date "winter market" --day 2026-12-20`,
		func(s season.Store, args []string) (string, error) {
			if cmd.Flags().NFlag() == 0 {
				return "", errors.New("change a date: say what is to change, as in " + strings.TrimSpace(cmd.Example))
			}
			var bad error
			err := s.ChangeDate(args[0], func(d season.Date) season.Date {
				was := d
				if d, bad = flags.on(cmd, d); bad == nil && to != "" {
					d.Day, bad = g.day(to)
				}
				if name != "" {
					d.Name = name
				}
				if bad != nil {
					return was
				}
				return d
			})
			if err = errors.Join(bad, err); err == nil {
				w, _ := wants(flags.wants)
				g.unheard(w)
			}
			return args[0] + " is changed", err
		})
	flags.add(cmd)
	cmd.Flags().StringVar(&name, "name", "", "another name; its pours follow")
	cmd.Flags().StringVar(&to, "day", "", "another day")
	return cmd
}

// removeDate takes a date out, and says which pours are for none without it.
func (g *program) removeDate(s season.Store, args []string) (string, error) {
	f, err := season.Load(s.Dir)
	if err != nil {
		return "", err
	}
	text := args[0] + " is out of the season"
	for _, n := range f.PoursFor(args[0]) {
		p := f.Pours[n-1]
		text += fmt.Sprintf("\npour %d, %s, stays and is for no date now", n, cmp.Or(p.Pour, p.Plan))
	}
	return text, s.RemoveDate(args[0])
}

// unheard warns of designs that are wanted and that no pour is of, planned or logged: the name may have been mistyped.
func (g *program) unheard(wants []season.Want) {
	b, err := g.seasonBoard()
	if err != nil {
		return // the season itself says it
	}
	all, err := g.logged()
	if err != nil {
		return
	}
	var names []string
	for _, r := range b.Rows {
		names = append(names, r.Name)
	}
	for _, p := range all.batches {
		names = append(names, p.Name)
	}
	for _, w := range wants {
		if !slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(strings.TrimSpace(n), w.Design) }) {
			g.say("no pour of %q is planned or in the logbook; %s", w.Design, strict.Meant(w.Design, names, "if it is spelled as in its plan, plan one: pourbench season add-pour", ""))
		}
	}
}
