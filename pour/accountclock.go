package pour

import (
	"fmt"

	"pourbench/chem"
	"pourbench/chem/clock"
)

// Why a time has a band, and what the clock is.
const (
	clockBand = "80 % of pours like it: about a factor of two either way before any of your own are logged; your logs narrow it"
	clockWhy  = "no formula of one line: the clock follows the batter minute by minute from these"
)

// clockAccounts are when a jug thickens and how likely it is past its window.
func clockAccounts() []accountRow {
	var rows []accountRow
	for stage := range chem.Stages {
		st := chem.Stage(stage)
		rows = append(rows, accountRow{
			pattern: "batch.jugs[].stage_min." + st.String() + "[]", label: st.String() + " trace of {}", unit: UnitMinute, why: clockWhy,
			feeds: []string{"clock-refused", "clock-wide", "split-early"},
			value: func(t teller) Figure { return t.stageEnd(st) },
			how: func(t teller) Term {
				return t.clocked("clock ", func(f clock.Forecast) float64 { return stageEnd(f, st, t.ix[1]).orUnknown() })
			},
			band: func(t teller) (low, high Figure, why string) {
				at := t.b.Jugs[t.ix[0]].Clock.Stages[st]
				return at.Low, at.High, clockBand
			},
		})
	}
	jug := func(of func(*JugClock) Figure) func(teller) Figure {
		return func(t teller) Figure { return of(&t.b.Jugs[t.ix[0]].Clock) }
	}
	return append(rows,
		accountRow{
			pattern: "batch.jugs[].late_chance_percent", label: "chance that {} comes too late", unit: UnitPercent, value: jug(func(c *JugClock) Figure { return c.LateChancePercent }),
			feeds: []string{"jug-late", "base-stiff", "icing-stiff", "scent-fast-late"}, how: teller.late, why: "past what the technique allows as its last act begins; " + clockWhy,
		},
		accountRow{
			pattern: "batch.jugs[].early_chance_percent", label: "chance that {} comes too early", unit: UnitPercent, value: jug(func(c *JugClock) Figure { return c.EarlyChancePercent }),
			feeds: []string{"jug-early", "icing-thin"}, how: teller.early, why: "not yet what the technique needs as its first act begins; " + clockWhy,
		},
		accountRow{
			pattern: "batch.jugs[].trace_at_pour", label: "trace of {} at its turn", unit: UnitCount, value: jug(func(c *JugClock) Figure { return c.TraceAtPour }), how: teller.trace,
			why: "0 at lye-in, 1 emulsion to 5 stiff: an ordinal scale; " + clockWhy,
		},
		accountRow{
			pattern: "batch.jugs[].window_from_min", label: "{} suits the technique from", unit: UnitMinute, value: jug(func(c *JugClock) Figure { return c.Window.From }),
			how: func(t teller) Term { return t.onRun(func(s span) chem.Stage { return s.from }) },
		},
		accountRow{
			pattern: "batch.jugs[].window_to_min", label: "{} suits the technique until", unit: UnitMinute, value: jug(func(c *JugClock) Figure { return c.Window.To }),
			how: func(t teller) Term { return t.onRun(func(s span) chem.Stage { return s.to + 1 }) },
		},
	)
}

// stageEnd is the early end, the middle or the late end of a stage's band, as the path's last index says.
func (t teller) stageEnd(st chem.Stage) Figure {
	at := t.b.Jugs[t.ix[0]].Clock.Stages[st]
	return [...]Figure{at.Low, at.Mid, at.High}[t.ix[1]]
}

func stageEnd(f clock.Forecast, st chem.Stage, end int) Figure {
	at := f.Stages[st]
	ends := [...]Figure{{V: at.Low, Known: at.LowOK}, {V: at.Mid, Known: at.MidOK}, {V: at.High, Known: at.HighOK}}
	return ends[end]
}

