package panel

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/screen"

	"github.com/charmbracelet/x/ansi"
)

// labelledFacts is the meadow with a label of a market of its own, so that the test says what the market wants.
func labelledFacts(t *testing.T, change func(*pour.Plan)) *Facts {
	t.Helper()
	f := worked(t, meadow, change)
	f.Shelf.Markets = []label.Market{{
		ID: "vale", Name: "The vale", Short: "VA", Heading: "Ingredients:", ScentWord: "Parfum", FreePercent: 1, Allergens: label.AllergensLong, OverPercent: 0.01,
	}}
	f.Shelf.Allergens = nil
	for _, name := range []string{"Coumarin", "Linalool", "Limonene", "Geraniol", "Citronellol"} {
		f.Shelf.Allergens = append(f.Shelf.Allergens, label.Allergen{Name: name})
	}
	f.Plan.Label.Market = "vale"
	again(f, f.Plan)
	return f
}

// again draws the facts from a plan.
func again(f *Facts, p pour.Plan) {
	f.Plan = p
	sheet := pour.Weigh(p, f.Shelf).Time(f.Shelf, pour.Hand{})
	sheet.Label = sheet.Labelled(f.Shelf, pour.Labelling{})
	f.Sheet, f.Timed = &sheet, &sheet
}

func rowsOf(g grid.Grid) (items []grid.Row) {
	for _, r := range g.Rows {
		if r.Heading == "" && !r.Total {
			items = append(items, r)
		}
	}
	return items
}

func TestTheIngredientsStandAsTheLabelHasThemAndSumToTheBar(t *testing.T) {
	f := labelledFacts(t, nil)
	l := &f.Timed.Label
	if l.Refused != "" || len(l.Lines) < 10 {
		t.Fatalf("%d lines, %s", len(l.Lines), l.Refused)
	}
	l.Lines[1].Unverified = "nobody looked it up"
	g := panelOf(t, "ingredients").Grid(f)
	rows, percent := rowsOf(g), 0.0
	if len(rows) != len(l.Lines) {
		t.Fatalf("%d rows of %d lines", len(rows), len(l.Lines))
	}
	for i, r := range rows {
		if got := strings.TrimPrefix(r.Cells[lineName].Text, "? "); got != l.Lines[i].Text {
			t.Errorf("row %d is %q, the label has %q", i, got, l.Lines[i].Text)
		}
		v, err := strconv.ParseFloat(r.Cells[linePercent].Text, 64)
		if err != nil {
			t.Fatal(err)
		}
		percent += v
	}
	if math.Abs(percent-100) > 0.0005*float64(len(rows)) {
		t.Errorf("the percents shown sum to %v", percent)
	}
	if c := rows[1].Cells[lineName]; !strings.HasPrefix(c.Text, "? ") || c.Copy() != l.Lines[1].Text || !strings.Contains(c.Hint, "nobody looked it up") || c.Style != f.Look.Caution {
		t.Errorf("a name that is not verified is shown as %q, copied as %q, told as %q", c.Text, c.Copy(), c.Hint)
	}
	if strings.Contains(strings.Join(panelOf(t, "printed list").Told(f), " "), "?") {
		t.Error("the mark of a name that is not verified stands in what is printed")
	}
	if heads := headings(g); !slices.Equal(heads, []string{askLocally, "by mass", "under 1 %: any order is right", "colourants, in any order"}) {
		t.Errorf("the parts are %q", heads)
	}
}

func headings(g grid.Grid) (out []string) {
	for _, r := range g.Rows {
		if r.Heading != "" {
			out = append(out, r.Heading)
		}
	}
	return out
}

func TestEveryPartOfAListHasItsHeading(t *testing.T) {
	at, under := label.Market{FreePercent: 1, FreeAt: true}, label.Market{FreePercent: 1}
	for _, c := range []struct {
		line label.Line
		m    label.Market
		want string
	}{
		{label.Line{Entry: label.Entry{Class: label.Plain}}, under, "by mass"},
		{label.Line{Entry: label.Entry{Class: label.Plain}, Free: true}, under, "under 1 %: any order is right"},
		{label.Line{Entry: label.Entry{Class: label.Plain}, Free: true}, at, "1 % or less: any order is right"},
		{label.Line{Entry: label.Entry{Class: label.Perfume}}, under, "by mass"},
		{label.Line{Entry: label.Entry{Class: label.Perfume}}, label.Market{ScentLast: true}, "scent, at the end"},
		{label.Line{Entry: label.Entry{Class: label.Colourant}}, under, "colourants, in any order"},
		{label.Line{Entry: label.Entry{Class: label.Unlisted}}, under, "in the balance, on no label"},
	} {
		if got := linePart(&c.line, c.m, pour.Show{}); got != c.want {
			t.Errorf("%+v stands under %q, want %q", c.line, got, c.want)
		}
	}
}

