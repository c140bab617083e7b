package panel

import (
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// vesselValueW is the room for the mould's values.
const vesselValueW = 16

// vessel is the mould, how it is cut, and what comes off the cutter.
func vessel() Panel {
	return Panel{ID: "vessel", Title: "Mould and bars", cells: keys.Numbers | keys.Words, Grid: (*Facts).vesselGrid}
}

func (f *Facts) vesselGrid() grid.Grid {
	rows := []grid.Row{
		formRow("take a mould", f.mouldCell()),
		f.word("mould.shape", ""), f.field("mould.length_mm", ""), f.field("mould.width_mm", ""), f.field("mould.height_mm", ""),
		f.field("mould.fill_mm", f.fillRemark()), named(f.field("mould.loss_percent", "of what is mixed"), "loss_percent"),
	}
	if f.Plan.Mould.IsCut() {
		rows = append(rows, heading("cut"), f.field("mould.bar_mm", ""))
	} else {
		rows = append(rows, heading("single moulds"), f.field("mould.cavities", ""), f.field("mould.cavity_ml", "0: as a box"))
	}
	if f.Plan.Mould.Shape == pour.ShapeSlab {
		rows = append(rows, f.field("mould.bar_width_mm", "0: the whole width"))
	}
	bars, base := f.Sheet.Bars, f.Sheet.Base.Size
	withIcing := ""
	if f.Plan.Icing != nil {
		withIcing = "with its icing"
	}
	rows = append(rows,
		heading("comes out"),
		f.figure("bars", pour.Amount{Number: strconv.Itoa(bars.Count)}, "bars.bar_count", "whole ones"),
		f.figure("a bar as cut", f.Show.WeightApart(bars.CutG), "bars.cut_g", withIcing),
		f.figure("a bar cured", f.Show.WeightApart(bars.CuredG), "bars.cured_g", "about, once dry"),
		f.figure("base stands", f.Show.LenToldApart(base.HeightMM), "base.height_mm", "high in the mould"),
	)
	if f.Plan.Icing != nil {
		rows = append(rows, f.figure("with icing", f.Show.LenApart(bars.StandsMM), "bars.stands_mm", f.rimRemark()))
	}
	rows = append(rows, f.figure("poured", f.Show.VolumeApart(base.PouredML), "base.poured_ml", ""))
	return grid.Grid{Columns: formColumns(labelW, vesselValueW), Rows: rows}
}

// rimRemark says how base and icing stand against the rim. The icing's height is a mean: its peaks stand higher.
func (f *Facts) rimRemark() string {
	if !pour.AsFigure(f.Sheet.Bars.OverRimMM).Known {
		return ""
	}
	return f.Show.Rim(f.Sheet.Bars.OverRimMM) + " on average"
}

func (f *Facts) mouldCell() grid.Cell {
	hint := "take the size and cut of a mould on the shelf"
	if own := f.Shelf.MouldsToTake(); len(own) > 0 && !own[0].Own {
		hint = "take a mould of the shelf; add your own there: Shelf, Moulds, {add}"
	}
	return grid.Cell{
		Kind: grid.Choice, Text: "from the shelf ▼", List: listMoulds, Name: "mould",
		Hint: hint,
		Pick: func(id string) pour.Edit {
			for _, m := range f.Shelf.Moulds {
				if m.ID == id {
					return pour.UseMould(m)
				}
			}
			return pour.SetWord("mould", id) // refused: there is no such mould
		},
	}
}

func (f *Facts) fillRemark() string {
	if f.Plan.Base.Size == pour.SizeMould {
		return "sizes the base"
	}
	return "the base is sized by its oils"
}
