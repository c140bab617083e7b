package panel

import (
	"fmt"
	"image"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/tui/entry"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// Cuts, trims and embeds stand in the cells that the length divided by the room gives: 250 mm in 76 − 4 cells are 3.4722 mm a cell.
func TestTheMapOfTheCutsIsToScale(t *testing.T) {
	f := worked(t, topped, nil)
	const w, h = 76, 16
	drawn := lines(f, panelOf(t, "cuts"), w, h)
	rows := make([][]rune, len(drawn))
	for i, l := range drawn {
		rows[i] = []rune(l + strings.Repeat(" ", w))
	}
	cell := func(mm float64) int { return 2 + int(mm*(w-4)/250) }
	for i, mm := range f.Sheet.Cut.CutsMM {
		want := '│'
		if i == 0 {
			want = '║' // the cursor is on it
		}
		if got := rows[1][cell(mm)]; got != want {
			t.Errorf("the cut at %v mm is drawn %q:\n%s", mm, got, drawn[1])
		}
	}
	if n := strings.Count(drawn[1], "│") + strings.Count(drawn[1], "║"); n != len(f.Sheet.Cut.CutsMM) {
		t.Errorf("%d cuts are drawn, %d there are", n, len(f.Sheet.Cut.CutsMM))
	}
	// Trims are hatched: 6 mm at end A, a little over 13 at end B.
	if rows[1][2] != '/' || rows[1][73] != '/' || rows[1][71] != '/' || rows[1][10] == '/' {
		t.Errorf("the trims are drawn %q", drawn[1])
	}
	signs := ""
	for _, l := range drawn[1:10] {
		for _, r := range l {
			if r == '■' || r == '●' {
				signs += string(r)
			}
		}
	}
	if strings.Count(signs, "■") != 1 || strings.Count(signs, "●") != 11 { // nine gentians and two butterflies stand clear
		t.Errorf("the embeds' signs are %q:\n%s", signs, strings.Join(drawn, "\n"))
	}
	all := strings.Join(drawn, "\n")
	for _, want := range []string{"CUT", "clear", "24.9", "25.4", "cut 1 of 10 at 6.3 mm from A"} {
		if !strings.Contains(all, want) {
			t.Errorf("the map does not say %q:\n%s", want, all)
		}
	}
	if ends := strings.Count(all, "A /") + strings.Count(all, "A/"); ends != 1 || !strings.Contains(all, "/ B") {
		t.Errorf("the ends are not named once each:\n%s", all)
	}
}

// A verdict is told without colours too, and what has no room for its word has its sign.
func TestAVerdictHasASignWhereItsWordHasNoRoom(t *testing.T) {
	f := worked(t, topped, nil)
	f.Colourless = true
	all := strings.Join(lines(f, panelOf(t, "cuts"), 48, 12), "\n")
	if strings.Contains(all, "clear") || !strings.Contains(all, "■") || strings.Count(all, "·") < 8 || !strings.Contains(all, "▒") {
		t.Errorf("a narrow map without colours:\n%s", all)
	}
}

// A loaf of a metre is shown in part: the bars keep room for their figures, and the cut under the cursor is in sight.
func TestALongLoafIsShownAroundTheCutUnderTheCursor(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) {
		p.Mould.LengthMM, p.Cut.By, p.Top.Embeds = 1000, pour.CutBars, nil
	})
	n := len(f.Sheet.Cut.CutsMM)
	for i := range n {
		s := f.scaleOf(76, i)
		if x := s.cut(f.Sheet.Cut.CutsMM[i]); !s.shows(x) {
			t.Errorf("cut %d of %d is drawn in cell %d", i+1, n, x)
		}
		if s.from < 0 || s.from+s.per*float64(s.w) > 1000+1e-6 {
			t.Errorf("at cut %d the map goes from %v over %v mm", i+1, s.from, s.per*float64(s.w))
		}
	}
	drawn := strings.Join(lines(f, panelOf(t, "cuts"), 76, 12), "\n")
	if !strings.Contains(drawn, "›") || !strings.Contains(drawn, "A ") || strings.Contains(drawn, "B") || !strings.Contains(drawn, "25.0") {
		t.Errorf("the beginning of a long loaf:\n%s", drawn)
	}
}

