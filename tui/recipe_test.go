package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/tui/panel"
)

const pasted = "My winter bar\nOlive Oil\t35 %\ncoconut oil      25%\n- shea buttr 15\nrapeseed oil, 12,5 %\ncastor 5 %\nwater 330 g\nNaOH 137 g\nsuperfat 5 %\nwibble 2 %\n"

func paste(m *model, text string) { m.Update(tea.PasteMsg{Content: text}) }

// Several lines pasted at the bench are a recipe: what is understood of it and what not is shown, line by line; what may be meant is one key away,
// and Enter takes it as one edit, which one u takes back.
func TestAPastedRecipeIsShownAndTaken(t *testing.T) {
	m := opened(t, 80, 24)
	before := m.session.Plan().Clone()
	paste(m, pasted)
	shown := ansi.Strip(m.View().Content)
	for _, want := range []string{
		"A recipe for the base", "→ olive oil 35 %", "→ coconut oil 25 %", "× did you mean shea butter", "→ canola oil 12.5 %", "· worked out here, not taken", "· set in the Lye panel", "× no oil on the shelf",
		"4 oils: 77.5 % so far, 22.5 % to go", "2 lines not understood and not taken: mend, or Tab takes what may be",
	} {
		if !strings.Contains(shown, want) {
			t.Errorf("%q does not stand on\n%s", want, shown)
		}
	}
	if strings.ContainsAny(shown, "{}") {
		t.Errorf("a brace is left on\n%s", shown)
	}
	drive(m, "tab")
	if shown = ansi.Strip(m.View().Content); !strings.Contains(shown, "→ shea butter 15 %") || !strings.Contains(shown, "1 line not understood") {
		t.Errorf("what was meant is not taken over:\n%s", shown)
	}
	drive(m, "enter")
	if shown = ansi.Strip(m.View().Content); !strings.Contains(shown, "Take it without 1 line?") || !strings.Contains(shown, "Not understood: “") {
		t.Errorf("a line is lost without a question:\n%s", shown)
	}
	drive(m, "b")
	if shown = ansi.Strip(m.View().Content); !strings.Contains(shown, "→ shea butter 15 %") {
		t.Errorf("the recipe is not there to be mended:\n%s", shown)
	}
	drive(m, "enter t")
	want := []pour.OilPart{{Oil: "olive", Percent: 35, Held: true}, {Oil: "coconut", Percent: 25, Held: true}, {Oil: "shea", Percent: 15, Held: true}, {Oil: "canola", Percent: 12.5, Held: true}, {Oil: "castor", Percent: 5, Held: true}}
	got := base(m).Oils
	for i := range want {
		if len(got) != len(want) || got[i] != want[i] {
			t.Fatalf("taken: %+v", got)
		}
	}
	if m.station != panel.Batch || m.at().ID != "oils" || !strings.Contains(m.status.Text(), "92.5 % so far, 7.5 % to go; % makes it 100 %") {
		t.Errorf("at %s: %q", m.at().ID, m.status.Text())
	}
	if !strings.Contains(m.status.Text(), "left out: “") {
		t.Errorf("what was left out is not named: %q", m.status.Text())
	}
	drive(m, "%")
	if !strings.Contains(m.status.Text(), "without “") || !strings.Contains(m.status.Text(), "100 % now") {
		t.Errorf("made whole it says %q", m.status.Text())
	}
	drive(m, "u u")
	if after := m.session.Plan(); len(after.Base.Oils) != len(before.Base.Oils) || after.Base.Oils[0] != before.Base.Oils[0] {
		t.Errorf("taken back: %+v", after.Base.Oils)
	}
}

// The same page is typed on: Enter goes on to the next line, and on an empty one takes what stands there. Esc takes nothing, and nothing to take is
// said on the page.
func TestARecipeIsTypedOnItsPage(t *testing.T) {
	m := opened(t, 120, 36)
	m.station = panel.Icing
	m.settle()
	drive(m, "V")
	if shown := ansi.Strip(m.View().Content); !strings.Contains(shown, "A recipe for the icing") || !strings.Contains(shown, "350 g olive oil") {
		t.Errorf("an empty page shows\n%s", shown)
	}
	drive(m, "enter")
	if shown := ansi.Strip(m.View().Content); !strings.Contains(shown, "no line of it is an oil") {
		t.Errorf("nothing was taken without a word:\n%s", shown)
	}
	typeText(m, "olive 600 g")
	drive(m, "enter")
	typeText(m, "cocnut")
	drive(m, "up down backspace backspace backspace backspace")
	typeText(m, "conut 400 g")
	drive(m, "enter")
	if shown := ansi.Strip(m.View().Content); !strings.Contains(shown, "olive oil 600.0 g = 60.00 %") || !strings.Contains(shown, "1000.0 g in all, taken as parts") {
		t.Errorf("typed, it shows\n%s", shown)
	}
	drive(m, "enter")
	if got := m.session.Plan().Icing.Oils; len(got) != 2 || got[1] != (pour.OilPart{Oil: "coconut", Percent: 40, Held: true}) || m.at().ID != "oils of the icing" {
		t.Errorf("taken: %+v at %s", got, m.at().ID)
	}
	drive(m, "V")
	typeText(m, "lard 100 %")
	drive(m, "esc")
	if got := m.session.Plan().Icing.Oils; len(got) != 2 || m.dialogs.Top() != nil {
		t.Errorf("left, and yet: %+v", got)
	}
}

// What is pasted into a name, or has no oil in it, is no recipe; nor does a page take what a batch cannot hold.
func TestWhatIsNoRecipe(t *testing.T) {
	m := opened(t, 80, 24)
	paste(m, "one line with olive 35 %")
	paste(m, "nothing of this\nis an oil")
	drive(m, "esc")
	if m.dialogs.Top() != nil {
		t.Error("a page stands open")
	}
	drive(m, "r")
	paste(m, "olive 35 %\ncoconut 65 %")
	if m.dialogs.Top() != nil || m.typing == nil {
		t.Error("what was pasted into a name was taken for a recipe")
	}
	drive(m, "esc")
	paste(m, "olive 60 %\nolive 60 %")
	drive(m, "enter")
	if shown := ansi.Strip(m.View().Content); m.dialogs.Top() == nil || !strings.Contains(shown, "× ") || len(base(m).Oils) != 6 {
		t.Errorf("120 %% of one oil: %+v\n%s", base(m).Oils, shown)
	}
	drive(m, "esc")
	paste(m, strings.Repeat("olive 1 %\n", 5000)+"\x1b[31m\u202eshea 5 %\n")
	drive(m, "pgup pgdown up down tab backspace esc")
}

// A batch that goes by its oils takes the mass of a weighed recipe.
func TestAWeighedRecipeSizesABatchThatGoesByItsOils(t *testing.T) {
	m := opened(t, 120, 36)
	_ = m.edit("size", func(p pour.Plan) (pour.Plan, error) { p.Base.Size, p.Base.OilsG = pour.SizeOils, 900; return p, nil })
	paste(m, "olive 300 g\ncoconut 200 g")
	if shown := ansi.Strip(m.View().Content); !strings.Contains(shown, "500.0 g in all") || strings.Contains(shown, "taken as parts") {
		t.Errorf("it shows\n%s", shown)
	}
	drive(m, "enter")
	if got := m.session.Sheet().Base; got.Oils[0].WeighG != 300 || got.Oils[1].WeighG != 200 {
		t.Errorf("to weigh: %+v", got.Oils)
	}
}
