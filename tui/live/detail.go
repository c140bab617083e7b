package live

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// detail is what a step needs: how much of what.
func (m *Model) detail(s underway.Step) string {
	b := m.portioned.Batch(s.Batch)
	plan := m.sheet().Plan.Batch(s.Batch)
	show := m.sheet().Plan.Show
	if s.Batch == "" {
		return m.onLoaf(s)
	}
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
		return fmt.Sprintf("Pour the lye into the oils. Oils %s, lye %s. The clock starts when it is in: press %s then.", show.Temp(plan.OilsC), show.Temp(plan.LyeC), m.key(keys.Finish))
	case pour.TaskMix:
		if text := b.AtEmulsion(); text != "" {
			return mixing(plan, show) + " Then, " + text + "."
		}
		return mixing(plan, show)
	case pour.TaskSplit:
		return "No oil streaks left? Into the jugs: " + portions(m.sheet().Batch(s.Batch), show)
	case pour.TaskColour:
		return doses(jug, show) + m.portionWords(s.Batch, jug)
	case pour.TaskScent:
		return scents(jug, show) + m.portionWords(s.Batch, jug) + ", by hand"
	case pour.TaskBed:
		return bedding(m.sheet().Plan.Bed)
	case pour.TaskEnd:
		return "Wash up as after any pour: this is raw soap. The batter goes into a spare mould, never into a drain."
	}
	return m.acting(s)
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

// makingLye says in which order the lye is made; its amounts are on the paper.
func (m *Model) makingLye(b *pour.BatchSheet) string {
	text := strings.Join(b.MakeLye(m.sheet().Plan.Show), "; ") + ". Goggles and gloves on"
	if m.trialling() {
		return "Then " + text + "."
	}
	return strings.ToUpper(text[:1]) + text[1:] + "; weights are on the paper."
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
	text := m.telling(s)
	if m.trialling() {
		text += "."
	}
	for _, jug := range s.Moves {
		if m.unused(s.Batch, jug) {
			text += "; leave " + jug + " out"
		}
	}
	for _, jug := range s.Own {
		if len(s.Own) == 1 || m.chosen != "" && jug == m.board.Jugs[m.jug].Jug { // in a round that is taken before its turn, the one that is rescued
			text += m.without(s.Batch, jug)
		}
	}
	return text
}

// portion is a jug that is not as planned; false: it is.
func (m *Model) portion(n pour.BatchName, jug string) (pour.Portion, bool) {
	i := slices.IndexFunc(m.portions, func(p pour.Portion) bool { return p.Batch == n && p.Jug == jug })
	if i < 0 {
		return pour.Portion{}, false
	}
	return m.portions[i], true
}

// portionWords says for how much batter a dose is, where that is not what was planned.
func (m *Model) portionWords(n pour.BatchName, j pour.JugSheet) string {
	p, ok := m.portion(n, j.Name)
	g := m.sheet().Plan.Show.Weight
	switch {
	case !ok:
		return ""
	case p.LeftPart < 1:
		return ", for the " + g(j.BatterWeighG*p.LeftPart) + " that is left of it"
	}
	return ", for " + g(j.BatterWeighG) + " as weighed"
}

// telling is what an act does, with as much as its jugs really held.
func (m *Model) telling(s underway.Step) string {
	weighed := slices.DeleteFunc(slices.Clone(s.Own), func(jug string) bool {
		p, ok := m.portion(s.Batch, jug)
		return !ok || p.BatterG <= 0
	})
	if len(weighed) == 0 {
		return s.Tell
	}
	for _, st := range m.portioned.Stints() {
		if st.Key == s.Key {
			return m.portioned.Tell(st) + "; " + strings.Join(weighed, ", ") + " as weighed"
		}
	}
	return s.Tell
}

// without says how much a jug holds whose colour or scent is not in, for one that is used before its turn or goes without; "" where it
// holds what the plan says.
func (m *Model) without(n pour.BatchName, jug string) string {
	b := m.portioned.Batch(n)
	if b == nil || m.unused(n, jug) {
		return ""
	}
	if p, ok := m.portion(n, jug); ok && p.LeftPart < 1 {
		return ""
	}
	j, out, g := jugSheet(b, jug), []string(nil), 0.0
	for _, step := range m.state.Steps {
		if step.Batch != n || step.Jug != jug || step.Done {
			continue
		}
		switch step.Kind {
		case pour.TaskColour:
			out = append(out, "colour")
			for _, d := range j.Colourants {
				g += d.PigmentG + d.CarrierG
			}
		case pour.TaskScent:
			out = append(out, "scent")
			for _, x := range j.Scents {
				g += x.G
			}
		}
	}
	if len(out) == 0 || !(g > 0) {
		return ""
	}
	return "; without its " + strings.Join(out, " and ") + " " + jug + " holds " + m.sheet().Plan.Show.Weight(j.TotalG-g)
}

// onLoaf says what is done to the loaf.
func (m *Model) onLoaf(s underway.Step) string {
	if s.Tell == "" {
		return ""
	}
	text := strings.ToUpper(s.Tell[:1]) + s.Tell[1:] + "."
	if _, weighs := m.mass(s); weighs {
		text += m.fill(" Type its grams, Enter keeps them; {take back} takes them back.")
	}
	return text
}

func bedding(b pour.Bed) string {
	do := b.Do()
	return fmt.Sprintf("%s%s. Cut after %.4g h.", strings.ToUpper(do[:1]), do[1:], b.CutAfterH)
}
