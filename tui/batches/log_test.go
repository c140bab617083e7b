package batches

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/keys"
)

func TestEveryKindOfEventHasItsKey(t *testing.T) {
	b, _ := keys.BuiltIn().Find(keys.Batching, keys.LogMark)
	var want []string
	for _, f := range life.Forms() {
		want = append(want, string(f.Kind))
	}
	if !slices.Equal(b.Each, want) || len(b.Keys) != len(want) {
		t.Errorf("the keys log %v, there are %v", b.Each, want)
	}
}

// What was weighed into a pour and not marked is written in on the page, stands among its marks and is corrected and undone there.
func TestAWeightOfThePourIsWrittenInOnThePage(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	k.press("P")
	k.shows("weight of the pour, Alpine Meadow", "► of what", "mass, g", "lot", "batch", "jug")
	k.write("water")
	k.press("enter")
	k.write("240,5")
	k.press("ctrl+s")
	k.shows("write where: batch base, or batch icing") // and what was typed is still there
	k.press("tab tab")
	k.write("base")
	k.press("ctrl+s")
	k.says("base water, 240.50 g")
	k.press("enter")
	k.shows("base water, 240.50 g")
	k.press("u")
	k.says("undone: base water, 240.50 g")
}

func TestABatchIsLivedByKeysFromTheMouldToTheLastBar(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	k.shows("Alpine Meadow", "in the mould")
	k.press("U")
	k.shows("out of the mould, Alpine Meadow", "► how firm", "usual: ", "2026-12-20", "today")
	k.write("FIRM") // as it is known
	k.press("ctrl+s")
	k.says("out of the mould, firm")
	k.press("C")
	k.write("128.4 127.9 129.2 128 128 128 128 128 128 128")
	k.press("ctrl+s")
	k.says("cut into 10 bars")
	k.shows("cut")
	k.press("W") // all bars were weighed at the cut: three along the loaf are offered
	k.shows("bar 2, g", "bar 6, g", "bar 9, g", "it was 127.9 g the last time")
	k.press("esc")
	k.press("k")
	k.write("1")
	k.press("ctrl+s")
	k.says("1 bar kept, as the batch's sample")
	b, _ := k.m.chosen()
	if a := b.Bars; a.Bars != 10 || a.Kept != 1 || a.Left != 9 {
		t.Errorf("the bars are %+v", a)
	}
	k.press("f")
	k.press("enter")
	k.shows("words: this is missing")
	k.write("seized")
	k.press("ctrl+s")
	k.shows("failed")
	k.press("u")
	k.says("undone: failed, seized")
	if b, _ = k.m.chosen(); b.State == life.Failed {
		t.Error("an undone failure has failed the batch")
	}
}

func TestTheSameBarsAreWeighedAgainWithTheirMassesAlone(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	id := k.m.all[0].ID
	k.log(id, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: "2026-12-07", Count: 10}})
	k.log(id, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{Day: "2026-12-07", Bars: []int{2, 5, 8}, MassesG: []float64{128, 129, 130}}})
	k.press("w")
	k.shows("bar 2, g", "bar 5, g", "bar 8, g", "it was 128 g the last time")
	k.write("119,5")
	k.press("enter")
	k.shows("it was 129 g the last time")
	k.write("120.1")
	k.press("enter")
	k.write("118.8")
	k.press("enter enter") // past the words, which are empty
	p, err := k.book.Read(id, k.shelf)
	must(t, err)
	e := p.Events[len(p.Events)-1]
	if e.Kind != logbook.WeighIn || !slices.Equal(e.Life.MassesG, []float64{119.5, 120.1, 118.8}) || !slices.Equal(e.Life.Bars, []int{2, 5, 8}) || e.Life.Day != "2026-12-20" {
		t.Errorf("logged is %+v", e.Life)
	}
}

// log logs an event beside the page and lets it look.
func (k *kept) log(id string, e logbook.Event) {
	k.Helper()
	_, err := life.Log(k.book, k.shelf, id, e, k.wall, "b")
	must(k, err)
	k.finish(k.m.load())
}

