package planfile

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour"
)

func TestEveryValidPlanIsReadBackExactlyAsItWasWritten(t *testing.T) {
	s := shelf(t)
	rapid.Check(t, func(rt *rapid.T) {
		p := drawPlan(rt, s)
		if faults := p.Check(s); len(faults) > 0 {
			rt.Fatalf("the generator made a plan that is none: %v", faults[0])
		}
		text, err := encode(p)
		if err != nil {
			rt.Fatal(err)
		}
		back, err := Read("plan.toml", strings.NewReader(text), s)
		if err != nil {
			rt.Fatalf("%v\n%s", err, text)
		}
		if d := difference(p, back); d != "" {
			rt.Fatalf("%s\n%s", d, text)
		}
		if again, _ := encode(back); again != text {
			rt.Fatalf("the second writing differs:\n%s\n%s", text, again)
		}
	})
}

func TestTheSharedPlansSurviveWritingAndReading(t *testing.T) {
	for _, name := range goodPlans() {
		p := mustRead(t, planText(t, name))
		text := mustEncode(t, p)
		back := mustRead(t, text)
		if d := difference(p, back); d != "" {
			t.Errorf("%s: %s", name, d)
		}
		if again := mustEncode(t, back); again != text {
			t.Errorf("%s is written in two ways:\n%s\n%s", name, text, again)
		}
	}
}

// TestNoFieldOfAPlanIsForgottenInTheFile fills every field there is, so that one added to the plan and not to the file is found.
func TestNoFieldOfAPlanIsForgottenInTheFile(t *testing.T) {
	var p pour.Plan
	fill(reflect.ValueOf(&p).Elem())
	p.Base.Bags = "" // the base is in no bag: its table has no such key
	text := mustEncode(t, p)
	back, err := read("plan.toml", text, nil)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if d := difference(p, back); d != "" {
		t.Error(d)
	}
}

func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("word")
	case reflect.Float64:
		v.SetFloat(1.25)
	case reflect.Int, reflect.Int64:
		v.SetInt(3)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		fill(v.Index(0))
		fill(v.Index(1))
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem())
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[time.Time]() {
			v.Set(reflect.ValueOf(time.Date(2026, 1, 2, 3, 4, 5, 6, time.UTC)))
			return
		}
		for i := range v.NumField() {
			fill(v.Field(i))
		}
	default:
		panic(fmt.Sprintf("a plan holds a %v, which the file has no way to write", v.Kind()))
	}
}

func TestAWrittenPlanSaysWhoWritesItAndLooksWrittenByHand(t *testing.T) {
	text := mustEncode(t, mustRead(t, planText(t, "everykey.toml")))
	if !strings.HasPrefix(text, "# pourbench writes this file; comments you add here are not kept, use notes\nformat = 1\nname = \"Every key\"\n") {
		t.Errorf("it begins:\n%.200s", text)
	}
	for _, want := range []string{
		"notes = \"\"\"\nFirst line, with a \"quoted\" word and a \\\\ backslash.\nSecond line.\"\"\"\n",
		"pour_at = 2026-12-05T10:00:00\n",
		"blend = [ { at_min = 0.5, s = 12.5 }, { at_min = 2, s = 8 } ]\n",
		"\n\n[[base.jug]]\nname = \"pot\"\nshare_percent = 70\nheld = true\n",
		"[[base.jug.colourant]]\ncolourant = \"titanium-white-water\"\ndose_percent = 0.5\n",
		"into = [\"côté bleu\"]\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in:\n%s", want, text)
		}
	}
}

func TestAKeyAtADefaultThatIsNotZeroIsStillWritten(t *testing.T) {
	text := mustEncode(t, mustRead(t, planText(t, "smallest.toml")))
	for _, want := range []string{"superfat_percent = 5\n", "technique = \"layers\"\n", "loss_percent = 1.5\n", "cut_after_h = 20\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in:\n%s", want, text)
		}
	}
	for _, not := range []string{"notes", "pour_at", "batter_c", "stock_lye_percent", "[icing]", "blend", "order"} {
		if strings.Contains(text, not+" =") || strings.Contains(text, "\n"+not) {
			t.Errorf("%q says nothing and is written all the same:\n%s", not, text)
		}
	}
}