// onRun is a stage of a jug on the run clock.
func (t teller) onRun(stage func(span) chem.Stage) Term {
	timer, _ := t.sheet.timerOf(t.b.Name, t.shelf)
	st := stage(timer.suits)
	return sum(t.fig("batch.jugs[].stage_min."+st.String()+"[]", t.ix[0], 1), t.fig("batch.lye_in_at_min"))
}

// clocked runs the clock again from what is shown, for this jug, and reads something off its forecast. What follows among the inputs is
// what else the reading depends on.
func (t teller) clocked(name string, read func(clock.Forecast) float64, more ...Term) Term {
	return t.clockedJug(t.ix[0], name, func(f clock.Forecast, _ []float64) float64 { return read(f) }, more...)
}

// clockInputs are the numbers that move the clock most; all else it is told is the plan's and the shelf's.
func (t teller) clockInputs(jug int) []Term {
	in := []Term{
		t.fig("batch.oils_g"), t.fig("batch.sap_koh_mg_g"), t.own("superfat_percent"),
		t.known("pure alkali in all lye", t.b.Lye.PureConcentrationPercent, UnitPercent, "worked out"),
		t.fig("batch.mix_c"), t.whole("room.temperature_c"), t.own("split_at_min"),
	}
	j := &t.b.Jugs[jug]
	timer, _ := t.sheet.timerOf(t.b.Name, t.shelf)
	told := timer.jug(j)
	for k, x := range j.Scents {
		sc, _ := t.shelf.Scent(x.ID)
		in = append(in, t.shelved("load of "+sc.Name+" inside the jug, which "+t.shelf.BehaviourOf(sc), told.Scents[k].LoadPercent, UnitPercent, sc.Source))
	}
	for _, a := range timer.additives() {
		in = append(in, t.shelved("speed by "+a.Name, a.Factor, UnitCount, t.sourceOf(a.Name)))
	}
	return in
}

// sourceOf is where the shelf has an extra of the batch from.
func (t teller) sourceOf(name string) Source {
	for _, x := range t.b.Extras {
		if x.Name == name {
			extra, _ := t.shelf.Extra(x.ID)
			return extra.Source
		}
	}
	return Source{}
}

// clockedJug runs the clock for a jug from its inputs, in the order of [teller.clockInputs].
func (t teller) clockedJug(jug int, name string, read func(clock.Forecast, []float64) float64, more ...Term) Term {
	in := t.clockInputs(jug)
	run := func(v []float64) float64 {
		timer, _ := t.sheet.timerOf(t.b.Name, t.shelf)
		batter, told := timer.batter(), timer.jug(&t.b.Jugs[jug])
		batter.OilG, batter.SapKOHMgG, batter.Superfat, batter.Concentration = v[0], v[1], v[2]/100, v[3]/100
		batter.StartC, batter.RoomC, batter.SplitMin = v[4], v[5], v[6]
		for k := range told.Scents {
			told.Scents[k].LoadPercent = v[7+k]
		}
		for k := range batter.Additives {
			batter.Additives[k].Factor = v[7+len(told.Scents)+k]
		}
		c, err := clock.New(batter, t.hand.Clock)
		if err != nil {
			return Unknown()
		}
		return read(c.Forecast(told), v[len(in):])
	}
	return modelled(name, run, append(in, more...)...)
}

// late is the chance to be past the technique's last stage; a pot full of colours has that of the quickest in it.
func (t teller) late() Term {
	who := t.ix[0]
	for i, j := range t.b.Jugs {
		if j.Name == t.b.Jugs[t.ix[0]].Clock.LateJug {
			who = i
		}
	}
	timer, _ := t.sheet.timerOf(t.b.Name, t.shelf)
	return t.clockedJug(who, "chance past "+timer.suits.to.String()+" by the clock ", func(f clock.Forecast, at []float64) float64 {
		p, _ := f.ChancePast(timer.past(), at[0]-at[1])
		return p * 100
	}, t.fig("batch.jugs[].last_at_min", who), t.fig("batch.lye_in_at_min"))
}

