package panel

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"

	"github.com/charmbracelet/x/ansi"
)

func TestAStopOnTheLyeHidesEveryLyeAmountAndNothingElse(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) {
		p.Base.SuperfatPercent, p.Base.KOHSharePercent = -3, 20
		p.Icing.StockLyePercent = 50
	})
	if !f.Sheet.LyeStopped() {
		t.Fatal("the plan does not stop")
	}
	for _, c := range []struct {
		form   grid.Grid
		labels []string
	}{
		{panelOf(t, "lye").Grid(f), []string{"NaOH", "KOH", "water to add"}},
		{panelOf(t, "lye of the icing").Grid(f), []string{"stock lye", "water to add"}},
	} {
		for _, label := range c.labels {
			if cell := value(t, c.form, label); cell.Text != doNotMix || strings.ContainsAny(cell.Copy(), "0123456789") || cell.Style != f.Look.Stop {
				t.Errorf("%s: shown as %q, copied as %q", label, cell.Text, cell.Copy())
			}
		}
		if cell := value(t, c.form, "batter"); !strings.ContainsAny(cell.Text, "123456789") {
			t.Errorf("the batter is shown as %q", cell.Text)
		}
	}
	for _, r := range panelOf(t, "weigh").Grid(f).Rows {
		kind, amount := r.Cells[weighKind].Text, r.Cells[weighG]
		lye := kind == pour.WeighAlkali || kind == pour.WeighWater
		if hidden := amount.Text == doNotMix; hidden != lye || lye && (r.Cells[weighUnit].Text != "" || strings.ContainsAny(amount.Copy(), "123456789")) {
			t.Errorf("%s, %s: shown as %q %q", r.Cells[weighName].Text, kind, amount.Text, r.Cells[weighUnit].Text)
		}
	}
}

func TestOilsAndWaterAreDrawnOnTheKitchenScaleTheRestOnTheFineOne(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) { p.Show.ScaleStepG, p.Show.LyeStepG = 1, 0.01 })
	for _, r := range panelOf(t, "weigh").Grid(f).Rows {
		_, decimals, _ := strings.Cut(r.Cells[weighG].Text, ".")
		want := 2
		if kind := r.Cells[weighKind].Text; kind == pour.WeighOil || kind == pour.WeighWater {
			want = 0
		}
		if len(decimals) != want {
			t.Errorf("%s is shown as %q", r.Cells[weighName].Text, r.Cells[weighG].Text)
		}
	}
}

func TestFiguresOfThePlanBeforeAreMarkedWhileTheyAreWorkedOutAgain(t *testing.T) {
	f := worked(t, meadow, nil)
	late := func() grid.Cell { return panelOf(t, "jugs").Grid(f).Rows[0].Cells[jugLate] }
	order := func() grid.Row { return panelOf(t, "orders").Grid(f).Rows[1] }
	if late().Style == f.Look.Stale || strings.HasSuffix(late().Text, "…") || order().Cells[orderKind].Kind != grid.Tick {
		t.Error("fresh figures are marked, or an order cannot be taken")
	}
	f.Fresh, f.ColoursFresh = false, false
	if late().Style != f.Look.Stale || !strings.HasSuffix(late().Text, "…") {
		t.Errorf("an old chance is shown as %q", late().Text)
	}
	if order().Cells[orderKind].Kind == grid.Tick || order().Cells[orderTotal].Style != f.Look.Stale {
		t.Error("an order of the plan before can be taken")
	}
	if bed := value(t, panelOf(t, "bed").Grid(f), "middle reaches"); strings.Contains(bed.Text, "…") {
		t.Errorf("the mark stands in the number: %q", bed.Text)
	}
	f.Timed = &pour.Sheet{}
	if got := late().Text; got != "…" {
		t.Errorf("before there is a clock the chance is %q", got)
	}
}

