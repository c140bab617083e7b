package pour_test

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// examplesWorked works out every plan that comes with the program.
func examplesWorked(t *testing.T) (map[string]pour.Sheet, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]pour.Sheet{}
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			t.Fatal(err)
		}
		plan, err := planfile.Read(name, strings.NewReader(string(text)), shelf)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = pour.Work(plan, shelf, pour.Hand{})
	}
	for market, style := range map[string]label.Style{"eu": label.AsSalts, "ca": label.AsAdded} {
		p := out[presets.Plans()[0]].Plan.Clone()
		p.Label.Market, p.Label.List, p.Cure.LabelG = market, string(style), 60
		out["labelled in "+market] = pour.Work(p, shelf, pour.Hand{})
	}
	for name, p := range pipedPlans(t) {
		out[name] = pour.Work(p, shelf, pour.Hand{})
	}
	return out, shelf
}

// Every figure is worked out again from what its account shows: by the account's own terms, and from the line of numbers as text, read
// by a reader of its own.
func TestTheNumbersShownGiveTheFigureShown(t *testing.T) {
	sheets, shelf := examplesWorked(t)
	for name, s := range sheets {
		told := 0
		for _, path := range s.Explained() {
			a, err := s.Explain(path, shelf, pour.Hand{})
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if a.Value.Known {
				told++
				checkAccount(t, name, a)
			} else if a.Absent == "" {
				t.Errorf("%s: %s is unknown for no reason", name, path)
			}
		}
		if told < 100 {
			t.Errorf("%s: only %d figures are told", name, told)
		}
	}
}

func checkAccount(t rapid.TB, plan string, a pour.Account) {
	t.Helper()
	exact := 1e-9
	if a.How.Modelled() {
		exact = 1e-8 // a root is found to some 1e-9 of it, and from other last bits another
	}
	if got := a.How.Value(); !agrees(got, a.Value.V, exact) {
		t.Errorf("%s: %s is %v, its account gives %v: %s", plan, a.Path, a.Value.V, got, a.How.Numbers())
	}
	shown := a.How.AsShown()
	if !a.How.Modelled() {
		var err error
		if shown, err = evaluate(a.How.Numbers()); err != nil {
			t.Errorf("%s: %s: %q cannot be read: %v", plan, a.Path, a.How.Numbers(), err)
		}
	}
	tolerance := 2e-6
	if strings.HasSuffix(a.Path, "contact_percent") {
		tolerance = 5e-3 // counted in cells of a picture: the last bit of a height moves some
	}
	for _, lean := range []float64{-tolerance, tolerance} { // what is shown may stand on the middle between two steps, the number beside it
		if next, err := leaning(a.How.Numbers(), lean); !a.How.Modelled() && err == nil && agrees(next, a.Value.V, tolerance) {
			shown = next
		}
	}
	if !agrees(shown, a.Value.V, tolerance) {
		t.Errorf("%s: %s is %v, the numbers shown give %v: %s", plan, a.Path, a.Value.V, shown, a.How.Numbers())
	}
	for _, in := range a.How.Inputs() {
		if in.Name == "" || in.From == "" || strings.HasPrefix(in.From, "missing") || in.From == "the shelf" && in.Source.Text == "" {
			t.Errorf("%s: %s starts from %+v, which says not where it is from", plan, a.Path, in)
		}
	}
	if a.Label == "" || strings.Contains(a.Label, "{}") || a.Low.Known && (a.Band == "" || a.High.Known && a.Low.V > a.High.V) {
		t.Errorf("%s: %s: %+v", plan, a.Path, a)
	}
}

func agrees(a, b, tolerance float64) bool {
	return math.Abs(a-b) <= tolerance*max(1, math.Abs(a), math.Abs(b))
}

