package command

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/spf13/cobra"

	"pourbench/pour/day"
	"pourbench/pour/planfile"
	"pourbench/pour/season"
)

// pourFlags are what of a planned pour can be typed behind its plan.
type pourFlags struct{ date, on string }

func (f *pourFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.date, "for", "", "the date it is for, by its name")
	cmd.Flags().StringVar(&f.on, "on", "", "the day it is poured, as 2026-11-14 or 14 Nov; empty: by the day the season finds")
}

// over lays the flags that were typed over a pour.
func (f *pourFlags) over(cmd *cobra.Command, p season.Planned, today day.Day) (season.Planned, error) {
	if cmd.Flags().Changed("for") {
		p.For = f.date
	}
	if !cmd.Flags().Changed("on") {
		return p, nil
	}
	if p.Day = nil; f.on == "" {
		return p, nil
	}
	d, err := day.Read(f.on, today)
	if err != nil {
		return p, err
	}
	p.Day = &d
	return p, nil
}

func (g *program) addPourCommand() *cobra.Command {
	var flags pourFlags
	var cmd *cobra.Command
	cmd = g.seasonStep("add-pour PLAN", "Plan a pour; or name the id of one in the logbook, to say which date it is for", 1, `add-pour meadow.toml --for "winter market" --on 2026-11-14`,
		func(s season.Store, args []string) (string, error) {
			p, err := g.toPour(args[0])
			if err != nil {
				return "", err
			}
			if p, err = flags.over(cmd, p, g.today()); err != nil {
				return "", err
			}
			return g.tellPour(p, s.AddPour(p))
		})
	flags.add(cmd)
	return cmd
}

// toPour is the plan that was named, or the pour of the logbook; either must be there.
func (g *program) toPour(named string) (season.Planned, error) {
	shelf, err := g.shelf()
	if err != nil {
		return season.Planned{}, err
	}
	if !isPlan(named) {
		return season.Planned{Pour: named}, g.isLogged(named)
	}
	if named == "-" {
		return season.Planned{}, errors.New("plan a pour: a plan from standard input has no file to know it by; name its file")
	}
	if _, err := planfile.Load(named, shelf); err != nil {
		return season.Planned{}, err
	}
	name, err := g.planName(named)
	return season.Planned{Plan: name}, err
}

// isLogged refuses an id of no pour.
func (g *program) isLogged(id string) error {
	book, shelf, err := g.openBook()
	if err != nil {
		return err
	}
	_, err = book.Read(id, shelf)
	return err
}

// tellPour says what the board says of the last pour that is as one that was just written.
func (g *program) tellPour(p season.Planned, err error) (string, error) {
	if err != nil {
		return "", err
	}
	b, err := g.seasonBoard()
	if err != nil {
		return "", err
	}
	at := -1
	for i, r := range b.Rows {
		if (p.Plan != "" && r.Plan == p.Plan || p.Pour != "" && r.ID == p.Pour) && (at < 0 || r.Entry > b.Rows[at].Entry) {
			at = i
		}
	}
	if at < 0 {
		return "it is in the season", nil
	}
	text := fmt.Sprintf("pour %d of the season: ", b.Rows[at].Entry)
	for i, line := range b.Tell(at) {
		if i > 0 {
			text += "\n"
		}
		text += line
	}
	return text, nil
}

func (g *program) changePourCommand() *cobra.Command {
	var flags pourFlags
	id := ""
	var cmd *cobra.Command
	cmd = g.seasonStep("change-pour NUMBER", "Change a planned pour by its number on the board: its day, its date, or that it was poured", 1, "change-pour 2 --on 2026-11-21",
		func(s season.Store, args []string) (string, error) {
			if cmd.Flags().NFlag() == 0 {
				return "", errors.New("change a pour: say what is to change, as in pourbench season change-pour 2 --on 2026-11-21")
			}
			number, was, err := numbered(s, args[0])
			if err != nil {
				return "", err
			}
			now, err := flags.over(cmd, was, g.today())
			if err != nil {
				return "", err
			}
			if id != "" {
				if err := g.isLogged(id); err != nil {
					return "", err
				}
				now.Plan, now.Pour, now.Day = "", id, nil
			}
			return g.tellPour(now, s.ChangePour(number, was, now))
		})
	flags.add(cmd)
	cmd.Flags().StringVar(&id, "poured", "", "id of the pour in the logbook that it has become")
	return cmd
}

// removePour takes a pour out by its number.
func (g *program) removePour(s season.Store, args []string) (string, error) {
	number, was, err := numbered(s, args[0])
	if err != nil {
		return "", err
	}
	return "pour " + args[0] + " is out of the season", s.RemovePour(number, was)
}

// numbered is the pour of the season with a number.
func numbered(s season.Store, text string) (int, season.Planned, error) {
	f, err := season.Load(s.Dir)
	if err != nil {
		return 0, season.Planned{}, err
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > len(f.Pours) {
		return 0, season.Planned{}, fmt.Errorf("find the pour %q: the season numbers its pours from 1 to %d; pourbench season lists them", text, len(f.Pours))
	}
	return n, f.Pours[n-1], nil
}
