package panel

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/pour/pourtest"
	"pourbench/presets"
	"pourbench/tui/grid"
	"pourbench/tui/look"
)

// figuresIn is every mass, temperature and time of a text, in its order.
func figuresIn(text string) []string {
	return regexp.MustCompile(`-?\d+(\.\d+)? (g|oz|deg [CF])\b|-?\d+:\d\d(:\d\d)?`).FindAllString(text, -1)
}

// read parts a paper into its sections, each as one line without the dots, rules and page numbers that a page adds. It knows a paper only
// by how it looks: a heading stands over a line of dashes, and one that goes on belongs to the section before.
func read(text string) map[string]string {
	out, name := map[string]string{}, ""
	lines := strings.Split(strings.ReplaceAll(text, "\f", ""), "\n")
	for i := 0; i < len(lines); i++ {
		rule := func(at int) bool { return at < len(lines) && len(lines[at]) > 30 && strings.Trim(lines[at], "-") == "" }
		switch {
		case strings.Contains(lines[i], "page ") && i+1 < len(lines) && strings.HasPrefix(lines[i+1], "===="):
			i++
		case rule(i + 1), rule(i+2) && strings.ToUpper(lines[i]) == lines[i] && strings.ToLower(lines[i]) != lines[i]: // a line of figures alone is none
			title := regexp.MustCompile(`^\d+ +`).ReplaceAllString(lines[i], "")
			title, _, _ = strings.Cut(title, "  ")
			if name = strings.TrimSuffix(title, " (goes on)"); rule(i + 1) {
				i++
			} else {
				i += 2
			}
		default:
			out[name] += " " + strings.Join(strings.Fields(strings.NewReplacer("....", " ", "...", " ").Replace(lines[i])), " ")
		}
	}
	return out
}

// figure is one figure that the maker needs at the bench: where each of the three has it, and as the sheet shows it.
type figure struct{ screen, full, bench, shown string }

// needed lists the figures of a sheet in the order both papers tell them.
func needed(s *pour.Sheet) []figure {
	var out []figure
	show := s.Plan.Show
	for _, b := range s.Batches() {
		n, of := string(b.Name)+".", ""
		if s.Icing != nil {
			of = strings.ToUpper(string(b.Name)) + ": "
		}
		add := func(screen, full, shown string) { out = append(out, figure{screen, of + full, of + "WEIGH", shown}) }
		const oils, lye = "WEIGH THE OILS", "WEIGH AND MAKE THE LYE"
		if b.ReadyBlend == "" {
			for i, o := range b.Oils {
				add(fmt.Sprintf("%soils[%d].weigh_g", n, i), oils, show.Weight(o.WeighG))
			}
		}
		add("", oils, show.Weight(b.Size.OilsWeighG))
		add(n+"water_to_add_g", lye, show.Weight(b.Lye.WaterToAddG.V))
		for _, a := range []struct {
			path            string
			exactG, toWeigh float64
		}{{"naoh", b.Lye.NaOH.WeighedG, b.Lye.NaOH.ToWeighG}, {"koh", b.Lye.KOH.WeighedG, b.Lye.KOH.ToWeighG}, {"stock", b.Lye.Stock.WeighedG, b.Lye.Stock.ToWeighG}} {
			if a.exactG > 0 {
				add(n+a.path+"_to_weigh_g", lye, show.Dose(a.toWeigh))
			}
		}
		add("", lye, show.Temp(s.Plan.Batch(b.Name).LyeC))
	}
	return append(out, jugFigures(s)...)
}

// jugFigures lists what goes into the jugs, and the minutes of the run.
func jugFigures(s *pour.Sheet) []figure {
	var out []figure
	show := s.Plan.Show
	for _, b := range s.Batches() {
		of := ""
		if s.Icing != nil {
			of = strings.ToUpper(string(b.Name)) + ": "
		}
		for i, j := range b.Jugs {
			at := fmt.Sprintf("%s.jugs[%d].", b.Name, i)
			out = append(out, figure{at + "batter_weigh_g", "", "JUGS", show.Weight(j.BatterWeighG)})
			for k, d := range j.Colourants {
				path := fmt.Sprintf("%scolourants[%d].", at, k)
				out = append(out, figure{path + "pigment_g", of + "WEIGH AND WET THE COLOURS", "JUGS", show.Dose(d.PigmentG)})
				if d.CarrierG > 0 {
					out = append(out, figure{path + "carrier_g", of + "WEIGH AND WET THE COLOURS", "JUGS", show.Dose(d.CarrierG)})
				}
			}
			for _, x := range j.Scents {
				out = append(out, figure{"", of + "WEIGH THE SCENTS", "JUGS", show.Dose(x.G)})
			}
		}
	}
	first := 0
	for i, st := range s.Stints() {
		f := figure{fmt.Sprintf("run[%d].start_min", first), "THE POUR, IN ORDER", "ACTS, IN ORDER", show.RunTime(st.StartMin)}
		first += len(st.Tasks)
		before := i > 0 && s.Stints()[i-1].Kind == st.Kind && s.Stints()[i-1].Batch == st.Batch
		switch {
		case st.Kind == pour.TaskCoolLye && st.StartMin < 0:
			f.bench = "" // it stands where the lye is weighed
		case before && (st.Kind == pour.TaskColour || st.Kind == pour.TaskScent):
			f.bench = "" // one act with the one before
		}
		for k, t := range st.Tasks {
			again := slices.ContainsFunc(st.Tasks[:k], func(o pour.Task) bool { return o.Jug == t.Jug && o.Round.V < t.Round.V })
			if t.Jug != "" && t.Part.Known && !again { // rounds told as one say each jug once
				out = append(out, figure{"", f.full, f.bench, show.Figure(t.G, show.Weight)})
			}
		}
		out = append(out, f)
	}
	return append(out, figure{"bars.cut_g", "CUT AND CURE", "BED, CUT AND CURE", show.Weight(s.Bars.CutG)}, figure{"bars.cured_g", "CUT AND CURE", "BED, CUT AND CURE", show.Weight(s.Bars.CuredG)})
}

