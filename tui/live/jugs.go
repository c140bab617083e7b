package live

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// nearMin is how close to its end a window is worth a bell, min.
const nearMin = 2

// near says whether a jug comes near the end of its window, or is past it, and has not been used.
func (m *Model) near(j underway.JugBoard) bool {
	return (m.open(j) || j.Verdict == underway.Over) && !m.trialling() && !m.state.Ended && !m.unused(j.Batch, j.Jug) && j.LeftMin.Known && j.LeftMin.V <= nearMin
}

// jugName is a jug's number and name, as it is chosen.
func (m *Model) jugName(i int) string { return fmt.Sprintf("%d %s", i+1, m.board.Jugs[i].Jug) }

// usedWord is what was done with a jug in the end.
func (m *Model) usedWord(j underway.JugBoard) string {
	switch {
	case m.trialling():
		return "watched"
	case j.Batch == pour.Icing:
		return "piped"
	}
	return "poured"
}

// sinceIn is the time since a jug's batch had its lye, min.
func (m *Model) sinceIn(j underway.JugBoard) (float64, bool) {
	d, ok := m.state.SinceLyeIn(j.Batch, m.live.Run())
	return d.Minutes(), ok
}

// jugWords says how a jug stands in so many cells: with its stage and the chance that it is too thick where there is room for them.
func (m *Model) jugWords(j underway.JugBoard, w int) string {
	text := m.withStage(j, m.standing(j), w)
	if full := text + m.chanceWords(j); screen.Width(full) <= w {
		text = full
	}
	switch j.Verdict {
	case underway.TooLate, underway.Soon:
		if m.open(j) {
			return "! " + text
		}
	}
	if len(j.Troubles) > 0 && j.Verdict != underway.Used && j.Verdict != underway.Over {
		return "! " + text
	}
	return text
}

// withStage puts what is known of a jug before how it stands: its trouble and the stage it was seen at, for which the rest makes room, or
// else about which stage it has reached.
func (m *Model) withStage(j underway.JugBoard, text string, w int) string {
	stage, known := "", ""
	over := j.Verdict == underway.Over && !m.trialling()
	if (m.open(j) || over) && !m.unused(j.Batch, j.Jug) {
		stage = m.stageWord(j)
	}
	if j.Reached > 0 && stage == chem.Stage(j.Reached-1).String()+", " {
		known = stage
	}
	if over { // that the clock makes it thick is said by its being over
		stage = known
	}
	trouble := ""
	if len(j.Troubles) > 0 {
		trouble = strings.Join(j.Troubles, ", ") + ", "
	}
	text, signed := strings.CutPrefix(text, overSign)
	short := text
	if trouble+known != "" {
		short, _, _ = strings.Cut(text, ", ")
	}
	for _, full := range []string{trouble + stage + text, trouble + known + text, trouble + known + short} {
		if text = full; screen.Width(full) <= w {
			break
		}
	}
	if signed {
		return overSign + text
	}
	return text
}

// overSign stands before a jug whose window is over.
const overSign = "■ "

// open says whether a jug's window is a matter now: its batch has its lye, the jug is not used, and the clock knows.
func (m *Model) open(j underway.JugBoard) bool {
	return m.running(j.Batch) && j.Verdict != underway.Used && j.Verdict != underway.Over && j.Refusal == "" && !m.trialling() && !m.unused(j.Batch, j.Jug)
}

// standing is how a jug stands, without its stage.
func (m *Model) standing(j underway.JugBoard) string {
	show := m.sheet().Plan.Show
	since, running := m.sinceIn(j)
	switch {
	case m.unused(j.Batch, j.Jug):
		return "stays in its jug"
	case j.Verdict == underway.Used:
		return m.usedWords(j)
	case j.Seized && !m.trialling():
		return overSign + "no time left, " + m.key(keys.Rescue) + ": what helps"
	case j.Refusal != "":
		return "no times: " + j.Refusal
	case !running:
		return m.waitingWords(j)
	case m.trialling():
		return m.nextStageWords(j, since)
	case j.Verdict == underway.Over:
		return overSign + "over for " + show.Minutes(-j.LeftMin.V) + ", " + m.key(keys.Rescue) + ": what helps"
	case j.Verdict == underway.TooLate:
		return show.Minutes(j.LeftMin.V) + " left, " + m.turnWords(j)
	case !j.LeftMin.Known:
		return "any thickness will do"
	case j.Window.From.Known && since < j.Window.From.V:
		return "opens in " + show.Span(j.Window.From.V-since) + m.turnTail(j)
	}
	return show.Minutes(j.LeftMin.V) + " left" + m.turnTail(j)
}

// usedWords says when a jug was used.
func (m *Model) usedWords(j underway.JugBoard) string {
	if s, ok := m.state.LastMove(j.Batch, j.Jug); ok {
		if at, ok := m.state.Elapsed(s.DoneAt); ok {
			return m.usedWord(j) + " at " + m.sheet().Plan.Show.RunTime(at.Minutes())
		}
	}
	return m.usedWord(j)
}

