package live

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/screen"
)

// stillToDo lists the steps that are still to be done, as replanned: without those of a jug that is used, that stays in its jug, or
// whose scent is left out.
func (m *Model) stillToDo() []underway.Due {
	var out []underway.Due
	for _, d := range m.board.Due {
		if !m.passedOver(d.Step) {
			out = append(out, d)
		}
	}
	return out
}

func (m *Model) passedOver(s underway.Step) bool {
	if s.Jug == "" {
		return len(s.Moves) > 0 && !slices.ContainsFunc(s.Moves, func(jug string) bool { return !m.leftInJug(s.Batch, jug) })
	}
	return m.state.Poured(s.Batch, s.Jug) || m.leftInJug(s.Batch, s.Jug) || s.Kind == pour.TaskScent && m.scentless(s.Batch, s.Jug)
}

// leftInJug says whether a jug was marked as one that is not used.
func (m *Model) leftInJug(n pour.BatchName, jug string) bool {
	return slices.ContainsFunc(m.state.Marks, func(e logbook.Event) bool {
		return e.Kind == logbook.Unpoured && e.Batch == n && e.Jug == jug
	})
}

func (m *Model) scentless(n pour.BatchName, jug string) bool {
	return slices.ContainsFunc(m.state.Marks, func(e logbook.Event) bool {
		return e.Kind == logbook.Rescued && e.What == string(underway.LeaveScent) && e.Batch == n && e.Jug == jug
	})
}

// now is the step under way: the one chosen, or the next. It says false when every step is done.
func (m *Model) now() (underway.Due, bool) {
	if i := m.nowIndex(m.left); i >= 0 {
		return m.left[i], true
	}
	return underway.Due{}, false
}

func (m *Model) nowIndex(list []underway.Due) int {
	if i := slices.IndexFunc(list, func(d underway.Due) bool { return d.Key == m.chosen }); i >= 0 {
		return i
	}
	return min(len(list), 1) - 1
}

// after lists the steps that come after the one under way.
func (m *Model) after() []underway.Due {
	if i := m.nowIndex(m.left); i >= 0 {
		return slices.Concat(m.left[:i], m.left[i+1:])
	}
	return nil
}

// title is a step in two or three words.
func (m *Model) title(s underway.Step) string {
	words := s.Name
	switch s.Kind {
	case underway.StepLyeIn:
		words = "lye into oil"
	case pour.TaskMix:
		words = "blend"
	}
	if s.Jug != "" {
		return words
	}
	if s.Batch == pour.Icing {
		return string(pour.Icing) + ": " + words
	}
	return words
}

// large is a step in the few words that are drawn large.
func (m *Model) large(s underway.Step) string {
	if len(s.Moves) == 0 || s.Jug != "" {
		return m.title(s)
	}
	if s.Batch == pour.Icing {
		return string(pour.Icing) + ": " + string(s.Kind)
	}
	return string(s.Kind)
}

// detail is what a step needs: how much of what.
func (m *Model) detail(s underway.Step) string {
	b := m.batchSheet(s.Batch)
	plan := m.sheet().Plan.Batch(s.Batch)
	show := m.sheet().Plan.Show
	if b == nil || plan == nil {
		return ""
	}
	jug := jugSheet(b, s.Jug)
	switch s.Kind {
	case pour.TaskCoolLye:
		return fmt.Sprintf("Let the lye cool to %s and bring the oils to %s. Weigh out colours and scent meanwhile.", show.Temp(plan.LyeC), show.Temp(plan.OilsC))
	case underway.StepMakeLye:
		return m.weighing(b) + m.makingLye(b)
	case underway.StepLyeIn:
		return fmt.Sprintf("Pour the lye into the oils. Oils %s, lye %s. The clock starts when it is in: press Space then.", show.Temp(plan.OilsC), show.Temp(plan.LyeC))
	case pour.TaskMix:
		return mixing(plan, show)
	case pour.TaskSplit:
		return "Into the jugs: " + portions(b, show)
	case pour.TaskColour:
		return doses(jug, show)
	case pour.TaskScent:
		return scents(jug, show) + ", by hand"
	case pour.TaskBed:
		return bedding(m.sheet().Plan.Bed)
	case pour.TaskEnd:
		return "Wash up as after any pour: this is raw soap. The batter goes into a spare mould, never into a drain."
	}
	return m.acting(s)
}

