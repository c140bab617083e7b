package pour_test

import (
	"math"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
)

// iced is a plan of a loaf of 250 by 80 in ten bars with an icing sized by its shape; a cup says that the icing weighs 1.005 g/mL, as the worked
// examples have it.
func iced(t *testing.T, p pour.Piping) (pour.Plan, pour.Shelf) {
	t.Helper()
	plan, shelf := hanger(t)
	plan.Mould.Shape, plan.Mould.LengthMM, plan.Mould.WidthMM, plan.Mould.BarMM = pour.ShapeLoaf, 250, 80, 25
	p.CupML, p.CupG, p.BagG, p.ResiduePercent, p.UnitS, p.FillMin = 1000, 1005, 250, 7, 7, 2.5
	plan.Piping, plan.Icing.Size = p, pour.SizeShape
	plan.Icing.Bags = pour.BagOne
	return plan, shelf
}

func rosette() pour.Piping {
	return pour.Piping{Shape: pour.PipeRosette, Tip: pour.TipStar, Points: 6, TipMM: 7, ValleyMM: 4.8, Swell: 1.03, OverlapPercent: 20, CoilMM: 8, PerBar: 3}
}

// The printed worked examples of the page on toppings, piped on a plan: a unit's mL and g, how many, what they weigh and what is made with 7 % left behind.
func TestThePipedShapesOfTheWorkedExamples(t *testing.T) {
	star := func(p pour.Piping, points int, tip, valley float64) pour.Piping {
		p.Tip, p.Points, p.TipMM, p.ValleyMM = pour.TipStar, points, tip, valley
		return p
	}
	for _, c := range []struct {
		name           string
		with           pour.Piping
		length         float64
		ml, g, net     float64
		units          int
		wide, mean, hp float64 // mm: across, volume over footprint, the peak that carries it
	}{
		{"T2 kiss", star(pour.Piping{Shape: pour.PipeDollop, WidthMM: 36, HeightMM: 34}, 6, 8, 6), 250, 8.262, 8.30331, 83.0331, 10, 36, 8262 / (math.Pi * 18 * 18), 8262 / (math.Pi * 18 * 18) * 12 / 5.69},
		{"T2 paraboloid", star(pour.Piping{Shape: pour.PipeDollop, WidthMM: 36, HeightMM: 34, Profile: 0.5}, 6, 8, 6), 250, 12.393, 12.454965, 124.54965, 10, 36, 12393 / (math.Pi * 324), 12393 / (math.Pi * 324) * 12 / 5.69},
		{"T3 rosette", rosette(), 250, 0.97315090635, 0.978016661, 29.3405, 30, 23.21, 973.15090635 / (math.Pi * 11.605 * 11.605), 973.15090635 / (math.Pi * 11.605 * 11.605) * 12 / 5.69},
		{"T4 shells", star(pour.Piping{Shape: pour.PipeShells, HeadMM: 9, TailMM: 12, WidthMM: 16, HeightMM: 11, OverlapPercent: 25, Along: pour.PipeLoaf, Rows: 2}, 8, 10, 8), 250, 1.07763655, 1.083024733, 32.490742, 30, 16, 1077.63655 / (36*math.Pi + 96), 1077.63655 / (36*math.Pi + 96) * 12 / 5.69},
		{"T5 rope", pour.Piping{Shape: pour.PipeRope, TipMM: 8, WindMM: 5, PitchMM: 14, Along: pour.PipeLoaf, Rows: 2}, 240, 59.2745366 / 2, 59.5709093 / 2, 59.5709093, 2, 18, 29637.2683 / (18 * 240), 29637.2683 / (18 * 240) * 12 / (2 + math.Pi)},
		{"T6 ruffle", pour.Piping{Shape: pour.PipeRuffle, Tip: pour.TipSlot, TipMM: 16, WideMM: 4, NarrowMM: 2, SwingMM: 6, WaveMM: 20, Along: pour.PipeLoaf}, 240, 18.6463138, 18.73954537, 18.73954537, 1, 16, 18646.3138 / (16 * 240), 18646.3138 / (16 * 240) * 12 / (2 + math.Pi)},
		{"T7 spooned", pour.Piping{Shape: pour.PipeSpooned, LayerMM: 8, ReliefMM: 12}, 250, 280, 281.4, 281.4, 1, 80, 14, 14 * 12 / (2 + math.Pi)},
		{"T7 swoops", pour.Piping{Shape: pour.PipeSpooned, LayerMM: 8, ReliefMM: 12, Relief: pour.ReliefSwoops}, 250, 240, 241.2, 241.2, 1, 80, 12, 12 * 12 / (2 + math.Pi)},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan, shelf := iced(t, c.with)
			plan.Mould.LengthMM = c.length
			if c.length == 240 {
				plan.Mould.BarMM = 24
			}
			s := pour.Weigh(plan, shelf)
			p := s.Piping
			if p.Units != c.units || len(p.At) != c.units {
				t.Errorf("%d units, %d of them with a place, want %d", p.Units, len(p.At), c.units)
			}
			made := c.net / 0.93
			for what, f := range map[string][2]float64{
				"mL": {p.UnitML.V, c.ml}, "g": {p.UnitG.V, c.g}, "net": {p.NetG.V, c.net}, "need": {p.NeedG.V, made}, "made": {p.MadeG.V, made}, "left": {p.LeftG.V, made - c.net},
				"wide": {p.WidthMM.V, c.wide}, "mean": {p.MeanMM.V, c.mean}, "peak": {p.PeakMM.V, c.hp}, "on the loaf": {s.Icing.Size.PouredG, c.net},
				"on all bars": {s.Bars.IcingPerBarG * 10, c.net},
			} {
				if math.Abs(f[0]-f[1]) > 1e-5*math.Max(1, f[1]) {
					t.Errorf("%s is %.8g, want %.8g", what, f[0], f[1])
				}
			}
		})
	}
}

