package pour_test

import (
	"math"
	"testing"

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
	add("ruffles across the bars", pour.Piping{Shape: pour.PipeRuffle, Tip: pour.TipSlot, TipMM: 14, WideMM: 3, SwingMM: 3, WaveMM: 14}, func(p *pour.Plan) {})
	add("shells on the bars", pour.Piping{Shape: pour.PipeShells, HeadMM: 9, TailMM: 10, WidthMM: 14, HeightMM: 10, PerBar: 2}, func(p *pour.Plan) {})
	add("spooned", pour.Piping{Shape: pour.PipeSpooned, LayerMM: 8, ReliefMM: 12, Relief: pour.ReliefPoints}, func(p *pour.Plan) { p.Piping.ResidueBagG = 300 })
	add("a rosette without its tip", pour.Piping{Shape: pour.PipeRosette, CoilMM: 8}, func(p *pour.Plan) { p.Icing.Size = pour.SizeBar })
	return out
}
