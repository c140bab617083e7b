package live

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/screen"
)

// leftInJug is the mark that a jug is not used, if there is one.
func (m *Model) leftInJug(n pour.BatchName, jug string) (logbook.Event, bool) {
	for _, e := range m.state.Marks {
		if e.Kind == logbook.Unpoured && e.Batch == n && e.Jug == jug {
			return e, true
		}
	}
	return logbook.Event{}, false
}

// unused says whether a jug was marked as one that is not used.
func (m *Model) unused(n pour.BatchName, jug string) bool { return m.state.Omitted.Unused(n, jug) }

// now is the step under way: the one chosen, or the next. It says false when every step is done.
func (m *Model) now() (underway.Due, bool) {
	if i := m.nowIndex(m.left); i >= 0 {
		return m.left[i], true
	}
	return underway.Due{}, false
}

func (m *Model) nowIndex(list []underway.Due) int {
	if i := slices.IndexFunc(list, func(d underway.Due) bool { return d.Key == m.chosen }); i >= 0 {
		return i
	}
	return min(len(list), 1) - 1
}

// after lists the steps that come after the one under way.
func (m *Model) after() []underway.Due {
	if i := m.nowIndex(m.left); i >= 0 {
		return slices.Concat(m.left[:i], m.left[i+1:])
	}
	return nil
}

// title is a step in two or three words.
func (m *Model) title(s underway.Step) string {
	words := s.Name
	switch s.Kind {
	case underway.StepLyeIn:
		words = "lye into oil"
	case pour.TaskMix:
		words = "blend"
	}
	if s.Jug != "" {
		return words
	}
	if s.Batch == pour.Icing {
		return string(pour.Icing) + ": " + words
	}
	return words
}

// large is a step in the few words that are drawn large.
func (m *Model) large(s underway.Step) string {
	if len(s.Moves) == 0 || s.Jug != "" {
		return m.title(s)
	}
	if s.Batch == pour.Icing {
		return string(pour.Icing) + ": " + string(s.Kind)
	}
	return string(s.Kind)
}

// stepText says which step of how many is under way.
func (m *Model) stepText() string {
	done := 0
	for _, step := range m.state.Steps {
		if step.Done {
			done++
		}
	}
	return fmt.Sprintf("step %d of %d", done+1, len(m.state.Steps))
}

// laterText says how much later than planned a step starts; "" where that is less than a minute.
func (m *Model) laterText(d underway.Due) string {
	off, show := d.StartMin-d.PlannedMin, m.sheet().Plan.Show
	if off < 1 {
		return ""
	}
	return fmt.Sprintf("planned %s, %s later", show.RunTime(d.PlannedMin), show.Minutes(off))
}

// drawStep draws the step under way: its words large, then what it needs.
func (m *Model) drawStep(a screen.Area, s sizes) {
	now, _ := m.now()
	x := a.Text(0, 0, "NOW", m.look.Focus)
	x = a.Text(x+2, 0, m.stepText(), m.look.Quiet)
	if m.chosen != "" {
		a.Text(x+2, 0, "out of its turn", m.look.Caution)
	} else {
		text, st := m.timing(now)
		a.Text(x+2, 0, text, st)
	}
	drawLarge(a.Cut(0, 1, a.W(), s.stepH), m.large(now.Step), s.stepScale, m.look.Strong)
	lines := m.detailLines(a.W())
	if len(lines) > s.detailH {
		lines[s.detailH-1] = screen.Clip(lines[s.detailH-1]+" "+lines[s.detailH], a.W()) // says that it goes on
	}
	for y, l := range lines {
		a.Text(0, 1+s.stepH+y, l, m.look.Text)
	}
}

// timing says how long the step has been under way and how long it takes, or how long there is still to wait for it.
func (m *Model) timing(d underway.Due) (string, screen.Style) {
	show := m.sheet().Plan.Show
	min, started := m.elapsed()
	if !started || d.LengthMin == 0 && d.StartMin <= min {
		if !started && d.LengthMin > 0 {
			return "takes about " + show.Minutes(d.LengthMin), m.look.Quiet
		}
		return "now", m.look.Quiet
	}
	if d.StartMin > min {
		return "starts in " + show.Span(d.StartMin-min), m.look.Note
	}
	st := m.look.Text
	if min-d.StartMin > d.LengthMin {
		st = m.look.Caution
	}
	return fmt.Sprintf("%s of %s", show.Span(min-d.StartMin), show.Span(d.LengthMin)), st
}

// drawNext lists the steps that follow, as replanned.
func (m *Model) drawNext(a screen.Area) {
	show := m.sheet().Plan.Show
	for y, d := range m.after() {
		if y >= a.H() {
			break
		}
		lead := "then"
		if y == 0 {
			lead = "next"
		}
		a.Text(0, y, lead, m.look.Quiet)
		a.Right(15, y, show.RunTime(d.StartMin), m.look.Accent)
		x := a.Text(17, y, screen.Clip(m.title(d.Step), a.W()-17), m.look.Strong)
		a.Text(x+2, y, screen.Clip(m.laterText(d), a.W()-x-2), m.look.Caution)
	}
}
