package paper

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour"
)

func figures(t rapid.TB, s pour.Sheet) map[string]any {
	t.Helper()
	var out bytes.Buffer
	if err := WriteFigures(&out, s); err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	return got
}

func keys(v any) string {
	object, ok := v.(map[string]any)
	if !ok {
		return "no object"
	}
	var list []string
	for k := range object {
		list = append(list, k)
	}
	slices.Sort(list)
	return strings.Join(list, " ")
}

func sorted(list string) string {
	words := strings.Fields(list)
	slices.Sort(words)
	return strings.Join(words, " ")
}

// The keys are the contract with scripts: a change here breaks them.
func TestFiguresHoldExactlyTheKeysScriptsRelyOn(t *testing.T) {
	p := testPlan()
	p.Top.Toppings = []pour.Topping{{Parts: []pour.ToppingPart{{Material: "salt", Percent: 100}}}}
	got := figures(t, work(p))
	base := got["base"].(map[string]any)
	jug := base["jugs"].([]any)[0].(map[string]any)
	for _, c := range []struct {
		name string
		v    any
		want string
	}{
		{"top", got, "plan scale_step_g lye_step_g loss_percent base icing piping run cut_run neighbours bars cut toppings warnings embeds embed_kinds cure cost"},
		{"base", base, batchKeys()},
		{"icing", got["icing"], batchKeys() + " shape_g made_g"},
		{"oil", base["oils"].([]any)[0], "name g sap_koh_mg_g sap_low_koh_mg_g sap_high_koh_mg_g"},
		{"extra", base["extras"].([]any)[0], "name g water_percent"},
		{"jug", jug, "name share_percent batter_g batter_weigh_g total_g superfat_percent superfat_low_percent colourants scents scent_load_percent stage_min pour_at_min late_chance_percent"},
		{"colourant", jug["colourants"].([]any)[0], "name pigment_g carrier_g"},
		{"scent", jug["scents"].([]any)[0], "name g"},
		{"stages", jug["stage_min"], "emulsion light medium thick stiff"},
		{"task", got["run"].([]any)[0], "task batch jug item part round start_min length_min"},
		{"neighbour", got["neighbours"].([]any)[0], "a b contact_percent mud"},
		{"bars", got["bars"], "bar_count thickness_mm cut_g cured_g final_moisture_percent icing_per_bar_g stands_mm over_rim_mm"},
		{"cure", got["cure"], "thick_mm wide_mm high_mm cut_moisture_percent loss_percent loss_sd_percent tau_days ln_tau_sd criterion_percent ready_day ready_early_day ready_late_day final_g pack_day pack_g pack_light_g pack_heavy_g pack_loss_percent cut_for_label_g own_batches"},
		{"cut", got["cut"], "cuts_mm marks_mm across_mm across_marks_mm kerf_mm lane_mm bars trims sides_g sample kerf_g lightest_g heaviest_g gang_at_mm gang_pitch_mm gang_worst_mm opening_need_mm bed_need_mm"},
		{"a bar", got["cut"].(map[string]any)["bars"].([]any)[0], "start_mm end_mm left_mm right_mm cut_g cured_g base_g icing_g embed_g topping_g"},
		{"topping", got["toppings"].([]any)[0], "name when turn per_bar_g all_g adds_g covers_percent pieces cut_hits hands_min weeps_rh_percent melts_c plastic_percent parts"},
		{"part", got["toppings"].([]any)[0].(map[string]any)["parts"].([]any)[0], "name percent g ingredients"},
		{"warning", got["warnings"].([]any)[0], "code severity where text"},
	} {
		if diff := cmp.Diff(sorted(c.want), keys(c.v)); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

func batchKeys() string {
	return `oils_g naoh_pure_g koh_pure_g naoh_purity_percent koh_purity_percent naoh_weighed_g koh_weighed_g stock_lye_g stock_lye_percent water_to_add_g
		extras_g water_in_extras_g lye_concentration_percent lye_as_mixed_percent batter_g batter_ml superfat_percent superfat_as_weighed_percent
		superfat_low_percent superfat_high_percent lye_rise_k lye_in_at_min oils extras jugs`
}

func TestFiguresOfAJugAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := testPlan()
		p.Base.Size, p.Base.OilsG = pour.SizeOils, rapid.Float64Range(50, 5000).Draw(t, "oils")
		p.Show.ScaleStepG = rapid.SampledFrom([]float64{0.01, 0.1, 0.5, 1, 5}).Draw(t, "step")
		r := Figures(work(p))
		for _, b := range []BatchReport{r.Base, r.Icing.BatchReport} {
			exact, weighed := 0.0, 0.0
			for _, j := range b.Jugs {
				exact, weighed = exact+*j.BatterG, weighed+*j.BatterWeighG
				total := *j.BatterWeighG
				for _, c := range j.Colourants {
					total += *c.PigmentG + *c.CarrierG
				}
				for _, x := range j.Scents {
					total += *x.G
				}
				near(t, "total_g", *j.TotalG, total)
			}
			near(t, "batter_g of the jugs", exact, *b.BatterG)
			near(t, "batter_weigh_g of the jugs", weighed, math.Round(*b.BatterG/p.Show.ScaleStepG)*p.Show.ScaleStepG)
			near(t, "batter_g", *b.BatterG, *b.OilsG+*b.NaOHWeighedG+*b.KOHWeighedG+*b.StockLyeG+*b.WaterToAddG+*b.ExtrasG)
		}
	})
}

