// Package tui is the workbench: it draws sheets and edits plans, and works no figure out.
//
// [Model] is the only Bubble Tea model. Below it are plain values: a session holds the plan, grids are built from it,
// a layout says where they stand, and dialogs take the keys while they are open. View writes nothing.
package tui

import (
	"io"

	tea "charm.land/bubbletea/v2"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/session"
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
	Hand       clock.Hand             // what the maker's logs have taught
	Examples   func() []Example       // the plans that come with the program, read when they are asked for; nil: none
	StateDir   string                 // where recovery journals are kept; empty: none are
	Colour     string                 // "auto", "always", "never", "truecolor", "256" or "16"; empty: auto
	Background string                 // "auto", "dark" or "light"; empty: auto
	NoMouse    bool                   // leave the mouse to the terminal
	Say        string                 // first words in the status line
	Environ    []string               // the environment; nil: this process's own
	Learned    func() (string, error) // what the maker's pours have taught, as text; nil: there is no logbook
	Pour       func(pour.Plan) error  // the live run of a plan, on this terminal; nil: there is none
	Notes      io.Writer              // where [Run] says what became of unsaved work; nil: standard error
}

// Model is the workbench.
type Model struct {
	opt      Options
	session  *session.Session
	file     file
	journal  journal
	w, h     int
	look     look.Look
	dark     bool // the terminal's background
	studio   studio
	mouse    bool
	station  layout.Station
	focus    [layout.Stations]layout.Panel
	cursors  map[layout.Panel]grid.Cursor
	typing   *typing
	dialogs  dialog.Stack
	status   dialog.Status
	quitting bool
	asleep   bool // before the first frame: what is slow waits for it

	bench  *bench // drawn from; rebuilt when the session's revision or the clock's figures change
	grids  map[layout.Panel]grid.Grid
	placed layout.Layout
}

// file is where the plan on the bench is kept.
type file struct {
	path  string
	stamp planfile.Stamp
}

// typing is a cell being typed in.
type typing struct {
	grid.Typed
}

// New opens the workbench on a plan. [Run] runs it on a terminal.
func New(o Options) *Model {
	m := &Model{
		opt: o, session: session.New(o.Document.Plan, o.Shelf, o.Hand, true), look: look.New(o.Background != "light"), dark: o.Background != "light", studio: newStudio(), mouse: !o.NoMouse,
		station: layout.Jugs, cursors: map[layout.Panel]grid.Cursor{}, w: 80, h: 24,
	}
	m.keep(o.Document.Path, o.Document.Stamp)
	if o.StateDir != "" {
		m.journal.file = planfile.NewJournal(o.StateDir)
	}
	for s := range layout.Stations {
		m.focus[s] = layout.Panels(layout.Station(s), true)[0]
	}
	m.cursors[layout.Panel{Kind: layout.Grid}] = grid.Cursor{Col: jugShare}
	m.cursors[layout.Panel{Kind: layout.Grid, Icing: true}] = grid.Cursor{Col: jugShare}
	if o.Say != "" {
		m.say(o.Say)
	}
	m.settle()
	return m
}

// Init asks the terminal for its background and looks for work that was never saved.
func (m *Model) Init() tea.Cmd {
	cmds := []tea.Cmd{m.lookForLostWork(), m.wake()}
	if m.opt.Background == "" || m.opt.Background == "auto" {
		cmds = append(cmds, tea.RequestBackgroundColor)
	}
	return tea.Batch(cmds...)
}

// Session is the plan on the bench, for what outlives the workbench.
func (m *Model) Session() *session.Session { return m.session }

// at is the panel that has the keys.
func (m *Model) at() layout.Panel { return m.focus[m.station] }

// batch is the plan's batch that a panel is of, or nil.
func (m *Model) batch(p layout.Panel) *pour.Batch {
	plan := m.session.Plan()
	return plan.Batch(batchName(p))
}

// cell is the cell under the cursor.
func (m *Model) cell() (grid.Cell, grid.Row, bool) {
	p := m.at()
	g, c := m.grids[p], m.cursors[p]
	cell, ok := g.On(c)
	if !ok {
		return cell, grid.Row{Item: -1, Sub: -1}, false
	}
	return cell, g.Rows[c.Row], true
}

// settle brings everything that is drawn in step with the session: grids, layout, cursors and scrolling. It runs at the end of every Update.
func (m *Model) settle() {
	sheet := m.session.Sheet()
	timed, fresh := m.session.Clock()
	colours, coloursFresh := m.session.Colours()
	plan := m.session.Plan()
	m.bench = &bench{
		plan: plan, sheet: sheet, clock: timed, fresh: fresh, shelf: m.session.Shelf(), show: plan.Show, look: m.look,
		warnings: m.session.Warnings(), colours: colours, coloursFresh: coloursFresh, measured: &m.studio.measured,
	}
	m.settleDesign()
	if m.station != layout.Swirl {
		m.halt()
	}
	icing := plan.Icing != nil
	m.settleFocus(icing)
	panels := layout.Panels(m.station, icing)
	m.grids = make(map[layout.Panel]grid.Grid, len(panels))
	for _, p := range panels {
		m.grids[p] = m.bench.grid(p)
	}
	m.dialogs.Frame = dialog.Frame{W: m.w, H: m.h}
	m.placed = layout.Split(layout.Ask{W: m.w, H: m.h, Station: m.station, Icing: icing, Focus: m.at(), Want: m.want})
	for _, p := range panels {
		c := m.grids[p].Settle(m.cursors[p])
		if r, ok := m.placed.Find(p); ok {
			c = m.grids[p].Scroll(c, r.Dx()-2, r.Dy()-2)
		}
		m.cursors[p] = c
	}
}

// settleFocus moves the focus to a panel that is there.
func (m *Model) settleFocus(icing bool) {
	for _, p := range layout.Panels(m.station, icing) {
		if p == m.at() {
			return
		}
	}
	m.focus[m.station] = layout.Panels(m.station, icing)[0]
}

// want is how many lines a panel would fill.
func (m *Model) want(p layout.Panel) int {
	switch p.Kind {
	case layout.Clock:
		if batch := batchOf(m.bench.clock, p); batch != nil {
			return clockLines(len(batch.Jugs))
		}
		return 1
	case layout.Filling:
		return fillingLines
	case layout.Face:
		return faceLines
	case layout.NoIcing:
		return 4
	case layout.Behaviour:
		return 6 * len(m.bench.usedScents())
	case layout.Warnings:
		return 2 * len(m.bench.warnings)
	default:
		return m.grids[p].Lines()
	}
}
