package live

import (
	"fmt"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// CutSteps lists the steps of the cut's own run in the order they are done. What goes on the cured bar is none of them: the cure is weeks.
func CutSteps(s pour.Sheet) []Step {
	var out []Step
	for _, st := range s.CutStints() {
		if !s.Cured(st) {
			out = append(out, stepOf(&s, st))
		}
	}
	return out
}

// Mass is one piece of the cut loaf, as planned and as it was weighed.
type Mass struct {
	pour.Piece
	Step   string      // key of the step that weighs it
	TrueG  pour.Figure // unknown: not weighed
	Weighs logbook.Event
}

// OffG is by how much a piece is heavier than planned; unknown where either is.
func (m Mass) OffG() pour.Figure {
	return pour.Figure{V: m.TrueG.V - m.PlannedG.V, Known: m.TrueG.Known && m.PlannedG.Known}
}

// Masses lists the pieces of the cut loaf with what they really weighed, by the events that stand.
func Masses(sheet *pour.Sheet, standing []logbook.Event) []Mass {
	pieces := sheet.Pieces()
	var out []Mass
	for _, t := range sheet.CutRun {
		i := sheet.CutPiece(t)
		if i < 0 {
			continue
		}
		m := Mass{Piece: pieces[i], Step: t.Key, Weighs: logbook.Event{Kind: logbook.Weighed, What: pieces[i].Name, Step: t.Key}}
		if m.Bar > 0 {
			m.Weighs = logbook.Event{Kind: logbook.Cut, Step: t.Key}
		}
		for _, e := range standing {
			if e.Kind == m.Weighs.Kind && e.Step == t.Key {
				m.TrueG = pour.Know(e.Value)
			}
		}
		out = append(out, m)
	}
	return out
}

// ReplayCut works out where the cut of a poured loaf stands after the events of its pour. A piece that was weighed is done.
func ReplayCut(sheet pour.Sheet, events []logbook.Event) State {
	s := State{cut: true, lyeIn: map[pour.BatchName]time.Duration{}}
	s.Marks, s.Again = logbook.Counting(logbook.Standing(events), &sheet)
	s.met()
	steps := CutSteps(sheet)
	done := map[string]time.Duration{}
	for _, e := range s.Marks {
		i := slices.IndexFunc(steps, func(step Step) bool { return step.Key == e.Step })
		switch {
		case i >= 0 && (e.Kind == logbook.Done || e.Kind == logbook.Cut || e.Kind == logbook.Weighed):
			if len(done) == 0 {
				s.cutFrom = e.Run - time.Duration(steps[i].LengthMin*float64(time.Minute))
			}
			if _, before := done[e.Step]; !before { // weighed again, it was done all the same
				done[e.Step] = e.Run
			}
		case e.Kind == logbook.Ended && len(done) > 0:
			s.Ended = true
		}
	}
	s.cutBegun = len(done) > 0
	for _, step := range steps {
		at, ok := done[step.Key]
		s.Steps = append(s.Steps, StepState{Step: step, Done: ok, DoneAt: at})
	}
	for s.Next < len(s.Steps) && s.Steps[s.Next].Done {
		s.Next++
	}
	return s
}

// Cutting reports whether the state is that of a cut.
func (s State) Cutting() bool { return s.cut }

// ResumeCut takes up the cut of a pour: on its day, or again after it was left. The loaf of a trial is none.
func ResumeCut(b logbook.Book, id string, shelf pour.Shelf, h pour.Hand, c Clock, session string) (*Run, error) {
	r, err := open(b, id, shelf, h, c, session, true)
	if err != nil {
		return nil, fmt.Errorf("cut the loaf of %s: %w", id, err)
	}
	return r, nil
}

// cutting refuses the cut of a pour that has nothing to be cut.
func cutting(p logbook.Pour, sheet *pour.Sheet) error {
	switch {
	case p.TrialScent != "" || p.Plan.Trial:
		return fmt.Errorf("it was a trial, and nothing was poured into a mould")
	case len(sheet.CutRun) == 0:
		return fmt.Errorf("its plan can no longer be worked out")
	}
	return nil
}

// pieces lists what is weighed at the cut.
func (s State) pieces(sheet *pour.Sheet) []Thing {
	var out []Thing
	for _, m := range Masses(sheet, s.Marks) {
		out = append(out, Thing{
			Event: m.Weighs, Unit: pour.UnitGram, Planned: m.PlannedG, Measured: m.TrueG,
			Weigh: pour.Weighing{Name: m.Name, Kind: pour.WeighBatter}, // on the scale of the batter
		})
	}
	return out
}

// cutMark reports whether a mark belongs to the cut: one of its steps, or made after it was begun.
func (s State) cutMark(e logbook.Event) bool {
	if e.Step != "" {
		_, ok := s.step(e.Step)
		return ok
	}
	return s.cutBegun && e.Run >= s.cutFrom
}
