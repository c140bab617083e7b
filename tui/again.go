package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/again"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/panel"
)

// past is the pour that the plan on the bench pours again, and what is known of it. It is read beside the keyboard, once for each pour.
type past struct {
	asked  string // its id; empty: the plan pours none again
	of     *again.Past
	others []again.Past
	why    string // why it cannot be looked back on

	show  pour.Show // that the facts are told in
	facts []again.Fact
	same  int
	rev   int // that the places are of
	at    map[string][]again.Fact

	page  *dialog.Page // what happened and what is suggested, while it is read
	tried int          // the revision that the suggestions were last asked for
	list  []again.Suggestion
	ready bool // the list is that of the plan on the bench
}

type (
	pastMsg struct {
		id     string
		of     again.Past
		others []again.Past
		err    error
	}
	againMsg struct {
		rev  int
		list []again.Suggestion
	}
)

// lookBack reads beside the keyboard the pour that the plan pours again.
func (m *model) lookBack() tea.Cmd {
	id, read := m.session.Plan().AgainOf, m.opt.Past
	if id == m.past.asked || m.asleep {
		return nil
	}
	m.past = past{asked: id}
	if id == "" || read == nil {
		return nil
	}
	return func() tea.Msg {
		of, others, err := read(id)
		return pastMsg{id, of, others, err}
	}
}

// lookedBack takes the pour that the plan pours again.
func (m *model) lookedBack(msg pastMsg) {
	switch {
	case msg.id != m.past.asked:
	case msg.err != nil:
		m.past.why = reason(msg.err)
		m.refuse("what happened at " + msg.id + " is not told: " + m.past.why)
	default:
		m.past.of, m.past.others = &msg.of, msg.others
	}
}

// tellPast marks the cells that something happened to, and puts that before what they say of themselves.
func (m *model) tellPast() {
	p := &m.past
	if p.of == nil {
		return
	}
	if show := m.session.Plan().Show; p.facts == nil || show != p.show {
		p.show, p.rev = show, 0
		p.facts, p.same = p.of.Happened(show)
	}
	if rev := m.session.Revision(); p.rev != rev {
		p.rev, p.at = rev, again.On(p.facts, &p.of.Sheet, m.session.Sheet())
	}
	if len(p.at) == 0 {
		return
	}
	for _, g := range m.grids {
		for _, r := range g.Rows {
			for i := range r.Cells {
				p.mark(&r.Cells[i])
			}
		}
	}
}

// mark tells a cell what happened to its figure.
func (p *past) mark(c *grid.Cell) {
	facts := p.at[c.Figure]
	if c.Figure == "" {
		facts = p.at[c.Field]
	}
	if len(facts) == 0 || c.Kind == grid.Blank {
		return
	}
	var told []string
	for _, f := range facts {
		told = append(told, f.Said)
	}
	c.Marked = true
	c.Hint = strings.TrimSuffix("* "+strings.Join(told, "; ")+" | "+c.Hint, " | ")
}

// readPast opens the page of what happened when the plan was poured, and of what the logbook suggests, of which Enter makes one.
func (m *model) readPast() tea.Cmd {
	m.past.page = &dialog.Page{Title: "What happened, and what the logbook suggests", LeadW: 12, Lines: m.pastLines(), Picks: true}
	m.dialogs.Open(m.past.page)
	return nil
}

// askAgain looks for suggestions beside the keyboard, once for each plan, while the page is read.
func (m *model) askAgain() tea.Cmd {
	p, rev := &m.past, m.session.Revision()
	if p.of == nil || p.page == nil || m.dialogs.Top() != dialog.Dialog(p.page) || p.tried == rev {
		return nil
	}
	p.tried, p.ready = rev, false
	plan, shelf, hand, of, others := m.session.Plan(), m.session.Shelf(), m.session.Hand(), *p.of, p.others
	return func() tea.Msg { return againMsg{rev, of.Suggest(plan, others, shelf, hand)} }
}

