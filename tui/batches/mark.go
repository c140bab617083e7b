package batches

import (
	"slices"

	"pourbench/pour/logbook/life"
)

// newest chooses the mark that was made last, which is the one that a slip of the hand is in.
func (m *Model) newest() {
	b, ok := m.chosen()
	if !ok {
		return
	}
	marks := m.marks(b)
	for i, mk := range marks {
		if at := marks[min(m.mark, len(marks)-1)]; i == 0 || !mk.Event.Wall.Before(at.Event.Wall) {
			m.mark = i
		}
	}
	if len(marks) > 0 && (b.ID != m.detailOf || m.detail.Marks == nil) { // its file is being read: there are more lines and marks to come
		m.follow = marks[m.mark].Event.ID
	}
	m.bringMark()
}

// followMark chooses the mark that was just written, once it is read back.
func (m *Model) followMark(b *life.Batch) {
	if i := slices.IndexFunc(m.marks(b), func(mk life.Mark) bool { return mk.Event.ID == m.follow }); m.follow != "" && i >= 0 {
		m.mark, m.follow = i, ""
		m.bringMark()
	}
}

// chosenMark is the mark that is chosen in the batch.
func (m *Model) chosenMark() (life.Mark, bool) {
	b, ok := m.chosen()
	if !ok {
		return life.Mark{}, false
	}
	marks := m.marks(b)
	if m.mark >= len(marks) {
		return life.Mark{}, false
	}
	return marks[m.mark], true
}

// marks are the marks of a batch: all of its file once that was read, before that those that stand.
func (m *Model) marks(b *life.Batch) []life.Mark {
	if b.ID == m.detailOf && m.detail.Marks != nil {
		return m.detail.Marks
	}
	out := make([]life.Mark, len(b.Events))
	for i, e := range b.Events {
		out[i] = life.Mark{Event: e, Standing: true}
	}
	return out
}
