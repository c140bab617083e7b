// Package session is the plan on the bench: the document, its sheet, what was done to it and what of it is saved. It knows no terminal.
package session

import (
	"errors"
	"reflect"

	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/whatif"
)

// Session holds one plan at a time.
type Session struct {
	shelf   pour.Shelf
	hand    pour.Hand
	plan    pour.Plan
	sheet   pour.Sheet
	clock   pour.Sheet      // the last sheet with the clock's figures; of an earlier plan while they are worked out again
	colours pour.Sheet      // the last sheet that knows what the colours do, likewise
	early   []pour.Warning  // what is known to stand against the plan at once
	later   []pour.Warning  // what the last full sheet found besides, while it is looked for again
	mends   [][]whatif.Mend // of the sheet's warnings, in their order; nil: not looked for yet
	saved   pour.Plan
	undo    []step
	redo    []step
	rev     int
	nudging string // the name of the last edit while nudges of one cell count as one
}

// step is a plan as it was, and what was done to it next.
type step struct {
	plan   pour.Plan
	name   string
	beside Beside // what was done is no edit of the plan but of what it is worked out with; nil: it is one
}

// Beside is a change of the shelf that the plan is worked out with: it is made, taken back and made again outside the plan, on the disk.
type Beside func(back bool) (pour.Shelf, error)

// Nothing to undo or to do again.
var (
	errNothingToUndo = errors.New("there is nothing to undo")
	errNothingToRedo = errors.New("there is nothing to do again")
)

// New puts a plan on the bench. It counts as saved when it is what a file holds, else it is a draft.
func New(p pour.Plan, shelf pour.Shelf, hand pour.Hand, isSaved bool) *Session {
	s := &Session{shelf: shelf, hand: hand}
	s.Replace(p, isSaved)
	return s
}

// Replace puts another plan on the bench; what was done to the one before is forgotten.
func (s *Session) Replace(p pour.Plan, isSaved bool) {
	s.undo, s.redo, s.nudging = nil, nil, ""
	s.saved, s.colours, s.later = pour.Plan{}, pour.Sheet{}, nil
	if isSaved {
		s.saved = p
	}
	s.become(p)
	s.clock = s.sheet.Time(s.shelf, s.hand)
	s.sheet = s.clock
}

func (s *Session) become(p pour.Plan) {
	s.plan = p
	s.rev++
	s.mends = nil
	s.sheet = pour.Weigh(p, s.shelf)
	s.early = s.sheet.Warnings
}

// Apply makes an edit. A refused edit changes nothing and gives the reason. An edit that changes nothing is not counted.
func (s *Session) Apply(name string, e pour.Edit) error {
	s.nudging = ""
	return s.apply(name, e, false)
}

// Nudge makes an edit that counts as one with the nudges of the same name right before it.
func (s *Session) Nudge(name string, e pour.Edit) error {
	grouped, rev := s.nudging == name, s.rev
	err := s.apply(name, e, grouped)
	if s.rev != rev { // one that changed nothing begins no group: the next would be undone with what was done before
		s.nudging = name
	}
	return err
}

func (s *Session) apply(name string, e pour.Edit, grouped bool) error {
	next, err := pour.Apply(s.plan, s.shelf, e)
	if err != nil {
		return err
	}
	if reflect.DeepEqual(next, s.plan) {
		return nil
	}
	if !grouped {
		s.undo = append(s.undo, step{plan: s.plan, name: name})
	}
	s.redo = nil
	s.become(next)
	return nil
}

// Do makes a change of the shelf, which counts among the edits of the plan: the same undo takes it back, in its turn.
func (s *Session) Do(name string, change Beside) error {
	s.nudging = ""
	shelf, err := change(false)
	if err != nil {
		return err
	}
	s.undo = append(s.undo, step{s.plan, name, change})
	s.redo = nil
	s.Stock(shelf)
	return nil
}

// Stock puts another shelf behind the plan: its figures are worked out again.
func (s *Session) Stock(shelf pour.Shelf) {
	s.shelf = shelf
	s.become(s.plan)
}

// Undo takes the last edit back and says which it was. A change of the shelf that cannot be taken back stays where it is.
func (s *Session) Undo() (string, error) {
	if len(s.undo) == 0 {
		return "", errNothingToUndo
	}
	s.nudging = ""
	last := s.undo[len(s.undo)-1]
	if err := s.turn(last, true); err != nil {
		return last.name, err
	}
	s.undo = s.undo[:len(s.undo)-1]
	s.redo = append(s.redo, step{s.plan, last.name, last.beside})
	s.become(last.plan)
	return last.name, nil
}

// Redo makes the last edit that was taken back again and says which it was.
func (s *Session) Redo() (string, error) {
	if len(s.redo) == 0 {
		return "", errNothingToRedo
	}
	s.nudging = ""
	next := s.redo[len(s.redo)-1]
	if err := s.turn(next, false); err != nil {
		return next.name, err
	}
	s.redo = s.redo[:len(s.redo)-1]
	s.undo = append(s.undo, step{s.plan, next.name, next.beside})
	s.become(next.plan)
	return next.name, nil
}