// pipedPlans are plans that use what piping can use.
func pipedPlans(t *testing.T) map[string]pour.Plan {
	t.Helper()
	out := map[string]pour.Plan{}
	add := func(name string, p pour.Piping, bend func(*pour.Plan)) {
		plan, _ := iced(t, p)
		bend(&plan)
		out[name] = plan
	}
	add("rosettes, too few for the vessel", rosette(), func(p *pour.Plan) { p.Piping.LeastG = 200 })
	add("tiers, whipped, grams on each bar", rosette(), func(p *pour.Plan) {
		p.Icing.Size, p.Piping.CupG, p.Piping.OverrunPercent, p.Piping.Tiers, p.Piping.CoilFromMM, p.Piping.Pull = pour.SizeBar, 0, 15, 3, 1, 1.2
	})
	add("dollops of a layer, bag by bag", pour.Piping{Shape: pour.PipeDollop, WidthMM: 20, HeightMM: 18}, func(p *pour.Plan) {
		p.Icing.Size, p.Icing.LayerMM, p.Icing.Bags, p.Piping.ResidueBagG, p.Piping.OverrunPercent, p.Piping.CupML = pour.SizeLayer, 6, pour.BagEach, 12, 30, 0
		jug := p.Icing.Jugs[0]
		p.Icing.Jugs = []pour.Jug{jug, {Name: "second", SharePercent: 35}, {Name: "none"}}
		p.Icing.Jugs[0].SharePercent = 65
	})
	add("a rope of given oils that mostly stays in its bag", pour.Piping{Shape: pour.PipeRope, TipMM: 8, Along: pour.PipeLoaf}, func(p *pour.Plan) {
		p.Icing.Size, p.Icing.OilsG, p.Piping.ResidueBagG = pour.SizeOils, 40, 30
	})
	add("ruffles across the bars", pour.Piping{Shape: pour.PipeRuffle, Tip: pour.TipSlot, TipMM: 14, WideMM: 3, SwingMM: 3, WaveMM: 14}, func(*pour.Plan) {})
	add("shells on the bars", pour.Piping{Shape: pour.PipeShells, HeadMM: 9, TailMM: 10, WidthMM: 14, HeightMM: 10, PerBar: 2}, func(*pour.Plan) {})
	add("spooned", pour.Piping{Shape: pour.PipeSpooned, LayerMM: 8, ReliefMM: 12, Relief: pour.ReliefPoints}, func(p *pour.Plan) { p.Piping.ResidueBagG = 300 })
	add("a rosette without its tip", pour.Piping{Shape: pour.PipeRosette, CoilMM: 8}, func(p *pour.Plan) { p.Icing.Size = pour.SizeBar })
	return out
}

