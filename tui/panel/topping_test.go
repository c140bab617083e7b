package panel

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

const topped = "../../testdata/plans/topped.toml"

// labels are the labels of a form's rows.
func labels(g grid.Grid) []string {
	var out []string
	for _, r := range g.Rows {
		if len(r.Cells) > formLabel {
			out = append(out, r.Cells[formLabel].Text)
		}
	}
	return out
}

// A shape asks for the measures it is made of and for no others: what T2 to T7 of the worked examples of icing are worked out from.
func TestAShapeShowsTheFieldsItUsesAndNoOthers(t *testing.T) {
	own := []string{"width of one", "height of one", "profile", "coil begins at", "coil ends at", "coils upon each other", "overlap", "shell's head", "shell's tail", "rope winds by", "one winding", "ruffle swings by", "one wave", "flat layer", "relief", "relief is"}
	for shape, want := range map[string][]string{
		pour.PipeFree: {}, pour.PipeDollop: {"width of one", "height of one", "profile"}, pour.PipeRosette: {"coil begins at", "coil ends at", "coils upon each other", "overlap"},
		pour.PipeShells: {"width of one", "height of one", "overlap", "shell's head", "shell's tail"}, pour.PipeRope: {"rope winds by", "one winding"},
		pour.PipeRuffle: {"ruffle swings by", "one wave"}, pour.PipeSpooned: {"flat layer", "relief", "relief is"},
	} {
		f := worked(t, meadow, func(p *pour.Plan) {
			next, err := pour.SetWord("piping.shape", shape)(*p)
			if err != nil {
				t.Fatal(err)
			}
			*p = next
		})
		shown := labels(f.pipingGrid())
		for _, l := range own {
			if got := slices.Contains(shown, l); got != slices.Contains(want, l) {
				t.Errorf("%s: %q is shown: %v", shape, l, got)
			}
		}
		if bags := slices.Contains(shown, "a bag holds"); bags != (shape != pour.PipeSpooned && shape != pour.PipeFree) {
			t.Errorf("%s: bags are asked for: %v", shape, bags)
		}
		if lacks := f.Sheet.Piping.Lacks; lacks != "" {
			t.Errorf("%s begins with something missing: %s", shape, lacks)
		}
		if shape != pour.PipeFree && !(f.Sheet.Piping.NetG.V > 0) {
			t.Errorf("%s begins as nothing", shape)
		}
	}
}

func TestATipShowsTheMeasuresOfItsOpening(t *testing.T) {
	for tip, want := range map[string]string{pour.TipRound: "tip opening", pour.TipStar: "tip opening, points of the star, between the points", pour.TipSlot: "tip opening, slot, wide end, slot, narrow end"} {
		f := worked(t, topped, func(p *pour.Plan) { p.Piping.Tip = tip })
		all := strings.Join(labels(f.pipingGrid()), ", ")
		for _, l := range []string{"tip opening", "points of the star", "between the points", "slot, wide end", "slot, narrow end"} {
			if got := strings.Contains(all, l); got != strings.Contains(want, l) {
				t.Errorf("%s: %q is shown: %v", tip, l, got)
			}
		}
	}
}

func TestToppingsAreAddedBlendedAndTakenAwayWithKeys(t *testing.T) {
	f := worked(t, topped, nil)
	add := press(t, f, "toppings", keys.Add, 0, -1, toppingName)
	if add.Pick == nil || add.Pick.List != listToppings {
		t.Fatalf("adding opens %+v", add.Pick)
	}
	next := made(t, f, add.Picked("rose-petals").Edit)
	if n := len(next.Top.Toppings); n != 3 || next.Top.Toppings[2].Parts[0].Material != "rose-petals" {
		t.Errorf("%d toppings after adding", n)
	}
	mix := press(t, f, "toppings", keys.Add, 0, -1, toppingOf)
	blend := made(t, f, mix.Picked("mineral-glitter").Edit).Top.Toppings[0].Parts
	if len(blend) != 3 || blend[0].Percent+blend[1].Percent+blend[2].Percent != 100 {
		t.Errorf("mixed in: %v", blend)
	}
	if out := made(t, f, press(t, f, "toppings", keys.Remove, 0, 1, toppingOf).Edit).Top.Toppings; len(out) != 2 || len(out[0].Parts) != 1 || out[0].Parts[0].Percent != 100 {
		t.Errorf("a material taken out leaves %v", out)
	}
	if out := made(t, f, press(t, f, "toppings", keys.Remove, 0, -1, toppingName).Edit).Top.Toppings; len(out) != 1 || out[0].GPerBar != 0.05 {
		t.Errorf("a topping taken away leaves %v", out)
	}
	if later := made(t, f, press(t, f, "toppings", keys.Later, 0, -1, toppingName).Edit).Top.Toppings; later[1].Name != "meadow sprinkles" {
		t.Errorf("a topping moved later leaves %v", later)
	}
}