func near(t *rapid.T, what string, got, want float64) {
	if math.Abs(got-want) > 1e-6*max(1, math.Abs(want)) {
		t.Fatalf("%s is %v, want %v", what, got, want)
	}
}

func TestUnknownFiguresAreNullInJSON(t *testing.T) {
	p := testPlan()
	p.Icing = nil
	s := pour.Weigh(p, testShelf())
	s.Base.Heat.LyeRiseK, s.Base.Size.BatterML = pour.Figure{}, math.NaN()
	got := figures(t, s)
	base := got["base"].(map[string]any)
	jug := base["jugs"].([]any)[0].(map[string]any)
	for name, v := range map[string]any{
		"icing": got["icing"], "lye_rise_k": base["lye_rise_k"], "a NaN": base["batter_ml"], "late chance": jug["late_chance_percent"],
		"emulsion": jug["stage_min"].(map[string]any)["emulsion"].([]any)[1],
	} {
		if v != nil {
			t.Errorf("%s is %v, want null", name, v)
		}
	}
	if base["koh_weighed_g"] != 0.0 {
		t.Errorf("a plan without KOH weighs %v of it, want 0", base["koh_weighed_g"])
	}
}

func TestAPlanWithFaultsGivesNullsAndItsWarnings(t *testing.T) {
	p := testPlan()
	p.Base.Oils[0].Percent = 10
	got := figures(t, work(p))
	base := got["base"].(map[string]any)
	if base["oils_g"] != nil || base["naoh_weighed_g"] != nil || len(base["jugs"].([]any)) != 0 || got["bars"].(map[string]any)["bar_count"] != nil {
		t.Errorf("a plan that cannot be worked out has figures: %v", base)
	}
	if first := got["warnings"].([]any)[0].(map[string]any); first["code"] != "plan-fault" || first["severity"] != "stop" {
		t.Errorf("first warning is %v", first)
	}
}

func TestFiguresAreTheSameBytesEveryTime(t *testing.T) {
	var one, two bytes.Buffer
	if err := errors.Join(WriteFigures(&one, work(testPlan())), WriteFigures(&two, work(testPlan()))); err != nil {
		t.Fatal(err)
	}
	if one.String() != two.String() {
		t.Error("two reports of one plan differ")
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestWriteFiguresSaysWhatItCouldNotWrite(t *testing.T) {
	err := WriteFigures(fullDisk{}, work(testPlan()))
	if err == nil || !strings.Contains(err.Error(), "Test Meadow") || !strings.Contains(err.Error(), "no space left") {
		t.Errorf("got %v", err)
	}
}
