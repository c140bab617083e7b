package shopping_test

import (
	"bytes"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/lot"
	"pourbench/pour/planfile"
	"pourbench/pour/stock/shopping"
	"pourbench/presets"
)

func examples(t testing.TB) (pour.Shelf, []pour.Plan) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	var out []pour.Plan
	for _, name := range presets.Plans() {
		src, err := presets.Plan(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planfile.Read(name, bytes.NewReader(src), shelf)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return shelf, out
}

// wants is what a plan wants of each material.
func wants(p pour.Plan, shelf pour.Shelf) map[lot.Material]lot.Quantity {
	s := pour.Weigh(p, shelf)
	out := map[lot.Material]lot.Quantity{}
	for _, n := range s.Needs(shelf) {
		out[n.Material] += n.Q
	}
	return out
}

func enough(want, free map[lot.Material]lot.Quantity) bool {
	for m, q := range want {
		if f, ok := free[m]; ok && q > f {
			return false
		}
	}
	return true
}

// larger is the plan some steps larger, made by hand.
func larger(p pour.Plan, was pour.Plan, steps float64) pour.Plan {
	p = p.Clone()
	var by float64
	switch {
	case p.Base.Size == pour.SizeOils:
		p.Base.OilsG += steps
		by = p.Base.OilsG / was.Base.OilsG
	case p.Mould.Shape == pour.ShapeCavity:
		p.Mould.Cavities += int(steps)
		return p
	default:
		p.Mould.FillMM = math.Round(p.Mould.FillMM*10+steps) / 10
		by = p.Mould.FillMM / was.Mould.FillMM
	}
	if p.Icing != nil && p.Icing.Size == pour.SizeBar {
		p.Icing.PerBarG = max(math.Floor(was.Icing.PerBarG*by*10+1e-6), 1) / 10
	}
	return p
}

// What is found fits, nothing up to fifty steps larger does, and what is said to limit it is what then lacks.
func TestTheLargestBatchFitsAndNoneLarger(t *testing.T) {
	shelf, plans := examples(t)
	for i := range plans {
		for _, size := range []string{pour.SizeMould, pour.SizeOils} {
			p := plans[i].Clone()
			if p.Base.Size = size; size == pour.SizeOils {
				p.Base.OilsG = 900
			}
			t.Run(p.Name+" by "+size, func(t *testing.T) { largestFits(t, p, shelf) })
		}
	}
	p := plans[3].Clone()
	p.Top = pour.Blank().Top
	p.Mould = pour.Mould{Shape: pour.ShapeCavity, LengthMM: 80, WidthMM: 55, HeightMM: 30, FillMM: 25, BarMM: 20, Cavities: 12, LossPercent: 1.5}
	t.Run("cavities", func(t *testing.T) { largestFits(t, p, shelf) })
}

func largestFits(t *testing.T, p pour.Plan, shelf pour.Shelf) {
	want := wants(p, shelf)
	if len(want) == 0 {
		t.Fatalf("the plan wants nothing: %v", p.Check(shelf))
	}
	var materials []lot.Material
	for m := range want {
		materials = append(materials, m)
	}
	slices.SortFunc(materials, func(a, b lot.Material) int { return bytes.Compare([]byte(a.String()), []byte(b.String())) })
	rapid.Check(t, func(t *rapid.T) {
		free := map[lot.Material]lot.Quantity{}
		for _, m := range materials {
			if rapid.IntRange(0, 5).Draw(t, "kept") > 0 {
				free[m] = lot.Quantity(float64(want[m]) * rapid.Float64Range(0.3, 1.5).Draw(t, "times"))
			}
		}
		if len(free) == 0 {
			free[materials[0]] = want[materials[0]]
		}
		l, err := shopping.Grow(p, shelf, free)
		if err != nil {
			t.Fatal(err)
		}
		if l.None {
			if enough(want, free) {
				t.Fatalf("none of any size, and the plan as it is fits")
			}
			return
		}
		got, err := pour.Apply(p, shelf, l.Edit())
		if err != nil {
			t.Fatal(err)
		}
		if !enough(wants(got, shelf), free) {
			t.Fatalf("%g of %s does not fit", l.To, l.Sizing.Label)
		}
		atRim := len(l.Limits) > 0 && slices.ContainsFunc(l.Limits, func(x shopping.Limit) bool { return x.Rim })
		for _, steps := range []float64{1, 2, 3, 10, 50} {
			if next := larger(got, p, steps); !atRim && len(next.Check(shelf)) == 0 && enough(wants(next, shelf), free) {
				t.Fatalf("%g of %s is the largest, and %g steps more would fit", l.To, l.Sizing.Label, steps)
			}
		}
		next := wants(larger(got, p, 1), shelf)
		for _, x := range l.Limits {
			if !x.Rim && (next[x.Material] != x.Need || free[x.Material] != x.Free || x.Need <= x.Free) {
				t.Fatalf("limited by %+v; one step larger wants %s of %s", x, next[x.Material], free[x.Material])
			}
		}
		if len(l.Limits) > 0 && l.Next.To < l.To {
			t.Fatalf("with more of what limits it %g, without %g", l.Next.To, l.To)
		}
	})
}

// Of a plan without anything that rounds, by hand: half of one oil is half the batch.
func TestHalfOfAnOilIsHalfTheBatch(t *testing.T) {
	shelf, plans := examples(t)
	p := plans[3].Clone() // no icing
	p.Base.Size, p.Base.OilsG = pour.SizeOils, 1000
	for i := range p.Base.Jugs {
		p.Base.Jugs[i].Colourants = nil // their carrier is one of the oils
	}
	first := p.Base.Oils[0]
	m := lot.Material{Kind: lot.Oil, ID: first.Oil}
	second := lot.Material{Kind: lot.Oil, ID: p.Base.Oils[1].Oil}
	gram := func(g float64) lot.Quantity { return lot.Quantity(math.Round(g * 10000)) }
	free := map[lot.Material]lot.Quantity{m: gram(first.Percent * 5), second: gram(p.Base.Oils[1].Percent * 7)}
	l, err := shopping.Grow(p, shelf, free)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(l.To-500) > 2 || len(l.Limits) != 1 || l.Limits[0].Material != m || math.Abs(l.Next.To-700) > 2 || len(l.Next.Limits) != 1 || l.Next.Limits[0].Material != second {
		t.Errorf("%g g by %+v, then %g g by %+v", l.To, l.Limits, l.Next.To, l.Next.Limits)
	}
	if len(l.Unkept) == 0 {
		t.Error("what no pack ever came of is not named")
	}
	free[m] = 0
	if l, err = shopping.Grow(p, shelf, free); err != nil || !l.None || len(l.Limits) != 1 {
		t.Errorf("without any of an oil: %+v, %v", l, err)
	}
	if _, err := pour.Apply(p, shelf, l.Edit()); err == nil {
		t.Error("a batch of nothing was made")
	}
	if _, err := shopping.Grow(p, shelf, nil); err == nil {
		t.Error("with an empty ledger a batch was found")
	}
	p.Name = ""
	p.Base.Oils[0].Oil = "no such oil"
	if _, err := shopping.Grow(p, shelf, free); err == nil {
		t.Error("a plan that cannot be weighed was scaled")
	}
}

func TestTheRimLimitsToo(t *testing.T) {
	shelf, plans := examples(t)
	p := plans[3]
	free := map[lot.Material]lot.Quantity{}
	for m, q := range wants(p, shelf) {
		free[m] = 100 * q
	}
	l, err := shopping.Grow(p, shelf, free)
	if err != nil || len(l.Limits) != 1 || !l.Limits[0].Rim || l.To != p.Mould.HeightMM-3 {
		t.Errorf("%+v, %v; the rim stands at %g", l.Reach, err, p.Mould.HeightMM)
	}
	for _, w := range l.Sheet.Warnings {
		if w.Code == "mould-high" || w.Code == "mould-overfull" {
			t.Errorf("so large it is too high: %s", w.Text)
		}
	}
}

// What bars are packed in is on the list and limits no batch.
func TestPackagingIsWantedToo(t *testing.T) {
	shelf, plans := examples(t)
	p := plans[0]
	p.Cost.Packaging = []pour.PackagingPart{{Of: "box"}}
	box := lot.Material{Kind: lot.Packaging, ID: "box"}
	w, err := shopping.Wanted(p, shelf, "")
	if err != nil {
		t.Fatal(err)
	}
	bars := lot.Quantity(0)
	for _, n := range w.Needs {
		if n.Material == box {
			bars += n.Q
		}
	}
	if sheet := pour.Weigh(p, shelf); bars != lot.Quantity(sheet.Bars.Count)*lot.One {
		t.Errorf("%s boxes for %d bars", bars, sheet.Bars.Count)
	}
	l, err := shopping.Grow(p, shelf, map[lot.Material]lot.Quantity{box: 0, {Kind: lot.Alkali, ID: lot.NaOH}: kg})
	if err != nil || l.None {
		t.Errorf("without boxes: %+v, %v", l.Reach, err)
	}
}