func TestTheMakersOwnOrderIsNotForTakingAndTheOthersAre(t *testing.T) {
	f := worked(t, meadow, nil)
	rows := panelOf(t, "orders").Grid(f).Rows
	if own := rows[0].Cells[orderKind]; own.Edits() || strings.HasPrefix(own.Hint, "Enter takes it") {
		t.Errorf("the own order: %+v", own)
	}
	want := f.Sheet.Mingling.Orders[1].Jugs
	sheet := pour.Weigh(made(t, f, rows[1].Cells[orderKind].Flip), f.Shelf)
	if got := sheet.PourOrder(); !slices.Equal(got, want) {
		t.Errorf("taking an order pours %v, want %v", got, want)
	}
}

func TestAScentOverItsLimitIsMarked(t *testing.T) {
	f := worked(t, meadow, nil)
	inBar, limit := f.scentTail(pour.Base)
	line := &f.Sheet.Base.Scents[0]
	line.LimitPercent = line.InBarPercent + 0.01
	if got := panelOf(t, "scents").Grid(f).Rows[0].Cells[inBar]; strings.HasPrefix(got.Text, "■") {
		t.Errorf("below its limit it is shown as %q", got.Text)
	}
	line.LimitPercent = line.InBarPercent - 0.01
	if got := panelOf(t, "scents").Grid(f).Rows[0].Cells[inBar]; !strings.HasPrefix(got.Text, "■") || got.Style != f.Look.Stop {
		t.Errorf("over its limit it is shown as %q", got.Text)
	}
	line.LimitPercent = 0
	row := panelOf(t, "scents").Grid(f).Rows[0]
	if row.Cells[limit].Text != "–" || strings.HasPrefix(row.Cells[inBar].Text, "■") {
		t.Errorf("without a certificate it is shown as %q of %q", row.Cells[inBar].Text, row.Cells[limit].Text)
	}
}

// The bar of a jug changes its shading at the minute of each stage, on the axis that stands over it.
func TestTheClocksBarTurnsAtTheMinuteOfEachStage(t *testing.T) {
	f := worked(t, meadow, nil)
	const w = 100
	batch := &f.Sheet.Base
	x := f.axis(batch, w)
	drawn := lines(f, panelOf(t, "clock"), w, 13)
	for i, j := range batch.Jugs {
		row := []rune(drawn[1+2*i])
		for col := range x.w {
			from := x.from + float64(col)/float64(x.w)*(x.to-x.from)
			middle := from + (x.to-x.from)/float64(x.w)/2
			want := " "
			for s := range chem.Stages {
				if at := j.Clock.Stages[s].Mid; at.Known && middle >= at.V+batch.LyeInAtMin {
					want = look.StageGlyph(chem.Stage(s))
				}
			}
			if got := string(row[x.x+col]); got != want && got != "▼" {
				t.Fatalf("%s at %.1f min is drawn %q, want %q", j.Name, middle, got, want)
			}
		}
		if got := slices.Index(row, '▼'); got != x.x+int((j.Clock.PourAtMin.V-x.from)/(x.to-x.from)*float64(x.w)) {
			t.Errorf("%s is poured at %.1f min, drawn in column %d", j.Name, j.Clock.PourAtMin.V, got)
		}
		mark := " late "
		if j.Clock.LateChancePercent.V >= 25 {
			mark = " !late "
		}
		if side := string(row[x.x+x.w:]); !strings.Contains(side, mark+strconv.Itoa(int(j.Clock.LateChancePercent.V+0.5))+" %") {
			t.Errorf("%s is late with %.1f %%, said as %q", j.Name, j.Clock.LateChancePercent.V, side)
		}
	}
	f.Sheet.Base.Jugs = slices.Clone(f.Sheet.Base.Jugs)
	for s := range chem.Stages { // its pour is known, and no stage is
		f.Sheet.Base.Jugs[0].Clock.Stages[s].Mid = pour.Figure{}
	}
	if drawn = lines(f, panelOf(t, "clock"), w, 13); !strings.Contains(drawn[1], "no times can be given: see the warnings") {
		t.Errorf("without stages the words are %q", drawn[1])
	}
	f.Sheet.Base.Refused.Times = "it is too cold"
	if drawn = lines(f, panelOf(t, "clock"), w, 13); !strings.Contains(drawn[0], "No times: it is too cold") {
		t.Errorf("without times it says %q", drawn[0])
	}
}

