// Package keys is the one table of keys. Footer, help, the README's table and the man page are drawn from it.
package keys

import (
	"slices"
	"strings"
)

// Mode is what the keyboard is doing.
type Mode int

// The modes.
const (
	Bench    Mode = iota // moving about a station
	Typing               // a cell is being typed in
	Pouring              // a pour is under way
	Line                 // a line of text is being typed
	List                 // a list is being searched
	Page                 // a page of text is being read
	Asking               // a question waits for its answer
	Pad                  // lines are being typed or pasted
	Batching             // the page of batches
	Form                 // a form is being filled
	Stocking             // the page of stock
	modes    int  = iota
)

// OfBench lists the modes of the workbench.
func OfBench() []Mode { return []Mode{Bench, Typing, Line, List, Page, Asking, Pad} }

// OfPour lists the modes of the live run.
func OfPour() []Mode { return []Mode{Pouring, Line, List, Page, Asking} }

// OfBatches lists the modes of the page of batches.
func OfBatches() []Mode { return []Mode{Batching, Form, Line, List, Page, Asking} }

// OfStock lists the modes of the page of stock.
func OfStock() []Mode { return []Mode{Stocking, Form, Pad, Line, List, Page, Asking} }

// Word is the mode's name in a file of keys.
func (m Mode) Word() string {
	return [modes]string{"bench", "typing", "pouring", "line", "list", "page", "question", "pad", "batches", "form", "stock"}[m]
}

// String is the mode's heading in help and on paper.
func (m Mode) String() string {
	return [modes]string{"at the bench", "in a cell being typed", "during a pour", "in a line to type", "in a list", "on a page", "at a question", "on a page to fill", "on the page of batches", "in a form", "on the page of stock"}[m]
}

// ID names what a key does.
type ID string

// Word is the action's name in a file of keys.
func (id ID) Word() string { return strings.ReplaceAll(string(id), " ", "-") }

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
	GoTop      ID = "go to top"
	GoCut      ID = "go to cut"
	GoLabel    ID = "go to label"
	GoShelf    ID = "go to shelf"
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
	Cells      ID = "cells of the picture"
	Bare       ID = "soap or bare"
	OtherFace  ID = "the other picture"
	Undo       ID = "undo"
	Redo       ID = "redo"
	Save       ID = "save"
	SaveAs     ID = "save as"
	Recipe     ID = "recipe"
	NewPlan    ID = "new plan"
	Template   ID = "template"
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
	Happened   ID = "what happened"
	Shopping   ID = "what to get"
	Largest    ID = "largest batch"
	Pour       ID = "pour"
	Batches    ID = "batches"
	Stock      ID = "stock"
	Said       ID = "messages"
	Help       ID = "help"
	Palette    ID = "palette"
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
	SkipStep  ID = "step not done"
	Note      ID = "note"
	Measure   ID = "measure"
	Reweigh   ID = "mend a weight"
	Blender   ID = "blender"
	Discount  ID = "not count a jump"
	Outcome   ID = "outcome"
	Guide     ID = "guide"
	NextThing ID = "next thing"
	PrevThing ID = "previous thing"
)

// What keys do on the page of batches.
const (
	First     ID = "first"
	Last      ID = "last"
	Search    ID = "search"
	Order     ID = "order"
	LookAt    ID = "look at"
	ToList    ID = "back to the list"
	LogMark   ID = "log"
	LogAny    ID = "log anything"
	SameBars  ID = "weigh again"
	Correct   ID = "correct"
	SeePhoto  ID = "see picture"
	CutLive   ID = "cut live"
	Again     ID = "pour again"
	ScentPage ID = "scent page"
	Board     ID = "season board"
	Record    ID = "record"
	Calendar  ID = "calendar"
	FlipBack  ID = "switch back"
	KeepAll   ID = "keep all"
)

// What keys do on the page of stock.
const (
	Receive     ID = "receive"
	ReceiveForm ID = "receive in a form"
	OpenPack    ID = "open the pack"
	CountPack   ID = "weigh the pack"
	LosePack    ID = "lose some"
	Emptied     ID = "used up too"
	Expiring    ID = "expiring"
	Trace       ID = "trace"
	CostRule    ID = "rule of costs"
)

// What keys do while typing, in a list, on a page and at a question.
const (
	Commit      ID = "commit"
	TakeMeant   ID = "take what may be meant"
	CommitRight ID = "commit right"
	Restore     ID = "restore"
	Choose      ID = "choose"
	Close       ID = "close"
	Done        ID = "done reading"
	Find        ID = "find"
	Answer      ID = "answer"
)

// Binding is one line of the table: an action, and the keys that ask for it in one place.
type Binding struct {
	ID     ID
	Mode   Mode
	Keys   []string // as Bubble Tea names them; none: what it does is only found in the palette
	Each   []string // where every key does its own: what each is about, in the order of the keys
	Fixed  bool     // its keys are what is typed, or come from the terminal, and stay as they are
	Must   bool     // without a key for it nobody gets on
	Needs  Need     // what a panel must have for it to act there; 0: it acts everywhere
	Label  string   // one or two words for the footer
	Beside ID       // the action whose key the footer names beside its own, under the same label
	Help   string   // one clause for help and papers; an action in braces stands for its key
	Foot   int      // rank in the footer, 1 first; 0: not there
	FootOn Need     // what a panel must have for its footer to name it; 0: wherever it acts

	beside string // the key of Beside as it is shown
}

// Nth is which of the binding's keys a key is, from 0; below 0: none.
func (b Binding) Nth(key string) int { return slices.Index(b.Keys, key) }

// first is the key that stands for the binding where there is room for one: the first that is pressed alone, if there is one.
func (b Binding) first() string {
	for _, k := range b.Keys {
		if len(k) == 1 || !strings.Contains(k, "+") {
			return k
		}
	}
	return b.Keys[0]
}

// Need is what a key needs of a panel, or all that a panel has for keys to act on. A panel is asked what it has, so the table names none.
type Need uint32

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
	Found                      // a line that can be done was searched for
	Reading                    // nothing was
)

// apart lists what no place has both of: a key may do one thing with the one and another with the other.
func apart() [][2]Need { return [][2]Need{{Words, Held}, {Picture, Elsewhere}, {Found, Reading}} }

// Acts says whether the binding acts on a panel that has so much.
func (b Binding) Acts(has Need) bool { return has&b.Needs == b.Needs }
