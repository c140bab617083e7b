package planfile

import (
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/presets"
)

func TestTheSmallestPlanTakesTheDocumentedDefaults(t *testing.T) {
	got := mustRead(t, planText(t, "smallest.toml"))
	want := pour.Plan{
		Name:  "Smallest",
		Show:  pour.Show{Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 0.1, LyeStepG: 0.1},
		Mould: pour.Mould{Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 75, FillMM: 62, BarMM: 25, LossPercent: 1.5},
		Room:  pour.Room{TemperatureC: 21},
		Swirl: pour.Swirl{Technique: "layers"},
		Bed:   pour.Bed{Keep: "bare", CutAfterH: 20, CureDays: 28},
		Run: pour.RunPlan{
			SplitMin: 0.5, StirMin: 0.5, ScentMin: 0.5, PourMin: 1, ChangeMin: 0.1, IntoPotMin: 0.5, TurnMin: 0.25, PourOutMin: 1.5,
			WireMin: 1, CombMin: 1, SpoonMin: 3, LevelMin: 0.25, PipeMin: 2, BedMin: 2,
		},
		Piping: pour.Piping{ResiduePercent: 7, BagG: 250, UnitS: 7, FillMin: 2.5},
		Cut:    pour.Cut{ClearMM: 3, PlaceMM: 1, WanderMM: 0.5, SightDeg: 5},
		Base: pour.Batch{
			Size: "mould", SuperfatPercent: 5, LyeConcentrationPercent: 33, NaOHPurityPercent: 100, KOHPurityPercent: 100,
			OilsC: 35, LyeC: 35, SplitAtMin: 2, FinalMoisturePercent: 10, Carrier: "extra",
			Oils: []pour.OilPart{{Oil: "olive", Percent: 100}},
			Jugs: []pour.Jug{{Name: "pot", SharePercent: 100}},
		},
	}
	if d := difference(want, got); d != "" {
		t.Error(d)
	}
}

func TestAPlanWrittenByHandIsReadAsItStands(t *testing.T) {
	p := mustRead(t, planText(t, "meadow.toml"))
	if len(p.Base.Jugs) != 3 || p.Base.Jugs[1].BatterColour != "#5566b0" || p.Base.Jugs[1].Colourants[0].DosePercent != 0.45 {
		t.Errorf("jugs: %+v", p.Base.Jugs)
	}
	if len(p.Base.Blend) != 1 || p.Base.Blend[0] != (pour.Burst{AtMin: 0, S: 20}) {
		t.Errorf("blend: %+v", p.Base.Blend)
	}
	if p.Icing == nil || p.Icing.Size != pour.SizeBar || p.Icing.PerBarG != 18 || p.Icing.StartAtMin != 25 {
		t.Errorf("icing: %+v", p.Icing)
	}
	if p.Base.BatterMeasured || !p.PourAt.IsZero() {
		t.Error("what is commented out or missing was taken for given")
	}
}

func TestEveryKeyOfTheFileIsRead(t *testing.T) {
	p := mustRead(t, planText(t, "everykey.toml"))
	if want := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC); !p.PourAt.Equal(want) {
		t.Errorf("pour_at = %v, want the wall clock %v", p.PourAt, want)
	}
	if p.Notes != "First line, with a \"quoted\" word and a \\ backslash.\nSecond line." {
		t.Errorf("notes = %q", p.Notes)
	}
	if p.Swirl.Seed != -9007199254740993 {
		t.Errorf("seed = %d: it went through a float", p.Swirl.Seed)
	}
	if !p.Base.BatterMeasured || p.Base.BatterC != 0 || !p.Icing.BatterMeasured || p.Icing.BatterC != 31 {
		t.Error("a batter temperature that stands in the file counts as measured, 0 °C too")
	}
	if p.Base.Jugs[1].Name != "côté bleu" || p.Base.Scents[0].Into[0] != "côté bleu" {
		t.Error("a name with accents was changed")
	}
}

func TestTheExamplePlansOfTheProgramLoad(t *testing.T) {
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Read(name, strings.NewReader(string(text)), shelf(t)); err != nil {
			t.Error(err)
		}
	}
}

func TestASizeThatIsGivenNamesTheWayABatchIsSized(t *testing.T) {
	base := strings.Replace(planText(t, "smallest.toml"), "[[base.oil]]", "[base]\noils_g = 900\n[[base.oil]]", 1)
	if p := mustRead(t, base); p.Base.Size != pour.SizeOils || p.Base.OilsG != 900 {
		t.Errorf("base is sized by %q, %v g", p.Base.Size, p.Base.OilsG)
	}
	icing := strings.Replace(planText(t, "meadow.toml"), "per_bar_g = 18", "layer_mm = 9", 1)
	if p := mustRead(t, icing); p.Icing.Size != pour.SizeLayer {
		t.Errorf("icing is sized by %q", p.Icing.Size)
	}
}

func TestListsCanBeWrittenInEitherOfTheTwoWays(t *testing.T) {
	long := planText(t, "smallest.toml")
	short := long[:strings.Index(long, "[[base.oil]]")] +
		"[base]\noil = [ { oil = \"olive\", percent = 100.0 } ]\njug = [\n  # the pot\n  { name = \"pot\", share_percent = 1e2 },\n]\n"
	if d := difference(mustRead(t, long), mustRead(t, short)); d != "" {
		t.Error(d)
	}
}

func TestAFloatThatIsWholePassesForAWholeNumber(t *testing.T) {
	text := planText(t, "smallest.toml") + "[swirl]\npasses = 3.0\nseed = 7.0\n"
	if p := mustRead(t, text); p.Swirl.Passes != 3 || p.Swirl.Seed != 7 {
		t.Errorf("swirl: %+v", p.Swirl)
	}
}

func TestTextIsMadeSafeForTerminalsWhenItIsRead(t *testing.T) {
	text := planText(t, "smallest.toml")
	text = strings.Replace(text, `"Smallest"`, `"Sm\u001b]52;c;aGk=\u0007all\u202est"`, 1)
	text = strings.Replace(text, "[mould]", `notes = "one\r\ntwo\u001b[2J"`+"\n[mould]", 1)
	text = strings.Replace(text, `"pot"`, `"p\u009bot"`, 1)
	p := mustRead(t, text)
	for _, s := range []string{p.Name, p.Notes, p.Base.Jugs[0].Name} {
		if strings.ContainsAny(s, "\x1b\a\r\u009b\u202e") {
			t.Errorf("%q still moves the terminal", s)
		}
	}
	if p.Name != "Smallst" || p.Base.Jugs[0].Name != "pot" || p.Notes != "one\ntwo" {
		t.Errorf("%q, jug %q, notes %q", p.Name, p.Base.Jugs[0].Name, p.Notes)
	}
}

func TestAByteOrderMarkAndWindowsLinesAreNoHindrance(t *testing.T) {
	plain := planText(t, "meadow.toml")
	windows := "\ufeff" + strings.ReplaceAll(plain, "\n", "\r\n")
	if d := difference(mustRead(t, plain), mustRead(t, windows)); d != "" {
		t.Error(d)
	}
}
