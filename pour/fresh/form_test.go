package fresh

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

// fill answers a form's questions; "" is the first choice, or what stands on the line.
func fill(t *testing.T, s pour.Shelf, answers ...string) (Wishes, []string) {
	t.Helper()
	f := NewForm(s, pour.Show{})
	var asked []string
	for i := 0; ; i++ {
		q, ok := f.Question()
		if !ok {
			return f.Wishes, asked
		}
		asked = append(asked, q.Ask)
		answer := q.Typed
		if len(q.Choices) > 0 {
			answer = q.Choices[0].ID
		}
		if i < len(answers) && answers[i] != "" {
			answer = answers[i]
		}
		next, err := f.Answer(answer)
		if err != nil {
			t.Fatalf("%s %q: %v", q.Ask, answer, err)
		}
		f = next
	}
}

func TestEnterAllTheWayGivesAWholePlan(t *testing.T) {
	s := shelf(t)
	w, asked := fill(t, s)
	if len(asked) != 6 {
		t.Errorf("it asks %q", asked)
	}
	if w.Mould != everydayMould || w.Technique != everydayTechnique || !slices.Equal(w.Colours, everydayColours()) || w.Icing || len(w.Scents) > 0 {
		t.Errorf("it wishes for %+v", w)
	}
	if _, err := Plan(w, s, pour.Hand{}); err != nil {
		t.Error(err)
	}
}

// A maker who has moulds of her own is offered them first, and Enter takes the first of them.
func TestOwnMouldsAreOfferedFirst(t *testing.T) {
	s := shelf(t)
	own := s.Moulds[len(s.Moulds)-1]
	own.ID, own.Name, own.Own = "birch-box", "birch box", true
	s.Moulds = append(slices.Clone(s.Moulds), own)
	if w, _ := fill(t, s); w.Mould != "birch-box" {
		t.Errorf("Enter takes %q", w.Mould)
	}
}

func TestEveryWishIsTakenAsItIsAnswered(t *testing.T) {
	s := shelf(t)
	w, _ := fill(t, s, "bars", "12", "comb", "mica-rose", "mica-gold", "done", "alp-rose", "meadow-hay", "done", "yes", "Hay day")
	if w.Bars != 12 || w.Mould != "" || w.Technique != "comb" || !slices.Equal(w.Colours, []string{"mica-rose", "mica-gold"}) ||
		!slices.Equal(w.Scents, []string{"alp-rose", "meadow-hay"}) || !w.Icing || w.Name != "Hay day" {
		t.Errorf("it wishes for %+v", w)
	}
	if w, _ := fill(t, s, "slab-12", "", "plain", "", "no"); w.Mould != "slab-12" || len(w.Colours) > 0 {
		t.Errorf("it wishes for %+v", w)
	}
}

func TestWhatIsNoAnswerIsRefusedAndChangesNothing(t *testing.T) {
	s := shelf(t)
	f := NewForm(s, pour.Show{})
	for _, bad := range []string{"", "shoe", "done"} {
		if next, err := f.Answer(bad); err == nil || next.step != askMould {
			t.Errorf("%q is an answer", bad)
		}
	}
	f, err := f.Answer("bars")
	if err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"", "0", "-3", "81", "2.5", "many", "99999999999999999999"} {
		if _, err := f.Answer(bad); err == nil || !strings.Contains(err.Error(), "1 to 80") {
			t.Errorf("%q bars: %v", bad, err)
		}
	}
}

// Going back a question finds the wishes as they were: a form is a value.
func TestAFormThatWasAnsweredIsNotChangedByIt(t *testing.T) {
	s := shelf(t)
	f, _ := NewForm(s, pour.Show{}).Answer("loaf-10")
	f, _ = f.Answer("drop")
	one, _ := f.Answer("mica-rose")
	two, _ := one.Answer("mica-gold")
	other, _ := one.Answer("mica-blue")
	if !slices.Equal(two.Wishes.Colours, []string{"mica-rose", "mica-gold"}) || !slices.Equal(other.Wishes.Colours, []string{"mica-rose", "mica-blue"}) || len(f.Wishes.Colours) > 0 {
		t.Errorf("%v, %v, %v", f.Wishes.Colours, two.Wishes.Colours, other.Wishes.Colours)
	}
}

func TestNoMoreColoursAndScentsThanHandsManage(t *testing.T) {
	s := shelf(t)
	f, _ := NewForm(s, pour.Show{}).Answer("loaf-10")
	f, _ = f.Answer("drop")
	for range mostColours {
		f, _ = f.Answer("mica-rose")
	}
	if q, _ := f.Question(); len(q.Choices) != 1 {
		t.Errorf("after %d colours there are %d choices", mostColours, len(q.Choices))
	}
	f, _ = f.Answer("done")
	for range mostScents {
		q, _ := f.Question()
		id := q.Choices[1].ID
		f, _ = f.Answer(id)
		if q, _ := f.Question(); slices.ContainsFunc(q.Choices, func(c Choice) bool { return c.ID == id }) {
			t.Errorf("%s can be taken twice", id)
		}
	}
	if q, _ := f.Question(); len(q.Choices) != 1 {
		t.Errorf("after %d scents there are %d choices", mostScents, len(q.Choices))
	}
}

func TestANewPlanTakesTheUnitsOfTheOneBefore(t *testing.T) {
	s := shelf(t)
	f := NewForm(s, pour.Avoirdupois())
	for _, id := range []string{"loaf-10", "hanger", choicePlain, choiceDone} {
		f, _ = f.Answer(id)
	}
	if q, _ := f.Question(); !strings.Contains(strings.Join(q.Choices[1].Detail, " "), "1.058 oz on every bar") {
		t.Errorf("an icing in ounces: %q", q.Choices[1].Detail)
	}
	f, _ = f.Answer(choiceNo)
	if q, _ := f.Question(); !strings.Contains(q.Note, "oz, °F and in") {
		t.Errorf("the last question does not say the units: %q", q.Note)
	}
	if p, err := f.Wishes.plan(s); err != nil || p.Show != pour.Avoirdupois() {
		t.Errorf("the plan shows %+v: %v", p.Show, err)
	}
	if p, err := (Wishes{}).plan(s); err != nil || p.Show != pour.Metric() {
		t.Errorf("a plan of nothing shows %+v: %v", p.Show, err)
	}
}
