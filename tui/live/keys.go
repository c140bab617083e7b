package live

import (
	"slices"
	"strings"

	"pourbench/tui/keys"
)

// What keys do during a run, beside those of the workbench's table.
const (
	finish   keys.ID = "finish step"
	takeBack keys.ID = "take back"
	nextStep keys.ID = "next step"
	prevStep keys.ID = "previous step"
	pickJug  keys.ID = "pick jug"
	nextJug  keys.ID = "next jug"
	prevJug  keys.ID = "previous jug"
	seeStage keys.ID = "stage seen"
	notYet   keys.ID = "not yet"
	trouble  keys.ID = "trouble"
	rescue   keys.ID = "rescue"
	unused   keys.ID = "not used"
	note     keys.ID = "note"
	measure  keys.ID = "measure"
	blend    keys.ID = "blender"
	discount keys.ID = "not count a jump"
	outcome  keys.ID = "outcome"
	guide    keys.ID = "guide"
	nextItem keys.ID = "next thing"
	prevItem keys.ID = "previous thing"
)

// table lists every key of the live run, in the same rows as the workbench's.
func table() []keys.Binding {
	return append(runKeys(), otherKeys()...)
}

func runKeys() []keys.Binding {
	return []keys.Binding{
		{ID: finish, Keys: []string{"space"}, Label: "done", Help: "finish the step; after the last one, the pour", Foot: 1},
		{ID: takeBack, Keys: []string{"b", "backspace"}, Label: "back", Help: "take back the last thing marked: a step, a stage, a trouble, a burst, a reading", Foot: 2},
		{ID: pickJug, Keys: []string{"1", "2", "3", "4", "5", "6", "7", "8", "9"}, Label: "jug", Help: "choose a jug by its number", Foot: 3},
		{ID: nextJug, Keys: []string{"tab", "right"}, Help: "choose the next jug"},
		{ID: prevJug, Keys: []string{"shift+tab", "left"}, Help: "choose the jug before"},
		{ID: seeStage, Keys: []string{"e", "l", "m", "t", "s"}, Label: "stage seen", Help: "emulsion, light, medium, thick or stiff: the chosen jug is there now", Foot: 4},
		{ID: notYet, Keys: []string{"E", "L", "M", "T", "S"}, Help: "the chosen jug has been used and was not there yet; the clock learns from that too"},
		{ID: trouble, Keys: []string{"x"}, Label: "trouble", Help: "note trouble in the chosen jug; then r rices, s seizes, b browns, p separates", Foot: 5},
		{ID: rescue, Keys: []string{"r"}, Label: "what helps", Help: "what still can be done for a jug that will not make its window; choosing one notes it and brings its step up", Foot: 6},
		{ID: unused, Keys: []string{"u"}, Help: "the chosen jug stays in its jug: its steps are passed over"},
		{ID: measure, Keys: []string{"w"}, Label: "weight, °C", Help: "type a temperature or a weight as it really is; Tab goes to the next thing to measure, words after a weight are its lot", Foot: 7},
		{ID: blend, Keys: []string{"z"}, Label: "blender", Help: "stick blender on; again: off, and the burst is noted", Foot: 9},
		{ID: note, Keys: []string{"n"}, Label: "note", Help: "type a note about the pour", Foot: 8},
		{ID: nextStep, Keys: []string{"down"}, Help: "choose a later step, to do it out of its turn"},
		{ID: prevStep, Keys: []string{"up"}, Help: "choose the step before"},
		{ID: discount, Keys: []string{"j"}, Help: "the last jump of the clock was none: do not count the time it added"},
		{ID: outcome, Keys: []string{"o"}, Label: "result", Help: "when every step is done: type how it came out", Foot: 8},
		{ID: guide, Keys: []string{"g"}, Label: "guide", Foot: 7, Help: "in a scent trial: what to do, in order"},
		{ID: keys.Help, Keys: []string{"?", "f1"}, Label: "keys", Help: "list every key; a key that cannot act now says why", Foot: 1},
		{ID: keys.Suspend, Keys: []string{"ctrl+z"}, Help: "go back to the shell; the run goes on"},
		{ID: keys.Quit, Keys: []string{"q", "ctrl+c"}, Label: "leave", Help: "leave the screen; the run goes on in the logbook and can be taken up again (Ctrl+C does not ask)", Foot: 11},
	}
}

func otherKeys() []keys.Binding {
	return []keys.Binding{
		{ID: keys.Commit, Mode: keys.Typing, Keys: []string{"enter"}, Label: "keep", Help: "journal what was typed", Foot: 1},
		{ID: nextItem, Mode: keys.Typing, Keys: []string{"tab", "down"}, Label: "next thing", Help: "measure the next thing", Foot: 2},
		{ID: prevItem, Mode: keys.Typing, Keys: []string{"shift+tab", "up"}, Help: "measure the thing before"},
		{ID: keys.Restore, Mode: keys.Typing, Keys: []string{"esc"}, Label: "leave it", Help: "leave it", Foot: 3},
		{ID: keys.Up, Mode: keys.Page, Keys: []string{"up"}, Help: "scroll up"},
		{ID: keys.Down, Mode: keys.Page, Keys: []string{"down"}, Help: "scroll down"},
		{ID: keys.PageUp, Mode: keys.Page, Keys: []string{"pgup", "b"}, Help: "go up a screenful"},
		{ID: keys.PageDown, Mode: keys.Page, Keys: []string{"pgdown", "space"}, Label: "more", Help: "go down a screenful", Foot: 2},
		{ID: keys.Close, Mode: keys.Page, Keys: []string{"esc", "enter", "q", "?"}, Label: "close", Help: "close the page", Foot: 1},
		{ID: keys.Close, Mode: keys.Asking, Keys: []string{"esc"}, Label: "cancel", Help: "answer nothing; every other answer has its own key", Foot: 1},
	}
}

// lookup returns what a key does in a mode.
func lookup(mode keys.Mode, key string) (keys.Binding, bool) {
	for _, b := range table() {
		if b.Mode == mode && slices.Contains(b.Keys, key) {
			return b, true
		}
	}
	return keys.Binding{}, false
}

// footer lists the bindings a footer shows, the most useful first.
func footer(mode keys.Mode) []keys.Binding {
	var out []keys.Binding
	for _, b := range table() {
		if b.Mode == mode && b.Foot > 0 {
			out = append(out, b)
		}
	}
	slices.SortStableFunc(out, func(a, b keys.Binding) int { return a.Foot - b.Foot })
	return out
}

// shown is the keys of a binding as people read them.
func shown(b keys.Binding) string {
	if b.ID == pickJug {
		return "1–9"
	}
	return strings.ReplaceAll(b.Shown(), "backspace", "Backspace")
}

// heading is a mode's heading in help and on paper.
func heading(m keys.Mode) string {
	if m == keys.Bench {
		return "during a run"
	}
	return m.String()
}

// modes lists the modes of the live run.
func modes() []keys.Mode { return []keys.Mode{keys.Bench, keys.Typing, keys.Page, keys.Asking} }