// Thirty rosettes at 7 s are 3.5 min and one bag 2.5 before; of two jugs each takes its share of the rosettes and its own bag. What is spooned on takes
// what the run says for a jug, and so does an icing without a shape.
func TestTheRunPipesAsLongAsUnitsAndBagsTake(t *testing.T) {
	pipes := func(p pour.Plan, shelf pour.Shelf) []float64 {
		var out []float64
		for _, task := range pour.Weigh(p, shelf).Run {
			if task.Kind == pour.TaskPipe || task.Kind == pour.TaskFill {
				out = append(out, task.LengthMin)
			}
		}
		return out
	}
	plan, shelf := iced(t, rosette())
	plan.Run.PipeMin = 2
	one := plan.Icing.Jugs[0]
	one.SharePercent = 100
	plan.Icing.Jugs = []pour.Jug{one}
	two := plan.Clone()
	two.Icing.Bags = pour.BagEach
	two.Icing.Jugs = []pour.Jug{{Name: "one", SharePercent: 60}, {Name: "two", SharePercent: 40}}
	free, spooned := two.Clone(), two.Clone()
	free.Piping.Shape, free.Icing.Size, free.Icing.PerBarG = pour.PipeFree, pour.SizeBar, 20
	spooned.Piping.Shape, spooned.Piping.LayerMM = pour.PipeSpooned, 10
	for _, c := range []struct {
		name string
		plan pour.Plan
		want []float64
	}{
		{"one jug", plan, []float64{2.5, 3.5}},
		{"two jugs", two, []float64{2.5, 18 * 7.0 / 60, 2.5, 12 * 7.0 / 60}},
		{"by eye", free, []float64{2, 2}},
		{"spooned", spooned, []float64{2, 2}},
	} {
		got := pipes(c.plan, shelf)
		if len(got) != len(c.want) {
			t.Errorf("%s: piped in %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("%s: piping takes %v, want %v", c.name, got, c.want)
			}
		}
	}
}

// Three rosettes on each of ten bars of 25 in a loaf 80 wide stand on the bars' middles, a third of the width apart.
func TestUnitsStandOnTheMiddleOfTheirBars(t *testing.T) {
	plan, shelf := iced(t, rosette())
	for i, at := range pour.Weigh(plan, shelf).Piping.At {
		bar, k := i/3, i%3
		if want := (pour.PipedAt{AlongMM: 12.5 + 25*float64(bar), AcrossMM: 80.0 / 3 * float64(k-1), Bar: bar + 1}); math.Abs(at.AlongMM-want.AlongMM)+math.Abs(at.AcrossMM-want.AcrossMM) > 1e-9 || at.Bar != want.Bar {
			t.Errorf("unit %d stands at %+v, want %+v", i, at, want)
		}
	}
	// 15 shells with a step of 15.75 and a length of 21 take 241.5 of 250: the first begins 4.25 from the end; two rows lie along the edges.
	plan.Piping = pour.Piping{Shape: pour.PipeShells, HeadMM: 9, TailMM: 12, WidthMM: 16, HeightMM: 11, OverlapPercent: 25, Along: pour.PipeLoaf, Rows: 2, BagG: 250}
	at := pour.Weigh(plan, shelf).Piping.At
	if first, last := at[0], at[29]; math.Abs(first.AlongMM-14.75) > 1e-9 || first.AcrossMM != -32 || math.Abs(last.AlongMM-235.25) > 1e-9 || last.AcrossMM != 32 {
		t.Errorf("the border goes from %+v to %+v", first, last)
	}
}

