package live

import (
	"math"
	"time"

	"pourbench/chem"
	"pourbench/pour"
)

// Due is a step that is still to be done, as things stand.
type Due struct {
	Step
	StartMin float64 // after the base's lye-in, as replanned; the first is taken to be under way since the hands were free
	ShiftMin float64 // how much later than planned it will be done; under 0: earlier
}

// Verdict is how a jug stands.
type Verdict string

// The verdicts.
const (
	Fine    Verdict = "fine"     // its turn comes inside its window
	Soon    Verdict = "soon"     // its window ends within two minutes
	TooLate Verdict = "too late" // its window will be over when its turn comes
	Over    Verdict = "over"     // its window is over
	Used    Verdict = "used"     // its last turn is done
	Unknown Verdict = "unknown"  // the clock says nothing of it
)

// soonMin is how near the end of a window is worth a bell.
const soonMin = 2

// JugBoard is one jug on the board.
type JugBoard struct {
	JugOutlook
	Verdict Verdict
	LeftMin pour.Figure // of its window; under 0: that long over; unknown before its lye-in
	TurnMin pour.Figure // when its next turn comes, after the base's lye-in
	LastMin pour.Figure // when its last turn comes, with the pot or under a tool if need be
	Rescues []Rescue    // what still can be done; only for a jug that will not make it or is in trouble

	Seized   bool     // it was marked to set within seconds: whatever its window was, no time is left
	Troubles []string // what was marked to go wrong in it, in [logbook.Troubles]
}

// Board is the run at a glance: what is next, how late it is, and how every jug stands.
type Board struct {
	Run     time.Duration // since the run was opened
	Elapsed pour.Figure   // min since lye met oil
	Due     []Due
	LateMin float64          // how far the next step is behind the plan; 0 when it is not
	Hurry   []pour.BatchName // that thicken early: to be split now, before the planned minute
	Jugs    []JugBoard
}

// Board looks at the run now. It is cheap: call it for every frame. The outlook is that of the last event.
func (l Live) Board(o Outlook) Board {
	s := l.State()
	b := Board{Run: l.run, Due: l.due(s, o)}
	if e, ok := s.Elapsed(l.run); ok {
		b.Elapsed = pour.Know(e.Minutes())
	}
	if len(b.Due) > 0 {
		b.LateMin = max(0, b.Due[0].ShiftMin)
	}
	for i, step := range s.Steps {
		if step.Kind == pour.TaskSplit && !step.Done && b.Elapsed.Known && l.latestMin(s, i, o) <= b.Elapsed.V && s.waitsTillMin(step.Step) > b.Elapsed.V {
			b.Hurry = append(b.Hurry, step.Batch)
		}
	}
	for _, j := range o.Jugs {
		b.Jugs = append(b.Jugs, l.jugBoard(s, b, j))
	}
	return b
}

// due moves the steps that are left: the hands do one after the other, from now, and none before it may.
func (l Live) due(s State, o Outlook) []Due {
	var out []Due
	free, ok := s.Elapsed(l.run)
	if !ok {
		return l.before(s)
	}
	at, touched := free.Minutes(), 0.0
	for i, step := range s.Steps {
		if step.Done || s.PassedOver(step.Step) {
			continue
		}
		d := Due{Step: step.Step, StartMin: at}
		if i == s.Next { // under way since the hands were free
			d.StartMin = min(at, s.lastDone(l.run))
		}
		if in, met := s.lyeInMin(step.Batch); met && step.Kind == pour.TaskMix { // under way since then, in its turn or out of it
			d.StartMin = min(d.StartMin, in)
		}
		if step.waits() {
			d.StartMin = max(d.StartMin, min(s.waitsTillMin(step.Step), l.latestMin(s, i, o)))
		}
		if step.SkinMin > 0 && touched > 0 { // what is to touch the top is still to be done
			d.StartMin = max(d.StartMin, touched+step.SkinMin)
		}
		at = max(at, d.StartMin+step.LengthMin)
		if step.touches() {
			touched = at
		}
		d.ShiftMin = at - (step.PlannedMin + step.LengthMin)
		out = append(out, d)
	}
	return out
}

