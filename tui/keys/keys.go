// Package keys is the one table of keys. Footer, help, the README's table and the man page are drawn from it.
package keys

import "slices"

// Mode is what the keyboard is doing.
type Mode int

// The modes.
const (
	Bench   Mode = iota // moving about a station
	Typing              // a cell is being typed in
	Pouring             // a pour is under way
	Line                // a line of text is being typed
	List                // a list is being searched
	Page                // a page of text is being read
	Asking              // a question waits for its answer
	Pad                 // lines are being typed or pasted
	modes   int  = iota
)

// OfBench lists the modes of the workbench.
func OfBench() []Mode { return []Mode{Bench, Typing, Line, List, Page, Asking, Pad} }

// OfPour lists the modes of the live run.
func OfPour() []Mode { return []Mode{Pouring, Line, Page, Asking} }

// String is the mode's heading in help and on paper.
func (m Mode) String() string {
	return [modes]string{"at the bench", "in a cell being typed", "during a pour", "in a line to type", "in a list", "on a page", "at a question", "on a page to fill"}[m]
}

// ID names what a key does.
type ID string

// What keys do at the bench.
const (
	Up         ID = "up"
	Down       ID = "down"
	Left       ID = "left"
	Right      ID = "right"
	RowStart   ID = "row start"
	RowEnd     ID = "row end"
	PageUp     ID = "page up"
	PageDown   ID = "page down"
	NextPanel  ID = "next panel"
	PrevPanel  ID = "previous panel"
	NextPlace  ID = "next station"
	PrevPlace  ID = "previous station"
	GoMould    ID = "go to mould"
	GoBatch    ID = "go to batch"
	GoJugs     ID = "go to jugs"
	GoSwirl    ID = "go to swirl"
	GoScent    ID = "go to scent"
	GoRun      ID = "go to run"
	GoIcing    ID = "go to icing"
	Digits     ID = "type"
	Change     ID = "change"
	More       ID = "more"
	Less       ID = "less"
	MuchMore   ID = "much more"
	MuchLess   ID = "much less"
	Hold       ID = "hold"
	Flip       ID = "switch"
	Spread     ID = "spread"
	Add        ID = "add"
	Colour     ID = "colour"
	Remove     ID = "remove"
	Earlier    ID = "earlier"
	Later      ID = "later"
	Rename     ID = "rename"
	IcingOnOff ID = "icing"
	NextView   ID = "next view"
	ShowFace   ID = "show the face"
	PrevBar    ID = "bar before"
	NextBar    ID = "next bar"
	Replay     ID = "watch the pour"
	StepBack   ID = "step back"
	StepOn     ID = "step on"
	Reroll     ID = "another face"
	Compare    ID = "compare"
	Weeks      ID = "after some weeks"
	Letters    ID = "letters"
	Undo       ID = "undo"
	Redo       ID = "redo"
	Save       ID = "save"
	SaveAs     ID = "save as"
	Recipe     ID = "recipe"
	Open       ID = "open"
	Checklist  ID = "checklist"
	Copy       ID = "copy"
	CopyPanel  ID = "copy panel"
	Units      ID = "units"
	Mouse      ID = "mouse"
	ReadAll    ID = "warnings"
	Explain    ID = "explain"
	WhatHelps  ID = "what helps"
	Learned    ID = "learned"
	Pour       ID = "pour"
	Said       ID = "messages"
	Help       ID = "help"
	Suspend    ID = "suspend"
	Quit       ID = "quit"
)

// What keys do during a pour.
const (
	Finish    ID = "finish step"
	TakeBack  ID = "take back"
	NextStep  ID = "next step"
	PrevStep  ID = "previous step"
	PickJug   ID = "pick jug"
	NextJug   ID = "next jug"
	PrevJug   ID = "previous jug"
	SeeStage  ID = "stage seen"
	NotYet    ID = "not yet"
	Trouble   ID = "trouble"
	Rescue    ID = "rescue"
	NotUsed   ID = "not used"
	Note      ID = "note"
	Measure   ID = "measure"
	Blender   ID = "blender"
	Discount  ID = "not count a jump"
	Outcome   ID = "outcome"
	Guide     ID = "guide"
	NextThing ID = "next thing"
	PrevThing ID = "previous thing"
)

// What keys do while typing, in a list, on a page and at a question.
const (
	Commit      ID = "commit"
	TakeMeant   ID = "take what may be meant"
	CommitRight ID = "commit right"
	Restore     ID = "restore"
	Choose      ID = "choose"
	Close       ID = "close"
	Find        ID = "find"
	Answer      ID = "answer"
)

// Binding is one line of the table.
type Binding struct {
	ID     ID
	Mode   Mode
	Keys   []string // as Bubble Tea names them
	Needs  Need     // what a panel must have for it to act there; 0: it acts everywhere
	Label  string   // one or two words for the footer
	Brief  string   // the keys as a footer names them; empty: the first
	Help   string   // one clause for help and papers
	Foot   int      // rank in the footer, 1 first; 0: not there
	FootOn Need     // what a panel must have for its footer to name it; 0: wherever it acts
}

// Need is what a key needs of a panel, or all that a panel has for keys to act on. A panel is asked what it has, so the table names none.
type Need uint16

// What panels have.
const (
	Numbers   Need = 1 << iota // numbers to type over and to nudge
	Words                      // words that are switched to the next
	Held                       // something to hold
	Adding                     // something can be added
	Spreading                  // parts that should sum to a hundred and may not yet
	Coloured                   // something takes colourants
	Removing                   // something can be removed
	Ordered                    // rows whose order can be changed
	Named                      // something can be renamed
	Picture                    // it stands beside the picture
	Elsewhere                  // it stands where the picture is not
)

// Acts says whether the binding acts on a panel that has so much.
func (b Binding) Acts(has Need) bool { return has&b.Needs == b.Needs }

// Lookup returns what a key does in a mode on a panel that has so much. A key that acts elsewhere gives its binding and false.
func Lookup(mode Mode, has Need, key string) (Binding, bool) {
	var elsewhere Binding
	for _, b := range of(mode) {
		if b.Mode != mode || !slices.Contains(b.Keys, key) {
			continue
		}
		if b.Acts(has) {
			return b, true
		}
		elsewhere = b
	}
	return elsewhere, false
}

// Footer lists the bindings that a footer shows, the most useful first.
func Footer(mode Mode, has Need) []Binding {
	var out []Binding
	for _, b := range of(mode) {
		if b.Mode == mode && b.Foot > 0 && b.Acts(has) && has&b.FootOn == b.FootOn {
			out = append(out, b)
		}
	}
	slices.SortStableFunc(out, func(a, b Binding) int { return a.Foot - b.Foot })
	return out
}
