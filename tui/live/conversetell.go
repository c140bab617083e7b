package live

import (
	"strings"

	"pourbench/tui/dialog"
)

// journalText says where the marks are kept: their whole path, since it is not on a screen to be looked at again.
func (m *Model) journalText() string {
	if m.ID() == "" {
		return "It is kept from the first mark on"
	}
	return "Every mark is written to " + m.opt.Book.Path(m.ID())
}

// toldSteps is how many of the steps that follow are told with the one under way.
const toldSteps = 1

// tellNow tells the time, the step under way, what comes next and what wants an eye: all that the screen shows above its jugs.
func (t *talk) tellNow() {
	m := t.m
	clock := m.elapsedText() + " " + m.captionText()
	if _, ok := m.elapsed(); !ok {
		clock = m.captionText()
	}
	if late := m.lateText(); late != "" {
		clock += ", " + late
	}
	now, ok := m.now()
	t.step = now.Key
	t.out.Say(clock + ".")
	if !ok {
		t.tellEnd()
	} else {
		timing, _ := m.timing(now)
		if m.chosen != "" {
			timing = "out of its turn"
		}
		t.out.Say("Now, " + m.stepText() + ", " + timing + ": " + m.title(now.Step) + ".")
		t.out.Say(strings.Join(m.detailLines(1<<15), " "))
		t.tellNext(toldSteps)
	}
	for _, n := range m.notices() {
		t.out.Say(n)
	}
	if i := m.lost(); i >= 0 {
		t.out.Say(m.lostWords(i) + ". What still can be done:")
		for _, r := range m.rescues(m.board.Jugs[i]) {
			t.out.Say(r.Do)
		}
	}
}

// tellNext tells so many of the steps that follow, as replanned.
func (t *talk) tellNext(n int) {
	show := t.m.sheet().Plan.Show
	for i, d := range t.m.after() {
		if i >= n {
			return
		}
		lead := "Then"
		if i == 0 {
			lead = "Next"
		}
		text := lead + " " + show.RunTime(d.StartMin) + ": " + t.m.title(d.Step)
		if later := t.m.laterText(d); later != "" {
			text += ", " + later
		}
		t.out.Say(text)
	}
}

// tellSteps tells every step that is left.
func (t *talk) tellSteps() {
	if now, ok := t.m.now(); ok {
		t.out.Say("Now, " + t.m.stepText() + ": " + t.m.title(now.Step))
	}
	t.tellNext(len(t.m.left))
}

// tellEnd tells what can still be marked when every step is done.
func (t *talk) tellEnd() {
	t.out.Say("Every step is done.")
	t.out.Tell(dialog.Told{Lines: t.m.endLines()})
}

// tellJugs tells how every jug stands.
func (t *talk) tellJugs() {
	for i := range t.m.board.Jugs {
		t.tellJug(i)
	}
}

// tellJug tells how a jug stands, and the stages that were seen in it or are expected.
func (t *talk) tellJug(i int) {
	j := t.m.board.Jugs[i]
	text := t.m.jugName(i) + ": " + t.m.jugWords(j, 1<<15)
	if stages := t.m.stageWords(j); stages != "" {
		text += ". " + stages
	}
	t.out.Say(text)
}

// help tells what can be said: in short, all of it, or what holds a word.
func (t *talk) help(about string) {
	if about == "" {
		t.out.Say("Enter tells the time and the step, jugs how every jug stands, steps what is left to do. A number or a name chooses a jug and tells it.")
		t.out.Say("A stage is said by its letter or its word, with the jug before or behind it: 3 l, light 3, poppy medium, not yet thick 2. Trouble likewise: 3 trouble rices. A weight or a temperature: w 1 34,5.")
		t.out.Say("? all tells every action, ? and a word those with that word.")
	}
	t.out.Actions(t.table(), about, unheard, t.m.whyNot)
}
