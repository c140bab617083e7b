package ruler_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/pour/ruler"
	"pourbench/presets"
)

// sheetOf is the sheet of a built-in plan that was bent.
func sheetOf(t *testing.T, file string, bend func(*pour.Plan)) pour.Sheet {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	f, err := os.Open("../../presets/plans/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	plan, err := planfile.Read(file, f, shelf)
	if err != nil {
		t.Fatal(err)
	}
	bend(&plan)
	if faults := plan.Check(shelf); len(faults) > 0 {
		t.Fatal(faults)
	}
	return pour.Weigh(plan, shelf)
}

func rulerOf(t *testing.T, s pour.Sheet) ruler.Ruler {
	t.Helper()
	r, err := ruler.Of(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The first worked example: 250 mm, bars of 25, a wire of 0.6, both ends trimmed alike. Marks are the nearest half millimetres.
func TestTheRulerOfAPlanIsItsCutPlan(t *testing.T) {
	r := rulerOf(t, sheetOf(t, "alpine-meadow.toml", func(p *pour.Plan) {
		p.Mould.LengthMM, p.Mould.BarMM = 250, 25
		p.Cut.KerfMM, p.Cut.TrimAMM, p.Cut.TrimBMM, p.Cut.Left = 0.6, 1, 1, pour.LeftTrims
		p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 12, HeightMM: 10, PerBar: 2}}
	}))
	if len(r.Edges) != 1 || r.KerfMM != 0.6 {
		t.Fatalf("%d edges, kerf %g", len(r.Edges), r.KerfMM)
	}
	e := r.Edges[0]
	exactly(t, "cuts", e.Cuts, []float64{9.8, 35.4, 61.0, 86.6, 112.2, 137.8, 163.4, 189.0, 214.6, 240.2})
	exactly(t, "marks", e.Marks, []float64{10, 35.5, 61, 86.5, 112, 138, 163.5, 189, 214.5, 240})
	var middles, marks []float64
	for _, c := range e.Centres {
		middles, marks = append(middles, c.MM), append(marks, c.Mark)
	}
	exactly(t, "middles", middles, []float64{22.6, 48.2, 73.8, 99.4, 125.0, 150.6, 176.2, 201.8, 227.4})
	exactly(t, "marks of the middles", marks, []float64{22.5, 48, 74, 99.5, 125, 150.5, 176, 202, 227.5})
	trims := 0.0
	for _, s := range e.Spans {
		if s.Kind == ruler.Trim {
			trims += s.To - s.From
		}
	}
	if math.Abs(trims-19) > 1e-9 {
		t.Errorf("%g mm are trimmed, 19 are left", trims)
	}
	if list := r.List(); !strings.Contains(list, "    10.0  cut 1, trim | bar 1\n    22.5  middle of moon\n") {
		t.Errorf("%s", list)
	}
}

// A slab of 240 by 180 in bars of 80 by 45 is cut along both: at 80 and 160, and at 45, 90 and 135. Its plan shows inches, of 25.4 mm: 80 is 3.1496,
// 160 is 6.2992, 45 is 1.7717, 135 is 5.3150.
func TestASlabHasARulerForEachSide(t *testing.T) {
	r := rulerOf(t, sheetOf(t, "autumn-slab.toml", func(p *pour.Plan) {
		p.Mould.LengthMM, p.Mould.WidthMM, p.Mould.BarMM, p.Mould.BarWidthMM = 240, 180, 80, 45
	}))
	if len(r.Edges) != 2 {
		t.Fatalf("%d edges", len(r.Edges))
	}
	exactly(t, "cuts along it", r.Edges[0].Cuts, []float64{80, 160})
	exactly(t, "cuts across it", r.Edges[1].Cuts, []float64{45, 90, 135})
	for _, want := range []string{"3.15  cut 1, bars 1 to 4 | bars 5 to 8\n", "6.30  cut 2, bars 5 to 8 | bars 9 to 12\n", "1.77  cut 1, row 1 | row 2\n", "5.31  cut 3, row 3 | row 4\n", "\ninches, each", "9.45 in\n"} {
		if !strings.Contains(r.List(), want) {
			t.Errorf("no line %q in %s", want, r.List())
		}
	}
	if r.Edges[1].LengthMM != 180 || len(r.Edges[0].Spans) != 3 || len(r.Edges[1].Spans) != 4 {
		t.Errorf("%+v", r.Edges)
	}
}

// A tube is cut along what it is filled to, from its lower end: 200 mm in rounds of 30 leave 20.
func TestARulerOfATubeGoesUpItsHeight(t *testing.T) {
	r := rulerOf(t, sheetOf(t, "alpine-meadow.toml", func(p *pour.Plan) {
		p.Mould = pour.Mould{Shape: pour.ShapeTube, LengthMM: 75, WidthMM: 75, HeightMM: 220, FillMM: 200, BarMM: 30, LossPercent: 1}
		p.Icing, p.Top = nil, pour.Top{}
	}))
	e := r.Edges[0]
	exactly(t, "cuts", e.Cuts, []float64{30, 60, 90, 120, 150, 180})
	if e.LengthMM != 200 || !strings.Contains(r.List(), "along the tube from its lower end, end A, 200 mm") {
		t.Errorf("%s", r.List())
	}
}

func TestCavitiesHaveNoRuler(t *testing.T) {
	s := sheetOf(t, "alpine-meadow.toml", func(p *pour.Plan) {
		p.Mould = pour.Mould{Shape: pour.ShapeCavity, LengthMM: 80, WidthMM: 55, HeightMM: 30, FillMM: 28, BarMM: 80, Cavities: 12}
	})
	if _, err := ruler.Of(s); err == nil || !strings.Contains(err.Error(), "is not cut") {
		t.Errorf("%v", err)
	}
	if _, err := ruler.Of(pour.Sheet{}); err == nil || !strings.Contains(err.Error(), "cannot be worked out") {
		t.Errorf("%v", err)
	}
}
