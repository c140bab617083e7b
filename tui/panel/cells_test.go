package panel

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/screen"
)

// panelOf is a panel by its name.
func panelOf(t *testing.T, id layout.ID) *Panel {
	t.Helper()
	var found *Panel
	everyPanel(func(_ Station, p *Panel) {
		if p.ID == id {
			found = p
		}
	})
	if found == nil {
		t.Fatalf("there is no panel %q", id)
	}
	return found
}

// value is the cell beside a label of a form.
func value(t *testing.T, g grid.Grid, label string) grid.Cell {
	t.Helper()
	for _, r := range g.Rows {
		if len(r.Cells) > formValue && r.Cells[formLabel].Text == label {
			return r.Cells[formValue]
		}
	}
	t.Fatalf("no row is labelled %q", label)
	return grid.Cell{}
}

// made is the plan after an edit.
func made(t *testing.T, f *Facts, e pour.Edit) pour.Plan {
	t.Helper()
	plan, err := pour.Apply(f.Plan, f.Shelf, e)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

// typed is the plan after a text was typed into a cell.
func typed(t *testing.T, f *Facts, c grid.Cell, text string) pour.Plan {
	t.Helper()
	e, err := c.Set(text)
	if err != nil {
		t.Fatal(err)
	}
	return made(t, f, e)
}

// nudged is the plan after a cell was nudged.
func nudged(t *testing.T, f *Facts, c grid.Cell, steps float64) pour.Plan {
	t.Helper()
	e, err := c.Nudge(steps)
	if err != nil {
		t.Fatal(err)
	}
	return made(t, f, e)
}

// lines is a panel that draws itself, without styles and without blanks at the ends.
func lines(f *Facts, p *Panel, w, h int) []string {
	s := screen.New(w, h)
	p.Draw(f, s.Area(), grid.Cursor{}, false)
	out := strings.Split(ansi.Strip(s.String()), "\n")
	for i := range out {
		out[i] = strings.TrimRight(out[i], " ")
	}
	return out
}

// press is what a key comes to on a row's item.
func press(t *testing.T, f *Facts, id layout.ID, key keys.ID, item, sub, col int) Do {
	t.Helper()
	do, ok := panelOf(t, id).Press(key, f, On{Row: grid.Row{Item: item, Sub: sub}, Col: col})
	if !ok {
		t.Fatalf("%s: nothing comes of %q", id, key)
	}
	return do
}

func TestNumbersAreTypedAndNudgedInTheMakersUnitsAndKeptInThePlans(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) { p.Show.Temperature, p.Show.Length = pour.DegreesF, pour.LengthInch })
	oils := value(t, panelOf(t, "lye").Grid(f), "oils at")
	if oils.Text != "96.8" { // 36 × 9/5 + 32
		t.Errorf("36 °C are shown as %q °F", oils.Text)
	}
	if got := typed(t, f, oils, "104").Base.OilsC; got != 40 { // (104 − 32) × 5/9
		t.Errorf("104 °F are kept as %v °C", got)
	}
	if got := nudged(t, f, oils, 2).Base.OilsC; got != 38 { // a step is one degree Celsius
		t.Errorf("two steps up from 36 °C give %v", got)
	}
	width := value(t, panelOf(t, "vessel").Grid(f), "width inside")
	if got := typed(t, f, width, "3,5").Mould.WidthMM; math.Abs(got-88.9) > 1e-9 { // 3.5 × 25.4
		t.Errorf("3,5 in are kept as %v mm", got)
	}
	if _, err := width.Set("three"); err == nil {
		t.Error("a word was read as a number")
	}
}

