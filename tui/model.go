// Package tui is the workbench: it draws sheets and edits plans, and works no figure out.
//
// [model] is the only Bubble Tea model. Below it are plain values: a session holds the plan, grids are built from it,
// a layout says where they stand, and dialogs take the keys while they are open. View writes nothing.
package tui

import (
	"io"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/again"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/panel"
	"pourbench/tui/picture"
	"pourbench/tui/session"
	"pourbench/tui/terminal"
)

// Example is a plan that comes with the program.
type Example struct {
	Name string
	Plan pour.Plan
}

// Options is what the workbench is opened with.
type Options struct {
	Document   planfile.Document // the plan to start with; an empty path: it has no file yet
	Shelf      pour.Shelf
	Keys       *keys.Map                                         // the keys that are bound; nil: those the program was built with
	KeyFaults  error                                             // why the maker's own keys do not count; nil: they do, or there are none
	Hand       pour.Hand                                         // what the maker's logs have taught; the session has what they teach while the bench is open
	Examples   func() []Example                                  // the plans that come with the program, read when they are asked for; nil: none
	StateDir   string                                            // where recovery journals are kept; empty: none are
	Colour     string                                            // "auto", "always", "never", "truecolor", "256" or "16"; empty: auto
	Background string                                            // "auto", "dark" or "light"; empty: auto
	Pixels     string                                            // pictures in real pixels, one of [pixels.Ways]; empty: none
	Cells      string                                            // into how many pixels each character of a picture is divided, one of [screen.Divisions]; empty: four
	NoMouse    bool                                              // leave the mouse to the terminal
	Say        string                                            // first words in the status line
	Environ    []string                                          // the environment; nil: this process's own
	Learned    func() (string, error)                            // what the maker's pours have taught, as text; nil: there is no logbook
	ReadHand   func() (pour.Hand, error)                         // what they teach by now; nil: it stays as it was
	Pour       func(pour.Plan) error                             // the live run of a plan, on this terminal; nil: there is none
	Batches    func() (Poured, error)                            // the page of batches, on this terminal; nil: there is none
	Stock      func() error                                      // the page of stock, on this terminal; nil: there is none
	Past       func(id string) (again.Past, []again.Past, error) // the pour that a plan pours again, and the maker's others; nil: there is no logbook
	Pours      func() ([]Past, error)                            // the pours that can be poured again, the latest first; nil: there are none
	PourAgain  func(id string) (Poured, error)                   // the new plan of one of them
	OwnShelf   OwnShelf                                          // the maker's own shelf file; the zero value: the bench cannot change it
	Restock    Restock                                           // the shelf again, where its files changed; nil: it stays as it is
	Provisions Provisions                                        // what the maker's stock says; the zero value: there is no ledger
	Plain      bool                                              // it is told in lines, by [Converse]: nothing waits for a frame or moves by itself
	Notes      io.Writer                                         // where [Open] says what became of unsaved work; nil: standard error
}

// Past is a pour in the list of what can be opened.
type Past struct {
	ID, Name string
	Day      string // on which it was begun
	Words    string // how it went
}

// model is the workbench.
type model struct {
	opt      Options
	session  *session.Session
	file     file
	journal  journal
	w, h     int
	look     look.Look
	backdrop terminal.Backdrop
	studio   studio
	mouse    bool
	stations []panel.Station
	station  panel.Place
	focus    [panel.Places]*panel.Panel
	cursors  map[layout.ID]grid.Cursor
	typing   *typing
	dialogs  dialog.Stack
	leftOut  []string // lines of the recipe taken last that were not understood
	status   dialog.Status
	quitting bool
	warnings panel.Panel             // below the panels of every station, where it has room
	last     [panel.Places]layout.ID // the panel that had the keys before the warnings took them
	mending  mending
	trying   trying
	past     past
	held     *held // what the mouse drags; nil: nothing
	asleep   bool  // before the first frame: what is slow waits for it

	own map[pour.EntryName][]string // what the maker's own shelf file says

	facts  *panel.Facts   // drawn from; made afresh at the end of every Update
	panels []*panel.Panel // of the station, in the order Tab visits them
	grids  map[layout.ID]grid.Grid
	placed layout.Layout
}

// file is where the plan on the bench is kept.
type file struct {
	path   string
	stamp  planfile.Stamp
	opened int    // counts the plans that were put on the bench
	lent   bool   // it is an example's or a template's, with a name that is not its own
	like   string // the template that began it, whose name and file stay its own; empty: none
	saving bool   // a save is under way
}

// typing is a cell being typed in.
type typing struct {
	grid.Typed
}