// The scale of a bar is worked out by hand: three cells a tenfold, the threshold behind the sixth.
func TestABarStandsAgainstItsThresholdOnAScaleOfTenfolds(t *testing.T) {
	for _, c := range []struct {
		percent float64
		full    int
	}{
		{0, 0}, {math.NaN(), 0}, {0.00001, 0}, {0.0001, 0}, {0.001, 3}, {0.0099, 5}, {0.01, 6}, {0.0100001, 7}, {0.022, 7}, {0.1, 9}, {1, 12}, {50, 12},
	} {
		bar := []rune(thresholdBar(c.percent, 0.01))
		if len(bar) != 13 || bar[6] != '│' || strings.Count(string(bar), "█") != c.full {
			t.Errorf("%v %% is drawn %q, want %d full cells around the threshold", c.percent, string(bar), c.full)
		}
	}
}

func TestAnAllergenSaysHowItStandsAndWhereItComesFrom(t *testing.T) {
	f := labelledFacts(t, nil)
	from := []label.Traced{{Scent: "alp rose", G: 0.021}, {Scent: "meadow hay", G: 0.003}}
	f.Timed.Label.Allergens = []label.Found{
		{Name: "Linalool", CuredPercent: 0.0213, Named: true, From: from},
		{Name: "Limonene", CuredPercent: 0.01},
		{Name: "safrole", CuredPercent: 0.0002, Prohibited: true, Over: true},
		{Name: "methyl eugenol", CuredPercent: 0.002, Over: true},
		{Name: "orange flower", CuredPercent: 0.002, Unlisted: true, Either: []string{"Citrus A", "Citrus B"}},
		{Name: "odd", CuredPercent: 0.2, Unlisted: true},
	}
	rows := rowsOf(panelOf(t, "allergens").Grid(f))
	for i, want := range []string{"named", "not named", "prohibited", "over cap", "ask which", "no list"} {
		if got := rows[i].Cells[allergenStands].Text; got != want {
			t.Errorf("%s is %q, want %q", rows[i].Cells[allergenName].Text, got, want)
		}
	}
	if got := rows[0].Cells[allergenFrom].Text; got != "alp rose 0.0210, meadow hay 0.0030 g" {
		t.Errorf("it comes from %q", got)
	}
	if got := rows[0].Cells[allergenPercent].Text; got != "0.0213" {
		t.Errorf("it is shown as %q", got)
	}
	if hint := rows[4].Cells[allergenName].Hint; !strings.Contains(hint, "Citrus A and for Citrus B") {
		t.Errorf("of two that it may be it says %q", hint)
	}
	f.Timed.Label.Allergens = nil
	if g := panelOf(t, "allergens").Grid(f); len(g.Rows) > 0 || !strings.Contains(g.Empty, "supplier") {
		t.Errorf("of none it says %q", g.Empty)
	}
}

func TestWithoutAMarketThePanelsSaySoAndEnterChoosesOne(t *testing.T) {
	f := labelledFacts(t, nil)
	plan := f.Plan
	plan.Label = pour.Label{}
	again(f, plan)
	for _, id := range []string{"ingredients", "allergens", "to tick", "another scent"} {
		p := panelOf(t, layout.ID(id))
		if g := p.Grid(f); len(g.Rows) > 0 || g.Empty != noLabel {
			t.Errorf("%s: %d rows, %q", id, len(g.Rows), g.Empty)
		}
		do, _ := p.Press("change", f, On{Row: grid.Row{Item: -1, Sub: -1}})
		if do.Pick == nil {
			t.Errorf("%s: Enter comes to %+v", id, do)
			continue
		}
		if got := made(t, f, do.Picked("vale").Edit); got.Label.Market != "vale" {
			t.Errorf("%s: the market is %q", id, got.Label.Market)
		}
	}
	if items := f.Items(listMarkets); len(items) != 2 || items[0].ID != "" || items[1].ID != "vale" {
		t.Errorf("the list of markets is %+v", items)
	}
}

