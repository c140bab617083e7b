package live

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/paper"
)

// weigh types what was weighed of a thing.
func (b *kitchen) weigh(thing, g string) {
	b.Helper()
	b.measure(thing)
	b.write(g)
	b.press("enter")
}

// The base's plan has 5 % superfat. As planned nothing is said; with a twentieth more lye there is a caution that stays; with a tenth more
// it is lye-heavy, and lye does not meet oil before a weight is put right or she says why.
func TestTooMuchLyeIsSaidAndStopsTheMixing(t *testing.T) {
	b := alpine(t)
	b.size(120, 36)
	naoh, g := "base "+pour.NameNaOH, b.m.sheet().Base.Lye.NaOH.ToWeighG
	dose := b.m.sheet().Plan.Show.Dose
	number := func(g float64) string { return strings.TrimSuffix(dose(g), " g") }
	b.weigh(naoh, number(g))
	b.hides("superfat as weighed")
	b.weigh(naoh, number(g*1.03))
	b.shows("! base superfat as weighed 2.", "planned 5.0 %")
	b.press("1 2")
	b.shows("! base superfat as weighed 2.")
	b.weigh(naoh, number(g*1.1))
	b.shows("■ DO NOT MIX: base superfat as weighed -4.5 %, planned 5.0 %: lye-heavy", "Weigh its lye anew, or about ")
	b.until("base cool the lye")
	b.shows("■ DO NOT MIX")
	b.chooseStep("base lye in")
	b.press("space")
	b.shows("Go on with it as it is, and say why")
	b.press("space enter")
	if _, in := b.m.state.SinceLyeIn(pour.Base, b.m.live.Run()); in {
		t.Fatal("Space and Enter mixed it")
	}
	b.press("n")
	b.shows("■ DO NOT MIX")
	b.press("space w")
	b.shows(naoh + " in g")
	b.write(number(g))
	b.press("enter")
	b.hides("DO NOT MIX", "lye-heavy")
	b.press("u") // the weight that put it right is taken back
	b.shows("■ DO NOT MIX")
	b.press("r y")
	b.write("rebatched with 100 g of olive")
	b.press("enter")
	b.hides("DO NOT MIX")
	b.shows("lye-heavy: “rebatched with 100 g of olive”")
	b.chooseStep("base lye in")
	b.press("space")
	if _, in := b.m.state.SinceLyeIn(pour.Base, b.m.live.Run()); !in {
		t.Fatal("it is not mixed although she said why")
	}
	b.weigh(naoh, number(g*1.12)) // weighed again, what she said does not hold for it
	b.shows("■ LYE-HEAVY: base superfat as weighed")
	p, err := b.book.Read(b.m.ID(), b.shelf)
	must(t, err)
	record := paper.PourRecord(p, *b.m.sheet())
	for _, want := range []string{"base superfat as weighed", "5.0 %           -6.", "lye-heavy. Nobody said why", "note: lye-heavy rebatched with 100 g of olive"} {
		if !strings.Contains(strings.Join(strings.Fields(record), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("the record lacks %q:\n%s", want, record)
		}
	}
}

// chooseStep goes to a step out of its turn.
func (b *kitchen) chooseStep(key string) {
	b.Helper()
	b.m.chooseStep(key)
	if now, _ := b.m.now(); now.Key != key {
		b.Fatalf("now is %s, want %s", now.Key, key)
	}
}

// Oil that is missing is as bad as lye that is too much, and it is told at the end.
func TestOilsWeighedShortAreSaidToTheEnd(t *testing.T) {
	b := alpine(t)
	b.size(120, 36)
	oil := b.m.sheet().Base.Oils[0]
	b.weigh("base "+oil.Name, "1")
	b.shows("■ DO NOT MIX", "Weigh its lye anew, or about ")
	b.press("r y")
	b.write("a trial")
	b.press("enter")
	for range 200 {
		if now, ok := b.m.now(); !ok {
			break
		} else {
			b.until(now.Key)
		}
	}
	b.shows("as weighed", "lye-heavy")
	if n := kinds(b)[logbook.Noted]; n != 1 {
		t.Errorf("%d notes are kept", n)
	}
}

// In plain mode the same is said in lines, and the line that would mix it is asked about.
func TestTooMuchLyeIsSaidInPlainMode(t *testing.T) {
	v := voiced(t)
	for i, thing := range v.m.state.Things(v.m.sheet(), v.m.left[0].Step) {
		if thing.Event.Batch == pour.Base && thing.Event.What == pour.NameNaOH {
			v.hears(fmt.Sprintf("w %d 400", i+1), "planned", "base superfat as weighed -", "lye-heavy")
		}
	}
	v.hears("", "STOP: DO NOT MIX: base superfat as weighed")
	v.m.chooseStep("base lye in")
	v.hears("done", "DO NOT MIX", "say why")
	v.hears("y", "Why the base goes on lye-heavy")
	v.hears("it is a test", "kept: it is a test")
	v.hears("done", "done: lye into oil")
}