// Each jug takes as many half lines of the mould as its part of the batter comes to.
func TestTheMouldIsFilledInProportion(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) { p.Icing = nil })
	drawn := lines(f, panelOf(t, "filling"), 60, 22)
	got := map[string]int{}
	total, at := 0, ""
	for _, l := range drawn {
		inside := strings.Split(l, "║")
		if len(inside) != 3 {
			continue
		}
		text := strings.TrimSpace(inside[1])
		if text != "" && text[0] >= 'A' && text[0] <= 'E' {
			if at = text[:1]; got[at] > 0 {
				t.Errorf("%s is named twice", at)
			}
		}
		if text != "" || at != "" { // a jug is named in its first line alone; its others are blank
			total++
		}
		if at != "" && !strings.HasPrefix(text, "▄") {
			got[at]++
		}
	}
	for i, j := range f.Plan.Base.Jugs {
		want := j.SharePercent / 100 * float64(total)
		if n := float64(got[look.Letter(i)]); n < want-1 || n > want+1 {
			t.Errorf("%s with %v %% takes %v of %d lines", j.Name, j.SharePercent, n, total)
		}
	}
	if all := strings.Join(drawn, "\n"); !strings.Contains(all, "80 mm wide, 250 mm long") || !strings.Contains(all, "75 mm") || !strings.Contains(all, "62 mm") {
		t.Errorf("the mould's measures are not all there:\n%s", all)
	}
	f.Sheet.Base.Size.HeightMM = pour.Unknown()
	if drawn = lines(f, panelOf(t, "filling"), 60, 22); !strings.Contains(drawn[0], "cannot be worked out") {
		t.Errorf("an unknown height is drawn as %q", drawn[0])
	}
}

// warned draws the warnings on a screen of 60 columns.
func warned(h int, draw func(screen.Area)) string {
	s := screen.New(60, h)
	draw(s.Area())
	return ansi.Strip(s.String())
}

func TestWarningsTakeTwoLinesWhereThereIsRoomAndSayHowManyAreHidden(t *testing.T) {
	f := worked(t, meadow, nil)
	f.Warnings = []pour.Warning{
		{Severity: pour.Stop, Where: "base", Text: "first", Do: "mend it"}, {Severity: pour.Caution, Where: "icing", Text: "second", Do: "see to it"}, {Severity: pour.Note, Where: "run", Text: "third", Do: "know it"},
	}
	if got := warned(8, f.DrawWarnings); strings.Count(got, "\n") != 7 || !strings.Contains(got, "■ base: first") || !strings.Contains(got, "│     → mend it") || strings.Contains(got, "more") {
		t.Errorf("with room:\n%s", got)
	}
	if got := warned(4, f.DrawWarnings); !strings.Contains(got, "1 more: w reads all") || !strings.Contains(got, "! icing: second → see to it") || strings.Contains(got, "third") {
		t.Errorf("with two lines:\n%s", got)
	}
	if got := warned(1, f.DrawWorst); !strings.Contains(got, "■ base: first") || !strings.Contains(got, "+2: w") {
		t.Errorf("with one line: %s", got)
	}
	f.Warnings = nil
	if got := warned(4, f.DrawWarnings) + warned(1, f.DrawWorst); strings.Count(got, NothingStands) != 2 {
		t.Errorf("without warnings: %s", got)
	}
}