func TestTheFormOfTheLabelSetsEveryFieldAndSaysWhatIsUsual(t *testing.T) {
	f := labelledFacts(t, nil)
	f.Shelf.Label.Reports = []label.Report{{ID: "R-12", Of: "meadow bars"}}
	g := panelOf(t, "this label").Grid(f)
	for name, want := range map[string]string{"market": "The vale", "report": "none", "title": "–", "label wide": "usual 80 mm", "best before": "none is printed", "looks like food": "‹ judged ›", "letters": "as large as fits"} {
		if got := value(t, g, name).Text; got != want {
			t.Errorf("%s is shown as %q, want %q", name, got, want)
		}
	}
	set := func(p pour.Plan) { again(f, p); g = panelOf(t, "this label").Grid(f) }
	set(typed(t, f, value(t, g, "label wide"), "62"))
	set(typed(t, f, value(t, g, "title"), "Meadow"))
	set(typed(t, f, value(t, g, "best before"), "24"))
	set(made(t, f, value(t, g, "report").Pick("R-12")))
	set(made(t, f, value(t, g, "looks like food").Flip))
	l := f.Plan.Label
	if l.WideMM != 62 || l.Title != "Meadow" || l.BestBeforeMo != 24 || l.Report != "R-12" || l.LikeFood != pour.LikeFoodYes {
		t.Errorf("the form made %+v", l)
	}
	if got := value(t, g, "label wide").Text; got != "62 mm" {
		t.Errorf("a stated width is shown as %q", got)
	}
	for _, want := range []string{pour.LikeFoodNo, ""} { // round and back to what is judged from the design
		if set(made(t, f, value(t, g, "looks like food").Flip)); f.Plan.Label.LikeFood != want {
			t.Errorf("it went on to %q, want %q", f.Plan.Label.LikeFood, want)
		}
	}
	set(made(t, f, value(t, g, "report").Pick("R-13")))
	if c := value(t, g, "report"); c.Text != "? R-13" || !strings.Contains(c.Hint, "no report of that id") {
		t.Errorf("a report that is not there is shown as %q: %s", c.Text, c.Hint)
	}
}

func TestTheFormSaysWeightLettersAndVerdict(t *testing.T) {
	f := labelledFacts(t, func(p *pour.Plan) { p.Label.Report = "R-12" })
	l := &f.Timed.Label
	l.Net = label.Net{System: "minimum", G: 92, Text: "92 g", From: "forecast", Average: 95.1, Least: 92.6}
	l.HeightMM = pour.Know(3)
	l.Report = label.Verdict{Report: "R-12", Missed: []label.Miss{{Range: label.Range{Kind: label.RangeOil, ID: "olive", Least: 0, Most: 40}, What: "olive oil", Is: 42.1, By: 2.1}}}
	g := panelOf(t, "this label").Grid(f)
	if c := value(t, g, "it declares"); c.Text != "92 g" || c.Figure != "label.net_g" || !strings.Contains(c.Hint, "forecast") {
		t.Errorf("the weight is %q: %s", c.Text, c.Hint)
	}
	if got := value(t, g, "figures at least").Text; got != "3.00 mm" {
		t.Errorf("the figures are %q", got)
	}
	if c := value(t, g, "the design is"); c.Text != "! outside R-12" || !slices.Contains(swapSaid(g), "! olive oil 42.1 %, 2.1 over its most") {
		t.Errorf("the verdict is %q, below it stand %q", c.Text, swapSaid(g))
	}
	l.Claims = []label.Claim{{Word: "heals", Class: label.ClaimDrug, Clause: "21 CFR 701.20, read"}}
	said := rowsOf(panelOf(t, "this label").Grid(f))
	if i := slices.IndexFunc(said, func(r grid.Row) bool { return strings.Contains(r.Cells[formValue].Hint, "21 CFR 701.20") }); i < 0 || !strings.Contains(said[i].Cells[formValue].Text, "heals") {
		t.Error("a word that changes what the bar is sold as is not pointed at")
	}
	l.HeightMM = pour.Know(25.4 / 8)
	if got := value(t, panelOf(t, "this label").Grid(f), "figures at least").Text; got != "3.18 mm" { // 3.175 mm: an eighth of an inch is never told lower
		t.Errorf("an eighth of an inch is %q", got)
	}
	l.Report.Missed, l.Net.Text, l.Net.Why = nil, "", "no bar weighs enough"
	g = panelOf(t, "this label").Grid(f)
	if got := value(t, g, "the design is").Text; got != "✓ inside R-12" {
		t.Errorf("inside it is shown as %q", got)
	}
	if c := value(t, g, "it declares"); c.Text != "–" || !strings.Contains(c.Hint, "no bar weighs enough") {
		t.Errorf("an unknown weight is %q: %s", c.Text, c.Hint)
	}
	f.Fresh = false
	if c := value(t, panelOf(t, "this label").Grid(f), "it declares"); c.Style != f.Look.Stale {
		t.Error("a weight of the plan before is not drawn as old")
	}
}