// waitingWords says when the lye of a jug's batch goes in.
func (m *Model) waitingWords(j underway.JugBoard) string {
	for _, d := range m.board.Due {
		if d.Kind == underway.StepLyeIn && d.Batch == j.Batch {
			return "its lye goes in at " + m.sheet().Plan.Show.RunTime(d.StartMin)
		}
	}
	return "its lye is not in"
}

// turnWords is when a jug's turn comes.
func (m *Model) turnWords(j underway.JugBoard) string {
	const due = 0.125 // is told as no minute at all
	now, _ := m.elapsed()
	if j.TurnMin.V-now < due {
		return "turn next"
	}
	return "turn in " + m.sheet().Plan.Show.Minutes(j.TurnMin.V-now)
}

func (m *Model) turnTail(j underway.JugBoard) string {
	if now, ok := m.now(); ok && now.Batch == j.Batch && slices.Contains(now.Moves, j.Jug) {
		return ", its turn now"
	}
	if !j.TurnMin.Known {
		return ""
	}
	return ", " + m.turnWords(j)
}

// stageWord is how far a jug has come: as it was seen, or "about" as the clock makes it, with a comma.
func (m *Model) stageWord(j underway.JugBoard) string {
	since, _ := m.sinceIn(j)
	for s := chem.Stages - 1; s >= 0; s-- {
		if s == j.Reached-1 {
			return chem.Stage(s).String() + ", "
		}
		if chem.Stage(s) > chem.Emulsion && j.Stages[s].Known && j.Stages[s].V <= since {
			return "about " + chem.Stage(s).String() + ", "
		}
	}
	return ""
}

// nextStageWords says which stage a jug is expected to come to next: what a trial waits for.
func (m *Model) nextStageWords(j underway.JugBoard, since float64) string {
	for s := max(j.Reached, int(chem.Light)); s < chem.Stages; s++ {
		if !j.Stages[s].Known {
			continue
		}
		word := chem.Stage(s).String()
		if left := j.Stages[s].V - since; left > 0 {
			return m.seenWord(j) + word + " in about " + m.sheet().Plan.Show.Minutes(left)
		}
		return m.seenWord(j) + word + " expected: look now"
	}
	return m.seenWord(j) + "nothing more is expected"
}

func (m *Model) seenWord(j underway.JugBoard) string {
	if j.Reached == 0 {
		return ""
	}
	return chem.Stage(j.Reached-1).String() + " seen, "
}

// chanceWords says how likely a jug is past what the technique allows when its turn comes. The figure is the plan's, so it is said only
// as long as the run is on time and nothing was seen that moves it.
func (m *Model) chanceWords(j underway.JugBoard) string {
	b := m.sheet().Batch(j.Batch)
	if b == nil || !m.open(j) || len(m.state.Sightings) > 0 || m.board.LateMin >= 1 {
		return ""
	}
	chance := jugSheet(b, j.Jug).Clock.LateChancePercent
	span, ok := m.sheet().Span(j.Batch, m.opt.Shelf)
	tenths := math.Round(chance.V / 10)
	if !ok || !chance.Known || tenths < 1 {
		return ""
	}
	return fmt.Sprintf(", past %s then %.0f in 10", span.To, tenths)
}

// worst is the jug whose window ends first, if that is soon; below 0: none.
func (m *Model) worst() int {
	worst := -1
	for i, j := range m.board.Jugs {
		if m.near(j) && (worst < 0 || j.LeftMin.V < m.board.Jugs[worst].LeftMin.V) {
			worst = i
		}
	}
	return worst
}

// worstWords is the jug whose window ends first, in as few words as there are.
func (m *Model) worstWords() string {
	i := m.worst()
	if i < 0 {
		return ""
	}
	j := m.board.Jugs[i]
	switch {
	case j.Seized:
		return cmp.Or(m.state.AllOf(j.Batch), j.Jug) + " seizes"
	case j.LeftMin.V <= 0:
		return j.Jug + " over"
	}
	return j.Jug + " " + strings.TrimPrefix(m.sheet().Plan.Show.Minutes(j.LeftMin.V), "-")
}

// stageWords lists the stages that were seen in a jug, each with its minute.
func (m *Model) stageWords(j underway.JugBoard) string {
	var parts []string
	for s, at := range j.Stages {
		if !at.Known || !j.Seen[s] && (j.Seized || chem.Stage(s) == chem.Emulsion) {
			continue
		}
		text := chem.Stage(s).String() + " "
		if j.Seen[s] {
			text += "seen " + m.sheet().Plan.Show.RunTime(at.V)
		} else {
			text += "about " + m.sheet().Plan.Show.Minutes(at.V)
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, " · ")
}

func jugSheet(b *pour.BatchSheet, name string) pour.JugSheet {
	if i := slices.IndexFunc(b.Jugs, func(j pour.JugSheet) bool { return j.Name == name }); i >= 0 {
		return b.Jugs[i]
	}
	return pour.JugSheet{}
}
