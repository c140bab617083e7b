package lines

import (
	"reflect"

	tea "charm.land/bubbletea/v2"
)

// Finish carries a command out, and after it everything that follows from it, one after the other. It says whether the model was left.
func Finish(m tea.Model, cmd tea.Cmd) (left bool) {
	if cmd == nil {
		return false
	}
	msg := cmd()
	switch msg.(type) {
	case nil:
		return false
	case tea.QuitMsg:
		return true
	}
	if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice && v.Type().Elem() == reflect.TypeFor[tea.Cmd]() { // a batch, or a sequence, whose type is the library's own
		for i := range v.Len() {
			next, _ := v.Index(i).Interface().(tea.Cmd)
			left = Finish(m, next) || left
		}
		return left
	}
	_, next := m.Update(msg)
	return Finish(m, next) || left
}
