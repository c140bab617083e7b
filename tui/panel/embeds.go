package panel

import (
	"fmt"
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of the embeds.
const (
	embedName = iota
	embedVerdict
	embedClear
	embedNeed
	embedOutline
	embedLong
	embedWide
	embedHigh
	embedOut
	embedPieces
	embedG
	embedAll
	embedColumns
)

// embeds is the pieces set into the top: what they are, how large, and how clear they stand of the cuts.
func embeds() Panel {
	return Panel{
		ID: "embeds", Title: "Embeds", Start: embedLong, cells: keys.Numbers | keys.Words, Grid: (*Facts).embedGrid,
		add: func(f *Facts, _ On) Do {
			n := len(f.Plan.Top.Embeds)
			return Do{
				Name: "new embed", Edit: pour.AddEmbed(f.Plan.NewEmbed(f.newEmbedName())), Said: "a disc that stands clear of every cut: type how long it is; {rename} names it",
				Seek: to(To{Item: n, Sub: -1, Col: embedLong}),
			}
		},
		remove: func(f *Facts, on On) Do {
			name := f.Plan.Top.Embeds[on.Row.Item].Name
			return Do{Name: "removal of " + name, Edit: pour.RemoveEmbed(on.Row.Item), Said: name + " is gone; {undo} brings it back"}
		},
		rename: func(_ *Facts, on On) Do {
			return Do{Seek: to(To{Item: on.Row.Item, Sub: -1, Col: embedName}), Begin: true}
		},
		move: func(f *Facts, on On, by int) Do {
			i := on.Row.Item
			return Do{Name: "place of " + f.Plan.Top.Embeds[i].Name, Edit: pour.MoveEmbed(i, by), Seek: to(To{Item: i + by, Sub: -1, Col: keepCol})}
		},
	}
}

// newEmbedName is a name that no embed has.
func (f *Facts) newEmbedName() string {
	taken := map[string]bool{}
	for _, e := range f.Plan.Top.Embeds {
		taken[e.Name] = true
	}
	name := "embed"
	for n := 2; taken[name]; n++ {
		name = "embed " + strconv.Itoa(n)
	}
	return name
}

func (f *Facts) embedGrid() grid.Grid {
	_, mm := f.Show.ToUnit(0, pour.UnitMM)
	g := grid.Grid{Frozen: embedVerdict, Empty: "no embeds: {add} sets a piece into every bar", Columns: []grid.Column{
		embedName:    {Head: "   embed", W: 14, Grow: 1},
		embedVerdict: {Head: "verdict", W: 13},
		embedClear:   {Head: "clear " + mm, W: 8, Right: true},
		embedNeed:    {Head: "needs " + mm, W: 8, Right: true},
		embedOutline: {Head: "outline", W: 11},
		embedLong:    {Head: "long", W: 5, Right: true},
		embedWide:    {Head: "wide", W: 5, Right: true},
		embedHigh:    {Head: "high", W: 5, Right: true},
		embedOut:     {Head: "out", W: 4, Right: true},
		embedPieces:  {Head: "pieces", W: 6, Right: true},
		embedG:       {Head: "each " + f.grams(), W: 6, Right: true},
		embedAll:     {Head: "all " + f.grams(), W: 6, Right: true},
	}}
	for i, e := range f.Plan.Top.Embeds {
		own := at("top.embed", i)
		cells := make([]grid.Cell, embedColumns)
		cells[embedName] = words("name of "+e.Name, e.Name, func(s string) pour.Edit { return pour.SetText(own+"name", s) })
		cells[embedName].Swatch, _ = screen.Hex(e.Colour)
		cells[embedOutline] = f.wordCell(own + "outline")
		cells[embedLong], cells[embedWide] = f.cellOf(own+"length_mm"), f.asLong(own+"width_mm", own+"length_mm")
		cells[embedHigh], cells[embedOut] = f.asLong(own+"height_mm", own+"length_mm"), f.cellOf(own+"out_mm")
		if i < len(f.Sheet.Embeds) {
			f.embedFigures(cells, i)
		}
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: cells})
	}
	return g
}

