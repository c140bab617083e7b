package tui

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
)

// bench is what panels are drawn from: the plan, its figures and how to show them. It is made afresh for every plan and never changed.
type bench struct {
	plan  pour.Plan
	sheet *pour.Sheet
	clock *pour.Sheet // the last sheet with the clock's figures
	fresh bool        // the clock's figures belong to this plan
	shelf pour.Shelf
	show  pour.Show
	look  look.Look

	warnings     []pour.Warning
	colours      *pour.Sheet // the last sheet that knows what the colours do; its Look may be unknown
	coloursFresh bool
	measured     *measured
}

// names of the two batches by panel.
func batchName(p layout.Panel) pour.BatchName {
	if p.Icing {
		return pour.Icing
	}
	return pour.Base
}

// batch returns the sheet of a panel's batch, or nil.
func (b *bench) batch(p layout.Panel) *pour.BatchSheet { return batchOf(b.sheet, p) }

func batchOf(s *pour.Sheet, p layout.Panel) *pour.BatchSheet {
	if p.Icing {
		return s.Icing
	}
	return &s.Base
}

// grid builds the grid of a panel. Panels that draw themselves have one too, for their cursor and what is copied from them.
func (b *bench) grid(p layout.Panel) grid.Grid {
	if p.Icing && b.sheet.Icing == nil {
		return grid.Grid{}
	}
	switch p.Kind {
	case layout.Grid:
		return b.jugGrid(p)
	case layout.Clock:
		return b.clockGrid(p)
	case layout.Weigh:
		return b.weighGrid()
	case layout.Vessel:
		return b.vesselGrid()
	case layout.Technique:
		return b.techniqueGrid()
	case layout.Orders:
		return b.orderGrid()
	case layout.Pairs:
		return b.pairGrid()
	case layout.Measures:
		return b.measureGrid()
	case layout.Bed:
		return b.bedGrid()
	case layout.About:
		return b.aboutGrid()
	case layout.Oils:
		return b.oilGrid(p)
	case layout.Extras:
		return b.extraGrid(p)
	case layout.Bursts:
		return b.burstGrid(p)
	case layout.Lye:
		return b.lyeGrid(p)
	case layout.Fats:
		return b.fatGrid(p)
	case layout.Scents:
		return b.scentGrid(p)
	case layout.Tasks:
		return b.taskGrid()
	case layout.Hands:
		return b.handGrid()
	default:
		return grid.Grid{}
	}
}

// title is a panel's name on its border.
func (b *bench) title(p layout.Panel) string {
	of := ""
	if p.Icing {
		of = " of the icing"
	}
	name := [layout.Kinds]string{
		layout.Grid: "Jugs", layout.Clock: "Clock", layout.Filling: "In the mould", layout.Weigh: "To weigh, all together",
		layout.Vessel: "Mould and bars", layout.Technique: "Technique", layout.Bed: "To bed", layout.About: "This plan",
		layout.Oils: "Oils", layout.Extras: "Extras, before the split", layout.Bursts: "Stick blender",
		layout.Lye: "Lye and superfat", layout.Fats: "Fatty acids", layout.Scents: "Scents", layout.Tasks: "The run, in order",
		layout.Hands: "How long the hands need", layout.NoIcing: "Icing", layout.Behaviour: "How they behave", layout.Warnings: "To know before lye meets oil",
		layout.Face: "The swirl", layout.Orders: "The order to pour in", layout.Pairs: "Neighbours", layout.Measures: "On this bar",
	}[p.Kind]
	return name + of
}

// shown is a figure to read and copy.
func (b *bench) shown(text, hint string) grid.Cell {
	return grid.Cell{Kind: grid.Shown, Text: text, Hint: hint}
}

// label is text the cursor passes over.
func (b *bench) label(text string) grid.Cell { return grid.Cell{Text: text, Style: b.look.Quiet} }

// number is a number that can be typed over and nudged. v is in the plan's unit, step too; set gets the plan's unit back.
func (b *bench) number(name, text string, v float64, u pour.Unit, step float64, set func(float64) pour.Edit) grid.Cell {
	return grid.Cell{
		Kind: grid.Number, Text: text, Plain: b.show.Plain(v, u), Name: name,
		Set: func(typed string) (pour.Edit, error) {
			n, err := strict.ParseNumber(typed)
			if err != nil {
				return nil, err
			}
			return set(b.show.FromUnit(n, u)), nil
		},
		Nudge: func(steps float64) (pour.Edit, error) { return set(trim(v + steps*step)), nil },
	}
}

// trim takes the last bits off a nudged number, so that 0.1 + 0.2 is typed as 0.3.
func trim(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// words is free text.
func (b *bench) words(name, text string, set func(string) pour.Edit) grid.Cell {
	return grid.Cell{
		Kind: grid.Words, Text: text, Plain: text, Name: name,
		Set: func(typed string) (pour.Edit, error) { return set(plain.Line(typed)), nil },
	}
}

// bare takes the unit off a figure whose column says it.
func bare(text string) string {
	if i := strings.LastIndexByte(text, ' '); i > 0 {
		return text[:i]
	}
	return text
}

// grams is the maker's unit of mass, for the head of a column.
func (b *bench) grams() string {
	_, unit := b.show.ToUnit(0, pour.UnitGram)
	return unit
}

// clockText draws one of the clock's figures; while it is worked out again the old one stands with a mark.
func (b *bench) clockText(text string) string {
	if b.fresh {
		return text
	}
	return text + "…"
}

// percent draws a percentage as short as its decimals allow, at most places.
func percent(v float64, places int) string {
	if !pour.AsFigure(v).Known {
		return "–"
	}
	text := fmt.Sprintf("%.*f", places, v)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}