// The pointer takes hold of the nearest cut within a cell, and what it drags goes to where it is.
func TestThePointerTakesHoldOfACutAndDragsIt(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) { p.Cut.By = pour.CutBars })
	size, cut := image.Pt(76, 16), 3
	x := f.scaleOf(76, 0).cut(f.Sheet.Cut.CutsMM[cut])
	for off, want := range map[int]bool{-2: false, -1: true, 0: true, 1: true, 2: false} {
		c, ok := f.grabCut(size, image.Pt(x+off, 4), grid.Cursor{})
		if ok != want || ok && c.Col != cut+firstCut {
			t.Errorf("%d cells beside the cut it takes hold: %v, of column %d", off, ok, c.Col)
		}
	}
	do := f.dragCut(size, image.Pt(x, 4), image.Pt(x+2, 4), grid.Cursor{Col: cut + firstCut})
	next := pour.Weigh(made(t, f, do.Edit), f.Shelf)
	at := next.Cut.CutsMM[cut]
	if got := f.scaleOf(76, cut).cut(at); got != x+2 || math.Abs(at*2-math.Round(at*2)) > 1e-9 {
		t.Errorf("dragged two cells, the cut stands at %v mm, in cell %d for %d", at, got, x+2)
	}
	if a, b := next.Cut.Bars[cut-1], f.Sheet.Cut.Bars[cut-1]; !(a.CutG.V > b.CutG.V) {
		t.Errorf("a thicker bar weighs %v, before %v", a.CutG.V, b.CutG.V)
	}
}

func TestACutIsNudgedTypedAddedAndTakenAway(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) { p.Cut.By, p.Top.Embeds = pour.CutBars, nil })
	was := slices.Clone(f.Sheet.Cut.CutsMM)
	cell := f.cutGrid().Rows[0].Cells[firstCut+2]
	after := func(p pour.Plan) []float64 { s := pour.Weigh(p, f.Shelf); return s.Cut.CutsMM }
	if got := after(nudged(t, f, cell, 1)); math.Abs(got[2]-was[2]-0.5) > 0.051 || got[1] != was[1] { // moved cuts are kept to a tenth
		t.Errorf("nudged once from %v to %v", was[2], got[2])
	}
	if got := after(typed(t, f, cell, "70,5")); got[2] != 70.5 || len(got) != len(was) {
		t.Errorf("typed 70,5: %v", got)
	}
	if got := after(made(t, f, press(t, f, "cuts", keys.Add, 0, -1, firstCut+2).Edit)); len(got) != len(was)+1 || !(got[3] > was[2] && got[3] < was[3]) {
		t.Errorf("one more: %v", got)
	}
	if got := after(made(t, f, press(t, f, "cuts", keys.Remove, 0, -1, firstCut+2).Edit)); len(got) != len(was)-1 {
		t.Errorf("one less: %v", got)
	}
	e, err := cell.Set("500")
	if err == nil {
		_, err = pour.Apply(f.Plan, f.Shelf, e)
	}
	if err == nil || !strings.Contains(err.Error(), "500") {
		t.Errorf("a cut outside the loaf: %v", err)
	}
}

// What a bar's edge is typed to is where the bar begins or ends, and the cut's middle stands half a cut off it.
func TestABarsEdgesMoveTheCutsBesideIt(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) { p.Cut.By, p.Top.Embeds = pour.CutBars, nil })
	row := f.barGrid().Rows[2]
	next := pour.Weigh(typed(t, f, row.Cells[barEnd], "84"), f.Shelf)
	if b := next.Cut.Bars[2]; math.Abs(b.EndMM-84) > 1e-6 || math.Abs(b.StartMM-f.Sheet.Cut.Bars[2].StartMM) > 1e-6 {
		t.Errorf("its end typed to 84, the bar goes from %v to %v", b.StartMM, b.EndMM)
	}
	next = pour.Weigh(typed(t, f, row.Cells[barStart], "60"), f.Shelf)
	if b := next.Cut.Bars[2]; math.Abs(b.StartMM-60) > 1e-6 {
		t.Errorf("its start typed to 60, the bar begins at %v", b.StartMM)
	}
	kept := worked(t, meadow, nil)
	if c := kept.barGrid().Rows[0].Cells[barStart]; c.Kind != grid.Shown {
		t.Error("the kept end of a loaf can be moved")
	}
}