// makingLye says in which order the lye is made; its amounts are on the paper.
func (m *Model) makingLye(b *pour.BatchSheet) string {
	text := strings.Join(b.MakeLye(m.sheet().Plan.Show), "; ") + ". Goggles and gloves on"
	if m.trialling() {
		return "Then " + text + "."
	}
	return strings.ToUpper(text[:1]) + text[1:] + "; weights are on the paper."
}

// batchSheet is the figures of a batch, or nil.
func (m *Model) batchSheet(n pour.BatchName) *pour.BatchSheet {
	for _, b := range m.sheet().Batches() {
		if b.Name == n {
			return b
		}
	}
	return nil
}

func jugSheet(b *pour.BatchSheet, name string) pour.JugSheet {
	if i := slices.IndexFunc(b.Jugs, func(j pour.JugSheet) bool { return j.Name == name }); i >= 0 {
		return b.Jugs[i]
	}
	return pour.JugSheet{}
}

// weighing lists what a trial is made of: it has no paper to read that from. With a stop on the lye nothing is weighed.
func (m *Model) weighing(b *pour.BatchSheet) string {
	if !m.trialling() || m.sheet().LyeStopped() {
		return ""
	}
	show := m.sheet().Plan.Show
	var parts []string
	add := func(name string, g float64, draw func(float64) string) {
		if g > 0 {
			parts = append(parts, name+" "+draw(g))
		}
	}
	for _, o := range b.Oils {
		add(o.Name, o.WeighG, show.Weight)
	}
	add(pour.NameWater, b.Lye.WaterToAddG.V, show.Weight)
	add(pour.NameNaOH, b.Lye.NaOH.ToWeighG, show.Dose)
	add(pour.NameKOH, b.Lye.KOH.ToWeighG, show.Dose)
	add(pour.NameStock, b.Lye.Stock.ToWeighG, show.Dose)
	for _, x := range b.Extras {
		add(x.Name, x.G, show.Dose)
	}
	return "Weigh " + strings.Join(parts, ", ") + ". "
}

func mixing(plan *pour.Batch, show pour.Show) string {
	if len(plan.Blend) == 0 {
		return "Stir by hand, no stick blender. Split at " + show.RunTime(plan.SplitAtMin) + "."
	}
	var parts []string
	for _, burst := range plan.Blend {
		parts = append(parts, fmt.Sprintf("%.3g s at %s", burst.S, show.RunTime(burst.AtMin)))
	}
	return "Stick blender: " + strings.Join(parts, ", ") + " (z on and off). Stir by hand until " + show.RunTime(plan.SplitAtMin) + "."
}

func portions(b *pour.BatchSheet, show pour.Show) string {
	var parts []string
	for _, j := range b.Jugs {
		parts = append(parts, j.Name+" "+show.Weight(j.BatterWeighG))
	}
	return strings.Join(parts, " · ")
}

func doses(j pour.JugSheet, show pour.Show) string {
	var parts []string
	for _, d := range j.Colourants {
		parts = append(parts, d.Name+" "+show.Dose(d.PigmentG))
		if d.CarrierG > 0 {
			parts = append(parts, d.CarrierName+" "+show.Dose(d.CarrierG))
		}
	}
	return "Stir in " + strings.Join(parts, ", ")
}

func scents(j pour.JugSheet, show pour.Show) string {
	var parts []string
	for _, x := range j.Scents {
		parts = append(parts, x.Name+" "+show.Dose(x.G))
	}
	return "Stir in " + strings.Join(parts, ", ")
}

// acting says an act in the words of the script, and which of its jugs stay in their jugs.
func (m *Model) acting(s underway.Step) string {
	text := s.Tell
	if m.trialling() {
		text += "."
	}
	for _, jug := range s.Moves {
		if m.leftInJug(s.Batch, jug) {
			text += "; leave " + jug + " out"
		}
	}
	return text
}

func bedding(b pour.Bed) string {
	how := map[string]string{pour.BedBare: "Leave it bare", pour.BedInsulate: "Wrap it warm", pour.BedChill: "Put it in the cold"}[b.Keep]
	return fmt.Sprintf("%s. Cut after %.4g h.", how, b.CutAfterH)
}

// detailLines is what the step under way needs, in lines of a width.
func (m *Model) detailLines(w int) []string {
	now, ok := m.now()
	if !ok {
		return nil
	}
	detail := m.detail(now.Step)
	if m.trialling() {
		detail += " " + m.trialStep()
	}
	return screen.Wrap(detail, w)
}