// askedAgain takes the suggestions for a revision; those of a plan that has changed since are dropped.
func (m *model) askedAgain(msg againMsg) {
	if msg.rev != m.session.Revision() {
		return
	}
	m.past.list, m.past.ready = msg.list, true
	if m.past.page != nil && m.dialogs.Top() == dialog.Dialog(m.past.page) {
		m.past.page.Refill(m.pastLines())
	}
}

// pastLines is the page: what is suggested first, for that is done there, then what happened.
func (m *model) pastLines() []dialog.Line {
	p := &m.past
	if p.of == nil {
		return []dialog.Line{{Text: "The pour " + p.asked + " is being read; open this page again in a moment."}}
	}
	out := []dialog.Line{{Lead: "suggested", Style: m.look.Focus, Text: m.fill("by this pour and your others; {list choose} makes one, and {undo} takes it back")}}
	switch {
	case !p.ready:
		out = append(out, dialog.Line{Text: "trying changes …"})
	case len(p.list) == 0:
		out = append(out, dialog.Line{Text: "nothing"})
	default:
		for _, s := range p.list {
			out = append(out, dialog.Line{Lead: "  make →", Style: m.look.Accent, Text: s.Says, Under: "why: " + s.Why + ". Brings: " + s.Brings, Do: func() tea.Cmd {
				_ = m.make(s.Says, s.Edit, "done: "+s.Says+"; {undo} takes it back") // a refusal is in the status line
				return nil
			}})
		}
	}
	out = append(out, m.sincePoured()...)
	out = append(out, dialog.Line{}, dialog.Line{Lead: "happened", Style: m.look.Focus, Text: fmt.Sprintf("at %s; %d figures were measured and as planned", p.of.Pour.ID, p.same)})
	for _, f := range p.facts {
		out = append(out, dialog.Line{Lead: "  *", Style: m.look.Accent, Text: f.Told()})
	}
	return append(out, dialog.Line{Text: "Whether a batch is safe is not judged.", Quiet: true})
}

// sincePoured says in what the plan differs from the one that was poured, figure by figure, and lets both pictures be seen side by side.
func (m *model) sincePoured() []dialog.Line {
	if !m.past.ready { // so that the first line that can be done is a suggestion, where there is one
		return nil
	}
	past := &m.past.of.Sheet
	out := []dialog.Line{{}, {Lead: "differs", Style: m.look.Focus, Text: "this plan from the one that was poured, which stands first"}}
	out = append(out, dialog.Line{Lead: "  see →", Style: m.look.Accent, Text: "both pictures side by side, as it was poured at the left", Do: func() tea.Cmd {
		m.keepPast()
		return nil
	}})
	c := again.Compare(*past, *m.told())
	for _, g := range c.Groups {
		out = append(out, dialog.Line{Text: g.Title, Quiet: true})
		for _, l := range g.Lines {
			out = append(out, dialog.Line{Text: l.What + ": " + l.First + " → " + l.Second})
		}
	}
	return append(out, dialog.Line{Text: fmt.Sprintf("%d of %d fields and %d of %d figures differ", c.Fields, c.Fields+c.SameFields, c.Figures, c.Figures+c.SameFigures), Quiet: true})
}

// keepPast puts the picture of the plan as it was poured beside the present one, as the key that compares does with the present.
func (m *model) keepPast() {
	d, err := m.past.of.Sheet.Drawing()
	if err != nil {
		m.refuse(reason(err))
		return
	}
	m.studio.kept = &kept{design: d, price: m.priceOf(m.past.of.Sheet.Mingling.Orders, true)}
	m.station = panel.Swirl
	m.say("at the left as it was poured; {compare} lets it go")
}

// cannotRemember says why nothing is told of a pour.
func (m *model) cannotRemember() string {
	switch {
	case m.session.Plan().AgainOf == "":
		return "this plan pours no pour again; {open} lists your pours, {batches} has them with what became of them"
	case m.opt.Past == nil:
		return "no logbook was opened with this bench"
	case m.past.why != "":
		return m.past.why
	}
	return ""
}