func TestAZeroThatIsNotTheDefaultSurvives(t *testing.T) {
	p := mustRead(t, planText(t, "smallest.toml"))
	p.Mould.LossPercent, p.Base.SuperfatPercent, p.Run.SplitMin, p.Room.TemperatureC = 0, 0, 0, 0
	if d := difference(p, mustRead(t, mustEncode(t, p))); d != "" {
		t.Error(d)
	}
}

func TestFloatsTakeTheirShortestExactForm(t *testing.T) {
	for want, v := range map[string]float64{
		"38": 38, "0.1": 0.1, "33.333333333333336": 100.0 / 3, "0": math.Copysign(0, -1), "-0.5": -0.5, "123456": 123456,
		"0.000123": 0.000123, "0.000001": 1e-6, "1e-07": 1e-7, "1e+15": 1e15, "1.7976931348623157e+308": math.MaxFloat64, "5e-324": 5e-324,
	} {
		var e emitter
		if got := e.float("x", v); got != want || e.err != nil {
			t.Errorf("%v is written %s, want %s (%v)", v, got, want, e.err)
		}
	}
}

func TestAPlanThatNoFileCanHoldIsNotWritten(t *testing.T) {
	good := mustRead(t, planText(t, "meadow.toml"))
	for path, spoil := range map[string]func(*pour.Plan){
		"mould.fill_mm":             func(p *pour.Plan) { p.Mould.FillMM = math.NaN() },
		"base.jug[1].share_percent": func(p *pour.Plan) { p.Base.Jugs[1].SharePercent = math.Inf(1) },
		"base.blend[0].s":           func(p *pour.Plan) { p.Base.Blend[0].S = math.Inf(-1) },
		"pour_at":                   func(p *pour.Plan) { p.PourAt = time.Date(12026, 1, 1, 0, 0, 0, 0, time.UTC) },
	} {
		p := good.Clone()
		spoil(&p)
		var text strings.Builder
		if err := Write(&text, p); err == nil || text.Len() > 0 || !strings.Contains(err.Error(), path+" is ") {
			t.Errorf("%s: err = %v, %d bytes written", path, err, text.Len())
		}
	}
}

func TestTheFirstAndTheLastYearAFileCanHoldAreWritten(t *testing.T) {
	p := mustRead(t, planText(t, "smallest.toml"))
	for _, year := range []int{1, 9999} {
		p.PourAt = time.Date(year, 2, 3, 4, 5, 6, 0, time.UTC)
		if got := mustRead(t, mustEncode(t, p)).PourAt; !got.Equal(p.PourAt) {
			t.Errorf("the year %d came back as %v", year, got)
		}
	}
}

func TestAnyTextStandsQuotesBackslashesAndEndsOfLines(t *testing.T) {
	good := mustRead(t, planText(t, "smallest.toml"))
	rapid.Check(t, func(rt *rapid.T) {
		p := good.Clone()
		p.Notes = rapid.StringOfN(rapid.SampledFrom([]rune("a\"\\\n'#é [=")), 1, 20, -1).Draw(rt, "notes")
		text, err := encode(p)
		if err != nil {
			rt.Fatal(err)
		}
		back, err := read("plan.toml", text, nil)
		if err != nil || back.Notes != p.Notes {
			rt.Fatalf("%q became %q (%v)\n%s", p.Notes, back.Notes, err, text)
		}
	})
}

func TestATimeKeepsItsClockAndLosesItsZone(t *testing.T) {
	p := mustRead(t, planText(t, "smallest.toml"))
	p.PourAt = time.Date(2026, 7, 1, 9, 30, 0, 0, time.FixedZone("summer", 7200))
	got := mustRead(t, mustEncode(t, p)).PourAt
	if want := time.Date(2026, 7, 1, 9, 30, 0, 0, time.UTC); !got.Equal(want) {
		t.Errorf("the clock shows %v, want %v", got, want)
	}
}

// An order of the maker's own names every act of the pour: with many jugs and passes that is a long list, and what was written must be read.
func TestAnOrderOfManyRoundsIsReadBack(t *testing.T) {
	p := mustRead(t, planText(t, "meadow.toml"))
	for i := range 64 * 60 * 2 {
		p.Run.Order = append(p.Run.Order, fmt.Sprintf("base pour jug %d round %d", i%64, i/64))
	}
	if got := mustRead(t, mustEncode(t, p)); len(got.Run.Order) != len(p.Run.Order) {
		t.Errorf("%d of %d tasks came back", len(got.Run.Order), len(p.Run.Order))
	}
}