// latestMin is the latest minute after the base's lye-in at which a scent can be stirred in so that its jug still comes to its last turn inside its
// window, the hands doing one thing after the other: with a batter that runs ahead nobody waits for the plan's minute. A batch in which a stage was seen
// is split so that every jug of it does, and one that is at medium at once: colours only stir in worse from there (common practice, no source). +Inf
// where the clock says nothing.
func (l Live) latestMin(s State, i int, o Outlook) float64 {
	step, latest := s.Steps[i], math.Inf(1)
	splits := false
	for _, x := range s.Sightings {
		if step.Kind != pour.TaskSplit || x.Batch != step.Batch || !x.Whole || !x.Reached {
			continue
		}
		if splits = true; x.Stage >= chem.Medium {
			latest = min(latest, s.inMin(x.Batch, l.Sheet)+x.Min)
		}
	}
	for _, j := range o.Jugs {
		own := step.Kind == pour.TaskScent && j.Jug == step.Jug
		if j.Batch == step.Batch && (own || splits) && j.Window.To.Known {
			latest = min(latest, s.inMin(j.Batch, l.Sheet)+j.Window.To.V-s.lastTurnMin(i, j)) // without a turn left it waits as planned
		}
	}
	return latest
}

// lastTurnMin is how long after a step is begun a jug's last turn comes, the hands doing one thing after the other; -Inf where it has none.
func (s State) lastTurnMin(i int, j JugOutlook) float64 {
	work, last := 0.0, math.Inf(-1)
	for _, next := range s.Steps[i:] {
		if next.Done || s.PassedOver(next.Step) {
			continue
		}
		if next.moves(j.Batch, j.Jug) {
			last = work
		}
		work += next.LengthMin
	}
	return last
}

// before is due before the base's lye met its oils: the plan as it is, since nothing is late yet.
func (l Live) before(s State) []Due {
	var out []Due
	for _, step := range s.Steps {
		if !step.Done && !s.PassedOver(step.Step) {
			out = append(out, Due{Step: step.Step, StartMin: step.PlannedMin})
		}
	}
	return out
}

// lastDone is when the last step was finished, min after the base's lye-in.
func (s State) lastDone(run time.Duration) float64 {
	var last time.Duration
	for _, step := range s.Steps {
		if step.Done && step.DoneAt > last {
			last = step.DoneAt
		}
	}
	e, _ := s.Elapsed(min(last, run))
	return e.Minutes()
}

func (l Live) jugBoard(s State, b Board, j JugOutlook) JugBoard {
	out := JugBoard{JugOutlook: j, Verdict: Unknown, Troubles: s.troubles(j.Batch, j.Jug)}
	if s.Poured(j.Batch, j.Jug) {
		out.Verdict = Used
		return out
	}
	l.judge(&out, s, b)
	now, running := s.SinceLyeIn(j.Batch, l.run)
	out.Rescues = s.rescues(out, now.Minutes(), running)
	return out
}

// judge says when a jug's turns come and how it stands.
func (l Live) judge(out *JugBoard, s State, b Board) {
	j := out.JugOutlook
	in := s.inMin(j.Batch, l.Sheet)
	for _, d := range b.Due {
		if !d.moves(j.Batch, j.Jug) {
			continue
		}
		if !out.TurnMin.Known {
			out.TurnMin = pour.Know(d.StartMin)
		}
		out.LastMin = pour.Know(d.StartMin)
	}
	now, running := s.SinceLyeIn(j.Batch, l.run)
	if at, seizes := s.seizedAt(j.Batch, j.Jug); seizes && running {
		out.Seized, out.Verdict, out.LeftMin = true, Over, pour.Know(min(0, (at-l.run).Minutes()))
		return
	}
	if !j.Window.To.Known {
		if j.Refusal == "" {
			out.Verdict = Fine // a technique that takes it at any thickness
		}
		return
	}
	end := j.Window.To.V
	if running {
		out.LeftMin = pour.Know(end - now.Minutes())
	}
	switch {
	case running && out.LeftMin.V <= 0:
		out.Verdict = Over
	case out.LastMin.Known && out.LastMin.V > end+in:
		out.Verdict = TooLate
	case running && out.LeftMin.V <= soonMin:
		out.Verdict = Soon
	default:
		out.Verdict = Fine
	}
}

// inMin is a batch's lye-in after the base's: as it was, or as planned.
func (s State) inMin(n pour.BatchName, sheet pour.Sheet) float64 {
	if in, met := s.lyeInMin(n); met {
		return in
	}
	for _, b := range sheet.Batches() {
		if b.Name == n {
			return b.LyeInAtMin
		}
	}
	return 0
}
