package keys

import "slices"

// Table lists every action of the workbench, of the live run of the pages of batches and of stock with the keys it was built with. [Map] is the table with the keys that
// are bound, which is what is looked up in.
func Table() []Binding {
	return slices.Concat(moving(), changing(), picturing(), keeping(), pouring(), batching(), stocking(), typing())
}

func moving() []Binding {
	return []Binding{
		{ID: Up, Keys: []string{"up", "k"}, Help: "go up a row"},
		{ID: Down, Keys: []string{"down", "j"}, Help: "go down a row"},
		{ID: Left, Keys: []string{"left", "h"}, Help: "go left a cell"},
		{ID: Right, Keys: []string{"right", "l"}, Help: "go right a cell"},
		{ID: RowStart, Keys: []string{"home"}, Help: "go to the first cell of the row"},
		{ID: RowEnd, Keys: []string{"end"}, Help: "go to the last cell of the row"},
		{ID: PageUp, Keys: []string{"pgup"}, Help: "go up a screenful"},
		{ID: PageDown, Keys: []string{"pgdown"}, Help: "go down a screenful"},
		{ID: NextPanel, Keys: []string{"tab"}, Label: "panel", Help: "go to the next panel", Foot: 60},
		{ID: PrevPanel, Keys: []string{"shift+tab"}, Help: "go to the panel before"},
		{ID: NextPlace, Keys: []string{"]"}, Help: "go to the next station"},
		{ID: PrevPlace, Keys: []string{"["}, Label: "station", Beside: NextPlace, Foot: 61, Help: "go to the station before"},
		{ID: GoMould, Keys: []string{"f2"}, Help: "go to the mould"},
		{ID: GoBatch, Keys: []string{"f3"}, Help: "go to the batch: oils, lye, extras"},
		{ID: GoJugs, Keys: []string{"f4"}, Help: "go to the jugs"},
		{ID: GoSwirl, Keys: []string{"f5"}, Help: "go to the swirl"},
		{ID: GoScent, Keys: []string{"f6"}, Help: "go to the scent"},
		{ID: GoRun, Keys: []string{"f7"}, Help: "go to the run"},
		{ID: GoIcing, Keys: []string{"f8"}, Help: "go to the icing"},
		{ID: GoTop, Keys: []string{"A"}, Help: "go to the top: what is piped, strewn and set"},
		{ID: GoCut, Keys: []string{"C"}, Help: "go to the cut: where the loaf is cut, and its bars"},
		{ID: GoLabel, Keys: []string{"E"}, Help: "go to the label: its ingredients, allergens and weight in a market, the assessor's report, and what another scent would change"},
		{ID: GoShelf, Keys: []string{"F"}, Help: "go to the shelf: oils, colourants, extras, scents, toppings, moulds, and your own entries"},
	}
}

