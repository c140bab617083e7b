package tui

import (
	"runtime"

	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/picture"
	"pourbench/tui/terminal"
)

// cannot says why a key of the bench cannot act now, or "" when it can. Help and the status line both ask it.
func (m *model) cannot(id keys.ID) string {
	cell, _, ok := m.cell()
	switch id {
	case keys.Undo:
		if m.session.CanUndo() == "" {
			return "nothing has been changed yet"
		}
	case keys.Suspend:
		return terminal.NoSuspend(runtime.GOOS)
	case keys.Redo:
		if m.session.CanRedo() == "" {
			return "nothing was undone"
		}
	case keys.Save:
		if m.file.path != "" && !m.session.Savable() {
			return "the file holds this plan already"
		}
	case keys.Digits:
		return m.cannotType(cell)
	case keys.Change:
		if _, own := m.asked(id); !own && !cell.Edits() {
			return "this figure is worked out from the plan; it cannot be typed"
		}
	case keys.More, keys.Less, keys.MuchMore, keys.MuchLess:
		if cell.Nudge == nil && (cell.Keep == nil || cell.Step == 0 && len(cell.Round) == 0) {
			return "this cell holds nothing to nudge; go to a number with the arrows"
		}
	case keys.Flip:
		if cell.Kind != grid.Tick {
			return "this cell is no switch; go to a word between ‹ and ›"
		}
	case keys.Copy:
		if !ok {
			return "there is no cell under the cursor"
		}
	case keys.Explain:
		if cell.Figure == "" && cell.Hint == "" {
			return "this cell shows no figure; go to one with the arrows"
		}
	case keys.Happened:
		return m.cannotRemember()
	case keys.Shopping, keys.Largest:
		return m.cannotProvide()
	case keys.Said:
		if m.status.Silent() {
			return "nothing was said yet"
		}
	case keys.CopyPanel:
		if len(m.grids[m.at().ID].Rows) == 0 {
			return "this panel has no rows"
		}
	case keys.ShowFace, keys.NextBar, keys.PrevBar, keys.Replay, keys.StepBack, keys.StepOn, keys.Weeks, keys.OtherFace, keys.Cells, keys.Bare:
		return m.cannotTurn(id)
	default:
		do, _ := m.asked(id)
		return do.Why
	}
	return ""
}

// cannotType says why no digit can be typed in a cell now.
func (m *model) cannotType(cell grid.Cell) string {
	id := m.at().ID
	_, beside := m.grids[id].FigureOf(m.cursors[id])
	switch {
	case beside || cell.Kind == grid.Number || cell.Kind == grid.Numbers:
		return ""
	case cell.Kind == grid.Choice:
		return "this is picked from a list, which {change} opens; figures are typed where one stands"
	}
	return "this cell holds no number that can be typed; go to one with the arrows"
}

// cannotTurn says why a key of the picture cannot act now.
func (m *model) cannotTurn(id keys.ID) string {
	switch {
	case id == keys.ShowFace && !m.placed.Face.Empty():
		return "the face is in view already; {go to swirl} shows it large"
	case (id == keys.NextBar || id == keys.PrevBar) && !m.barsShown() && m.atPicture():
		return "this view has no single bars; {next view} turns it"
	case id == keys.OtherFace:
		return m.cannotFlip()
	case id == keys.Cells && (m.studio.depth != picture.True || m.dye(m.studio.design).Letters):
		return "letters and a terminal of few colours have pixels of one size; true colour has others"
	case id == keys.Bare && !m.realPixels():
		return "this terminal draws no pictures in real pixels; pourbench picture draws a file"
	case id == keys.Weeks && !m.browns():
		return "no scent with vanillin goes into a jug: the colours stay"
	case id == keys.Replay && m.still() != "":
		return m.still() + "; {step back} and {step on} go through the pour step by step"
	case (id == keys.Replay || id == keys.StepBack || id == keys.StepOn) && m.steps() == 0:
		return "the picture is not drawn yet"
	}
	return ""
}

// cannotFlip says why there is no other picture to be shown in the place of the present one.
func (m *model) cannotFlip() string {
	e, ok := m.easel()
	switch {
	case m.studio.kept == nil:
		return "no picture is kept; {compare} keeps the present one"
	case ok && !e.kept.Empty() && !e.now.Empty():
		return "both pictures are in view"
	}
	return ""
}

// realPixels says whether the terminal draws pictures.
func (m *model) realPixels() bool {
	_, ok := m.studio.gloss.terminal.Cell()
	return ok
}
