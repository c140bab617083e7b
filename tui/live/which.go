package live

import (
	"fmt"
	"slices"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/look"
	"pourbench/tui/screen"
	"pourbench/tui/terminal"
)

// which asks, before a run is opened, which of the pours left under way is meant. It has the screen for itself.
type which struct {
	opt      Options
	left     []underway.Left
	look     look.Look
	backdrop terminal.Backdrop
	dialogs  dialog.Stack
	status   dialog.Status

	resume string // the pour to take up
	anew   bool   // a new one is to be begun; neither: nothing is poured
}

// mostLeft is how many pours are asked about: as many as there are digits to answer with.
const mostLeft = 9

func newWhich(o Options, left []underway.Left, now time.Time) *which {
	w := blankWhich(o)
	w.left = left[:min(len(left), mostLeft)]
	w.ask(now)
	return w
}

// newOver asks whether a pour that is over is to be opened once more.
func newOver(o Options, p logbook.Pour, ended logbook.Event) *which {
	w := blankWhich(o)
	w.dialogs.Open(&dialog.Question{
		Title: "The pour of " + p.Name + " is over", At: -1,
		Text: fmt.Sprintf("It ended at %s. A weight of it is put right by pourbench logbook correct %s, how it came out is logged by pourbench logbook result.", ended.Wall.Format("15:04 on 2006-01-02"), p.ID),
		Answers: []dialog.Answer{
			{Keys: "o", Text: "Open it all the same, to take back a mark; what is marked now is marked as of now.", Do: func() tea.Cmd {
				w.resume = p.ID
				return tea.Quit
			}},
			{Keys: "lq", Text: "Leave it as it is.", Do: func() tea.Cmd { return tea.Quit }},
		},
	})
	return w
}

func blankWhich(o Options) *which {
	w := &which{opt: o, backdrop: terminal.NewBackdrop(o.Background, o.Environ), dialogs: dialog.Stack{Frame: dialog.Frame{W: 80, H: 24, Keys: o.Keys}}}
	w.look = w.backdrop.Look()
	return w
}

// ask opens the question.
func (w *which) ask(now time.Time) {
	q := &dialog.Question{Title: w.title(), At: -1}
	for i, l := range w.left {
		q.Answers = append(q.Answers, dialog.Answer{Keys: fmt.Sprint(i + 1), Text: "Take up " + leftWords(l, w.opt.Shelf, now), Do: func() tea.Cmd {
			w.resume = l.ID
			return tea.Quit
		}})
	}
	q.Answers = append(q.Answers,
		dialog.Answer{Keys: "b", Text: w.beginWords(), Do: func() tea.Cmd {
			w.anew = true
			return tea.Quit
		}},
		dialog.Answer{Keys: "lq", Text: "Leave: nothing is poured, and what is under way stays as it is.", Do: func() tea.Cmd { return tea.Quit }},
	)
	w.dialogs.Open(q)
}

// title says of what a pour is under way.
func (w *which) title() string {
	switch {
	case !slices.ContainsFunc(w.left, func(l underway.Left) bool { return !l.Named }):
		return w.opt.Sheet.Plan.Name + ": a pour of this name is under way"
	case len(w.left) == 1:
		return "A pour of " + w.left[0].Name + " is under way"
	}
	return fmt.Sprintf("%d pours are under way", len(w.left))
}

// beginWords says what a new pour would be of.
func (w *which) beginWords() string {
	if w.opt.Unnamed {
		return "Begin a new pour of the built-in example, " + w.opt.Sheet.Plan.Name + "."
	}
	return "Begin a new pour of " + w.opt.Sheet.Plan.Name + ", the plan as it is now."
}

// leftWords says what a pour that was left under way is and where it stands.
func leftWords(l underway.Left, shelf pour.Shelf, now time.Time) string {
	text := "the pour begun at " + l.Opened.Format("15:04 on 2006-01-02")
	if !l.Named {
		text = "the pour of " + l.Name + ", begun at " + l.Opened.Format("15:04 on 2006-01-02")
	}
	if l.PlanErr != nil {
		return text + ": its plan cannot be used with today's shelf."
	}
	state, met := l.Stands(shelf)
	if met.IsZero() {
		text += ", lye not in oil yet"
	} else {
		text += ", lye in oil for " + pour.Show{}.Span(max(0, now.Sub(met).Minutes()))
	}
	if state.Next < len(state.Steps) {
		step := state.Steps[state.Next]
		text += fmt.Sprintf(", next %s: %s", step.Batch, step.Name)
	}
	switch {
	case l.Same:
		return text + ". It pours this very plan."
	case !l.Named:
		return text + "."
	}
	sheet := pour.Weigh(l.Plan, shelf)
	jugs := make([]string, 0, len(l.Plan.Base.Jugs))
	for _, j := range l.Plan.Base.Jugs {
		jugs = append(jugs, j.Name)
	}
	return text + fmt.Sprintf(". It pours ANOTHER plan, its own: base oils %s, jugs %s.", l.Plan.Show.Weight(sheet.Base.Size.OilsWeighG), strings.Join(jugs, ", "))
}

// Init asks the terminal for its background.
func (w *which) Init() tea.Cmd {
	return w.backdrop.Ask()
}

// Update gives keys and clicks to the question. Closed without an answer, it leaves.
func (w *which) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	backdrop, again := w.backdrop.Hear(msg)
	w.backdrop, w.look = backdrop, backdrop.Look()
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		w.dialogs.Frame.W, w.dialogs.Frame.H = screen.Fit(msg.Width, msg.Height)
	case tea.KeyPressMsg:
		if msg.String() == "ctrl+c" {
			return w, tea.Quit
		}
		cmd = w.dialogs.Press(msg, w.status.Refuse)
	case tea.MouseClickMsg:
		cmd = w.click(msg)
	case tea.MouseWheelMsg:
		w.dialogs.Wheel(msg)
	case hangupMsg:
		return w, tea.Quit
	}
	if w.dialogs.Top() == nil && cmd == nil {
		cmd = tea.Quit
	}
	return w, tea.Batch(again, cmd)
}

// click gives a click to the question, or to the key of the footer that it falls on.
func (w *which) click(msg tea.MouseClickMsg) tea.Cmd {
	if msg.Y != w.dialogs.Frame.H-1 || msg.Button != tea.MouseLeft {
		return w.dialogs.Click(msg, w.status.Refuse)
	}
	if id, _, ok := dialog.FootAt(w.dialogs.Frame.W, w.dialogs.Top().Keys(w.dialogs.Frame), msg.X); ok {
		return w.dialogs.Act(id, w.status.Refuse)
	}
	return nil
}

// View draws the question.
func (w *which) View() tea.View {
	s := screen.New(w.dialogs.Frame.W, w.dialogs.Frame.H)
	a := s.Area()
	w.dialogs.Draw(a, w.look)
	w.status.Draw(a.Cut(0, a.H()-2, a.W(), 1), "", w.look)
	if top := w.dialogs.Top(); top != nil {
		dialog.Footer(a.Cut(0, a.H()-1, a.W(), 1), top.Keys(w.dialogs.Frame), w.look)
	}
	v := tea.NewView(s.String())
	v.AltScreen, v.Cursor = true, terminal.Cursor(s)
	if !w.opt.NoMouse {
		v.MouseMode = tea.MouseModeCellMotion
	}
	return v
}