// embedFigures fills the cells that are worked out.
func (f *Facts) embedFigures(cells []grid.Cell, i int) {
	k, path := f.Sheet.Embeds[i], at("embed_kinds", i)
	worst := worstPiece(k)
	cells[embedVerdict] = f.verdictCell(worst, k, path)
	length := func(v pour.Figure) string {
		return f.Show.Figure(v, f.mm)
	}
	cells[embedClear] = f.shown(length(worst.ClearMM), path+"clear_mm", "what its worst piece leaves to the nearer cut")
	cells[embedNeed] = f.shown(length(k.NeedMM), path+"need_mm", "what each side has to leave: the errors of hand, wire and eye at their worst, and at least the clearance wanted")
	cells[embedPieces] = f.label(strconv.Itoa(len(k.Pieces)))
	cells[embedG] = f.massCell(k.PieceG, path+"piece_g", "one piece of "+k.Name)
	cells[embedAll] = f.massCell(k.AllG, path+"all_g", "all pieces of "+k.Name)
}

// worstPiece is the piece of a kind that stands worst: by its verdict, and among those alike by its clearance.
func worstPiece(k pour.EmbedSheet) pour.EmbedPiece {
	if len(k.Pieces) == 0 {
		return pour.EmbedPiece{Verdict: pour.VerdictAstray}
	}
	worst := k.Pieces[0]
	for _, p := range k.Pieces[1:] {
		a, b := grade(p.Verdict), grade(worst.Verdict)
		if a > b || a == b && p.ClearMM.Known && (!worst.ClearMM.Known || p.ClearMM.V < worst.ClearMM.V) {
			worst = p
		}
	}
	return worst
}

// grade puts the verdicts in their order, the worst last.
func grade(verdict string) pour.Severity {
	switch verdict {
	case pour.VerdictCut, pour.VerdictAstray:
		return pour.Stop
	case pour.VerdictTight:
		return pour.Caution
	}
	return pour.Note
}

// verdictCell says how the worst piece stands; its sign says it without colour.
func (f *Facts) verdictCell(worst pour.EmbedPiece, k pour.EmbedSheet, path string) grid.Cell {
	c := f.shown(worst.Verdict, path+"clear_mm", "")
	s := grade(worst.Verdict)
	switch s {
	case pour.Note:
		c.Style = f.Look.Good
	default:
		c.Text, c.Style = look.Mark(s)+" "+worst.Verdict, f.Look.Severity(s)
	}
	bad := 0
	for _, p := range k.Pieces {
		if grade(p.Verdict) != pour.Note {
			bad++
		}
	}
	c.Hint = fmt.Sprintf("%d of %d pieces stand clear; {go to cut} shows where the cuts run", len(k.Pieces)-bad, len(k.Pieces))
	if bad > 0 && worst.Bar > 0 {
		c.Hint = fmt.Sprintf("worst in bar %d: ", worst.Bar) + c.Hint
	}
	return c
}

// wordCell is a word of the plan in a table, by its path in the file.
func (f *Facts) wordCell(path string) grid.Cell {
	r := f.chosen(path)
	if len(r.Cells) <= formValue {
		return grid.Cell{}
	}
	return r.Cells[formValue]
}

// asLong is a measure of the plan in a table where 0 means another measure, which is shown in its place.
func (f *Facts) asLong(path, usual string) grid.Cell {
	c := f.cellOf(path)
	if v, field, ok := pour.Number(f.Plan, path); ok && v == 0 {
		long, _, _ := pour.Number(f.Plan, usual)
		f.instead(&c, pour.Know(long), usual, func(v float64) string { return f.Show.Plain(v, field.Unit) })
	}
	return c
}