func TestALineToTickSaysHowItStandsAndOnWhatPaper(t *testing.T) {
	f := labelledFacts(t, nil)
	row := label.Row{ID: "va-3", Text: "name and address", Document: "Order of the vale", Clause: "s. 3", Confidence: "read"}
	f.Timed.Label.Checks = []label.Check{{Row: row, State: label.Ticked, Why: "your label file has them"}, {Row: row, State: label.Open}, {Row: row, State: label.Unknown, Stale: true}}
	rows := rowsOf(panelOf(t, "to tick").Grid(f))
	for i, want := range []string{"ticked", "open", "unknown"} {
		if got := rows[i].Cells[checkState].Text; got != want {
			t.Errorf("line %d is %q, want %q", i, got, want)
		}
	}
	for _, want := range []string{"name and address", "your label file has them", "Order of the vale s. 3", "read", "as of", "va-3", askLocally} {
		if hint := rows[0].Cells[checkText].Hint; !strings.Contains(hint, want) {
			t.Errorf("%q does not say %q", hint, want)
		}
	}
	if got := rows[2].Cells; !strings.HasPrefix(got[checkFrom].Text, "over a year old") || !strings.Contains(got[checkText].Hint, "over twelve months ago") {
		t.Errorf("an old line says %q", got[checkFrom].Text)
	}
	if strings.Contains(rows[0].Cells[checkFrom].Text, "year") {
		t.Error("a line that is not old is told as old")
	}
}

// A scent that is tried changes nothing; what it would change is what differs between two labels, and taking it makes that label.
func TestAScentIsTriedBesideThePlanAndTaken(t *testing.T) {
	f := labelledFacts(t, nil)
	p := panelOf(t, "another scent")
	g := p.Grid(f)
	if len(g.Rows) != len(f.Plan.Base.Scents) {
		t.Fatalf("%d rows of %d scents", len(g.Rows), len(f.Plan.Base.Scents))
	}
	do, _ := p.Press("change", f, On{Cell: g.Rows[1].Cells[swapName], Row: g.Rows[1]})
	if do.Pick == nil || do.Edit != nil {
		t.Fatalf("Enter on a scent comes to %+v", do)
	}
	do = do.Picked("gentian-root")
	if do.Edit != nil || do.Try == nil || *do.Try != (Swap{Batch: pour.Base, At: 1, ID: "gentian-root"}) {
		t.Fatalf("picking comes to %+v", do)
	}
	f.Trial = &Trial{Swap: *do.Try, Fresh: true}
	if g := p.Grid(f); g.Rows[len(g.Rows)-1].Cells[swapName].Text != labelAwaited {
		t.Error("what is being worked out is not said to be")
	}
	tried := *f
	again(&tried, made(t, f, do.Try.Edit()))
	f.Trial.Sheet = tried.Sheet
	said := swapSaid(p.Grid(f))
	for _, want := range []string{"− Citronellol", "− Geraniol"} { // of alp rose, 12 and 8 %, and in no other scent here
		if !slices.ContainsFunc(said, func(s string) bool { return strings.HasPrefix(s, want) }) {
			t.Errorf("%q is not said among %q", want, said)
		}
	}
	if want := fmt.Sprintf("allergens named %s %s", namedCount(&f.Timed.Label), namedCount(&tried.Timed.Label)); !slices.Contains(said, want) {
		t.Errorf("%q is not said among %q", want, said)
	}
	if text := strings.Join(panelOf(t, "printed list").Told(f), "\n"); !strings.Contains(text, f.Timed.Label.Text) || !strings.Contains(text, tried.Timed.Label.Text) {
		t.Error("the two lists do not stand beside each other")
	}
	g = p.Grid(f)
	i := slices.IndexFunc(g.Rows, func(r grid.Row) bool { return len(r.Cells) > 0 && r.Cells[swapName].Kind == grid.Tick })
	if got := made(t, f, g.Rows[i].Cells[swapName].Flip); got.Base.Scents[1].Scent != "gentian-root" || f.Plan.Base.Scents[1].Scent != "alp-rose" {
		t.Errorf("taking it makes %+v", got.Base.Scents)
	}
	f.Trial.Why = "no room"
	if g := p.Grid(f); g.Rows[len(g.Rows)-1].Cells[swapName].Hint != "no room" {
		t.Error("why it cannot be is not said")
	}
}

