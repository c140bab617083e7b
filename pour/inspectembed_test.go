package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/whatif"
)

// embedRows are the causes of the embeds' warnings, over bars of 25 in a loaf of 250 × 80 filled 65 high: a disc of 16 has 4.5 a side.
func embedRows() []codeRow {
	with := func(bends ...func(*pour.Embed)) bend {
		return func(p *pour.Plan, _ *pour.Shelf) {
			e := pour.Embed{Name: "moon", LengthMM: 16, HeightMM: 15, OutMM: 4}
			for _, b := range bends {
				b(&e)
			}
			p.Top.Embeds = []pour.Embed{e}
		}
	}
	at := func(mm ...float64) func(*pour.Embed) {
		return func(e *pour.Embed) { e.In, e.AtMM = pour.EmbedOwn, mm }
	}
	long := func(mm float64) func(*pour.Embed) { return func(e *pour.Embed) { e.LengthMM = mm } }
	high := func(mm, out float64) func(*pour.Embed) {
		return func(e *pour.Embed) { e.HeightMM, e.OutMM = mm, out }
	}
	made := func(days float64) func(*pour.Embed) { return func(e *pour.Embed) { e.MadeDays = days } }
	weighs := func(g float64) func(*pour.Embed) { return func(e *pour.Embed) { e.G = g } } // in 16² × π/4 × 15 mm³, 3.02 mL
	melt := func(e *pour.Embed) { e.Material = pour.EmbedMelt }
	across := func(n int, mm float64) func(*pour.Embed) { return func(e *pour.Embed) { e.PerBar, e.AcrossMM = n, mm } }
	warm := func(p *pour.Plan, _ *pour.Shelf) { p.Bed.Keep = pour.BedInsulate }
	iced := func(n int, bends ...func(*pour.Embed)) bend {
		return all(with(bends...), func(p *pour.Plan, _ *pour.Shelf) {
			p.Piping, p.Icing.Size = rosette(), pour.SizeShape
			p.Piping.CoilMM, p.Piping.PerBar, p.Piping.LeastG, p.Piping.BagG, p.Piping.ResiduePercent = 5, n, 200, 250, 7
		})
	}
	gang := func(p *pour.Plan, _ *pour.Shelf) {
		p.Cut.By, p.Cut.WiresMM = pour.CutGang, []float64{0, 25, 50, 75, 100, 125, 150, 175, 200}
	}
	return []codeRow{
		{"embed-cut", with(at(12.5, 32, 62.5)), with(at(12.5, 37.5, 62.5))},
		{"embed-tight", with(long(20.5)), with()},
		{"embed-astray", all(number("mould.bar_mm", 40), with(at(20, 245))), all(number("mould.bar_mm", 40), with(at(20, 60)))},
		{"embed-sight", with(long(12)), with(long(10))},
		{"embed-high", with(high(15, 6)), with(high(15, 5))},
		{"embed-deep", with(high(80, 10)), with(high(60, 10))},
		{"embed-wall", with(across(1, 31.5)), with(across(1, 20))},
		{"embed-touch", with(across(5, 0)), with(across(3, 0))},
		{"embed-iced", iced(3), iced(2)},
		{"embed-weight", with(weighs(20)), with(weighs(3.2))},
		{"embed-late", with(made(1)), with(made(3))},
		{"embed-hard", with(made(14)), with(made(13.9))},
		{"embed-squeeze", all(with(), gang), all(with(), number("cut.clear_mm", 3))},
		{"embed-melts", all(with(melt), warm), all(with(), warm)},
		{"embed-crowd", with(long(25), high(65, 0), across(8, 0)), with(across(3, 0))},
	}
}

// A slab of 300 × 200 in bars of 60 × 50: a disc has (50 − d)/2 left and right of it, which is less than the (60 − d)/2 along the slab. One at the
// wall has no cut there. What is offered fits the bar both ways.
func TestASlabsEmbedKeepsClearOfTheCutsAlongIt(t *testing.T) {
	p, shelf := hanger(t)
	p.Base.Jugs = p.Base.Jugs[:1]
	p.Base.Jugs[0].SharePercent = 100
	p.Mould = pour.Mould{Shape: pour.ShapeSlab, LengthMM: 300, WidthMM: 200, HeightMM: 40, FillMM: 36, BarMM: 60, BarWidthMM: 50}
	for _, c := range []struct {
		long, clear   float64
		verdict, code string
		says          string
	}{
		{25, 12.5, pour.VerdictClear, "", ""},
		{45, 2.5, pour.VerdictTight, "embed-tight", "leaves 2.5 mm left or right of it"},
		{48, 1, pour.VerdictCut, "embed-cut", "25.0 mm from the left wall, 1.0 mm are left beside the cut along the slab"},
		{55, -2.5, pour.VerdictCut, "embed-cut", "it stands 2.5 mm over the cut; room beside the cut along the slab"},
	} {
		p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: c.long, HeightMM: 18, OutMM: 4.5}}
		sheet := pour.Weigh(p, shelf)
		wall, inner := sheet.Embeds[0].Pieces[0], sheet.Embeds[0].Pieces[1]
		if worst, _ := sheet.Embeds[0].Worst(); math.Abs(worst.ClearMM.V-c.clear) > 1e-9 || inner.Verdict != c.verdict || wall.ClearLeftMM.Known || !wall.ClearRightMM.Known {
			t.Errorf("%v long: clear by %v, %s, at the wall %+v", c.long, worst.ClearMM, inner.Verdict, wall)
		}
		i := slices.IndexFunc(sheet.Warnings, func(w pour.Warning) bool { return w.Code == "embed-cut" || w.Code == "embed-tight" })
		if c.code == "" {
			if i >= 0 {
				t.Errorf("%v long: %q", c.long, sheet.Warnings[i].Text)
			}
			continue
		}
		if i < 0 || sheet.Warnings[i].Code != c.code || !strings.Contains(sheet.Warnings[i].Text, c.says) {
			t.Errorf("%v long: said %+v, want %s with %q", c.long, sheet.Warnings, c.code, c.says)
			continue
		}
		if c.long != 48 {
			continue // what is offered takes its time to try
		}
		timed := sheet.Time(shelf, pour.Hand{})
		for i, mends := range whatif.MendsOf(timed, shelf, pour.Hand{}, func(w pour.Warning) bool { return w.Code == c.code }) {
			if c.code == timed.Warnings[i].Code && (len(mends) == 0 || mends[0].Says != "make moon 44 mm long") {
				t.Errorf("%v long: offered %+v", c.long, mends)
			}
		}
	}
}