func (t teller) early() Term {
	timer, _ := t.sheet.timerOf(t.b.Name, t.shelf)
	return t.clockedJug(t.ix[0], "chance before "+timer.suits.from.String()+" by the clock ", func(f clock.Forecast, at []float64) float64 {
		p, _ := f.ChancePast(timer.suits.from, at[0]-at[1])
		return (1 - p) * 100
	}, t.fig("batch.jugs[].pour_at_min", t.ix[0]), t.fig("batch.lye_in_at_min"))
}

func (t teller) trace() Term {
	return t.clockedJug(t.ix[0], "trace by the clock ", func(f clock.Forecast, at []float64) float64 {
		index, _ := f.TraceIndex((at[0]+at[1])/2 - at[2])
		return index
	}, t.fig("batch.jugs[].pour_at_min", t.ix[0]), t.fig("batch.jugs[].last_at_min", t.ix[0]), t.fig("batch.lye_in_at_min"))
}

// gelAccounts are how warm the loaf gets.
func gelAccounts() []accountRow {
	const why = "the weakest of the clock's figures: one temperature for the whole loaf, the edge below it by how soap conducts"
	row := func(pattern, label string, u Unit, of func(*Gel) Figure) accountRow {
		return accountRow{
			pattern: pattern, label: label, unit: u, why: why, feeds: []string{"gel", "glycerin-rivers"},
			value: func(t teller) Figure { return of(&t.sheet.Gel) }, how: func(t teller) Term { return t.bedded(of) },
		}
	}
	middle := row("gel.middle_c", "warmest in the middle of the loaf", UnitCelsius, func(g *Gel) Figure { return g.MiddleC.Mid })
	middle.band = func(t teller) (low, high Figure, why string) {
		return t.sheet.Gel.MiddleC.Low, t.sheet.Gel.MiddleC.High, "from a slow batter to a quick one, 80 % of pours like it"
	}
	return []accountRow{
		row("gel.from_c", "gel begins near", UnitCelsius, func(g *Gel) Figure { return g.FromC }), middle,
		row("gel.edge_c", "warmest at the edge of the loaf", UnitCelsius, func(g *Gel) Figure { return g.EdgeC }),
		row("gel.peak_at_min", "the loaf is warmest", UnitMinute, func(g *Gel) Figure { return g.PeakAtMin }),
		row("gel.middle_percent", "chance that the middle gels", UnitPercent, func(g *Gel) Figure { return g.MiddlePercent }),
		row("gel.edge_percent", "chance that the edge gels", UnitPercent, func(g *Gel) Figure { return g.EdgePercent }),
	}
}

// bedded follows the loaf to its warmest again, from what is shown.
func (t teller) bedded(of func(*Gel) Figure) Term {
	base := t.at(&t.sheet.Base)
	timer, _ := t.sheet.timerOf(Base, t.shelf)
	bed := timer.loaf()
	run := func(v []float64) float64 {
		batter, loaf := timer.batter(), timer.loaf()
		batter.OilG, batter.Concentration, batter.StartC, loaf.AirC, loaf.FromMin, loaf.HalfMM = v[0], v[1]/100, v[2], v[3], v[4], v[5]
		c, err := clock.New(batter, t.hand.Clock)
		if err != nil {
			return Unknown()
		}
		h, err := c.Heat(loaf)
		if err != nil {
			return Unknown()
		}
		g := timer.gel(h)
		return of(&g).orUnknown()
	}
	return modelled(fmt.Sprintf("heat of a loaf in its bed, kept %s, ", t.sheet.Plan.Bed.Keep), run,
		base.fig("batch.oils_g"), base.known("pure alkali in all lye", base.b.Lye.PureConcentrationPercent, UnitPercent, "worked out"), base.fig("batch.mix_c"),
		base.known("air round the loaf", bed.AirC, UnitCelsius, "the room, or a refrigerator"), base.known("to bed after", bed.FromMin, UnitMinute, "the run"),
		base.known("from the middle to the nearer sides", bed.HalfMM, UnitMM, "the mould and how high the base stands"))
}
