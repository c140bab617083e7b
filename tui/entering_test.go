package tui

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
)

// Whatever is added, the cursor stands on its own figure, and the line at the foot says what to type and which key comes next.
func TestTheCursorStandsOnTheFigureOfWhatIsAdded(t *testing.T) {
	for _, c := range []struct {
		at    panel.Place
		panel layout.ID
		keys  string // what opens the list, or adds at once
		find  string // in the list; empty: there is none
		cell  string // the cell the cursor is on then
		says  string
		typed string
		got   func(p pour.Plan) float64
		want  float64
	}{
		{panel.Batch, "oils", "a", "avocado", "part of avocado oil", "type its percent", "7", func(p pour.Plan) float64 { return p.Base.Oils[6].Percent }, 7},
		{panel.Batch, "oils", "end a", "castor", "part of castor oil", "in the blend already", "9", func(p pour.Plan) float64 { return p.Base.Oils[5].Percent }, 9},
		{panel.Batch, "extras", "a", "sugar", "sugar", "percent of the oils", "2", func(p pour.Plan) float64 { return p.Base.Extras[1].PercentOfOils }, 2},
		{panel.Batch, "bursts", "a", "", "burst", "type its minute", "4", func(p pour.Plan) float64 { return p.Base.Blend[1].AtMin }, 4},
		{panel.Jugs, "jugs", "a", "", "share of jug", "r names it, c colours it", "8", func(p pour.Plan) float64 { return p.Base.Jugs[1].SharePercent }, 8},
		{panel.Jugs, "jugs", "down c", "mica gold", "dose of gold mica", "type its dose, usual", "3", func(p pour.Plan) float64 { return p.Base.Jugs[1].Colourants[1].DosePercent }, 3},
		{panel.Icing, "jugs of the icing", "a right right enter", "mica gold", "dose of gold mica", "type its dose, usual", "3", func(p pour.Plan) float64 { return p.Icing.Jugs[1].Colourants[0].DosePercent }, 3},
		{panel.Scent, "scents", "a", "tarn", "load of tarn mint", "type its load", "1", func(p pour.Plan) float64 { return p.Base.Scents[2].PercentOfOils }, 1},
	} {
		m := opened(t, 120, 36)
		goTo(t, m, c.at, c.panel)
		drive(m, c.keys)
		if c.find != "" {
			typeText(m, c.find)
			drive(m, "enter")
		}
		if cell, _, _ := m.cell(); !strings.HasPrefix(cell.Name, c.cell) {
			t.Errorf("%s %q: the cursor is on %q, want %s", c.panel, c.keys, cell.Name, c.cell)
		}
		if foot := ansi.Strip(m.View().Content); !strings.Contains(foot, c.says) {
			t.Errorf("%s %q: the line says %q, want %q", c.panel, c.keys, m.status.Text(), c.says)
		}
		drive(m, c.typed+" enter")
		if got := c.got(m.session.Plan()); got != c.want {
			t.Errorf("%s %q: typing %s gives %v: %s", c.panel, c.keys, c.typed, got, m.status.Text())
		}
	}
}

// Seven oils are typed one after another into the example's blend; the panel says how far they are, a key spreads what is to go.
func TestARecipeIsTypedAsItIsThought(t *testing.T) {
	m := opened(t, 80, 24)
	goTo(t, m, panel.Batch, "oils")
	drive(m, "3 5 enter 2 5 enter 1 5 enter 5 enter 6 enter 8 enter a")
	typeText(m, "avocado")
	drive(m, "enter 6 enter")
	for i, want := range []float64{35, 25, 15, 5, 6, 8, 6} {
		if got := base(m).Oils[i]; got.Percent != want || !got.Held {
			t.Errorf("oil %d: %+v, want %v held", i+1, got, want)
		}
	}
	if shown := ansi.Strip(m.View().Content); base(m).Unfinished() != "" || !strings.Contains(shown, "held   35.00") {
		t.Errorf("%s\n%s", base(m).Unfinished(), shown)
	}
	drive(m, "0 enter") // another mind about the last
	shown := ansi.Strip(m.View().Content)
	for _, want := range []string{"94.0 % so far, 6.0 % to go            94.00", "■", "% make it 100 %"} {
		if !strings.Contains(shown, want) {
			t.Errorf("%q does not stand on\n%s", want, shown)
		}
	}
	drive(m, "up up space %") // shea butter let go
	if got := base(m).Oils[4]; base(m).Unfinished() != "" || got.Percent != 12 || got.Held || !strings.Contains(m.status.Text(), "100 % now: cocoa butter 6.0 → 12.0 % (not held)") {
		t.Errorf("spread: %+v, %q, %q", base(m).Oils, base(m).Unfinished(), m.status.Text())
	}
	drive(m, "%")
	if !strings.Contains(m.status.Text(), "100 %") {
		t.Errorf("a whole blend: %q", m.status.Text())
	}
	drive(m, "u u")
	if so := base(m).Unfinished(); so != "94.0 % so far, 6.0 % to go" || !base(m).Oils[4].Held {
		t.Errorf("taken back: %q, %+v", so, base(m).Oils)
	}
	drive(m, "%")
	if got := base(m).Oils[0]; base(m).Unfinished() != "" || got.Percent <= 37 || !strings.Contains(m.status.Text(), "all 7 oils scaled in proportion, held ones too") {
		t.Errorf("spread over all: %+v, %q", base(m).Oils, m.status.Text())
	}
}