// A loaf and its icing twice as large in every direction take eight times the icing.
func TestIcingGrowsWithTheCube(t *testing.T) {
	_, shelf := iced(t, rosette())
	for name, small := range pipedPlans(t) {
		if small.Piping.Lacks() != "" || small.Piping.Along == pour.PipeLoaf && small.Piping.Shape != pour.PipeRope {
			continue
		}
		large := small.Clone()
		m, p := &large.Mould, &large.Piping
		for _, mm := range []*float64{
			&m.LengthMM, &m.WidthMM, &m.HeightMM, &m.FillMM, &m.BarMM, &p.TipMM, &p.ValleyMM, &p.WideMM, &p.NarrowMM, &p.WidthMM, &p.HeightMM, &p.CoilFromMM, &p.CoilMM,
			&p.HeadMM, &p.TailMM, &p.WindMM, &p.PitchMM, &p.SwingMM, &p.WaveMM, &p.LayerMM, &p.ReliefMM,
		} {
			*mm *= 2
		}
		was, is := pour.Weigh(small, shelf).Piping, pour.Weigh(large, shelf).Piping
		if was.NetG.V == 0 || math.Abs(is.NetG.V/is.DensityGML.V-8*was.NetG.V/was.DensityGML.V) > 1e-6*is.NetG.V {
			t.Errorf("%s: %v g become %v g", name, was.NetG, is.NetG)
		}
	}
}

// A shape or a tip that is chosen lacks nothing, what was stated stays, and an icing sized by a shape that is not stated becomes rosettes.
func TestAShapeThatIsChosenBringsUsualMeasures(t *testing.T) {
	plan, shelf := hanger(t)
	choose := func(p pour.Plan, path, word string) pour.Plan {
		t.Helper()
		next, err := pour.Apply(p, shelf, pour.SetWord(path, word))
		if err != nil {
			t.Fatal(err)
		}
		return next
	}
	for _, shape := range []string{pour.PipeDollop, pour.PipeRosette, pour.PipeShells, pour.PipeRope, pour.PipeRuffle, pour.PipeSpooned} {
		for _, tip := range []string{"", pour.TipRound, pour.TipStar, pour.TipSlot} {
			p := plan.Clone()
			p.Piping.Tip, p.Piping.TipMM = tip, 9
			if p = choose(p, "piping.shape", shape); p.Piping.Lacks() != "" || p.Piping.TipMM != 9 || tip != "" && p.Piping.Tip != tip {
				t.Errorf("%s out of %q: %s, %+v", shape, tip, p.Piping.Lacks(), p.Piping)
			}
			if s := pour.Weigh(p, shelf); !s.Piping.NetG.Known || s.Piping.NetG.V <= 0 {
				t.Errorf("%s out of %q comes to %v", shape, tip, s.Piping.NetG)
			}
		}
	}
	p := choose(plan, "icing.size", pour.SizeShape)
	if p.Piping.Shape != pour.PipeRosette || p.Piping.Lacks() != "" {
		t.Errorf("sized by its shape it is %+v", p.Piping)
	}
	if p = choose(p, "piping.tip", pour.TipSlot); p.Piping.Lacks() != "" {
		t.Errorf("out of another tip: %s", p.Piping.Lacks())
	}
	for _, size := range []string{pour.SizeLayer, pour.SizeOils, pour.SizeShape, pour.SizeBar} { // as a cell steps through them
		bare := plan.Clone()
		bare.Icing.Size, bare.Icing.OilsG, bare.Icing.LayerMM, bare.Icing.PerBarG = pour.SizeBar, 0, 0, 5
		if got := pour.Weigh(choose(bare, "icing.size", size), shelf).Icing.Size.PouredG; !(got > 0) {
			t.Errorf("sized by %s there are %v g", size, got)
		}
	}
	if p = choose(plan, "piping.tip", pour.TipStar); p.Piping.Shaped() || p.Piping.TipMM != 0 {
		t.Error("a tip alone makes a shape")
	}
}