func changing() []Binding {
	return []Binding{
		{ID: Digits, Keys: []string{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9", ",", "."}, Fixed: true, Needs: Numbers, Label: "type a number", Help: "type over the cell; comma and point are both decimal signs", Foot: 10},
		{ID: Change, Keys: []string{"enter"}, Label: "change", Help: "change the cell: edit its text, pick from the shelf, or switch it", Foot: 11},
		{ID: More, Keys: []string{"+", "="}, Needs: Numbers, Label: "nudge", Beside: Less, Help: "one step up", Foot: 12},
		{ID: Less, Keys: []string{"-"}, Needs: Numbers, Help: "one step down"},
		{ID: MuchMore, Keys: []string{"shift+right", "*"}, Needs: Numbers, Help: "ten steps up"},
		{ID: MuchLess, Keys: []string{"shift+left", "_"}, Needs: Numbers, Help: "ten steps down"},
		{ID: Hold, Keys: []string{"space"}, Needs: Held, Label: "hold", Help: "hold a jug's share or an oil's part so that it does not give way, as typing does, or let it go; in the scent matrix, put the scent into the jug or take it out", Foot: 13},
		{ID: Flip, Keys: []string{"space"}, Needs: Words, Label: "switch", Help: "switch a word to its next value", Foot: 13},
		{ID: Add, Keys: []string{"a"}, Needs: Adding, Label: "add", Help: "add a jug, an oil, an extra, a scent, a burst, a topping or a material of it, an embed or a cut; on the shelf an entry of your own or an allergen", Foot: 14},
		{ID: Spread, Keys: []string{"%"}, Needs: Spreading, Label: "make it 100 %", Help: "make the oils sum to 100 %: those that are not held take what is to go, or lose what is too much; where none can, all are scaled in proportion, held ones too", Foot: 9},
		{ID: Colour, Keys: []string{"c"}, Needs: Coloured, Label: "colourant", Help: "add a colourant to the jug", Foot: 15},
		{ID: Remove, Keys: []string{"d", "delete"}, Needs: Removing, Label: "remove", Help: "remove the jug, its colourant under the cursor, the oil, extra, scent, burst, topping, embed or cut; on the shelf what your file says", Foot: 16},
		{ID: Earlier, Keys: []string{"shift+up", "K"}, Needs: Ordered, Label: "earlier", Help: "move the jug, task, topping or embed one place up", Foot: 17},
		{ID: Later, Keys: []string{"shift+down", "J"}, Needs: Ordered, Label: "later", Help: "move the jug, task, topping or embed one place down", Foot: 18},
		{ID: Rename, Keys: []string{"r"}, Needs: Named, Label: "rename", Help: "rename the jug, topping or embed", Foot: 19},
		{ID: IcingOnOff, Keys: []string{"I"}, Help: "give the plan an icing, or take it away"},
	}
}

func keeping() []Binding {
	return []Binding{
		{ID: Undo, Keys: []string{"u"}, Label: "undo", Help: "undo the last change; there is no limit", Foot: 30},
		{ID: Redo, Keys: []string{"U", "ctrl+y"}, Help: "do the undone change again"},
		{ID: Save, Keys: []string{"s", "ctrl+s"}, Label: "save", Help: "save the plan", Foot: 40},
		{ID: SaveAs, Keys: []string{"S"}, Help: "save the plan under another name"},
		{ID: NewPlan, Keys: []string{"n"}, Label: "new plan", Help: "make a new plan of a few answers: mould or bars, technique, colours, scents, icing", Foot: 43},
		{ID: Open, Keys: []string{"o", "ctrl+o"}, Label: "open", Help: "open another plan or an example", Foot: 42},
		{ID: Recipe, Keys: []string{"V"}, Label: "paste a recipe", Help: "paste or type a recipe, a line for each oil with its amount, and see what is understood before it replaces the blend; several lines pasted at the bench come there too", Foot: 15, FootOn: Spreading},
		{ID: Template, Keys: []string{"T"}, Help: "mark the plan as a template, which begins new plans when it is opened, or take the mark away"},
		{ID: Checklist, Keys: []string{"x"}, Label: "checklist", Help: "write the bench paper, in large type too, or the full checklist", Foot: 41},
		{ID: Copy, Keys: []string{"y"}, Help: "copy the cell to the clipboard (OSC 52, also over ssh)"},
		{ID: CopyPanel, Keys: []string{"Y"}, Help: "copy the whole panel, tab-separated"},
		{ID: Units, Keys: []string{"t"}, Help: "show grams or ounces, °C or °F, mm or inches"},
		{ID: Mouse, Keys: []string{"m"}, Help: "release the mouse so that the terminal can select text, or take it back; many terminals also select with Shift held"},
		{ID: ReadAll, Keys: []string{"w"}, Label: "warnings", Help: "read every warning, what stands behind it and what to do", Foot: 50},
		{ID: Explain, Keys: []string{"e"}, Label: "explain", Help: "say where the figure under the cursor comes from: its formula, its numbers and their sources, its band, the warnings it feeds", Foot: 62},
		{ID: WhatHelps, Keys: []string{"W"}, Label: "what helps", Help: "try changes and list those that bring every jug inside its window; {list choose} makes one", Foot: 52},
		{ID: Happened, Keys: []string{"H"}, Help: "of a plan that pours a pour again: read what happened then and what the logbook suggests; {list choose} makes a suggestion"},
		{ID: Shopping, Keys: []string{"G"}, Help: "read what to get for this plan and for the season, in which packs, the largest batch the stock allows, and what expires within a month; {list choose} makes the batch that large or writes a list to print"},
		{ID: Largest, Keys: []string{"Z"}, Help: "make the batch as large as today's stock allows beside what other pours have reserved, and say what limits it"},
		{ID: Learned, Keys: []string{"L"}, Help: "read what your own pours have taught the clock"},
		{ID: Pour, Keys: []string{"P"}, Label: "pour", Help: "pour this plan now: the live run, full screen, with its logbook", Foot: 53},
		{ID: Batches, Keys: []string{"B"}, Label: "batches", Help: "go to the batches: every pour with its state and what is due, cut, cure, sales and notes", Foot: 64},
		{ID: Stock, Keys: []string{"D"}, Label: "stock", Help: "go to the stock: packs and lots, what came, what is left, opened, expired, to get, and where a lot went"},
		{ID: Said, Keys: []string{"!"}, Help: "read the last message in full, and what was said before it"},
		{ID: Palette, Keys: []string{":", "ctrl+k"}, Label: "any action", Foot: 63, Help: "search every action of bench and live run, with its key or why it cannot act now; Enter does it"},
		{ID: Help, Keys: []string{"?", "f1"}, Must: true, Label: "all keys", Help: "list every key; a key that cannot act now says why, and Enter on a line that was searched for does it", Foot: 51},
		{ID: Suspend, Keys: []string{"ctrl+z"}, Help: "go back to the shell and leave the bench waiting; it does not undo, {undo} does"},
		{ID: Quit, Keys: []string{"q", Leaves}, Must: true, Help: "quit; asks first when the plan is not saved"},
	}
}
