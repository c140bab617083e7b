package keys

// stocking is the keys of the page of stock.
func stocking() []Binding {
	return []Binding{
		{ID: Up, Mode: Stocking, Keys: []string{"up"}, Help: "go to the line before; among the entries of a pack, to the entry before"},
		{ID: Down, Mode: Stocking, Keys: []string{"down"}, Help: "go to the next line, or the next entry of a pack"},
		{ID: PageUp, Mode: Stocking, Keys: []string{"pgup"}, Help: "go up a screenful"},
		{ID: PageDown, Mode: Stocking, Keys: []string{"pgdown"}, Help: "go down a screenful"},
		{ID: First, Mode: Stocking, Keys: []string{"home"}, Help: "go to the first line"},
		{ID: Last, Mode: Stocking, Keys: []string{"end"}, Help: "go to the last line"},
		{ID: Search, Mode: Stocking, Keys: []string{"/"}, Label: "search", Foot: 6, Help: "type to see only what holds every word: material, kind, pack, lot, supplier, opened, expired, used up; {list choose} keeps the search, {list close} lets it go"},
		{ID: LookAt, Mode: Stocking, Keys: []string{"enter", "right"}, Label: "look at it", Foot: 5, Help: "go into the pack, to its entries; on an entry, correct it"},
		{ID: ToList, Mode: Stocking, Keys: []string{"esc", "left"}, Must: true, Label: "back", Foot: 12, Help: "go back to the list; there, let the search go"},
		{ID: Receive, Mode: Stocking, Keys: []string{"r"}, Label: "receive", Foot: 1, Help: "write in what came: a line for each thing, typed or pasted from an invoice, with what is understood of it beside it"},
		{ID: ReceiveForm, Mode: Stocking, Keys: []string{"f"}, Help: "write in one thing that came, in a form"},
		{ID: OpenPack, Mode: Stocking, Keys: []string{"o"}, Label: "open", Foot: 3, Help: "write in that the pack was opened"},
		{ID: CountPack, Mode: Stocking, Keys: []string{"w"}, Label: "weigh", Foot: 2, Help: "count what is left in the pack: weigh it with its tub, or count its pieces; what is missing beyond the usual loss wants a reason"},
		{ID: LosePack, Mode: Stocking, Keys: []string{"l"}, Label: "lose", Foot: 4, Help: "write in what of the pack was spilled or thrown away, and why"},
		{ID: Correct, Mode: Stocking, Keys: []string{"c"}, Label: "correct", Foot: 2, Help: "correct the chosen entry: it is written anew in the place of the old one, which stays in the file"},
		{ID: TakeBack, Mode: Stocking, Keys: []string{"d", "delete"}, Label: "take back", Foot: 3, Help: "take the chosen entry back; {undo} undoes that"},
		{ID: Undo, Mode: Stocking, Keys: []string{"u"}, Label: "undo", Foot: 13, Help: "undo what was written, corrected or taken back last, step by step, as far as this page was open"},
		{ID: Emptied, Mode: Stocking, Keys: []string{"e"}, Label: "used up too", Foot: 10, Help: "show packs that are used up too, or leave them out again"},
		{ID: Shopping, Mode: Stocking, Keys: []string{"s"}, Label: "to get", Foot: 8, Help: "read what to get for the pours that are planned, in which packs"},
		{ID: Expiring, Mode: Stocking, Keys: []string{"x"}, Label: "expiring", Foot: 9, Help: "read what is past its date or will be within a month, and which plans would use it"},
		{ID: Trace, Mode: Stocking, Keys: []string{"t"}, Label: "trace", Foot: 7, Help: "trace the pack or its lot: what went into which batch and bars, and where those went"},
		{ID: CostRule, Mode: Stocking, Help: "set how costs are found, first in first out or moving average, and the currency of all prices"},
		{ID: Mouse, Mode: Stocking, Keys: []string{"m"}, Help: "let the pointer go so that the terminal can select text, or take it back"},
		{ID: Said, Mode: Stocking, Keys: []string{"!"}, Help: "read the last message in full, and what was said before it"},
		{ID: Palette, Mode: Stocking, Keys: []string{":", "ctrl+k"}, Label: "any action", Foot: 14, Help: "search every action of the page, with its key or why it cannot act now; Enter does it"},
		{ID: Help, Mode: Stocking, Keys: []string{"?", "f1"}, Must: true, Label: "keys", Help: "list every key; a key that cannot act now says why, and Enter on a line that was searched for does it", Foot: 1},
		{ID: Suspend, Mode: Stocking, Keys: []string{"ctrl+z"}, Help: "go back to the shell and leave the page waiting"},
		{ID: Quit, Mode: Stocking, Keys: []string{"q", Leaves}, Must: true, Label: "leave", Help: "leave the page; everything that was written is in the ledger", Foot: 11},
	}
}