// Whatever the shelf has can be put on with two keys, and the plan is legal.
func TestEveryToppingOfTheShelfBeginsWithItsUsualAmount(t *testing.T) {
	f := worked(t, meadow, nil)
	for _, x := range f.Shelf.Toppings {
		plan := made(t, f, pour.AddTopping(freshTopping(x)))
		top := plan.Top.Toppings[0]
		if top.GPerBar <= 0 && top.CoveragePercent <= 0 {
			t.Errorf("%s begins with nothing", x.Name)
		}
		if use := x.Use; use.CoverHighPercent > 0 && (top.CoveragePercent < use.CoverLowPercent || top.CoveragePercent > use.CoverHighPercent) {
			t.Errorf("%s covers %v %%, usual %v to %v", x.Name, top.CoveragePercent, use.CoverLowPercent, use.CoverHighPercent)
		}
		sheet := pour.Weigh(plan, f.Shelf)
		if g := sheet.Toppings[0].PerBarG; !(g.Known && g.V > 0) {
			t.Errorf("%s comes to %v on a bar", x.Name, g)
		}
	}
}

func TestANewEmbedIsLegalAndStandsClear(t *testing.T) {
	for _, plan := range []string{meadow, topped, "../../presets/plans/autumn-slab.toml", "../../presets/plans/first-snow.toml"} {
		f := worked(t, plan, nil)
		n := len(f.Plan.Top.Embeds)
		next := made(t, f, press(t, f, "embeds", keys.Add, -1, -1, 0).Edit)
		next.Top.Embeds[n].Name = "another"
		sheet := pour.Weigh(next, f.Shelf)
		k := sheet.Embeds[n]
		if len(k.Pieces) == 0 {
			t.Errorf("%s: a new embed has no pieces", plan)
		}
		for _, w := range sheet.Warnings {
			if strings.HasPrefix(w.Code, "embed") && w.Severity != pour.Note && w.Where == "embed another" {
				t.Errorf("%s: of a new embed it is said: %s", plan, w.Text)
			}
		}
		for _, p := range k.Pieces {
			if p.Verdict != pour.VerdictClear {
				t.Errorf("%s: a new embed is %s in bar %d", plan, p.Verdict, p.Bar)
			}
		}
	}
}

// The list and the table of details leave no key of an embed without a place, and show none that does not count.
func TestEveryKeyOfAnEmbedHasItsPlace(t *testing.T) {
	f := worked(t, topped, nil)
	details := labels(panelOf(t, "pieces").Grid(f))
	e := &pour.Embed{}
	for _, field := range e.Fields() {
		never := field.Key == "corners" // no embed of this plan has an outline of its own
		if got := slices.Contains(details, field.Label); got == (listed(field.Key) || never) {
			t.Errorf("%s stands among the details: %v", field.Key, got)
		}
	}
	row := func(label string) grid.Row {
		for _, r := range panelOf(t, "pieces").Grid(f).Rows {
			if r.Cells[0].Text == label {
				return r
			}
		}
		return grid.Row{Cells: make([]grid.Cell, 3)}
	}
	if r := row("centres"); r.Cells[1].Kind != grid.Blank || r.Cells[2].Kind != grid.Numbers {
		t.Errorf("centres are asked of the gentian: %v, of the butterfly: %v", r.Cells[1].Kind, r.Cells[2].Kind)
	}
}

func TestAListOfNumbersIsTypedOnOneLine(t *testing.T) {
	f := worked(t, topped, nil)
	wires := value(t, f.cutPlanGrid(), "own wires")
	if wires.Kind != grid.Numbers || wires.Text != "10: 0…230" || !strings.HasPrefix(wires.Plain, "0 25.5 51 ") {
		t.Errorf("the wires are shown as %q, typed as %q", wires.Text, wires.Plain)
	}
	if got := typed(t, f, wires, "0 24,8; 50").Cut.WiresMM; !slices.Equal(got, []float64{0, 24.8, 50}) {
		t.Errorf("typed, the wires are %v", got)
	}
	for text, want := range map[string]string{"0 25 x": "number 3", "0,25,50": "blanks between", "0 9000": ""} {
		e, err := wires.Set(text)
		if err == nil {
			_, err = pour.Apply(f.Plan, f.Shelf, e)
		}
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
	f.Show.Length = pour.LengthInch
	if got := typed(t, f, value(t, f.cutPlanGrid(), "own wires"), "0 1 2").Cut.WiresMM; !slices.Equal(got, []float64{0, 25.4, 50.8}) {
		t.Errorf("in inches the wires are %v", got)
	}
}
