package lines_test

import (
	"bytes"
	"testing"

	"pourbench/tui/keys"
	"pourbench/tui/lines"
)

// In short only what stands in the footer and can act now is told, with a word or all of it the rest too and why it cannot; what means
// nothing in plain mode never is.
func TestActionsAreToldInShortByAWordOrAll(t *testing.T) {
	rows := []keys.Binding{
		{ID: keys.Undo, Keys: []string{"u"}, Label: "undo", Help: "undo the last change", Foot: 1},
		{ID: keys.Redo, Keys: []string{"U"}, Label: "redo", Help: "do it again", Foot: 2},
		{ID: keys.Save, Keys: []string{"s"}, Label: "save", Help: "keep the plan"},
		{ID: keys.Mouse, Keys: []string{"m"}, Label: "mouse", Help: "let the pointer go", Foot: 3},
	}
	unheard := func(id keys.ID) string { return map[keys.ID]string{keys.Mouse: "there is none"}[id] }
	whyNot := func(b keys.Binding, _ int) string { return map[keys.ID]string{keys.Redo: "nothing was undone"}[b.ID] }
	undo, redo, save := lines.Words(rows[0]), lines.Words(rows[1]), lines.Words(rows[2])
	first := undo[0] + ", " + undo[1] + ": undo the last change\n"
	again := redo[0] + ", " + redo[1] + ": do it again (not now: nothing was undone)\n"
	keep := save[0] + ", " + save[1] + ": keep the plan\n"
	for about, want := range map[string]string{"": first, lines.Every: first + again + keep, "PLAN": keep, "do it": again, "pointer": ""} {
		var out bytes.Buffer
		lines.NewPaper(&out).Actions(rows, about, unheard, whyNot)
		if out.String() != want {
			t.Errorf("about %q it is told\n%swant\n%s", about, out.String(), want)
		}
	}
}
