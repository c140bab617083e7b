package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/pour/stock/shopping"
	"pourbench/tui/dialog"
)

// Provisions is what the bench asks of the maker's stock. The zero value: no ledger was opened with it.
type Provisions struct {
	Read    func() (shopping.Facts, error) // what lies there and what is reserved, as it is now
	Designs func() []shopping.Pour         // other plans that could use what expires
}

// largestMsg brings the largest batch that the stock allows, for a revision of the plan.
type largestMsg struct {
	rev int
	shopping.Largest
	err error
}

// provisionsMsg brings all that the page of what to get tells, for a revision of the plan.
type provisionsMsg struct {
	largest largestMsg
	own     shopping.List // for the plan on the bench
	season  shopping.List // for all that is planned
	expire  []shopping.Expiring
	unread  []string
	err     error
}

// cannotProvide says why nothing can be said of the stock.
func (m *model) cannotProvide() string {
	if m.opt.Provisions.Read == nil {
		return noLedger
	}
	return ""
}

// planFile is the plan on the bench by the name that the season's pours go by; empty: it has no file.
func (m *model) planFile() string {
	if m.file.path == "" {
		return ""
	}
	return planfile.SameFile(m.file.path)
}

// enlarge makes the plan as large as the stock allows, which is found beside the keyboard.
func (m *model) enlarge() tea.Cmd {
	m.say("trying how large a batch the stock allows …")
	find := m.findLargest()
	return func() tea.Msg {
		f, err := m.opt.Provisions.Read()
		if err != nil {
			return largestMsg{err: err}
		}
		return find(f)
	}
}

// findLargest is how the largest batch of the plan as it is now is found.
func (m *model) findLargest() func(shopping.Facts) largestMsg {
	plan, shelf, file, rev := m.session.Plan(), m.session.Shelf(), m.planFile(), m.session.Revision()
	return func(f shopping.Facts) largestMsg {
		l, err := f.Largest(plan, shelf, file)
		return largestMsg{rev, l, err}
	}
}

// enlarged makes the largest batch; that of a plan that has changed since is dropped.
func (m *model) enlarged(msg largestMsg) {
	show := m.session.Plan().Show
	switch {
	case msg.err != nil:
		m.refuse(reason(msg.err))
	case msg.rev != m.session.Revision():
		m.refuse("the plan was changed meanwhile; {largest batch} tries again")
	case msg.None || msg.To == msg.Sizing.Now:
		m.say(strings.Join(append([]string{msg.Tell(show)}, msg.TellLimits(show)...), "; "))
	default:
		m.makeLargest(msg.Largest)
	}
}

// makeLargest makes a batch of the size that was found.
func (m *model) makeLargest(l shopping.Largest) {
	show := m.session.Plan().Show
	said := append([]string{"made as large as the stock allows: " + l.Tell(show)}, l.TellLimits(show)...)
	_ = m.make("the largest batch", l.Edit(), strings.Join(append(said, "{undo} takes it back"), "; ")) // a refusal is in the status line
}

// provide reads beside the keyboard what there is to get for the plan, and opens the page of it.
func (m *model) provide() tea.Cmd {
	m.say("looking through the stock …")
	from, find := m.opt.Provisions, m.findLargest()
	plan, shelf, file := m.session.Plan(), m.session.Shelf(), m.planFile()
	return func() tea.Msg {
		f, err := from.Read()
		if err != nil {
			return provisionsMsg{err: err}
		}
		msg := provisionsMsg{largest: find(f), season: f.For(nil, true, shopping.Cheapest), unread: f.TellUnread()}
		own, err := shopping.Wanted(plan, shelf, file)
		if err != nil {
			return provisionsMsg{err: err}
		}
		msg.own = f.For([]shopping.Pour{own}, false, shopping.Cheapest)
		msg.expire = f.Expires(shopping.Month, from.Designs())
		return msg
	}
}

