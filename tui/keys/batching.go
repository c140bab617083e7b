package keys

// batching is the keys of the page of batches, and of the forms that are filled there.
func batching() []Binding {
	return []Binding{
		{ID: Up, Mode: Batching, Keys: []string{"up"}, Help: "go to the batch before; among the marks of a batch, to the mark before"},
		{ID: Down, Mode: Batching, Keys: []string{"down"}, Help: "go to the next batch, or the next mark of one"},
		{ID: PageUp, Mode: Batching, Keys: []string{"pgup"}, Help: "go up a screenful; on the board of the season, a week back"},
		{ID: PageDown, Mode: Batching, Keys: []string{"pgdown"}, Help: "go down a screenful; on the board of the season, a week on"},
		{ID: First, Mode: Batching, Keys: []string{"home"}, Help: "go to the first batch, or to the top of one"},
		{ID: Last, Mode: Batching, Keys: []string{"end"}, Help: "go to the last batch, or to the end of one"},
		{ID: Search, Mode: Batching, Keys: []string{"/"}, Label: "search", Foot: 3, Help: "type to see only the batches that hold every word: name, state, what is due, day, scent, audience, notes; {list choose} keeps the search, {list close} lets it go"},
		{ID: Order, Mode: Batching, Keys: []string{"o"}, Label: "order", Foot: 7, Help: "order the batches by what is due, by day, by state or by name"},
		{ID: LookAt, Mode: Batching, Keys: []string{"enter", "right"}, Label: "look at it", Foot: 2, Help: "go into the batch, to its marks; on a mark, correct it"},
		{ID: ToList, Mode: Batching, Keys: []string{"esc", "left"}, Must: true, Label: "back", Foot: 8, Help: "go back to the list; there, let the search go"},
		{ID: LogMark, Mode: Batching, Keys: markKeys(), Each: marks(), Help: "log what happened to the batch: taken out of the mould, cut, weighed, smelled, looked at, tested, a picture, a line of a check list, a lot, bars sold, given, kept, found not good enough, counted; that it failed; a weight of its pour"},
		{ID: LogAny, Mode: Batching, Keys: []string{"e", "space"}, Label: "log", Foot: 1, Help: "choose what to log from a list"},
		{ID: SameBars, Mode: Batching, Keys: []string{"w"}, Label: "weigh", Foot: 4, Help: "weigh the same bars as last time: their masses one after the other, Enter after each"},
		{ID: Correct, Mode: Batching, Keys: []string{"c"}, Label: "correct", Foot: 2, Help: "correct the chosen mark: the form it was logged with, filled as it stands; what it said before stays in the file"},
		{ID: TakeBack, Mode: Batching, Keys: []string{"d", "delete"}, Label: "take back", Foot: 2, Help: "take the chosen mark back; {undo} undoes that"},
		{ID: Undo, Mode: Batching, Keys: []string{"u"}, Label: "undo", Foot: 9, Help: "undo what was logged, corrected or taken back last, step by step, as far as this page was open"},
		{ID: SeePhoto, Mode: Batching, Keys: []string{"v"}, Label: "picture", Help: "look at a picture of the batch: here where the terminal draws pictures, else in the system's own program"},
		{ID: CutLive, Mode: Batching, Keys: []string{"x"}, Label: "cut live", Help: "cut the loaf live: marks, cuts, the mass of every bar"},
		{ID: Again, Mode: Batching, Keys: []string{"a"}, Label: "pour again", Foot: 6, Help: "open the pour as a new plan on the bench, with what really happened beside it"},
		{ID: ScentPage, Mode: Batching, Keys: []string{"h"}, Label: "scents", Help: "read what all pours say of a scent of this batch"},
		{ID: Board, Mode: Batching, Keys: []string{"tab"}, Label: "season", Foot: 5, Help: "go to the board of the season, or back to the batches"},
		{ID: Record, Mode: Batching, Keys: []string{"r"}, Label: "record", Help: "read the record of the batch, to be printed and signed, and write it to a file"},
		{ID: Calendar, Mode: Batching, Keys: []string{"i"}, Label: "calendar", Help: "write what is due to a calendar file that a calendar program can read"},
		{ID: Mouse, Mode: Batching, Keys: []string{"m"}, Help: "let the pointer go so that the terminal can select text, or take it back"},
		{ID: Said, Mode: Batching, Keys: []string{"!"}, Help: "read the last message in full, and what was said before it"},
		{ID: Palette, Mode: Batching, Keys: []string{":", "ctrl+k"}, Label: "any action", Foot: 10, Help: "search every action of the page, with its key or why it cannot act now; Enter does it"},
		{ID: Help, Mode: Batching, Keys: []string{"?", "f1"}, Must: true, Label: "keys", Help: "list every key; a key that cannot act now says why, and Enter on a line that was searched for does it", Foot: 1},
		{ID: Suspend, Mode: Batching, Keys: []string{"ctrl+z"}, Help: "go back to the shell and leave the page waiting"},
		{ID: Quit, Mode: Batching, Keys: []string{"q", Leaves}, Must: true, Label: "leave", Help: "leave the page; everything that was logged is in the pours' files", Foot: 11},

		{ID: Commit, Mode: Form, Keys: []string{"enter"}, Must: true, Label: "next, then keep", Help: "go on to the next line that is empty; where none is, keep the form", Foot: 1},
		{ID: NextThing, Mode: Form, Keys: []string{"tab", "down"}, Label: "next line", Help: "go to the next line", Foot: 3},
		{ID: PrevThing, Mode: Form, Keys: []string{"shift+tab", "up"}, Help: "go to the line before"},
		{ID: Flip, Mode: Form, Keys: []string{"pgdown"}, Needs: Words, Label: "other word", Help: "put the next of the words that are usual into the line; Space does it too while the line holds one of them", Foot: 2},
		{ID: FlipBack, Mode: Form, Keys: []string{"pgup"}, Needs: Words, Help: "put the word before into the line"},
		{ID: KeepAll, Mode: Form, Keys: []string{"ctrl+s"}, Label: "keep", Help: "keep the form as it is", Foot: 4},
		{ID: Close, Mode: Form, Keys: []string{"esc"}, Must: true, Label: "leave it", Help: "leave the form and log nothing", Foot: 5},
	}
}

// marks are the marks that have a key of their own, by their names in a pour's file.
func marks() []string {
	return []string{"unmoulded", "sliced", "weigh-in", "sniffed", "looked", "tested", "photo", "ticked", "lot", "sold", "given", "kept", "seconds", "counted", "failed", "weighed"}
}

// markKeys are their keys.
func markKeys() []string {
	return []string{"U", "C", "W", "n", "l", "t", "p", "T", "L", "s", "g", "k", "S", "N", "f", "P"}
}
