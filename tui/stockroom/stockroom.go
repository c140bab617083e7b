// Package stockroom is the page of stock, full screen: what lies on the shelves by packs and lots, what came and went of each, and what is done to
// it: received, opened, weighed, lost, corrected, taken back.
//
// [Model] is a Bubble Tea model of its own beside bench, live run and batches. It draws what package stock works out of the ledger; what is done is
// checked by package desk under the ledger's lock and comes back from there. View writes nothing.
package stockroom

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/stock"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/look"
	"pourbench/tui/terminal"
)

// Decide writes the entries that are made out of what the ledger holds, under its lock, and returns them with their names.
type Decide func(func(stock.State) ([]stock.Entry, error)) ([]stock.Entry, error)

// Options is what the page is opened with. What it can do besides looking comes in as functions; one that is nil is said not to be there.
type Options struct {
	Today    day.Day
	File     string                      // the ledger's file
	Shelf    pour.Shelf                  // what things are called that come
	Read     func() (stock.State, error) // what lies there, with what is reserved of it
	Decide   Decide
	Shopping func() (string, error)            // what is to be bought, as text
	Expiring func() (string, error)            // what expires, as text
	Trace    func(what string) (string, error) // where a pack or a lot came from and went to, as text

	Search     string    // what is searched for at first
	Say        string    // first words in the status line
	Colour     string    // "auto", "always", "never", "truecolor", "256" or "16"; empty: auto
	Background string    // "auto", "dark" or "light"; empty: auto
	Keys       *keys.Map // the keys that are bound; nil: those the program was built with
	KeyFaults  error     // why the maker's own keys do not count; nil: they do, or there are none
	NoMouse    bool      // leave the mouse to the terminal
	Environ    []string  // the environment; nil: this process's own
}

// Model is the page.
type Model struct {
	opt      Options
	look     look.Look
	backdrop terminal.Backdrop
	dialogs  dialog.Stack
	status   dialog.Status

	shelves shelves // what lies there
	shown   []row   // what of it is in the list
	read    bool    // the ledger was read
	reading bool    // it is being read
	fault   error   // why it could not be read the last time
	emptied bool    // packs that are used up are in the list, too

	list   listing.Cursor
	search listing.Search
	inside bool // the keys go to the chosen line
	story  listing.Story
	kept   bool // a form was kept and no key was pressed since: an Enter that bounces must open nothing

	follow string // the name of a pack to go to once the ledger was read again; empty: the chosen line stays
	undo   []undone
	busy   bool // something is being written
	cut    bool // the screen was taken away
}

// New opens the page. [Open] runs it on a terminal.
func New(o Options) *Model {
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	m := &Model{
		opt: o, backdrop: terminal.NewBackdrop(o.Background, o.Environ), search: listing.Search{Typed: entry.New(o.Search)},
		dialogs: dialog.Stack{Frame: dialog.Frame{W: 80, H: 24, Keys: o.Keys}},
	}
	m.look = m.backdrop.Look()
	if o.Say != "" {
		m.say(o.Say)
	}
	m.status.WarnOfKeys(o.KeyFaults, o.Keys.Name(keys.Stocking, keys.Said))
	return m
}

// Init asks the terminal for its background and reads the ledger.
func (m *Model) Init() tea.Cmd { return tea.Batch(m.load(), m.tick(), m.backdrop.Ask()) }

// chosen is the chosen line; false where there is none.
func (m *Model) chosen() (row, bool) {
	if m.list.At < 0 || m.list.At >= len(m.shown) {
		return row{}, false
	}
	return m.shown[m.list.At], true
}

// fill puts the keys of the page into a text.
func (m *Model) fill(text string) string { return m.opt.Keys.Fill(keys.Stocking, text) }

// say puts something into the status line.
func (m *Model) say(text string) { m.status.Say(m.fill(text)) }

// refuse says why something cannot be done.
func (m *Model) refuse(why string) { m.status.Refuse(m.fill(why)) }