// Grams typed into a batch are its parts; where nothing can be worked out yet there is a dash, and grams can be typed all the same.
func TestGramsAreTypedToo(t *testing.T) {
	m := opened(t, 120, 36)
	if err := m.edit("size", func(p pour.Plan) (pour.Plan, error) {
		p.Base.Size, p.Base.OilsG = pour.SizeOils, 1000
		return p, nil
	}); err != nil {
		t.Fatal(err)
	}
	goTo(t, m, panel.Batch, "oils")
	drive(m, "right 3 5 0 enter 2 5 0 enter 1 5 0 enter 5 0 enter 6 0 enter 8 0 enter")
	if so := base(m).Unfinished(); so != "94.0 % so far, 6.0 % to go" {
		t.Fatalf("%q: %+v", so, base(m).Oils)
	}
	if cell, _, _ := m.cell(); cell.Text != "–" || cell.Plain != "" || cell.Nudge != nil {
		t.Errorf("the cell of an unknown mass is %+v", cell)
	}
	drive(m, "enter 1 4 0 enter")
	if got := base(m).Oils[5].Percent; got != 14 || base(m).Unfinished() != "" {
		t.Errorf("140 g are %v %%: %s", got, base(m).Unfinished())
	}
	if cell, _, _ := m.cell(); cell.Text != "140.0" {
		t.Errorf("they are shown as %s g", cell.Text)
	}
}

// A figure typed on a name is that oil's figure, and never leads to another oil, however it is typed.
func TestADigitTypedOnANameIsItsFigure(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Batch, "oils")
	drive(m, "down down down down down home")
	if cell, _, _ := m.cell(); cell.Name != "oil castor oil" {
		t.Fatalf("the cursor is on %q", cell.Name)
	}
	drive(m, "1 0")
	if cell, _, _ := m.cell(); cell.Name != "part of castor oil" || !strings.Contains(frame(m), "its figure, to the right") {
		t.Errorf("10 was typed on %q, said %q", cell.Name, m.status.Text())
	}
	drive(m, "enter")
	if o := base(m).Oils[5]; o.Oil != "castor" || o.Percent != 10 {
		t.Errorf("10 on the name of castor made it %+v", o)
	}
	drive(m, "home enter 1 2 enter 3 5 enter")
	if !strings.Contains(m.status.Text(), "no name here has") || m.dialogs.Top() == nil {
		t.Errorf("12 and 35 in the list of oils: %q", m.status.Text())
	}
	drive(m, "esc")
	if o := base(m).Oils[5]; o.Oil != "castor" || o.Percent != 10 {
		t.Errorf("digits in the list of oils made castor %+v", o)
	}
	goTo(t, m, panel.Mould, "vessel")
	drive(m, "home up up up up")
	if cell, _, _ := m.cell(); cell.Kind != grid.Choice {
		t.Fatalf("the first cell of the mould is %q", cell.Name)
	}
	if drive(m, "7"); m.typing != nil || !strings.Contains(m.status.Text(), "picked from a list") {
		t.Errorf("a digit on a choice without a figure says %q", m.status.Text())
	}
}

