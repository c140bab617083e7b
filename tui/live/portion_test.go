package live

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// told is what the step with that key says now.
func (b *kitchen) told(key string) string {
	b.Helper()
	for _, s := range b.m.state.Steps {
		if s.Key == key {
			return b.m.detail(s.Step)
		}
	}
	b.Fatalf("there is no step %s", key)
	return ""
}

// Half of what was planned, by the scale: colour and scent are halved, and every round pours half.
func TestAJugWeighedOtherwiseIsDosedAndPouredByThat(t *testing.T) {
	b := alpine(t)
	b.until("base mix")
	sheet := b.m.sheet()
	show := sheet.Plan.Show
	j := jugSheet(&sheet.Base, "poppy")
	half := fmt.Sprintf("%.1f", j.BatterWeighG/2)
	pours := ""
	for _, step := range b.m.state.Steps {
		if pours == "" && strings.Contains(strings.Join(step.Own, ","), "poppy") {
			pours = step.Key
		}
	}
	before := b.told(pours)
	b.weigh("base poppy batter", half)
	got := jugSheet(&b.m.portioned.Base, "poppy").BatterWeighG
	times := got / j.BatterWeighG
	if times < 0.49 || times > 0.51 {
		t.Fatalf("%v of %v", got, j.BatterWeighG)
	}
	for _, words := range []string{show.Dose(j.Colourants[0].PigmentG * times), show.Dose(j.Colourants[0].CarrierG * times), "for " + show.Weight(got) + " as weighed"} {
		if text := b.told("base colour poppy"); !strings.Contains(text, words) {
			t.Errorf("its colour is told as %q, without %q", text, words)
		}
	}
	if text, words := b.told("base scent poppy"), show.Dose(j.Scents[0].G*times); !strings.Contains(text, words) {
		t.Errorf("its scent is told as %q, without %q", text, words)
	}
	if text := b.told(pours); text == before || !strings.Contains(text, "poppy as weighed") {
		t.Errorf("it is poured: %q, planned %q", text, before)
	}
	if text := b.told("base colour fern"); strings.Contains(text, "as weighed") {
		t.Errorf("another jug: %q", text)
	}
	b.until("base split")
	b.measure("base poppy " + j.Colourants[0].Name)
	b.shows("planned " + show.Dose(j.Colourants[0].PigmentG*times))
	b.press("esc")
}

// Of a jug of which a round was poured before its scent went in, the dose is for what is left; that of one that is whole is as planned.
func TestAJugPartlyPouredIsScentedForWhatIsLeft(t *testing.T) {
	b := alpine(t)
	b.until("base split")
	sheet := b.m.sheet()
	show := sheet.Plan.Show
	j := jugSheet(&sheet.Base, "poppy")
	part, key := 0.0, ""
	for _, st := range sheet.Stints() {
		for _, task := range st.Tasks {
			if task.Batch == pour.Base && task.Jug == "poppy" && task.Part.Known && key == "" {
				key, part = st.Key, task.Part.V
			}
		}
	}
	if part <= 0 || part >= 1 {
		t.Fatalf("the first act pours %v of it", part)
	}
	must(t, b.m.run.Do(key))
	b.m.settle()
	text := b.told("base scent poppy")
	for _, words := range []string{show.Dose(j.Scents[0].G * (1 - part)), "for the " + show.Weight(j.BatterWeighG*(1-part)) + " that is left of it"} {
		if !strings.Contains(text, words) {
			t.Errorf("its scent is told as %q, without %q", text, words)
		}
	}
	if text := b.told("base scent fern"); strings.Contains(text, "left of it") != hasPortion(b, "fern") {
		t.Errorf("another jug: %q", text)
	}
	must(t, b.m.run.Mark(logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, Jug: "poppy", What: pour.WeighBatter, Value: 100}))
	b.m.settle()
	if text, words := b.told("base scent poppy"), show.Dose(j.Scents[0].G*(1-part)*100/j.BatterWeighG); !strings.Contains(text, words) {
		t.Errorf("weighed too, it is told as %q, without %q", text, words)
	}
}

func hasPortion(b *kitchen, jug string) bool {
	_, ok := b.m.portion(pour.Base, jug)
	return ok
}