// provided opens the page of what to get: the list for this plan, the largest batch, what expires, and the season's list.
func (m *model) provided(msg provisionsMsg) {
	if msg.err != nil {
		m.refuse(reason(msg.err))
		return
	}
	lines := append(m.largestLines(msg.largest), m.listLines("for this plan", msg.own)...)
	if len(msg.season.Pours) > 0 {
		lines = append(lines, m.listLines("for the season", msg.season)...)
	}
	for _, text := range msg.unread {
		lines = append(lines, dialog.Line{Text: text})
	}
	lines = append(lines, m.expiringLines(msg.expire)...)
	m.say("")
	m.dialogs.Open(&dialog.Page{Title: "What to get, and what the stock allows", LeadW: provisionsLead, Lines: lines, Picks: true})
}

// provisionsLead is the room for the words in front of the page's lines, cells.
const provisionsLead = 10

// largestLines tells the largest batch; Enter makes it.
func (m *model) largestLines(msg largestMsg) []dialog.Line {
	show := m.session.Plan().Show
	if msg.err != nil {
		return []dialog.Line{{Lead: "largest", Style: m.look.Focus, Text: reason(msg.err)}, {}}
	}
	out := []dialog.Line{{Lead: "largest", Style: m.look.Focus, Text: msg.Tell(show)}}
	if !msg.None && msg.To != msg.Sizing.Now {
		out = append(out, dialog.Line{Lead: "  make →", Style: m.look.Accent, Text: msg.Does(show), Do: func() tea.Cmd {
			m.enlarged(msg)
			return nil
		}})
	}
	for _, text := range append(msg.TellLimits(show), msg.TellUnkept()) {
		if text != "" {
			out = append(out, dialog.Line{Text: text, Quiet: true})
		}
	}
	return append(out, dialog.Line{})
}

// listLines tells a shopping list; Enter on its last line writes it to a file.
func (m *model) listLines(title string, l shopping.List) []dialog.Line {
	out := []dialog.Line{{Lead: "to get", Style: m.look.Focus, Text: title + ": " + strings.Join(l.TellPours(), ", ")}}
	var enough []string
	for _, r := range l.Rows {
		if r.Short == 0 {
			enough = append(enough, r.Name)
			continue
		}
		out = append(out, dialog.Line{Lead: "  □", Style: m.look.Accent, Text: r.Tell(l.Currency), Under: r.Why()})
	}
	if len(enough) > 0 {
		out = append(out, dialog.Line{Text: "enough of " + strings.Join(enough, ", "), Quiet: true})
	}
	if l.Cost.Sign() > 0 {
		text := "in all " + shopping.Money(l.Cost, l.Currency) + ", postage apart"
		if l.Unpriced > 0 {
			text += fmt.Sprintf("; without a price: %d", l.Unpriced)
		}
		out = append(out, dialog.Line{Text: text + ". " + l.Rule.Says(), Quiet: true})
	}
	return append(out, dialog.Line{Lead: "  write →", Style: m.look.Accent, Text: "this list as a page to print", Do: func() tea.Cmd {
		m.askChecklist(handedPaper{
			name: "shopping list", file: "shopping.txt", about: pages, print: "lp -o cpi=12 -o lpi=7",
			write: texts(func(pour.Sheet, pour.Shelf) string { return paper.ShoppingPaper(l) }),
		})
		return nil
	}}, dialog.Line{})
}

// expiringLines tells what expires within a month and who would use it.
func (m *model) expiringLines(list []shopping.Expiring) []dialog.Line {
	if len(list) == 0 {
		return []dialog.Line{{Lead: "expires", Style: m.look.Focus, Text: "nothing within a month"}}
	}
	out := []dialog.Line{{Lead: "expires", Style: m.look.Focus, Text: "within a month, or past its date"}}
	for _, x := range list {
		out = append(out, dialog.Line{Lead: "  " + x.Pack.ID, Text: x.Name() + ", " + x.Tell(), Under: strings.Join(x.TellUses(), "; ")})
	}
	return out
}
