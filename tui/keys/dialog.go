package keys

// typing is the keys of what is typed, read or answered.
func typing() []Binding {
	return []Binding{
		{ID: Commit, Mode: Typing, Keys: []string{"enter"}, Label: "keep, go down", Help: "keep what was typed and go down", Foot: 1},
		{ID: CommitRight, Mode: Typing, Keys: []string{"tab"}, Label: "keep, go right", Help: "keep what was typed and go to the next cell", Foot: 2},
		{ID: Restore, Mode: Typing, Keys: []string{"esc"}, Label: "as it was", Help: "put back what stood there", Foot: 3},
		{ID: Commit, Mode: Line, Keys: []string{"enter"}, Label: "keep", Help: "keep what was typed", Foot: 1},
		{ID: NextThing, Mode: Line, Keys: []string{"tab", "down"}, Label: "next thing", Help: "measure the next thing", Foot: 2},
		{ID: PrevThing, Mode: Line, Keys: []string{"shift+tab", "up"}, Help: "measure the thing before"},
		{ID: Close, Mode: Line, Keys: []string{"esc"}, Label: "leave it", Help: "leave it", Foot: 3},
		{ID: Choose, Mode: List, Keys: []string{"enter"}, Label: "take it", Help: "take the highlighted entry", Foot: 1},
		{ID: Up, Mode: List, Keys: []string{"up", "ctrl+p"}, Help: "go up the list"},
		{ID: Down, Mode: List, Keys: []string{"down", "ctrl+n"}, Help: "go down the list"},
		{ID: PageUp, Mode: List, Keys: []string{"pgup"}, Help: "go up a screenful"},
		{ID: PageDown, Mode: List, Keys: []string{"pgdown"}, Help: "go down a screenful"},
		{ID: Find, Mode: List, Label: "search", Help: "type to search the list", Foot: 2},
		{ID: Close, Mode: List, Keys: []string{"esc"}, Label: "leave", Help: "leave the list without choosing", Foot: 3},
		{ID: Up, Mode: Page, Keys: []string{"up"}, Help: "scroll up"},
		{ID: Down, Mode: Page, Keys: []string{"down"}, Help: "scroll down"},
		{ID: PageUp, Mode: Page, Keys: []string{"pgup"}, Help: "go up a screenful"},
		{ID: PageDown, Mode: Page, Keys: []string{"pgdown", "space"}, Label: "more", Help: "go down a screenful; in a text that is searched for, Space is a blank", Foot: 2},
		{ID: Find, Mode: Page, Label: "search", Help: "type to search the page", Foot: 3},
		{ID: Close, Mode: Page, Keys: []string{"esc", "enter"}, Label: "close", Help: "close the page", Foot: 1},
		{ID: Commit, Mode: Pad, Keys: []string{"enter"}, Label: "next line, on an empty one: take it", Help: "go on to the next line; on an empty line, take what was understood", Foot: 1},
		{ID: TakeMeant, Mode: Pad, Keys: []string{"tab"}, Label: "as meant", Help: "write what may be meant in the place of the line, or of the first that has such", Foot: 2},
		{ID: Up, Mode: Pad, Keys: []string{"up"}, Help: "go up a line"},
		{ID: Down, Mode: Pad, Keys: []string{"down"}, Help: "go down a line"},
		{ID: PageUp, Mode: Pad, Keys: []string{"pgup"}, Help: "go up a screenful"},
		{ID: PageDown, Mode: Pad, Keys: []string{"pgdown"}, Help: "go down a screenful"},
		{ID: Close, Mode: Pad, Keys: []string{"esc"}, Label: "leave", Help: "leave the page and take nothing", Foot: 3},
		{ID: Left, Mode: Asking, Keys: []string{"left", "shift+tab", "up"}, Help: "go to the answer before"},
		{ID: Right, Mode: Asking, Keys: []string{"right", "tab", "down"}, Label: "next answer", Help: "go to the next answer", Foot: 2},
		{ID: Answer, Mode: Asking, Keys: []string{"enter"}, Label: "answer", Help: "give the highlighted answer; the key before an answer gives it, or its first letter", Foot: 1},
		{ID: Close, Mode: Asking, Keys: []string{"esc"}, Label: "cancel", Help: "answer nothing", Foot: 3},
	}
}