// turn takes a change of the shelf back or makes it again; an edit of the plan needs nothing.
func (s *Session) turn(x step, back bool) error {
	if x.beside == nil {
		return nil
	}
	shelf, err := x.beside(back)
	if err == nil {
		s.shelf = shelf
	}
	return err
}

// Plan returns the plan on the bench. It shares its lists with the session: change it by [Session.Apply] alone.
func (s *Session) Plan() pour.Plan { return s.plan }

// Sheet returns the figures of the plan on the bench; the clock's may be missing still.
func (s *Session) Sheet() *pour.Sheet { return &s.sheet }

// Clock returns the last sheet that has the clock's figures and whether they are those of the plan on the bench.
func (s *Session) Clock() (sheet *pour.Sheet, fresh bool) { return &s.clock, s.sheet.Timed }

// Shelf returns the catalogue.
func (s *Session) Shelf() pour.Shelf { return s.shelf }

// Hand returns what the maker's own pours have taught the clock.
func (s *Session) Hand() pour.Hand { return s.hand }

// Learn puts what the maker's pours teach by now in the place of what they taught before, and says whether that is anything else. The plan
// and what was done to it stay; its figures are worked out again, and those still under way are dropped.
func (s *Session) Learn(hand pour.Hand) bool {
	if reflect.DeepEqual(hand, s.hand) {
		return false
	}
	s.hand = hand
	s.become(s.plan)
	return true
}

// Revision counts every plan that was on the bench, and every lesson that its figures were worked out anew for.
func (s *Session) Revision() int { return s.rev }

// Untimed returns a function that works the clock out beside the keyboard, or nil when its figures are there already.
func (s *Session) Untimed() func() pour.Sheet {
	if s.sheet.Timed {
		return nil
	}
	sheet, shelf, hand := s.sheet, s.shelf, s.hand
	return func() pour.Sheet { return sheet.Time(shelf, hand) }
}

// Tried returns a function that works out the plan as an edit would make it, with the clock's figures and without changing anything; its error
// is why the edit would be refused.
func (s *Session) Tried(e pour.Edit) func() (pour.Sheet, error) {
	plan, shelf, hand := s.plan, s.shelf, s.hand
	return func() (pour.Sheet, error) {
		next, err := pour.Apply(plan, shelf, e)
		if err != nil {
			return pour.Sheet{}, err
		}
		return pour.Weigh(next, shelf).Time(shelf, hand), nil
	}
}

// Timed takes the clock's figures for a revision; figures of a plan that has changed since are dropped.
func (s *Session) Timed(rev int, sheet pour.Sheet) {
	if rev == s.rev {
		s.sheet, s.clock = sheet, sheet
	}
}

// Unmingled returns a function that works out beside the keyboard what the colours do. It is nil while the clock's figures, which come
// first, are missing, and when there is nothing left to work out.
func (s *Session) Unmingled(judge *colour.Judge) func() pour.Sheet {
	if !s.sheet.Timed || s.sheet.Mingling.Known {
		return nil
	}
	sheet, shelf, hand := s.sheet, s.shelf, s.hand
	return func() pour.Sheet { return sheet.Mingle(shelf, hand, judge) }
}

// Mingled takes what the colours do for a revision; that of a plan that has changed since is dropped.
func (s *Session) Mingled(rev int, sheet pour.Sheet) {
	if rev == s.rev {
		s.sheet, s.clock, s.colours = sheet, sheet, sheet
		s.later = without(sheet.Warnings, s.early)
	}
}

// Colours returns the last sheet that knows what the colours do and whether it is that of the plan on the bench.
func (s *Session) Colours() (sheet *pour.Sheet, fresh bool) {
	return &s.colours, s.sheet.Mingling.Known
}

// Saved says that the plan on the bench is what its file holds now.
func (s *Session) Saved(p pour.Plan) { s.saved = p }

// Dirty says whether the plan on the bench differs from what its file holds, in more than the units its figures are shown in: those are never worth a
// question, or a journal.
func (s *Session) Dirty() bool {
	p := s.plan
	p.Show.Mass, p.Show.Temperature, p.Show.Length = s.saved.Show.Mass, s.saved.Show.Temperature, s.saved.Show.Length
	return !reflect.DeepEqual(p, s.saved)
}

// Savable says whether a file would hold anything else after saving, if only other units.
func (s *Session) Savable() bool { return !reflect.DeepEqual(s.plan, s.saved) }

// CanUndo says what Undo would take back, or "".
func (s *Session) CanUndo() string { return last(s.undo) }

// CanRedo says what Redo would make again, or "".
func (s *Session) CanRedo() string { return last(s.redo) }

func last(steps []step) string {
	if len(steps) == 0 {
		return ""
	}
	return steps[len(steps)-1].name
}