// The bars, trims, slice and crumbs of the table add up to what is said to be cut.
func TestTheTableOfBarsAddsUpToTheLoaf(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) { p.Cut.By, p.Cut.SliceMM = pour.CutBars, 5 })
	g := f.barGrid()
	names := map[string]bool{}
	sum := 0.0
	for _, r := range g.Rows {
		names[strings.Fields(r.Cells[barNumber].Text)[0]] = true
		if r.Cells[barThick].Text != "" {
			var v float64
			if _, err := fmt.Sscan(r.Cells[barThick].Text, &v); err != nil {
				t.Fatal(err)
			}
			sum += v
		}
	}
	cuts := float64(len(f.Sheet.Cut.CutsMM)) * 0.6
	if math.Abs(sum+cuts-250) > 0.05*float64(len(g.Rows)) {
		t.Errorf("pieces of %v mm and cuts of %v mm in a loaf of 250", sum, cuts)
	}
	for _, want := range []string{"bar", "trim", "trims", "slice", "crumbs"} {
		if !names[want] {
			t.Errorf("there is no row for %s", want)
		}
	}
}

func TestTheWayToCutShowsTheKeysThatCount(t *testing.T) {
	for by, want := range map[string]string{pour.CutBars: "", pour.CutCount: "bars wanted", pour.CutMass: "bars wanted", pour.CutMarks: "own cuts", pour.CutGang: "own wires, first wire at", pour.CutBest: "bars may vary by, bars alike in"} {
		f := worked(t, topped, func(p *pour.Plan) { p.Cut.By = by })
		shown := labels(f.cutPlanGrid())
		for _, l := range []string{"bars wanted", "own cuts", "own wires", "first wire at", "bars may vary by", "bars alike in"} {
			if got := slices.Contains(shown, l); got != strings.Contains(want, l) {
				t.Errorf("%s: %q is shown: %v", by, l, got)
			}
		}
	}
}

func TestWhatIsCutIsToldInWords(t *testing.T) {
	f := worked(t, topped, nil)
	told := strings.Join(panelOf(t, "cuts").Told(f), " ")
	for _, want := range []string{"250 mm long, cut 10 times", "from end A", "cut 1 at 6.3 mm", "trim at end A", "bar 8 from", "embed will be cut", "bar 9 from"} {
		if !strings.Contains(told, want) {
			t.Errorf("it does not say %q: %s", want, told)
		}
	}
}

// Of single moulds each is shown, none is cut, and it is said why.
func TestSingleMouldsAreShownUncut(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) {
		p.Mould = pour.Mould{Shape: pour.ShapeCavity, LengthMM: 70, WidthMM: 50, HeightMM: 30, FillMM: 28, BarMM: 25, Cavities: 6}
	})
	drawn := strings.Join(lines(f, panelOf(t, "cuts"), 76, 12), "\n")
	if strings.Contains(drawn, "│") || strings.Count(strings.Split(drawn, "\n")[1], "┊") != 7 || !strings.Contains(drawn, "nothing is cut") || !strings.Contains(drawn, "6") {
		t.Errorf("six single moulds:\n%s", drawn)
	}
	if do := press(t, f, "cuts", keys.Add, -1, -1, 0); do.Why == "" {
		t.Error("a cut is added to single moulds")
	}
	if told := panelOf(t, "cuts").Told(f); len(told) == 0 {
		t.Error("they are not told")
	}
}

// A tube is cut along its height: the map is as long as it is filled.
func TestATubeIsShownAlongItsHeight(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) {
		p.Mould = pour.Mould{Shape: pour.ShapeTube, LengthMM: 75, WidthMM: 75, HeightMM: 320, FillMM: 300, BarMM: 25}
		p.Icing = nil
	})
	if n := len(f.Sheet.Cut.Bars); n != 12 {
		t.Fatalf("%d rounds", n)
	}
	for i, mm := range f.Sheet.Cut.CutsMM {
		if s := f.scaleOf(76, i); s.from != 0 || s.cut(mm) != 2+int(mm*72/300+1e-9) {
			t.Errorf("cut %d at %v stands in cell %d", i+1, mm, s.cut(mm))
		}
	}
}

// What is typed in another panel is not taken for the place of a cut.
func TestWhatIsTypedElsewhereIsNoPlaceOfACut(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) { p.Cut.By = pour.CutBars })
	f.Typing = &grid.Typed{Entry: entry.New("8.50")}
	c := grid.Cursor{Col: firstCut}
	for _, focused := range []bool{false, true} {
		a := screen.New(76, 14)
		f.drawCuts(a.Area(), c, focused)
		if all := ansi.Strip(a.String()); strings.Contains(all, "at 8.50") != focused {
			t.Errorf("in focus %v, what is typed is shown otherwise:\n%s", focused, all)
		}
	}
}
