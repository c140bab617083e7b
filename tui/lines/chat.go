package lines

import (
	"os"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
)

// Chat is a full-screen page told in lines and answered in lines. It stands where the screen would.
type Chat struct {
	Model   tea.Model
	Dialogs *dialog.Stack
	Status  *dialog.Status
	Refuse  func(why string)
	Out     *Paper
	Name    string                // a line is waited for with it
	Command func(text string)     // does what a line asks of the page
	Look    func() tea.Cmd        // what is read again before a command; nil: nothing
	Ended   func(os.Signal) error // how a signal that ends it is returned

	Left bool
	Cut  error // what ended it from outside
}

// Run talks until the page is left or nothing more comes in.
func (c *Chat) Run(in *Input) error {
	for !c.Left && c.Out.Err() == nil {
		c.Ask()
		switch e := <-in.Events; {
		case e.End:
			c.Out.Gap()
			return nil
		case e.Signal != nil:
			c.Out.Gap()
			return c.Ended(e.Signal)
		case e.Long:
			c.Out.Say(TooLong)
		default:
			c.Hear(e.Text)
		}
	}
	return c.Cut
}

// Ask writes what a line is waited for with.
func (c *Chat) Ask() {
	if top := c.Dialogs.Top(); top != nil {
		c.Out.Prompt(top.Tell().Ask + ", or " + dialog.LeaveIt)
		return
	}
	c.Out.Prompt(c.Name)
}

// Hear takes a line to what waits for it: the topmost dialog, or the page.
func (c *Chat) Hear(text string) {
	if c.Dialogs.Top() != nil {
		c.Answer(text)
	} else {
		if c.Look != nil { // another terminal may have written meanwhile
			c.Finish(c.Look())
		}
		c.Status.Clear()
		c.Command(text)
	}
	if c.Left {
		return
	}
	c.Said()
	if top := c.Dialogs.Top(); top != nil {
		c.tell(top)
	}
}

// Finish carries a command of the page out.
func (c *Chat) Finish(cmd tea.Cmd) { c.Left = Finish(c.Model, cmd) || c.Left }

// Said tells what stands in the status line, once.
func (c *Chat) Said() {
	c.Out.Status(c.Status.Text())
	c.Status.Clear()
}

// Answer takes a line to the topmost dialog.
func (c *Chat) Answer(text string) {
	cmd, told := c.Dialogs.Hear(text, c.Refuse)
	if told != nil {
		c.Out.Tell(*told)
	}
	c.Finish(cmd)
}

// AnswerRest takes what stands in a line behind an action to the dialog that the action opened, if it asks for something.
func (c *Chat) AnswerRest(text string) {
	if top := c.Dialogs.Top(); text != "" && top != nil && top.Tell().Ask != "" {
		c.Answer(text)
	}
}

// tell tells a dialog. One that asks for nothing is closed with that.
func (c *Chat) tell(d dialog.Dialog) {
	told := d.Tell()
	c.Out.Tell(told)
	if told.Ask == "" {
		c.Answer("")
	}
}
