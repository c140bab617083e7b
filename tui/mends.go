package tui

import (
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/whatif"
	"pourbench/tui/dialog"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/panel"
)

// mending is the search for what takes the warnings away. It takes longer than any other figure: it is made when somebody reads the
// warnings, or when the hand rests.
type mending struct {
	rests bool         // on a terminal: a hand that rests starts the search
	asked int          // the revision it was last begun for
	idle  int          // the revision the hand rested on
	page  *dialog.Page // the page of the warnings, while it is read
}

type (
	idleMsg   struct{ rev int } // the hand has rested on a revision of the plan
	mendedMsg struct {
		rev  int
		list [][]whatif.Mend
	}
)

// idle is how long a hand rests before mends are looked for that nobody asked for.
const idle = 600 * time.Millisecond

// mendSoon looks for mends once the hand rests.
func (m *model) mendSoon() tea.Cmd {
	if !m.mending.rests || m.asleep {
		return nil
	}
	rev := m.session.Revision()
	return tea.Tick(idle, func(time.Time) tea.Msg { return idleMsg{rev} })
}

// mend looks for mends beside the keyboard, once for each plan, where they are read.
func (m *model) mend() tea.Cmd {
	rev := m.session.Revision()
	read := m.at().ID == layout.Warnings || m.mending.page != nil && m.dialogs.Top() == m.mending.page || m.mending.idle == rev
	work := m.session.Unmended()
	if !read || work == nil || m.mending.asked == rev {
		return nil
	}
	m.mending.asked = rev
	return func() tea.Msg { return mendedMsg{rev, work()} }
}

// mended takes mends; the panel and the page of the warnings show them where they are read, with the cursor on the warning it was on.
func (m *model) mended(msg mendedMsg) {
	g, c := m.grids[layout.Warnings], m.cursors[layout.Warnings]
	m.session.Mended(msg.rev, msg.list)
	m.settle()
	if c.Row < len(g.Rows) {
		m.cursors[layout.Warnings] = m.grids[layout.Warnings].Seek(c, g.Rows[c.Row].Item, -1)
	}
	if m.mending.page != nil && m.dialogs.Top() == m.mending.page {
		m.mending.page.Refill(m.warningLines())
	}
}

// readWarnings opens the page of every warning: what stands behind it, what to do, and its mends, of which Enter makes one.
func (m *model) readWarnings() {
	m.mending.page = &dialog.Page{Title: panel.WarningsTitle, LeadW: 13, Lines: m.warningLines(), Picks: true}
	m.dialogs.Open(m.mending.page)
}

func (m *model) warningLines() []dialog.Line {
	var out []dialog.Line
	for i, w := range m.facts.Warnings {
		mends, first := m.facts.MendsOf(i), len(out)
		why := panel.NoMend
		switch {
		case m.facts.Mends == nil:
			why = panel.MendsAwaited
		case len(mends) > 0:
			why = "go down to one of its mends: {change} makes it"
		}
		out = append(out,
			dialog.Line{Lead: "  " + look.Mark(w.Severity) + " " + string(w.Severity), Style: m.look.Severity(w.Severity), Text: w.Told(), Why: why},
			dialog.Line{Lead: "    do", Style: m.look.Quiet, Text: w.Do})
		for _, mend := range mends {
			out = append(out, dialog.Line{Lead: "    mend →", Style: m.look.Accent, Text: mend.Says, Do: func() tea.Cmd {
				_ = m.make(mend.Says, mend.Edit, panel.MendSaid(mend)) // a refusal is in the status line
				return nil
			}})
		}
		out = append(out, dialog.Line{Text: w.Code + ": " + meaning(w.Code), Quiet: true}, dialog.Line{})
		for k := first; k < len(out); k++ {
			out[k].Group = i + 1
		}
	}
	if len(out) == 0 {
		out = []dialog.Line{{Text: panel.NothingStands}}
	}
	return out
}