func TestWordsGoRoundTheirValuesBothWays(t *testing.T) {
	f := worked(t, meadow, nil)
	keep := value(t, panelOf(t, "bed").Grid(f), "put to bed")
	seen := map[string]bool{}
	for steps := range 6 {
		there := nudged(t, f, keep, float64(steps)).Bed.Keep
		if back := nudged(t, f, keep, float64(steps-3)).Bed.Keep; back != there {
			t.Errorf("%d steps on stands %q, three steps before %q", steps, there, back)
		}
		seen[there] = true
	}
	if len(seen) != 3 || !seen[pour.BedBare] || !seen[pour.BedInsulate] || !seen[pour.BedChill] {
		t.Errorf("the words are %v", seen)
	}
	if ten := nudged(t, f, keep, -11).Bed.Keep; ten != nudged(t, f, keep, 1).Bed.Keep { // -11 + 4 × 3
		t.Errorf("eleven steps back stands %q", ten)
	}
	if got := made(t, f, keep.Flip).Bed.Keep; got != nudged(t, f, keep, 1).Bed.Keep {
		t.Errorf("switching gives %q, one step %q", got, nudged(t, f, keep, 1).Bed.Keep)
	}
	if !strings.Contains(keep.Hint, ", ") || !strings.Contains(keep.Hint, " or ") {
		t.Errorf("the hint lists %q", keep.Hint)
	}
}

func TestTheCarrierOfAColourantGoesRoundOilWaterGlycerinAndNone(t *testing.T) {
	f := worked(t, meadow, nil)
	carrier := panelOf(t, "jugs").Grid(f).Rows[1].Cells[jugCarrier]
	if want := f.Show.DoseApart(f.Sheet.Base.Jugs[1].Colourants[0].CarrierG).Number; !strings.HasPrefix(carrier.Text, want+" ") {
		t.Errorf("the carrier is shown as %q, want %s g first", carrier.Text, want)
	}
	got := map[string]bool{}
	for range 4 {
		plan := made(t, f, panelOf(t, "jugs").Grid(f).Rows[1].Cells[jugCarrier].Flip)
		got[plan.Base.Jugs[1].Colourants[0].Carrier] = true
		sheet := pour.Weigh(plan, f.Shelf)
		f.Plan, f.Sheet = plan, &sheet
	}
	for _, want := range []string{pour.CarryOil, pour.CarryWater, pour.CarryGlycerin, pour.CarryNone} {
		if !got[want] {
			t.Errorf("going round the carriers passes %v, not %q", got, want)
		}
	}
}

func TestTheMomentOfThePourIsTypedAsADateOrEmptied(t *testing.T) {
	f := worked(t, meadow, nil)
	at := value(t, panelOf(t, "about").Grid(f), "poured at")
	plan := typed(t, f, at, " 2026-12-05 10:30 ")
	if got := plan.PourAt.Format("2006-01-02 15:04"); got != "2026-12-05 10:30" {
		t.Errorf("kept as %s", got)
	}
	f.Plan = plan
	at = value(t, panelOf(t, "about").Grid(f), "poured at")
	if at.Text != "2026-12-05 10:30" || at.Plain != at.Text {
		t.Errorf("shown as %q, typing starts from %q", at.Text, at.Plain)
	}
	if !typed(t, f, at, " ").PourAt.IsZero() {
		t.Error("nothing typed leaves a moment")
	}
	if _, err := at.Set("tomorrow"); err == nil || !strings.Contains(err.Error(), "2026-12-05 10:00") {
		t.Errorf("a date that is none gives %v", err)
	}
}

func TestWhatIsAddedStartsWhereItIsUsual(t *testing.T) {
	f := worked(t, meadow, nil)
	for _, c := range []struct {
		panel layout.ID
		list  string
		id    string
		got   func(p pour.Plan) float64
		want  float64
	}{
		{"oils", listOils, "avocado", func(p pour.Plan) float64 { return p.Base.Oils[6].Percent }, 0},
		{"scents", listScents, "meadow-hay", func(p pour.Plan) float64 { return p.Base.Scents[2].PercentOfOils }, 2},
		{"extras of the icing", listExtras, "sodium-lactate", func(p pour.Plan) float64 { return p.Icing.Extras[0].PercentOfOils }, usual(f, "sodium-lactate")},
	} {
		do := press(t, f, c.panel, keys.Add, -1, -1, 0)
		if do.Pick == nil || do.Pick.List != c.list {
			t.Fatalf("%s: adding opens %+v", c.panel, do.Pick)
		}
		if got := c.got(made(t, f, do.Picked(c.id).Edit)); got != c.want {
			t.Errorf("%s: %s starts at %v %%, want %v", c.panel, c.id, got, c.want)
		}
	}
	if got := made(t, f, press(t, f, "bursts", keys.Add, -1, -1, 0).Edit).Base.Blend; len(got) != 2 || got[1] != (pour.Burst{AtMin: 1, S: 10}) {
		t.Errorf("a new burst makes %v, want one of 10 s a minute after the last", got)
	}
	f.Plan.Base.Blend = nil
	if got := made(t, f, press(t, f, "bursts", keys.Add, -1, -1, 0).Edit).Base.Blend; len(got) != 1 || got[0].AtMin != 0 {
		t.Errorf("the first burst is %v", got)
	}
	if got := middleDose(0, 0); got != 1 {
		t.Errorf("an extra without a usual dose starts at %v %%", got)
	}
}