// bare is a figure as all three can be compared: without a plus, its sign for degrees in letters.
func bare(shown string) string {
	return strings.ReplaceAll(strings.TrimPrefix(shown, "+"), "°", "deg ")
}

// inOrder holds that a section has the figures wanted of it, in their order, and returns the first that it lacks.
func inOrder(section string, want []string) string {
	have := figuresIn(section)
	for _, w := range want {
		at := slices.Index(have, bare(w))
		if at < 0 {
			return w
		}
		have = have[at+1:]
	}
	return ""
}

// same holds that screen, full paper, bench paper and its large type say every figure to the same digit.
func same(t interface{ Fatalf(string, ...any) }, f *Facts) {
	want := map[string]map[string][]string{"full": {}, "bench": {}}
	screen := map[string]string{}
	number := regexp.MustCompile(`^[!■ ]*\+?(-?\d[\d.:]*)`)
	figures(f, func(_ *Panel, c grid.Cell) {
		if m := number.FindStringSubmatch(c.Text); m != nil {
			screen[c.Figure] = m[1]
		}
	})
	for _, x := range needed(f.Sheet) {
		if x.full != "" {
			want["full"][x.full] = append(want["full"][x.full], x.shown)
		}
		if x.bench != "" {
			want["bench"][x.bench] = append(want["bench"][x.bench], x.shown)
		}
		if drawn, _, _ := strings.Cut(bare(x.shown), " "); x.screen != "" && screen[x.screen] != drawn {
			t.Fatalf("the screen shows %q for %s, the sheet %q", screen[x.screen], x.screen, x.shown)
		}
	}
	for paper, text := range map[string]string{
		"full": paper.Checklist(*f.Sheet, f.Shelf), "bench": paper.Bench(*f.Sheet, f.Shelf, false), "bench large": paper.Bench(*f.Sheet, f.Shelf, true),
	} {
		sections := read(text)
		for name, list := range want[strings.Fields(paper)[0]] {
			if missing := inOrder(sections[name], list); missing != "" {
				t.Fatalf("%s: %q lacks %s in its place; wanted are %v, there are %v\n%s", paper, name, missing, list, figuresIn(sections[name]), text)
			}
		}
	}
}

func units() []pour.Show {
	return []pour.Show{
		{Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 0.1, LyeStepG: 0.01},
		{Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 1, LyeStepG: 0.1},
		{Mass: "oz", Temperature: "F", Length: "in", ScaleStepG: 1, LyeStepG: 0.1},
	}
}

func TestScreenAndPapersAgreeToTheDigit(t *testing.T) {
	for _, plan := range []string{meadow, "../../presets/plans/alpine-meadow.toml", "../../presets/plans/autumn-slab.toml", "../../presets/plans/first-snow.toml"} {
		for _, show := range units() {
			same(t, worked(t, plan, func(p *pour.Plan) { p.Show = show }))
		}
	}
}

func TestScreenAndPapersOfWhateverPlanAgreeToTheDigit(t *testing.T) {
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := planfile.Load("../../presets/plans/alpine-meadow.toml", shelf)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := pourtest.Rich(t, doc.Plan, shelf)
		p.Show = rapid.SampledFrom(units()).Draw(t, "units")
		for _, n := range []pour.BatchName{pour.Base, pour.Icing} {
			if b := p.Batch(n); b != nil { // so that most can be mixed
				b.SuperfatPercent, b.Carrier, b.LyeConcentrationPercent = max(b.SuperfatPercent, 8), pour.CarrierExtra, min(b.LyeConcentrationPercent, 40)
			}
		}
		sheet := pour.Weigh(p, shelf)
		sheet = sheet.Time(shelf, pour.Hand{})
		if sheet.LyeStopped() || !pour.AsFigure(sheet.Bars.CuredG).Known { // no masses, or a topping that covers without a size of its grains
			t.Skip("cannot be mixed, or a topping covers without a size of its grains: rapid draws another, and fails where it has to leave out too many")
		}
		same(t, &Facts{Plan: p, Sheet: &sheet, Timed: &sheet, Fresh: true, Shelf: shelf, Show: p.Show, Look: look.New(true), Warnings: sheet.Warnings, Colours: &sheet, ColoursFresh: true})
	})
}