// What is said of bags and tips counts for nothing as long as no shape is stated: plans from before mean the same.
func TestPipingWithoutAShapeChangesNothing(t *testing.T) {
	plan, shelf := hanger(t)
	was := written(t, pour.Weigh(plan, shelf))
	plan.Piping = pour.Piping{Tip: pour.TipStar, Points: 6, TipMM: 7, CupML: 100, CupG: 80, OverrunPercent: 30, ResiduePercent: 40, ResidueBagG: 50, BagG: 90, UnitS: 30, FillMin: 9, LeastG: 500, PeakMM: 1}
	for _, d := range written(t, pour.Weigh(plan, shelf)).differ(was) {
		t.Error(d)
	}
}

// The window opens when the last jug of icing and base is thick, closes when the first of the icing is stiff, by the middle estimates.
func TestTheWindowOfPipingIsTheClocks(t *testing.T) {
	plan, shelf := iced(t, rosette())
	s := pour.Work(plan, shelf, pour.Hand{})
	from, to, set := 0.0, math.Inf(1), 0.0
	for _, b := range s.Batches() {
		for _, j := range b.Jugs {
			from = math.Max(from, b.LyeInAtMin+j.Clock.Stages[chem.Thick].Mid.V)
			stiff := b.LyeInAtMin + j.Clock.Stages[chem.Stiff].Mid.V
			if b.Name == pour.Icing {
				to = math.Min(to, stiff)
			} else {
				set = math.Max(set, stiff)
			}
		}
	}
	if w := s.Piping.Window; w.From.V != from || w.To.V != to || w.BaseSetAt.V != set || !w.From.Known || !w.To.Known {
		t.Errorf("the window is %+v, want %v to %v, the base set at %v", w, from, to, set)
	}
	if w := pour.Weigh(plan, shelf).Piping.Window; w != (pour.PipeWindow{}) {
		t.Errorf("without the clock there is a window, %+v", w)
	}
}

// A measure that is a slip of the pen is told, and never counts without end.
func TestAMeasureTooSmallToPipeIsTold(t *testing.T) {
	for _, p := range []pour.Piping{
		{Shape: pour.PipeShells, HeadMM: 1e-4, TailMM: 1, WidthMM: 1, HeightMM: 1, Along: pour.PipeLoaf},
		{Shape: pour.PipeRuffle, TipMM: 10, WaveMM: 1e-4, SwingMM: 100},
		{Shape: pour.PipeRosette, TipMM: 8, CoilMM: 5, CoilFromMM: 5},
		{Shape: pour.PipeDollop, Tip: pour.TipStar, Points: 1, TipMM: 8, ValleyMM: 4, WidthMM: 10, HeightMM: 10},
		{Shape: pour.PipeDollop, Tip: pour.TipStar, Points: 5, TipMM: 8, ValleyMM: 9, WidthMM: 10, HeightMM: 10},
		{Shape: pour.PipeDollop, WidthMM: 10, HeightMM: 10, ResidueBagG: 250},
	} {
		plan, shelf := iced(t, p)
		s := pour.Weigh(plan, shelf)
		if w, ok := found(s, "icing-unsized"); s.Piping.Lacks == "" || s.Piping.Units != 0 || !ok || w.Text != "the icing: "+s.Piping.Lacks && w.Text != s.Piping.Lacks || !s.LyeStopped() {
			t.Errorf("%+v: %q, %+v", p, s.Piping.Lacks, w)
		}
	}
	plan, shelf := iced(t, pour.Piping{Shape: pour.PipeShells, HeadMM: 200, TailMM: 100, WidthMM: 10, HeightMM: 10, Along: pour.PipeLoaf})
	if s := pour.Weigh(plan, shelf); s.Piping.Lacks != "not one shell fits onto this loaf" {
		t.Errorf("a shell longer than the loaf: %q", s.Piping.Lacks)
	}
}

// A kiss of 34 on a base of 60 in a mould of 75 stands 19 over its rim, however little it weighs; one of 17 stands 2 over it, which is not worth a word.
func TestAHighKissStandsOverTheRim(t *testing.T) {
	plan, shelf := iced(t, pour.Piping{Shape: pour.PipeDollop, WidthMM: 18, HeightMM: 34})
	plan.Mould.HeightMM, plan.Mould.FillMM = 75, 60
	plan.Base.Size = pour.SizeMould
	if w, ok := found(pour.Weigh(plan, shelf), "icing-over-rim"); !ok || w.Text != "the icing is piped 34 mm high and comes to stand 19 mm over the rim at 75 mm" {
		t.Errorf("%+v", w)
	}
	plan.Piping.HeightMM = 17
	if w, ok := found(pour.Weigh(plan, shelf), "icing-over-rim"); ok {
		t.Errorf("%+v", w)
	}
}