// usual is the middle of an extra's usual dose.
func usual(f *Facts, id string) float64 {
	x, _ := f.Shelf.Extra(id)
	return (x.DoseLowPercent + x.DoseHighPercent) / 2
}

func TestRemovingTakesWhatTheCursorIsOn(t *testing.T) {
	f := worked(t, meadow, nil)
	for _, c := range []struct {
		what string
		do   Do
		gone func(p pour.Plan) bool
	}{
		{"a colourant", press(t, f, "jugs", keys.Remove, 1, 0, jugDose), func(p pour.Plan) bool { return len(p.Base.Jugs) == 5 && len(p.Base.Jugs[1].Colourants) == 0 }},
		{"the jug, from its name", press(t, f, "jugs", keys.Remove, 1, 0, jugName), func(p pour.Plan) bool { return len(p.Base.Jugs) == 4 && p.Base.Jugs[1].Name == "poppy" }},
		{"the jug, from behind its colourant", press(t, f, "jugs", keys.Remove, 1, 0, jugScent), func(p pour.Plan) bool { return len(p.Base.Jugs) == 4 }},
		{"an oil", press(t, f, "oils", keys.Remove, 1, -1, 0), func(p pour.Plan) bool { return len(p.Base.Oils) == 5 && p.Base.Oils[1].Oil == "sunflower-ho" }},
		{"an extra", press(t, f, "extras", keys.Remove, 0, -1, 0), func(p pour.Plan) bool { return len(p.Base.Extras) == 0 }},
		{"a scent", press(t, f, "scents", keys.Remove, 0, -1, 0), func(p pour.Plan) bool { return len(p.Base.Scents) == 1 && p.Base.Scents[0].Scent == "alp-rose" }},
		{"a burst of the icing", press(t, f, "bursts of the icing", keys.Remove, 0, -1, 0), func(p pour.Plan) bool { return len(p.Icing.Blend) == 1 && p.Icing.Blend[0].AtMin == 4 }},
	} {
		if plan := made(t, f, c.do.Edit); !c.gone(plan) {
			t.Errorf("%s is not what %q took away", c.what, c.do.Name)
		}
	}
	if len(f.Plan.Icing.Blend) != 2 || len(f.Plan.Base.Extras) != 1 {
		t.Error("making an edit changed the plan it was made from")
	}
}

func TestAScentGoesInAndOutOfAJugOnItsCellAlone(t *testing.T) {
	f := worked(t, meadow, nil)
	p := panelOf(t, "scents")
	rows := p.Grid(f).Rows
	in, out := rows[0].Cells[scentJugs], rows[0].Cells[scentJugs+1] // pot and gentian
	if in.Text != "●" || out.Text != "·" {
		t.Fatalf("the hay is in the pot: %q, in gentian: %q", in.Text, out.Text)
	}
	do, _ := p.Press(keys.Hold, f, On{Cell: out, Row: rows[0], Col: scentJugs + 1})
	if got := made(t, f, do.Edit).Base.Scents[0].Into; len(got) != 3 {
		t.Errorf("putting it into gentian gives %v", got)
	}
	do, _ = p.Press(keys.Hold, f, On{Cell: in, Row: rows[0], Col: scentJugs})
	if got := made(t, f, do.Edit).Base.Scents[0].Into; len(got) != 1 || got[0] != "fern" {
		t.Errorf("taking it out of the pot leaves %v", got)
	}
	if do, _ = p.Press(keys.Hold, f, On{Cell: rows[0].Cells[scentLoad], Row: rows[0], Col: scentLoad}); !strings.Contains(do.Why, "jug's column") {
		t.Errorf("on the load the key gives %+v", do)
	}
}

