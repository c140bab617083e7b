package command

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/pour/season"
	"pourbench/pour/strict"
)

// houseCommand says or changes what the maker has to pour with.
func (g *program) houseCommand() *cobra.Command {
	rack, most := 0, 0
	days := ""
	var cmd *cobra.Command
	cmd = g.seasonStep("house", "Say what you have to pour with, or change it: places on the rack, bench days, most pours a day", 0, "house --rack 120 --bench-days sat,sun --most 1",
		func(s season.Store, _ []string) (string, error) {
			if cmd.Flags().NFlag() > 0 {
				bench, err := benchDays(days)
				if err != nil {
					return "", err
				}
				err = s.SetHouse(func(h season.House) season.House {
					if cmd.Flags().Changed("rack") {
						h.RackBars = rack
					}
					if cmd.Flags().Changed("most") {
						h.MostPours = most
					}
					if cmd.Flags().Changed("bench-days") {
						h.BenchDays = bench
					}
					return h
				})
				if err != nil {
					return "", err
				}
			}
			b, err := g.seasonBoard()
			return b.TellHouse(), err
		})
	cmd.Flags().IntVar(&rack, "rack", 0, "places on the rack, bars; 0: not stated")
	cmd.Flags().IntVar(&most, "most", 0, "most pours on one day; 0: as many as you like")
	cmd.Flags().StringVar(&days, "bench-days", "", "days of the week you pour on, as sat,sun; empty: any")
	return cmd
}

// benchDays reads days of the week.
func benchDays(text string) ([]time.Weekday, error) {
	var out []time.Weekday
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ' ' }) {
		d, ok := season.Weekday(word)
		if !ok {
			return nil, strict.NoWord("--bench-days", word, season.Weekdays())
		}
		if !slices.Contains(out, d) {
			out = append(out, d)
		}
	}
	return out, nil
}

// addMouldCommand takes the measures of a mould from a plan or the shelf.
func (g *program) addMouldCommand() *cobra.Command {
	count, cavities := 1, 0
	cmd := g.seasonStep("add-mould NAME PLAN", "Add a mould you own, with the measures of a plan's or, by its id, of the shelf's", 2, `add-mould "loaf 10" meadow.toml --count 2`,
		func(s season.Store, args []string) (string, error) {
			m, err := g.mouldOf(args[1])
			if err != nil {
				return "", err
			}
			own := season.Mould{Name: args[0], Count: count, Shape: m.Shape, LengthMM: m.LengthMM, WidthMM: m.WidthMM, HeightMM: m.HeightMM}
			if m.Shape == pour.ShapeCavity {
				if own.Cavities = m.Cavities; cavities > 0 {
					own.Cavities = cavities
				}
			}
			return fmt.Sprintf("%d × %s is among your moulds: %s", count, args[0], own.Tell()), s.AddMould(own)
		})
	cmd.Flags().IntVar(&count, "count", 1, "how many of it you own")
	cmd.Flags().IntVar(&cavities, "cavities", 0, "bars that one mould of single cavities holds; 0: as many as the plan fills")
	return cmd
}

// mouldOf is the mould of a plan, or of the shelf by its id.
func (g *program) mouldOf(named string) (pour.Mould, error) {
	shelf, err := g.shelf()
	if err != nil {
		return pour.Mould{}, err
	}
	var ids []string
	for _, m := range shelf.Moulds {
		if m.ID == named {
			return m.Mould, nil
		}
		ids = append(ids, m.ID)
	}
	if !isPlan(named) {
		return pour.Mould{}, fmt.Errorf("find the mould %q: %s", named, strict.Meant(named, ids, "name a plan file, or a mould of the shelf: "+strings.Join(ids, ", "), ""))
	}
	doc, err := planfile.Load(named, shelf)
	return doc.Plan.Mould, err
}

// planName is how the season's file names a plan: from its own folder where it lies below it, else in full.
func (g *program) planName(path string) (string, error) {
	whole, err := filepath.Abs(path)
	if err != nil {
		return "", fmt.Errorf("find the plan %s: %w", path, err)
	}
	if below, err := filepath.Rel(g.dataDir(), whole); err == nil && filepath.IsLocal(below) {
		return filepath.ToSlash(below), nil
	}
	return whole, nil
}