// The contract's figures all have an account, and the account has the same number.
func TestEveryNumberOfTheFiguresHasAnAccount(t *testing.T) {
	sheets, shelf := examplesWorked(t)
	for name, s := range sheets {
		var text strings.Builder
		if err := paper.WriteFigures(&text, s); err != nil {
			t.Fatal(err)
		}
		var tree map[string]any
		if err := json.Unmarshal([]byte(text.String()), &tree); err != nil {
			t.Fatal(err)
		}
		delete(tree, "warnings")
		seen := 0
		eachNumber("", tree, func(path string, v float64) {
			seen++
			a, err := s.Explain(path, shelf, pour.Hand{})
			if err != nil {
				t.Errorf("%s: %v", name, err)
			} else if a.Value.V != v {
				t.Errorf("%s: %s is %v in the figures, %v in its account", name, path, v, a.Value.V)
			}
		})
		if seen < 100 {
			t.Errorf("%s: only %d numbers", name, seen)
		}
	}
}

func eachNumber(path string, v any, do func(string, float64)) {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			eachNumber(strings.TrimPrefix(path+"."+k, "."), x, do)
		}
	case []any:
		for i, x := range v {
			eachNumber(fmt.Sprintf("%s[%d]", path, i), x, do)
		}
	case float64:
		do(path, v)
	}
}

// A figure is told with what hangs on it, and another plan tells it otherwise.
func TestAnAccountNamesTheWarningsItFeeds(t *testing.T) {
	p, shelf := shelved(t)
	p.Base.SuperfatPercent = -3
	s := pour.Work(p, shelf, pour.Hand{})
	a, err := s.Explain("base.superfat_exact_percent", shelf, pour.Hand{})
	if err != nil || len(a.Fires) == 0 || a.Fires[0].Code != "lye-heavy" {
		t.Errorf("%v, %+v", err, a.Fires)
	}
	p.Base.SuperfatPercent = 8
	s = pour.Work(p, shelf, pour.Hand{})
	if a, err = s.Explain("base.superfat_exact_percent", shelf, pour.Hand{}); err != nil || len(a.Fires) != 0 {
		t.Errorf("%v, %+v", err, a.Fires)
	}
	for _, code := range a.Feeds {
		if _, ok := codeOf(code); !ok {
			t.Errorf("it feeds %s, which is no warning", code)
		}
	}
	for _, path := range []string{"base.superfat", "icing.jugs[9].total_g", "base.jugs[x].total_g", "base.jugs[1]", "", "base.jugs[-1].total_g", "run[99999].start_min"} {
		if _, err := s.Explain(path, shelf, pour.Hand{}); err == nil || !strings.Contains(err.Error(), "explain") {
			t.Errorf("%q: %v", path, err)
		}
	}
}

func codeOf(code string) (pour.CodeInfo, bool) {
	for _, c := range pour.Codes() {
		if c.Code == code {
			return c, true
		}
	}
	return pour.CodeInfo{}, false
}

// reader evaluates a line of numbers: sums before products, brackets, and the four words for rounding and choosing.
type reader struct {
	rest string
	lean float64
}

func evaluate(text string) (float64, error) { return leaning(text, 0) }

// leaning is the same where numbers that are rounded to a step are taken a part smaller or larger than they are shown.
func leaning(text string, lean float64) (v float64, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%v", fault)
		}
	}()
	r := &reader{strings.ReplaceAll(text, " ", ""), lean}
	v = r.sum()
	if r.rest != "" {
		return v, fmt.Errorf("%q is left over", r.rest)
	}
	return v, nil
}

func (r *reader) take(sign string) bool {
	rest, ok := strings.CutPrefix(r.rest, sign)
	r.rest = rest
	return ok
}

func (r *reader) sum() float64 {
	v := r.product()
	for {
		switch {
		case r.take("+"):
			v += r.product()
		case r.take("−"):
			v -= r.product()
		default:
			return v
		}
	}
}

func (r *reader) product() float64 {
	v := r.one()
	for {
		switch {
		case r.take("×"):
			v *= r.one()
		case r.take("÷"):
			v /= r.one()
		default:
			return v
		}
	}
}

func (r *reader) one() float64 {
	if r.take("(") {
		v := r.sum()
		r.must(")")
		return v
	}
	for word, do := range map[string]func([]float64) float64{
		"downtowholesteps":                     func(v []float64) float64 { return math.Floor(v[0]/v[1]+1e-7) * v[1] },
		"tothenearest":                         func(v []float64) float64 { return math.Round(v[0]/v[1]*(1+r.lean)) * v[1] },
		"thelargerof":                          func(v []float64) float64 { return max(v[0], v[1]) },
		"inwholestepsbylargestremainder,place": remaindersTold,
	} {
		if r.take(word) {
			r.take("step") // "to the nearest step"
			return do(r.list())
		}
	}
	number := regexp.MustCompile(`^-?\d+(\.\d+)?`).FindString(r.rest)
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		panic(err)
	}
	r.rest = r.rest[len(number):]
	return v
}