func TestEveryThingOnTheShelfCanBePickedAndSaysWhereItsFiguresComeFrom(t *testing.T) {
	f := worked(t, meadow, nil)
	for list, want := range map[string]int{
		listOils: len(f.Shelf.Oils), listColourants: len(f.Shelf.Colourants), listExtras: len(f.Shelf.Extras) + len(f.Shelf.Colourants), listScents: len(f.Shelf.Scents),
		listMoulds: len(f.Shelf.Moulds), listTechniques: len(f.Shelf.Techniques),
	} {
		items := f.Items(list)
		if len(items) != want {
			t.Errorf("the list of %s has %d entries, the shelf %d", list, len(items), want)
		}
		for _, it := range items {
			all := strings.Join(it.Detail, "\n")
			if it.ID == "" || it.Name == "" || it.Aside == "" || !strings.Contains(all, it.Name) || !strings.Contains(all, "source: ") {
				t.Errorf("%s: %q says %q, %q", list, it.ID, it.Aside, all)
			}
		}
	}
}

// A maker's own moulds stand first in the list and are said to be hers, and then the cell no longer says how to add one.
func TestOwnMouldsStandFirst(t *testing.T) {
	f := worked(t, meadow, nil)
	if f.mouldCell().Hint == "" || !strings.Contains(f.mouldCell().Hint, "add your own there") {
		t.Errorf("with none of her own the hint is %q", f.mouldCell().Hint)
	}
	own := f.Shelf.Moulds[0]
	own.ID, own.Name, own.Own = "birch-box", "birch box", true
	f.Shelf.Moulds = append(slices.Clone(f.Shelf.Moulds), own)
	if it := f.Items(listMoulds)[0]; it.ID != "birch-box" || it.Aside != "yours, loaf" {
		t.Errorf("first stands %q, %q", it.ID, it.Aside)
	}
	if strings.Contains(f.mouldCell().Hint, "add your own") {
		t.Errorf("with one of her own the hint is %q", f.mouldCell().Hint)
	}
	if e, err := pour.Apply(f.Plan, f.Shelf, f.mouldCell().Pick("birch-box")); err != nil || e.Mould.LengthMM != own.Mould.LengthMM {
		t.Errorf("taken: %v, %v", e.Mould, err)
	}
}

// A jug that is called after its colourant is called after the next one; a name of the maker's own stays, and so does one that would be another jug's.
func TestAJugCalledAfterItsColourIsCalledAfterTheNext(t *testing.T) {
	for _, c := range []struct{ name, other, want string }{{"gold", "x", "copper"}, {"mine", "x", "mine"}, {"gold", "copper", "gold"}} {
		f := worked(t, meadow, func(p *pour.Plan) {
			for i, name := range []string{c.name, c.other} {
				q, err := pour.RenameJug(pour.Base, i+1, name)(*p)
				if err != nil {
					t.Fatal(err)
				}
				*p = q
			}
			p.Base.Jugs[1].Colourants = []pour.Dose{{Colourant: "mica-gold", DosePercent: 0.5}}
		})
		p := made(t, f, f.dyeCell(pour.Base, 1, 0, c.name).Pick("mica-copper"))
		if got := p.Base.Jugs[1]; got.Name != c.want || got.Colourants[0].Colourant != "mica-copper" {
			t.Errorf("%q is %q of %q then", c.name, got.Name, got.Colourants[0].Colourant)
		}
		if p.Base.Jugs[0].Name == p.Base.Jugs[1].Name {
			t.Error("two jugs have one name")
		}
	}
}