func TestAMassThatIsNoneIsRefusedOnItsLine(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	id := k.m.all[0].ID
	k.log(id, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: "2026-12-07", Count: 10}})
	k.log(id, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{Day: "2026-12-07", Bars: []int{2, 5}, MassesG: []float64{128, 129}}})
	before := k.file(id)
	k.press("w")
	k.write("119")
	k.press("enter")
	k.write("12o")
	k.press("ctrl+s")
	k.shows("× ", "►", "12o")
	if form := k.m.dialogs.Top(); form == nil || !strings.Contains(k.frame(), "► bar 5, g") {
		t.Errorf("the cursor is not on the line that is wrong:\n%s", k.frame())
	}
	if k.file(id) != before {
		t.Error("something was written")
	}
}

func TestAMarkIsCorrectedTakenBackAndBroughtBack(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	id := k.m.all[0].ID
	k.log(id, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: "2026-12-07", Count: 10}})
	k.log(id, logbook.Event{Kind: logbook.Sold, What: "market", Life: logbook.Life{Day: "2026-12-18", Count: 3, Price: "7.50", Currency: "EUR"}})
	k.size(120, 60)
	before := k.file(id)
	k.press("enter down c")
	k.shows("Correct: sold", "7.50", "EUR", "market")
	for range 9 {
		if strings.Contains(k.frame(), "► bars") {
			break
		}
		k.press("tab")
	}
	k.write("2")
	k.press("ctrl+s")
	b, _ := k.m.chosen()
	if b.Bars.Sold != 2 {
		t.Errorf("%d are sold", b.Bars.Sold)
	}
	k.shows("(corrected)", "× 3 bars sold", "(corrected on")
	if !strings.HasPrefix(k.file(id), before) {
		t.Error("what stood in the file was changed")
	}
	k.press("end d") // the correction
	if b, _ = k.m.chosen(); b.Bars.Sold != 3 {
		t.Errorf("%d are sold once the correction is taken back", b.Bars.Sold)
	}
	k.shows("taken back")
	k.press("u")
	if b, _ = k.m.chosen(); b.Bars.Sold != 2 {
		t.Errorf("%d are sold once that is undone", b.Bars.Sold)
	}
	k.press("u")
	if b, _ = k.m.chosen(); b.Bars.Sold != 3 {
		t.Errorf("%d are sold once the correction is undone", b.Bars.Sold)
	}
	k.press("u")
	k.says("nothing was logged")
}

// Gloves bounce: the mark that was made last is the chosen one, the Enter after a form opens nothing, and a correction that corrects nothing
// is not written.
func TestABouncingEnterStrikesNoMark(t *testing.T) {
	k := onDisk(t, "Alpine Meadow")
	id := k.m.all[0].ID
	k.log(id, logbook.Event{Kind: logbook.Unmoulded, What: logbook.FirmHard, Life: logbook.Life{Day: "2026-12-06"}})
	k.log(id, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: "2026-12-07", Count: 10}})
	k.size(120, 60)
	k.press("enter")
	if mk, _ := k.m.chosenMark(); mk.Event.Kind != logbook.Sliced {
		t.Errorf("the chosen mark is %s, not the last one", mk.Event.Kind)
	}
	k.m.detail, k.m.detailOf = Detail{}, id // as when the keys are quicker than the disk
	k.press("esc enter")
	k.m.mark, k.m.scroll = 0, 0
	k.finish(k.m.open(id))
	if mk, _ := k.m.chosenMark(); mk.Event.Kind != logbook.Sliced {
		t.Errorf("the chosen mark is %s once the file is read, not the last one", mk.Event.Kind)
	}
	k.press("up n")
	k.write("3")
	k.press("ctrl+s")
	mk, _ := k.m.chosenMark()
	if mk.Event.Kind != logbook.Sniffed {
		t.Errorf("the chosen mark is %s, not what was just logged", mk.Event.Kind)
	}
	before := k.file(id)
	k.press("enter")
	if k.m.dialogs.Top() != nil {
		t.Error("an Enter that bounces opens a form")
	}
	k.says("kept already")
	k.press("enter")
	k.shows("Correct: ")
	k.press("ctrl+s")
	k.says("nothing was changed")
	if k.file(id) != before {
		t.Error("a correction that corrects nothing was written")
	}
	k.press("n")
	k.write("2")
	k.press("ctrl+s")
	k.press("up enter") // another key was between: that is meant
	k.shows("Correct: ")
}
