package pour_test

import "pourbench/pour"

// pipingRows are the warnings of an icing that is piped in a shape.
func pipingRows() []codeRow {
	with := func(bends ...func(*pour.Plan)) bend {
		return func(p *pour.Plan, _ *pour.Shelf) {
			q := rosette()
			q.CoilMM, q.BagG, q.ResiduePercent, q.UnitS, q.FillMin, q.LeastG = 5, 250, 7, 5, 2, 200
			p.Piping, p.Icing.Size, p.Icing.Bags = q, pour.SizeShape, pour.BagOne
			for _, b := range bends {
				b(p)
			}
		}
	}
	least := func(g float64) func(*pour.Plan) { return func(p *pour.Plan) { p.Piping.LeastG = g } }
	many := func(n int) func(*pour.Plan) { return func(p *pour.Plan) { p.Piping.PerBar = n } }
	coil := func(mm float64) func(*pour.Plan) { return func(p *pour.Plan) { p.Piping.CoilMM = mm } }
	bar := func(p *pour.Plan) { p.Icing.Size, p.Icing.PerBarG = pour.SizeBar, 30 }
	rows := func(p *pour.Plan) { p.Piping.Along = pour.PipeLoaf }
	peak := func(mm float64) func(*pour.Plan) { return func(p *pour.Plan) { p.Piping.PeakMM = mm } }
	start := func(min float64) func(*pour.Plan) { return func(p *pour.Plan) { p.Icing.StartAtMin = min } }
	dollops := func(high float64) func(*pour.Plan) {
		return func(p *pour.Plan) { p.Piping.Shape, p.Piping.WidthMM, p.Piping.HeightMM = pour.PipeDollop, 18, high }
	}
	quick := func(p *pour.Plan) { p.Piping.UnitS, p.Piping.FillMin = 1, 0.25 }
	two := func(bags string) func(*pour.Plan) {
		return func(p *pour.Plan) {
			dollops(40)(p)
			p.Icing.Bags, p.Piping.ResidueBagG, p.Piping.PerBar = bags, 20, 4
			p.Icing.Jugs = []pour.Jug{{Name: "one", SharePercent: 50}, {Name: "two", SharePercent: 50}}
		}
	}
	return []codeRow{
		{"icing-unsized", func(p *pour.Plan, _ *pour.Shelf) { p.Icing.Size = pour.SizeShape }, with()},
		{"piping-unfinished", with(bar, func(p *pour.Plan) { p.Piping.TipMM = 0 }), with(bar)},
		{"icing-mismatch", with(bar), with()},
		{"icing-small", with(least(0)), with()},
		{"icing-rest", with(), with(least(0))},
		{"icing-bags", with(two(pour.BagEach)), with(two(pour.BagOne))},
		{"icing-crowded", with(many(9)), with()},
		{"icing-lane", with(coil(12)), with()},
		{"icing-crosses", with(rows), with()},
		{"base-soft", with(dollops(18), peak(6)), with(dollops(18), peak(40))},
		{"icing-slides", with(peak(40), quick, start(30)), with(peak(40), quick)},
		{"pipe-window", with(peak(40)), with(peak(40), quick)},
	}
}
