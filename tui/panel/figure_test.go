package panel

import (
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/paper"
	"pourbench/tui/grid"
)

// written is every number that `pourbench figures` writes of a plan, by its path.
func written(t *testing.T, s *pour.Sheet) map[string]float64 {
	t.Helper()
	text, err := json.Marshal(paper.Figures(*s))
	if err != nil {
		t.Fatal(err)
	}
	var report any
	if err := json.Unmarshal(text, &report); err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, x := range v {
				walk(strings.TrimPrefix(path+"."+k, "."), x)
			}
		case []any:
			for i, x := range v {
				walk(path+"["+strconv.Itoa(i)+"]", x)
			}
		case float64:
			out[path] = v
		}
	}
	walk("", report)
	return out
}

// figures calls a function for every cell of every panel that shows a figure.
func figures(f *Facts, call func(p *Panel, c grid.Cell)) {
	everyPanel(func(_ Station, p *Panel) {
		if p.Grid == nil {
			return
		}
		for _, r := range p.Grid(f).Rows {
			for _, c := range r.Cells {
				if c.Figure != "" {
					call(p, c)
				}
			}
		}
	})
}

// A figure's name leads to that figure: where `pourbench figures` writes one of that name, or it can be explained, it is the number in the cell.
func TestACellsFigureIsWhatIsWrittenAndExplainedUnderItsName(t *testing.T) {
	number := regexp.MustCompile(`^-?\d+(\.(\d+))?`)
	for _, plan := range []string{meadow, "../../presets/plans/alpine-meadow.toml", "../../presets/plans/autumn-slab.toml", "../../presets/plans/first-snow.toml"} {
		f := worked(t, plan, func(p *pour.Plan) {
			p.Show = pour.Show{Mass: pour.MassGram, Temperature: pour.DegreesC, Length: pour.LengthMM, ScaleStepG: 0.1, LyeStepG: 0.01}
		})
		report := written(t, f.Sheet)
		compared := map[string]bool{}
		figures(f, func(p *Panel, c grid.Cell) {
			want, there := report[c.Figure]
			if account, err := f.Sheet.Explain(c.Figure, f.Shelf, pour.Hand{}); err == nil && account.Value.Known {
				want, there = account.Value.V, true
			}
			digits := number.FindStringSubmatch(strings.TrimLeft(c.Text, "!■ "))
			if !there || digits == nil || strings.HasSuffix(c.Figure, "start_min") || strings.HasSuffix(c.Figure, "length_min") {
				return
			}
			got, err := strconv.ParseFloat(digits[0], 64)
			if half := math.Pow10(-len(digits[2])) * 0.5001; err != nil || math.Abs(got-want) > half {
				t.Errorf("%s, %s: %s shows %q, under that name stands %v", plan, p.ID, c.Figure, c.Text, want)
			}
			compared[c.Figure] = true
		})
		for _, want := range []string{
			"base.superfat_percent", "base.naoh_to_weigh_g", "base.oils[1].weigh_g", "base.jugs[1].total_ml", "base.lye_peak_c", "base.superfat_as_weighed_percent", "base.superfat_low_percent", "base.superfat_high_percent", "base.water_to_add_g", "base.lye_rise_k", "base.lye_as_mixed_percent",
			"base.oils[1].sap_koh_mg_g", "base.oils[0].sap_low_koh_mg_g", "base.jugs[1].share_percent", "base.jugs[1].batter_weigh_g", "base.jugs[1].total_g",
			"base.jugs[1].superfat_percent", "base.jugs[1].late_chance_percent", "base.jugs[1].colourants[0].pigment_g", "base.jugs[1].scent_load_percent",
			"bars.bar_count", "bars.cut_g", "bars.cured_g", "loss_percent", "scale_step_g", "lye_step_g",
		} {
			if !compared[want] {
				t.Errorf("%s: no panel shows %s", plan, want)
			}
		}
	}
}

// Names are paths as `pourbench figures` writes them, also where it does not write the figure.
func TestFiguresAreNamedByPaths(t *testing.T) {
	path := regexp.MustCompile(`^((base|icing|show|mould|room|piping|cut|cure|cost|top|swirl|bed|run|bars|gel|label|totals\[\d+\]|run\[\d+\]|orders\[\d+\]|toppings\[\d+\]|embeds\[\d+\]|embed_kinds\[\d+\]|neighbours\[\d+\])(\.[a-z_]+(\[\d+\])?)+|[a-z_]+)$`)
	f := worked(t, meadow, nil)
	figures(f, func(p *Panel, c grid.Cell) {
		if !path.MatchString(c.Figure) {
			t.Errorf("%s: %q is no path", p.ID, c.Figure)
		}
	})
}

// Every cell that only shows a number says which figure it is, so that it can be asked where it comes from.
func TestEveryNumberThatIsOnlyShownNamesItsFigure(t *testing.T) {
	unnamed := map[string]bool{"extra": true, "limit %": true} // a name, and a limit from the shelf
	f := worked(t, meadow, nil)
	digits := regexp.MustCompile(`\d`)
	everyPanel(func(_ Station, p *Panel) {
		if p.Grid == nil {
			return
		}
		g := p.Grid(f)
		for _, r := range g.Rows {
			for i, c := range r.Cells {
				if c.Kind == grid.Shown && c.Figure == "" && digits.MatchString(c.Text) && i < len(g.Columns) && !unnamed[g.Columns[i].Head] && p.ID != "measures" && p.ID != OnShelf {
					t.Errorf("%s: %q under %q names no figure", p.ID, c.Text, g.Columns[i].Head)
				}
			}
		}
	})
}