// What a swap does to the pour is said as well: a scent that sets the batter is no better for naming fewer allergens.
func TestWhatASwapBringsAgainstThePlanIsSaid(t *testing.T) {
	f := labelledFacts(t, nil)
	f.Trial = &Trial{Fresh: true, Sheet: f.Sheet}
	was := f.Timed.Warnings
	if got := f.swapWarnings(was); len(got) > 0 {
		t.Errorf("%d warnings come that stand already", len(got))
	}
	come := append(slices.Clone(was), pour.Warning{Code: "scent-over-limit", Severity: pour.Stop, Where: "base scent rose", Text: "too much"}, pour.Warning{Code: "vanillin", Severity: pour.Note, Where: "base"})
	if got := swapSaid(grid.Grid{Rows: f.swapWarnings(come)}); len(got) != 1 || !strings.Contains(got[0], "too much") {
		t.Errorf("it says %q", got)
	}
}

func swapSaid(g grid.Grid) (out []string) {
	for _, r := range rowsOf(g) {
		var words []string
		for _, c := range r.Cells {
			if c.Text != "" {
				words = append(words, c.Text)
			}
		}
		out = append(out, strings.Join(words, " "))
	}
	return out
}

func TestWhatASwapChangesOfListAndVerdictIsSaid(t *testing.T) {
	f := labelledFacts(t, nil)
	f.Trial = &Trial{Fresh: true, Sheet: &pour.Sheet{}}
	line := func(text string) label.Line { return label.Line{Entry: label.Entry{Text: text, Class: label.Plain}} }
	now := &pour.LabelSheet{Lines: []label.Line{line("A"), line("B")}, Report: label.Verdict{Report: "R-1"}, Net: label.Net{Text: "90 g"}}
	for _, c := range []struct {
		with pour.LabelSheet
		want string
	}{
		{pour.LabelSheet{Lines: []label.Line{line("A"), line("C")}}, "+ C comes"},
		{pour.LabelSheet{Lines: []label.Line{line("A"), line("C")}}, "− B goes"},
		{pour.LabelSheet{Lines: []label.Line{line("B"), line("A")}}, "ingredients another order"},
		{pour.LabelSheet{Lines: []label.Line{line("A"), line("B")}}, "ingredients the same"},
		{pour.LabelSheet{Lines: now.Lines, Net: label.Net{Text: "91 g"}}, "it declares 90 g 91 g"},
		{pour.LabelSheet{Report: label.Verdict{Report: "R-1", Missed: []label.Miss{{What: "rose"}}}}, "report inside R-1 outside R-1"},
		{pour.LabelSheet{Allergens: []label.Found{{Name: "Citral", CuredPercent: 0.02, Named: true}}}, "+ Citral – 0.0200"},
		{pour.LabelSheet{Allergens: []label.Found{{Name: "safrole", CuredPercent: 0.02, Prohibited: true}}}, "! safrole – 0.0200"},
		{pour.LabelSheet{Unstated: []string{"lemongrass oil"}}, "allergens named 0 0 + ?"},
		{pour.LabelSheet{Refused: "no parts"}, "it cannot be worked out"},
	} {
		if got := swapSaid(grid.Grid{Rows: f.swapEffects(now, &c.with)}); !slices.Contains(got, c.want) {
			t.Errorf("%q is not said among %q", c.want, got)
		}
	}
}

func TestThePrintedListIsDrawnWhole(t *testing.T) {
	f := labelledFacts(t, nil)
	s := screen.New(41, 60)
	panelOf(t, "printed list").Draw(f, s.Area(), grid.Cursor{}, false)
	if got := strings.Join(strings.Fields(ansi.Strip(s.String())), " "); !strings.Contains(got, f.Timed.Label.Text) {
		t.Errorf("it is drawn as %q, it is %q", got, f.Timed.Label.Text)
	}
}

// An embed that the plan says is made as the base is counts as its soap: that stands beside the list, on screen and in lines.
func TestThePrintedListSaysWhichEmbedIsCountedAsTheBase(t *testing.T) {
	f := labelledFacts(t, func(p *pour.Plan) {
		p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 12, HeightMM: 10, AsBase: true}}
	})
	const want = "moon is counted as the base's own soap"
	s := screen.New(41, 60)
	panelOf(t, "printed list").Draw(f, s.Area(), grid.Cursor{}, false)
	drawn := strings.Join(strings.Fields(ansi.Strip(s.String())), " ")
	if parts := strings.Join(headings(panelOf(t, "ingredients").Grid(f)), "; "); !strings.Contains(parts, want+", its colours and scents in it") {
		t.Errorf("the ingredients stand under %s", parts)
	}
	if told := strings.Join(panelOf(t, "printed list").tell(f), " "); !strings.Contains(drawn, want) || !strings.Contains(told, want) || strings.Contains(f.Timed.Label.Text, "moon") {
		t.Errorf("drawn as %q, told as %q", drawn, told)
	}
}
