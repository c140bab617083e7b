// Package batches is the page of batches, full screen: every pour with what became of it, what is due, how it dries and where its bars
// went; what happens to a batch is logged, corrected and taken back here.
//
// [Model] is a Bubble Tea model of its own beside bench and live run. It draws what package life says of the logbook and works nothing
// out; what is logged goes to the pour's file and comes back from there. View writes nothing.
package batches

import (
	"cmp"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/drying"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/look"
	"pourbench/tui/pixels"
	"pourbench/tui/terminal"
)

// Options is what the page is opened with. What it can do besides looking comes in as functions; one that is nil is said not to be there.
type Options struct {
	Today    day.Day
	Folder   string                                                // where the pours' files are
	Read     func() ([]life.Batch, error)                          // every pour in its life
	Detail   func(id string) (Detail, error)                       // what one batch's file says besides
	Log      func(id string, e logbook.Event) (life.Logged, error) // writes an event; one that takes another back too
	Cut      func(id string) error                                 // cuts a loaf live, on this terminal
	Again    func(id string) (pour.Plan, string, error)            // a pour as a new plan, and what was made of it in words
	Scents   func(id string) []string                              // the scents of a batch
	Scent    func(scent string) (title, text string, err error)    // what all pours say of one
	Record   func(id string) (text string, err error)              // the record of a batch on paper
	Write    func(path, text string) error                         // writes a paper to a file that is not there yet
	Calendar func(path string) (said string, err error)            // writes what is due to a file
	Show     func(path string) error                               // opens a file in the system's own program
	Season   Season                                                // the board of the season

	Order      life.Sort // what the batches are in order of at first; empty: what is due
	Search     string    // what is searched for at first
	Say        string    // first words in the status line
	Colour     string    // "auto", "always", "never", "truecolor", "256" or "16"; empty: auto
	Background string    // "auto", "dark" or "light"; empty: auto
	Pixels     string    // pictures in real pixels, one of [pixels.Ways]; empty: none
	Keys       *keys.Map // the keys that are bound; nil: those the program was built with
	KeyFaults  error     // why the maker's own keys do not count; nil: they do, or there are none
	NoMouse    bool      // leave the mouse to the terminal
	Environ    []string  // the environment; nil: this process's own
	Plain      bool      // it is told in lines, by [Converse]
}

// Model is the page.
type Model struct {
	opt      Options
	look     look.Look
	backdrop terminal.Backdrop
	dialogs  dialog.Stack
	status   dialog.Status

	all     []life.Batch // every pour, in the order that is chosen
	shown   []life.Batch // those that hold what is searched for
	read    bool         // the logbook was read
	reading bool         // it is being read
	fault   error        // why it could not be read the last time
	at, top int          // the chosen batch, of those shown, and the first one in sight
	order   life.Sort

	search listing.Search

	inside bool   // the keys go to the chosen batch
	mark   int    // the chosen mark of it, of those that are drawn
	scroll int    // the first line of it in sight
	follow string // id of the mark to choose once the batch's file was read again; empty: the chosen one stays
	kept   bool   // a form was kept and no key was pressed since: an Enter that bounces must open nothing

	board  bool // the board of the season is in the place of the list
	season seasonPage

	detail   Detail      // of the batch whose file was read last
	detailOf string      // its id
	plot     drying.Plot // of the same batch

	undo   []undone
	busy   bool // something is being written
	again  *Poured
	pixels pixels.Terminal
	photo  photoPlace
	cut    bool // the screen was taken away
}

// Poured is a pour that is to be opened as a new plan.
type Poured struct {
	Plan pour.Plan
	Said string
}

// New opens the page. [Open] runs it on a terminal.
func New(o Options) *Model {
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	m := &Model{
		opt: o, backdrop: terminal.NewBackdrop(o.Background, o.Environ), search: listing.Search{Typed: entry.New(o.Search)}, order: cmp.Or(o.Order, life.ByDue),
		dialogs: dialog.Stack{Frame: dialog.Frame{W: 80, H: 24, Keys: o.Keys}}, pixels: pixels.Terminal{Way: o.Pixels},
	}
	m.look = m.backdrop.Look()
	if o.Say != "" {
		m.say(o.Say)
	}
	m.status.WarnOfKeys(o.KeyFaults, m.key(keys.Said))
	return m
}

// Init asks the terminal for its background and reads the logbook.
func (m *Model) Init() tea.Cmd { return tea.Batch(m.load(), m.tick(), m.backdrop.Ask()) }

// Again is the pour that was asked for as a new plan when the page was left; nil: none was.
func (m *Model) Again() *Poured { return m.again }

// chosen is the chosen batch; false where none is shown.
func (m *Model) chosen() (*life.Batch, bool) {
	if m.at < 0 || m.at >= len(m.shown) {
		return nil, false
	}
	return &m.shown[m.at], true
}

// choose goes to a batch by its id, if it is shown.
func (m *Model) choose(id string) {
	if i := slices.IndexFunc(m.shown, func(b life.Batch) bool { return b.ID == id }); i >= 0 {
		m.at = i
	}
}

// fill puts the keys of the page into a text.
func (m *Model) fill(text string) string { return m.opt.Keys.Fill(keys.Batching, text) }

// key is the key of an action of the page, for what is said.
func (m *Model) key(id keys.ID) string { return m.opt.Keys.Name(keys.Batching, id) }

// say puts something into the status line.
func (m *Model) say(text string) { m.status.Say(m.fill(text)) }

// refuse says why something cannot be done.
func (m *Model) refuse(why string) { m.status.Refuse(m.fill(why)) }