// A maker marked her pieces 25 apart and cuts with wires of which one was measured 4 mm from where she took it to be: one piece of nine is met, and
// the bar beside it is 21 thick. What is offered first makes every piece clear.
func TestWiresThatMissAnEmbedAreSaidAndMended(t *testing.T) {
	p, shelf := hanger(t)
	p.Cut.By, p.Cut.KerfMM, p.Cut.WiresMM = pour.CutGang, 0.6, []float64{0, 25, 50, 75, 104, 125, 150, 175, 200, 225}
	p.Top.Embeds = []pour.Embed{{
		Name: "moon", Outline: pour.OutlineBall, LengthMM: 16, OutMM: 4, In: pour.EmbedOwn,
		AtMM: []float64{25, 50, 75, 100, 125, 150, 175, 200, 225},
	}}
	sheet := pour.Work(p, shelf, pour.Hand{})
	i := slices.IndexFunc(sheet.Warnings, func(w pour.Warning) bool { return w.Code == "embed-cut" })
	if i < 0 {
		t.Fatalf("nothing is said: %+v", sheet.Embeds)
	}
	if w := sheet.Warnings[i]; !strings.Contains(w.Text, "moon: 1 of 9 pieces may be cut") || !strings.Contains(w.Text, "in bar 5, at 125.0 mm") {
		t.Errorf("it says %q", w.Text)
	}
	mends := whatif.Mends(sheet, shelf, pour.Hand{})[i]
	if len(mends) == 0 || !strings.HasPrefix(mends[0].Says, "set moon on the middle of every bar, as your wires cut them") {
		t.Fatalf("offered: %+v", mends)
	}
	next, err := pour.Apply(p, shelf, mends[0].Edit)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range pour.Weigh(next, shelf).Embeds[0].Pieces {
		if x.Verdict != pour.VerdictClear {
			t.Errorf("bar %d: %s, %+v", x.Bar, x.Verdict, x)
		}
	}
}

// E5: embeds of 18 set for bars of 25.6 under wires 25 apart that each take 0.6. The best first wire stands at 12.5; then the pieces are off by -2.4 to
// 2.4 and the outer ones keep 0.8 mm. Set at the wires' pitch each keeps 3.2.
func TestEmbedsForTheWrongPitchAreSetToTheWires(t *testing.T) {
	p, shelf := ninth(t)
	e := &p.Top.Embeds[0]
	e.Outline, e.LengthMM, e.HeightMM = "", 18, 15
	p.Cut.By, p.Cut.KerfMM = pour.CutGang, 0.6
	for i := range 10 {
		p.Cut.WiresMM = append(p.Cut.WiresMM, 25*float64(i))
	}
	sheet := pour.Work(p, shelf, pour.Hand{})
	worst, _ := sheet.Embeds[0].Worst()
	if first := sheet.Cut.CutsMM[0]; math.Abs(first-12.5) > 1e-9 || math.Abs(worst.ClearMM.V-0.8) > 1e-9 || worst.Verdict != pour.VerdictCut {
		t.Errorf("the first wire stands at %v; the worst piece: %+v", first, worst)
	}
	for i, x := range sheet.Embeds[0].Pieces {
		if want := 3.2 - math.Abs(-2.4+0.6*float64(i)); math.Abs(x.ClearMM.V-want) > 1e-9 {
			t.Errorf("piece %d keeps %v, want %v", i, x.ClearMM.V, want)
		}
	}
	i := slices.IndexFunc(sheet.Warnings, func(w pour.Warning) bool { return w.Code == "embed-cut" })
	mends := whatif.Mends(sheet, shelf, pour.Hand{})[i]
	if len(mends) == 0 {
		t.Fatal("nothing is offered")
	}
	next, err := pour.Apply(p, shelf, mends[0].Edit)
	if err != nil {
		t.Fatal(err)
	}
	for i, x := range pour.Weigh(next, shelf).Embeds[0].Pieces {
		if x.Verdict != pour.VerdictClear || math.Abs(x.ClearMM.V-3.2) > 1e-9 || math.Abs(x.CentreMM-(25+25*float64(i))) > 1e-9 {
			t.Errorf("mended, piece %d: %+v", i, x)
		}
	}
}
