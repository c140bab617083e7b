// Package live is the live run: a pour as it happens, full screen, for wet gloves and two metres of distance.
//
// [Model] is a Bubble Tea model of its own beside the workbench. The logbook's Run journals every mark before it counts, so that a
// killed terminal loses nothing; the model keeps what the logbook says of the run at this moment and draws it. Times come from the
// logbook's clock alone: a tick once a second only looks again. View writes nothing.
package live

import (
	"fmt"
	"io"
	"os"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/terminal"
)

// Options is what a live run is opened with.
type Options struct {
	Book       logbook.Book
	Sheet      pour.Sheet // of the plan to pour, with times; not looked at with Resume
	Resume     string     // id of a pour to take up again; empty: one of this plan that was left under way, or a new one
	Cut        bool       // it is the cut of the pour that Resume names
	Anew       bool       // begin a new pour although one is under way
	Unnamed    bool       // the maker named no plan: the sheet is that of the example, and any pour under way may be meant
	TrialScent string     // id of a scent: a trial of it with the sheet's batter instead of the pour; empty: no trial
	Shelf      pour.Shelf
	Hand       pour.Hand      // what the maker's logs have taught
	Clock      underway.Clock // nil: the machine's
	Session    string         // names this terminal in the journal; empty: after the process
	Colour     string         // "auto", "always", "never", "truecolor", "256" or "16"; empty: auto
	Background string         // "auto", "dark" or "light"; empty: auto
	Keys       *keys.Map      // the keys that are bound; nil: those the program was built with
	KeyFaults  error          // why the maker's own keys do not count; nil: they do, or there are none
	NoMouse    bool           // leave the mouse to the terminal
	Environ    []string       // the environment; nil: this process's own
	Plain      bool           // it is told in lines, by [Converse]
	Notes      io.Writer      // where [Open] says how to take the pour up again; nil: standard error
}

// Model is the live run.
type Model struct {
	opt  Options
	run  *underway.Run
	look look.Look

	live      underway.Live // the run when it was last asked, and what follows from it
	state     underway.State
	outlook   underway.Outlook
	board     underway.Board
	left      []underway.Due
	portions  []pour.Portion      // jugs that are not as planned
	portioned pour.Sheet          // what is being poured, with these as they are
	superfats []underway.Superfat // of the batches of which something was weighed
	outlookAt time.Duration
	outlookOf int // how many events it knows

	jug      int // the chosen jug, in the board's order
	backdrop terminal.Backdrop
	chosen   string // key of a step chosen out of its turn; empty: the next one
	finished time.Duration
	blender  time.Duration // when the stick blender was switched on, on the run's clock; below 0: it is off
	rung     map[int]bool  // jugs the bell has rung for
	dialogs  dialog.Stack
	status   dialog.Status
	saidAt   time.Duration   // when the status was said, on the run's clock
	waiting  []logbook.Event // marks that count and are not written yet
	unkept   error           // why the journal cannot be written or read; nil: it can
	trial    string
	cut      bool // the screen was taken away: nobody could be asked
}

// statusFor is how long a status stands: what it says of a jug is soon no longer so.
const statusFor = 30 * time.Second

// New begins the pour, or takes up the one that Resume names. [Open] runs it on a terminal. A plan whose lye must not be mixed is refused.
func New(o Options) (*Model, error) {
	if o.Session == "" {
		o.Session = fmt.Sprintf("t%d", os.Getpid())
	}
	if o.Clock == nil {
		o.Clock = underway.SystemClock(o.Session)
	}
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	run, err := begin(&o)
	if err != nil {
		return nil, err
	}
	m := &Model{opt: o, run: run, backdrop: terminal.NewBackdrop(o.Background, o.Environ), dialogs: dialog.Stack{Frame: dialog.Frame{W: 80, H: 24, Low: true, Keys: o.Keys}}, blender: -1, finished: -quiet, rung: map[int]bool{}}
	m.look = m.backdrop.Look()
	m.settle()
	if o.Resume != "" {
		what := "taken up again: the pour of " + run.Pour.Name + " begun at "
		if o.Cut {
			what = "the cut of the pour begun at "
		}
		m.say(what + run.Pour.Opened.Format("15:04 on 2006-01-02"))
	}
	m.status.WarnOfKeys(o.KeyFaults, m.key(keys.Said))
	m.saidAt = m.live.Run()
	return m, nil
}

// begin begins the pour the options ask for, or takes it up again.
func begin(o *Options) (*underway.Run, error) {
	if o.Cut {
		return underway.ResumeCut(o.Book, o.Resume, o.Shelf, o.Hand, o.Clock, o.Session)
	}
	if o.Resume != "" {
		return underway.Resume(o.Book, o.Resume, o.Shelf, o.Hand, o.Clock, o.Session)
	}
	if o.TrialScent != "" {
		plan, err := underway.TrialPlan(o.Sheet.Plan, o.TrialScent, o.Shelf)
		if err != nil {
			return nil, err
		}
		o.Sheet = pour.Work(plan, o.Shelf, o.Hand)
	}
	for _, w := range o.Sheet.Warnings {
		if w.Lye && w.Severity == pour.Stop {
			return nil, fmt.Errorf("pour %q: do not mix this lye: %s %s", o.Sheet.Plan.Name, w.Text, w.Do)
		}
	}
	return underway.Begin(o.Book, o.Sheet, o.TrialScent, o.Shelf, o.Clock, o.Session)
}

// ID is the id of the pour in the logbook; empty: nothing was marked yet, and it is in no file.
func (m *Model) ID() string { return m.run.ID }

// Init asks the terminal for its background and starts the ticks.
func (m *Model) Init() tea.Cmd {
	return tea.Batch(m.tick(), m.backdrop.Ask())
}

// sheet is what is being poured.
func (m *Model) sheet() *pour.Sheet { return &m.live.Sheet }

// trialling says whether this is a scent trial.
func (m *Model) trialling() bool { return m.run.Pour.TrialScent != "" }

// cutting says whether this is the cut of a loaf.
func (m *Model) cutting() bool { return m.state.Cutting() }

// say puts something into the status line.
func (m *Model) say(text string) { m.status.Say(m.fill(text)); m.saidAt = m.live.Run() }

// refuse says why something cannot be done.
func (m *Model) refuse(why string) { m.status.Refuse(m.fill(why)); m.saidAt = m.live.Run() }

// warn puts something into the status line that wants an eye.
func (m *Model) warn(text string) { m.status.Warn(m.fill(text)); m.saidAt = m.live.Run() }