// The rosette of the worked example, 23.21 across, on bars of 25 behind cuts of 0.6: 2.39 are left between neighbours, less than the lane of 3.6
// that a cut, a grain of 2 and a wandering of 0.5 on both sides want. One end is kept, so that bars lie 25.6 apart.
func TestTheRosetteOfTheWorkedExampleStandsInTheLane(t *testing.T) {
	plan, shelf := iced(t, rosette())
	plan.Mould.LengthMM, plan.Cut.KerfMM, plan.Cut.WanderMM = 256, 0.6, 0.5
	s := pour.Weigh(plan, shelf)
	if math.Abs(s.Piping.GapMM.V-2.39) > 1e-9 || math.Abs(s.Piping.LaneMM.V-3.6) > 1e-9 {
		t.Errorf("%v are left for a lane of %v", s.Piping.GapMM, s.Piping.LaneMM)
	}
	if _, ok := found(s, "icing-lane"); !ok {
		t.Error("it is not said")
	}
	plan.Piping.CoilMM = 7.3 // 21.81 across: 3.79 are left
	if w, ok := found(pour.Weigh(plan, shelf), "icing-lane"); ok {
		t.Errorf("%+v", w)
	}
}

// A slab 160 wide in two columns of bars: one unit on each bar stands 40 to the left and 40 to the right of its middle.
func TestUnitsOfASlabStandOnTheirColumns(t *testing.T) {
	p := rosette()
	p.PerBar = 1
	plan, shelf := iced(t, p)
	plan.Mould.Shape, plan.Mould.WidthMM, plan.Mould.BarWidthMM = pour.ShapeSlab, 160, 80
	at := pour.Weigh(plan, shelf).Piping.At
	if len(at) != 20 || at[0].AcrossMM != -40 || at[1].AcrossMM != 40 || at[0].AlongMM != at[1].AlongMM {
		t.Errorf("%d units, the first two at %+v", len(at), at[:2])
	}
}

// Valleys wider than the tip are no star: choosing the tip again brings usual ones.
func TestAStarsValleysComeInsideItsTips(t *testing.T) {
	plan, shelf := hanger(t)
	plan.Piping = pour.Piping{Shape: pour.PipeDollop, Tip: pour.TipStar, Points: 5, TipMM: 9, ValleyMM: 12, WidthMM: 10, HeightMM: 10, BagG: 250}
	next, err := pour.Apply(plan, shelf, pour.SetWord("piping.tip", pour.TipStar))
	if err != nil || plan.Piping.Lacks() == "" || next.Piping.Lacks() != "" || next.Piping.ValleyMM >= 9 {
		t.Errorf("%v, %+v", err, next.Piping)
	}
}

// Rosettes that are chosen for a slab stand as many side by side as a bar of it has room for, which is cut lengthwise, not as many as the slab: of
// 21 mm (7 + 2·7) two on 45 mm, three on 80 mm, which is the usual.
func TestAsManyUnitsAsABarOfASlabHasRoomFor(t *testing.T) {
	for wide, want := range map[float64]int{45: 2, 20: 1, 0: 3} {
		p, shelf := example(t, "alpine-meadow")
		p.Mould.Shape, p.Mould.WidthMM, p.Mould.BarMM, p.Mould.BarWidthMM = pour.ShapeSlab, 180, 60, wide
		p.Piping, p.Top.Embeds = pour.Piping{}, nil
		p.Icing.Size, p.Icing.PerBarG = pour.SizeBar, 20
		got, err := pour.Apply(p, shelf, pour.SetWord("piping.shape", pour.PipeRosette))
		if err != nil || got.Piping.PerBar != want {
			t.Errorf("on bars of %g mm: %d side by side, want %d; %v", wide, got.Piping.PerBar, want, err)
		}
	}
}