func (r *reader) must(sign string) {
	if !r.take(sign) {
		panic(fmt.Sprintf("%q wants %q", r.rest, sign))
	}
}

func (r *reader) list() []float64 {
	r.must("(")
	v := []float64{r.sum()}
	for r.take(";") {
		v = append(v, r.sum())
	}
	r.must(")")
	return v
}

// remaindersTold apportions by the method's own words: whole steps first, then one each to the largest rests until the sum is reached.
func remaindersTold(v []float64) float64 {
	at, step, masses := int(v[0])-1, v[1], v[2:]
	sum, given := 0.0, 0.0
	steps, rest := make([]float64, len(masses)), make([]float64, len(masses))
	for i, g := range masses {
		steps[i] = math.Floor(g/step + 1e-7)
		rest[i] = g/step - steps[i]
		sum, given = sum+g, given+steps[i]
	}
	for left := math.Round(sum/step) - given; left > 0; left-- {
		best := 0
		for i := range rest {
			if rest[i] > rest[best]+1e-7 {
				best = i
			}
		}
		steps[best], rest[best] = steps[best]+1, -1
	}
	return steps[at] * step
}

// Plans bent at random are told as truly as the examples: some figures of each are worked out again from what is shown.
func TestRandomPlansAreToldTruly(t *testing.T) {
	example, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Weigh(drawPlan(t, example, shelf), shelf).Time(shelf, pour.Hand{})
		paths := s.Explained()
		for range min(6, len(paths)) {
			path := rapid.SampledFrom(paths).Draw(t, "figure")
			if a, err := s.Explain(path, shelf, pour.Hand{}); err != nil {
				t.Fatal(err)
			} else if a.Value.Known {
				checkAccount(t, s.Plan.Name, a)
			}
		}
	})
}

// Lines are what screen and paper show: nothing of an account is left out of them.
func TestAnAccountIsToldInFull(t *testing.T) {
	p, shelf := shelved(t)
	p.Base.SuperfatPercent = -1
	s := pour.Work(p, shelf, pour.Hand{})
	tell := func(path string) string {
		a, err := s.Explain(path, shelf, pour.Hand{})
		if err != nil {
			t.Fatal(err)
		}
		text := ""
		for _, l := range a.Tell() {
			text += l.Lead + "|" + l.Text + "\n"
		}
		return text
	}
	for path, wants := range map[string][]string{
		"base.superfat_percent":           {"superfat|-1 %", "base.superfat_percent", "= -1", "your plan, base.superfat_percent", "band|", "every oil at the low", "lye-heavy (stop)", "stands now: base: superfat"},
		"base.naoh_weighed_g":             {"NaOH, exact|", "pure NaOH ÷ (purity of the NaOH ÷ 100)", "(base.naoh_pure_g)", "(base.naoh_purity_percent)"},
		"base.oils[0].sap_koh_mg_g":       {"the shelf: ", "not looked up", "band|184 mg/g to"},
		"base.jugs[0].stage_min.stiff[1]": {"minute by minute", "80 % of pours", "clock-wide (note)"},
		"mould.shape":                     {"shape|loaf", "one of loaf, slab"},
		"mould.bar_mm":                    {"your plan, mould.bar_mm", "from 5 to 1000"},
		"swirl.seed":                      {"your plan, swirl.seed"},
	} {
		text := tell(path)
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not in\n%s", path, want, text)
			}
		}
	}
	p.Base.StockLyePercent, p.Base.LyeConcentrationPercent = 20, 40
	s = pour.Work(p, shelf, pour.Hand{})
	if text := tell("base.batter_g"); !strings.Contains(text, "not worked out: stock lye") {
		t.Errorf("an unknown figure is told as\n%s", text)
	}
}
