package keys

// pouring is the keys of the live run.
func pouring() []Binding {
	return []Binding{
		{ID: Finish, Mode: Pouring, Keys: []string{"space"}, Label: "done", Help: "finish the step; after the last one, the pour", Foot: 1},
		{ID: TakeBack, Mode: Pouring, Keys: []string{"u", "backspace", "b"}, Label: "undo", Help: "take back the last thing marked: a step, a stage, a trouble, a burst, a weight, a note", Foot: 2},
		{ID: PickJug, Mode: Pouring, Keys: []string{"1", "2", "3", "4", "5", "6", "7", "8", "9"}, Each: []string{"1", "2", "3", "4", "5", "6", "7", "8", "9"}, Label: "jug", Help: "choose a jug by its number", Foot: 3},
		{ID: NextJug, Mode: Pouring, Keys: []string{"tab", "right"}, Help: "choose the next jug"},
		{ID: PrevJug, Mode: Pouring, Keys: []string{"shift+tab", "left"}, Help: "choose the jug before"},
		{ID: SeeStage, Mode: Pouring, Keys: []string{"e", "l", "m", "t", "s"}, Each: stages(), Label: "stage seen", Help: "emulsion, light, medium, thick or stiff: the chosen jug is there now", Foot: 4},
		{ID: NotYet, Mode: Pouring, Keys: []string{"E", "L", "M", "T", "S"}, Each: stages(), Help: "the chosen jug has been used and was not there yet; the clock learns from that too"},
		{ID: Trouble, Mode: Pouring, Keys: []string{"x"}, Label: "trouble", Help: "note trouble in the chosen jug; then r rices, s seizes, b browns, p separates", Foot: 5},
		{ID: Rescue, Mode: Pouring, Keys: []string{"r"}, Label: "what helps", Help: "what still can be done for a jug that will not make its window or is in trouble; choosing one notes it and brings its step up", Foot: 6},
		{ID: NotUsed, Mode: Pouring, Keys: []string{"d", "delete"}, Help: "the chosen jug is not used and its steps are passed over, after a question; again: it is used after all"},
		{ID: SkipStep, Mode: Pouring, Keys: []string{"N"}, Help: "the step under way is not done and is not waited for, after a question; what it stirs in is then on no label and taken of no pack"},
		{ID: Measure, Mode: Pouring, Keys: []string{"w"}, Label: "weight, °C", Help: "type a temperature or a weight as it really is, a part of the thing's name before it or not: olive 355.9; {line next thing} goes to the next thing, a weight may have its unit and its lot behind it: 355.9 g lot A7; Enter alone on one that was weighed takes it back or says of what it was", Foot: 7},
		{ID: Reweigh, Mode: Pouring, Keys: []string{"W"}, Help: "put any weight of this run right, the last one first: take it back, or say of which thing it was"},
		{ID: Blender, Mode: Pouring, Keys: []string{"z"}, Label: "blender", Help: "stick blender on; again: off, and the burst is noted", Foot: 9},
		{ID: Note, Mode: Pouring, Keys: []string{"n"}, Label: "note", Help: "type a note about the pour", Foot: 8},
		{ID: NextStep, Mode: Pouring, Keys: []string{"down"}, Help: "choose a later step, to do it out of its turn"},
		{ID: PrevStep, Mode: Pouring, Keys: []string{"up"}, Help: "choose the step before"},
		{ID: Discount, Mode: Pouring, Keys: []string{"j"}, Help: "the last jump of the clock was none: do not count the time it added"},
		{ID: Outcome, Mode: Pouring, Keys: []string{"o"}, Label: "result", Help: "when every step is done: type how it came out", Foot: 8},
		{ID: Guide, Mode: Pouring, Keys: []string{"g"}, Label: "guide", Foot: 7, Help: "in a scent trial: what to do, in order"},
		{ID: Mouse, Mode: Pouring, Keys: []string{"p"}, Help: "let the pointer go so that the terminal can select text, or take it back; many terminals also select with Shift held"},
		{ID: Said, Mode: Pouring, Keys: []string{"!"}, Help: "read the last message in full, and what was said before it"},
		{ID: Palette, Mode: Pouring, Keys: []string{":", "ctrl+k"}, Label: "any action", Foot: 10, Help: "search every action of the run and of the bench, with its key or why it cannot act now; Enter does it"},
		{ID: Help, Mode: Pouring, Keys: []string{"?", "f1"}, Must: true, Label: "keys", Help: "list every key; a key that cannot act now says why, and Enter on a line that was searched for does it", Foot: 1},
		{ID: Suspend, Mode: Pouring, Keys: []string{"ctrl+z"}, Help: "go back to the shell; the run goes on"},
		{ID: Quit, Mode: Pouring, Keys: []string{"q", Leaves}, Must: true, Label: "leave", Help: "leave the screen; the run goes on in the logbook and can be taken up again (Ctrl+C asks only while a mark is not written)", Foot: 11},
	}
}

// stages are the stages that keys mark, in the order of the clock's.
func stages() []string { return []string{"emulsion", "light", "medium", "thick", "stiff"} }