func TestAnOtherNameIsFoundLikeAName(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Batch, "oils")
	shelf := m.session.Shelf()
	for _, o := range shelf.Oils {
		for _, name := range o.Also {
			drive(m, "a")
			typeText(m, name)
			l, _ := m.dialogs.Top().(*dialog.List)
			if f := l.Tell(); len(f.Lines) == 0 || !strings.HasPrefix(f.Lines[0].Text, o.Name) && !strings.Contains(strings.ToLower(f.Lines[0].Text), strings.ToLower(name)) {
				t.Errorf("%q finds %v first, want %s", name, f.Lines, o.Name)
			}
			drive(m, "esc")
		}
	}
}

// The units shown are no change that is asked about, and a new plan takes them.
func TestANewPlanTakesTheUnitsShown(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "t n")
	if _, asks := m.dialogs.Top().(*dialog.List); !asks {
		t.Fatalf("after turning the units a new plan is asked for with %T", m.dialogs.Top())
	}
	drive(m, "enter enter enter down enter")
	if !strings.Contains(frame(m), "1.058 oz on every bar") && !strings.Contains(frame(m), "An icing piped") {
		drive(m, "down enter")
	}
	for i := 0; m.dialogs.Top() != nil && i < 5; i++ {
		if _, line := m.dialogs.Top().(*dialog.Prompt); line && !strings.Contains(frame(m), "oz, °F and in") {
			t.Errorf("the last question does not name the units:\n%s", frame(m))
		}
		drive(m, "enter")
	}
	if got := m.session.Plan().Show; got != pour.Avoirdupois() {
		t.Errorf("the new plan shows %+v: %s", got, m.status.Text())
	}
	if !strings.Contains(m.status.Text(), "in oz, °F and in") {
		t.Errorf("said %q", m.status.Text())
	}
	if drive(m, "u"); !m.session.Dirty() {
		t.Error("a new plan that is in no file counts as saved")
	}
}

// Units alone can still be saved.
func TestUnitsAloneCanBeSaved(t *testing.T) {
	path := filepath.Join(t.TempDir(), "meadow.toml")
	m := opened(t, 120, 36)
	drive(m, "S enter ctrl+u")
	typeText(m, path)
	drive(m, "enter t")
	if m.session.Dirty() || m.cannot(keys.Save) != "" {
		t.Errorf("turned units: unsaved %v, saving %q", m.session.Dirty(), m.cannot(keys.Save))
	}
	drive(m, "s")
	doc, err := planfile.Load(path, m.session.Shelf())
	if err != nil || doc.Plan.Show.Mass != pour.MassOunce || m.cannot(keys.Save) == "" {
		t.Errorf("the file shows %+v: %v", doc.Plan.Show, err)
	}
}

// A length is typed as it is said, in whatever unit the plan shows.
func TestALengthIsTypedAsItIsSaid(t *testing.T) {
	m := opened(t, 120, 36)
	goTo(t, m, panel.Mould, "vessel")
	drive(m, "down down")
	for _, c := range []struct {
		keys string
		want float64
	}{{"1 0 \"", 254}, {"1 0 space 1 / 2 space i n", 266.7}, {"2 3 c m", 230}, {"2 4 0", 240}} {
		drive(m, c.keys+" enter up")
		if got := m.session.Plan().Mould.LengthMM; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s makes the mould %v mm long, want %v: %s", c.keys, got, c.want, m.status.Text())
		}
	}
	drive(m, "1 0 o z enter")
	if m.typing == nil || !strings.Contains(m.typing.Refused, "no unit") {
		t.Errorf("ounces of length: %s", m.status.Text())
	}
}

// Typing begins over the old name, and a refusal goes with the next key.
func TestANameIsTypedOverTheOldOne(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "down r")
	typeText(m, "dusk")
	if drive(m, "enter"); base(m).Jugs[1].Name != "dusk" {
		t.Errorf("the jug is called %q", base(m).Jugs[1].Name)
	}
	drive(m, "r end")
	typeText(m, " two")
	if drive(m, "enter"); base(m).Jugs[1].Name != "dusk two" {
		t.Errorf("the jug is called %q", base(m).Jugs[1].Name)
	}
	drive(m, "u u n z z z z enter")
	if !strings.Contains(m.status.Text(), "nothing matches") {
		t.Fatalf("said %q", m.status.Text())
	}
	if drive(m, "ctrl+u enter"); strings.Contains(m.status.Text(), "nothing matches") {
		t.Errorf("the next question still says %q", m.status.Text())
	}
}