// newModel opens the workbench on a plan. [Open] runs it on a terminal.
func newModel(o Options) *model {
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	m := &model{
		opt: o, session: session.New(o.Document.Plan, o.Shelf, o.Hand, true), backdrop: terminal.NewBackdrop(o.Background, o.Environ), studio: newStudio(o.Pixels, o.Cells), mouse: !o.NoMouse,
		stations: panel.Stations(), warnings: panel.Warnings(), station: panel.Jugs, cursors: map[layout.ID]grid.Cursor{}, w: 80, h: 24,
	}
	m.keep(o.Document.Path, o.Document.Stamp)
	m.file.lent = o.Document.Path == ""
	if o.StateDir != "" {
		m.journal.file = planfile.NewJournal(o.StateDir)
	}
	m.look = m.backdrop.Look()
	m.cursors[m.warnings.ID] = grid.Cursor{Col: m.warnings.Start}
	for s := range m.stations {
		for _, p := range m.stations[s].Panels(true) {
			m.cursors[p.ID] = grid.Cursor{Col: p.Start}
		}
		m.focus[s] = m.stations[s].Panels(true)[0]
	}
	m.lookAtShelf()
	if o.Say != "" {
		m.say(o.Say)
	}
	m.status.WarnOfKeys(o.KeyFaults, m.key(keys.Said))
	m.settle()
	return m
}

// Init asks the terminal for its background and looks for work that was never saved.
func (m *model) Init() tea.Cmd {
	return tea.Batch(m.findLostWork(), m.enlist(), m.wake(), m.backdrop.Ask(), m.lookSoon())
}

// regard takes what the terminal says of its colours. Pictures stand on its background whatever it is; whether it counts as dark may have been
// said by hand.
func (m *model) regard(msg tea.Msg) (again tea.Cmd) {
	if ground, ok := msg.(tea.BackgroundColorMsg); ok {
		m.studio.onGround(ground.Color)
	}
	m.backdrop, again = m.backdrop.Hear(msg)
	m.look = m.backdrop.Look()
	return again
}

// at is the panel that has the keys.
func (m *model) at() *panel.Panel { return m.focus[m.station] }

// here is the station.
func (m *model) here() *panel.Station { return &m.stations[m.station] }

// atPicture says whether the picture stands on the station.
func (m *model) atPicture() bool { return m.here().Picture != "" }

// cell is the cell under the cursor.
func (m *model) cell() (grid.Cell, grid.Row, bool) {
	p := m.at()
	g, c := m.grids[p.ID], m.cursors[p.ID]
	cell, ok := g.On(c)
	if !ok {
		return cell, grid.Row{Item: -1, Sub: -1}, false
	}
	return cell, g.Rows[c.Row], true
}

// settle brings everything that is drawn in step with the session: grids, layout, cursors and scrolling. It runs at the end of every Update.
func (m *model) settle() {
	m.facts = m.gather()
	m.settleDesign()
	if !m.atPicture() {
		m.halt()
	}
	icing := m.facts.Plan.Icing != nil
	m.panels = m.here().Panels(icing)
	if layout.Boxed(m.h) {
		m.panels = append(m.panels, &m.warnings)
	}
	same := slices.IndexFunc(m.panels, func(p *panel.Panel) bool { return p.ID == m.at().ID })
	m.focus[m.station] = m.panels[max(same, 0)] // with and without an icing a panel is another value of the same name
	if m.at().ID != layout.Warnings {
		m.last[m.station] = m.at().ID
	}
	m.grids = make(map[layout.ID]grid.Grid, len(m.panels))
	for _, p := range m.panels {
		if p.Grid != nil {
			g := p.Grid(m.facts)
			if p.ID == panel.OnShelf {
				m.facts.Entry = panel.EntryAt(m.facts, g.Settle(m.cursors[p.ID]).Row)
			}
			g.Empty = m.fill(g.Empty)
			m.grids[p.ID] = g
		}
	}
	m.tellPast()
	m.dialogs.Frame = dialog.Frame{W: m.w, H: m.h, Keys: m.opt.Keys}
	m.placed = layout.Split(m.wanted(icing))
	for _, p := range m.panels {
		c := m.grids[p.ID].Settle(m.cursors[p.ID])
		if r, ok := m.placed.Find(p.ID); ok {
			c = m.grids[p.ID].Scroll(c, r.Dx()-2, r.Dy()-2)
		}
		m.cursors[p.ID] = c
	}
}

// gather puts together what the panels are drawn from.
func (m *model) gather() *panel.Facts {
	f := &panel.Facts{
		Plan: m.session.Plan(), Sheet: m.session.Sheet(), Shelf: m.session.Shelf(), Show: m.session.Plan().Show, Look: m.look, Keys: m.opt.Keys,
		Colourless: m.studio.depth == picture.Plain,
		Form:       m.opt.OwnShelf.Entry, Own: m.own,
		Warnings: m.session.Warnings(), Mends: m.session.Mends(), Picture: m.drawFace,
	}
	f.Timed, f.Fresh = m.session.Clock()
	f.Colours, f.ColoursFresh = m.session.Colours()
	if m.studio.measured.known {
		f.Counted = &m.studio.measured.of
	}
	if m.typing != nil {
		f.Typing = &m.typing.Typed
	}
	f.Trial = m.tried()
	return f
}

// wanted is what the layout of the screen depends on.
func (m *model) wanted(icing bool) layout.Ask {
	ask := layout.Ask{W: m.w, H: m.h, Picture: m.here().Picture, Focus: m.last[m.station], Warnings: m.facts.WarningLines(), Reading: m.at().ID == layout.Warnings}
	for i, column := range m.here().Columns(icing) {
		for _, p := range column {
			ask.Columns[i] = append(ask.Columns[i], p.Lay(m.facts, m.grids[p.ID]))
		}
	}
	return ask
}