func TestEachScentOfThePlanIsToldOnce(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) {
		p.Icing.Scents = []pour.ScentPart{{Scent: p.Base.Scents[0].Scent, PercentOfOils: 1}}
	})
	sc, _ := f.Shelf.Scent(f.Plan.Base.Scents[0].Scent)
	p := panelOf(t, "behaviour")
	told := strings.Join(lines(f, p, 60, 40), "\n")
	if strings.Count(told, sc.Name) != 1 || p.want(f) != 12 {
		t.Errorf("it wants %d lines and tells\n%s", p.want(f), told)
	}
	f.Sheet.Base.Scents, f.Sheet.Icing.Scents = nil, nil
	if told = lines(f, p, 60, 4)[0]; !strings.Contains(told, "no scent in this plan") {
		t.Errorf("without scents it tells %q", told)
	}
}

func TestADialThatATechniqueDoesNotHaveIsADash(t *testing.T) {
	f := worked(t, meadow, nil)
	g := panelOf(t, "technique").Grid(f)
	if turns := value(t, g, "turns"); turns.Text != "–" || !strings.Contains(turns.Hint, "has no turns") {
		t.Errorf("dropping has turns: %q, %q", turns.Text, turns.Hint)
	}
	if height := value(t, g, "pour height"); !strings.HasPrefix(height.Text, "its own, ") {
		t.Errorf("the height is %q", height.Text)
	}
	f.Plan.Swirl.HeightMM = 120
	if height := value(t, panelOf(t, "technique").Grid(f), "pour height"); height.Text != "120" {
		t.Errorf("a height of the maker's own is %q", height.Text)
	}
}

func TestAJugPinnedToOneEndIsNotOfferedAtTheOther(t *testing.T) {
	f := worked(t, meadow, func(p *pour.Plan) { p.Swirl.First = "gentian" })
	last := value(t, panelOf(t, "technique").Grid(f), "poured last")
	for steps := range 10 {
		if got := nudged(t, f, last, float64(steps)).Swirl.Last; got == "gentian" {
			t.Errorf("%d steps on gentian is pinned to both ends", steps)
		}
	}
	if first := value(t, panelOf(t, "technique").Grid(f), "poured first"); first.Text != "‹ gentian ›" {
		t.Errorf("the first is shown as %q", first.Text)
	}
}

func TestTheMouldSaysHowHighTheIcingStands(t *testing.T) {
	row := func(f *Facts) string {
		for _, r := range f.vesselGrid().Rows {
			for _, c := range r.Cells {
				if c.Figure == "bars.stands_mm" {
					return c.Text + " " + f.rimRemark()
				}
			}
		}
		return ""
	}
	f := worked(t, meadow, nil)
	if got, want := row(f), f.Show.Number(f.Sheet.Bars.StandsMM, 0)+" "+f.Show.Rim(f.Sheet.Bars.OverRimMM)+" on average"; got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	if got := row(worked(t, meadow, func(p *pour.Plan) { p.Icing = nil })); got != "" {
		t.Errorf("without an icing it says %q", got)
	}
	if got := (pour.Show{Length: pour.LengthMM}).Rim(-5) + ", " + (pour.Show{Length: pour.LengthMM}).Rim(5); got != "5 mm under the rim, 5 mm over the rim" {
		t.Error(got)
	}
}

// What is read on a shelf is told in a maker's words: no notes on how figures were gathered, no ids, no stage "to" itself.
func TestTheShelfIsToldInAMakersWords(t *testing.T) {
	f := worked(t, meadow, nil)
	n := 0
	for _, list := range []string{listMoulds, listTechniques, listOils, listColourants, listExtras, listScents} {
		for _, it := range f.Items(list) {
			text := strings.Join(it.Detail, "\n")
			for _, word := range []string{"no source", "memory", "(read)", "no document at hand", ".go", "light to light", "pot-", "hanger-", "in batter: none", "in batter: unknown"} {
				if n++; strings.Contains(text, word) {
					t.Errorf("%s says %q: %s", it.Name, word, text)
				}
			}
		}
	}
	if n < 1000 {
		t.Errorf("only %d words were looked for", n)
	}
}
