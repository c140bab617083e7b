package pour

import (
	"slices"

	"pourbench/chem"
	"pourbench/pour/script"
)

// runAccounts are when everything is done and how long the hands need.
func runAccounts() []accountRow {
	task := func(of func(*Task) Figure) func(teller) Figure {
		return func(t teller) Figure { return of(&t.sheet.Run[t.ix[0]]) }
	}
	clock := func(of func(*JugClock) Figure) func(teller) Figure {
		return func(t teller) Figure { return of(&t.b.Jugs[t.ix[0]].Clock) }
	}
	return append(cutRunAccounts(), []accountRow{
		{
			pattern: "run[].start_min", label: "start of {}", unit: UnitMinute, value: task(func(x *Task) Figure { return Know(x.StartMin) }), feeds: []string{"hands-busy"}, how: teller.start,
			why: "one pair of hands: a task starts when it may and the one before it is done",
		},
		{pattern: "run[].length_min", label: "length of {}", unit: UnitMinute, value: task(func(x *Task) Figure { return Know(x.LengthMin) }), how: teller.length},
		{pattern: "run[].part", label: "part that {} uses", unit: UnitCount, value: task(func(x *Task) Figure { return x.Part }), how: func(t teller) Term {
			return t.known("part of the jug", t.sheet.Run[t.ix[0]].Part.V, UnitCount, "the script of the technique; a jug's parts sum to 1")
		}},
		{pattern: "run[].round", label: "round of {}", unit: UnitCount, value: task(func(x *Task) Figure { return x.Round }), how: func(t teller) Term {
			return t.known("round", t.sheet.Run[t.ix[0]].Round.V, UnitCount, "the script of the technique")
		}},
		{pattern: "batch.lye_in_at_min", label: "lye meets oil", unit: UnitMinute, value: batchFigure(func(b *BatchSheet) float64 { return b.LyeInAtMin }), feeds: []string{"hands-busy"}, how: func(t teller) Term {
			if t.b.Name == Base {
				return t.known("the run clock begins here", 0, UnitMinute, "by definition")
			}
			return t.fig("run[].start_min", t.taskOf(func(x Task) bool { return x.Kind == TaskMix && x.Batch == t.b.Name }))
		}},
		{
			pattern: "batch.jugs[].pour_at_min", label: "first act of {}", unit: UnitMinute, value: clock(func(c *JugClock) Figure { return c.PourAtMin }), feeds: []string{"jug-early", "icing-thin"},
			how: func(t teller) Term { return t.fig("run[].start_min", t.actsOf(t.ix[0])[0]) },
		},
		{
			pattern: "batch.jugs[].last_at_min", label: "last act that moves {}", unit: UnitMinute, value: clock(func(c *JugClock) Figure { return c.LastAtMin }), feeds: []string{"jug-late", "base-stiff", "icing-stiff"},
			how: func(t teller) Term {
				acts := t.actsOf(t.ix[0])
				return t.fig("run[].start_min", acts[len(acts)-1])
			},
		},
	}...)
}

func (t teller) taskOf(is func(Task) bool) int { return max(0, slices.IndexFunc(t.sheet.Run, is)) }

// actsOf lists the places in the run of the acts that move a jug.
func (t teller) actsOf(jug int) []int {
	var out []int
	for i, x := range t.sheet.Run {
		if x.Batch == t.b.Name && x.Act != NoAct && t.b.Script.Uses(t.b.Script.Acts[x.Act], jug) {
			out = append(out, i)
		}
	}
	return out
}

// start is when a task begins: as the one before it ends, or not before its own minute.
func (t teller) start() Term {
	i := t.ix[0]
	x := t.sheet.Run[i]
	if x.Batch == "" {
		return t.startOnTop(i)
	}
	at := t.at(t.sheet.Batch(x.Batch))
	lyeIn := func() Term { return at.fig("batch.lye_in_at_min") }
	switch {
	case x.Kind == TaskCoolLye:
		return less(lyeIn(), t.fig("run[].length_min", i))
	case x.Kind == TaskMix && x.Batch == Base:
		return t.known("the run clock begins here", 0, UnitMinute, "by definition")
	case i > 0 && t.sheet.Run[i-1].Kind != TaskCoolLye && x.StartMin == t.sheet.Run[i-1].StartMin+t.sheet.Run[i-1].LengthMin:
		return sum(t.fig("run[].start_min", i-1), t.fig("run[].length_min", i-1))
	case x.Kind == TaskMix:
		return at.own("start_at_min")
	case x.Kind == TaskSplit:
		return sum(lyeIn(), at.own("split_at_min"))
	case x.Kind == TaskScent:
		for n, part := range at.plan.Scents {
			if part.GoesInto(x.Jug) && at.b.LyeInAtMin+part.AtMin == x.StartMin {
				return sum(lyeIn(), at.listed("its minute", "scent["+decimal(n)+"].at_min", part.AtMin, UnitMinute))
			}
		}
	}
	return t.known("as early as it may", x.StartMin, UnitMinute, "the order of the run")
}

// length is how long the hands need for a task.
func (t teller) length() Term {
	x := t.sheet.Run[t.ix[0]]
	if x.Batch == "" {
		return t.loafHands(x)
	}
	at := t.at(t.sheet.Batch(x.Batch))
	switch x.Kind {
	case TaskCoolLye:
		return at.cooling(x)
	case TaskMix:
		return at.own("split_at_min")
	case TaskSplit:
		return product(t.whole("run.split_min"), bare(float64(len(at.b.Jugs)-1)))
	case TaskColour:
		return t.whole("run.stir_min")
	case TaskScent:
		n := 0
		for _, part := range at.plan.Scents {
			if part.GoesInto(x.Jug) {
				n++
			}
		}
		return product(t.whole("run.scent_min"), bare(float64(n)))
	case TaskBed:
		return t.whole("run.bed_min")
	case TaskEnd:
		return bare(0)
	}
	return at.handsOf(x)
}

// cooling is how long a still jug of lye takes to cool, unless the plan says it or the lye is made on ice.
func (t teller) cooling(x Task) Term {
	switch {
	case t.sheet.Plan.Run.CoolLyeMin > 0:
		return t.whole("run.cool_lye_min")
	case t.b.Lye.OnIce:
		return t.law("alkali into ice, little by little", onIceMin, UnitMinute, "common practice, no source", "common practice")
	case !t.b.Heat.LyePeakC.Known:
		return t.known("minutes", x.LengthMin, UnitMinute, "an estimate")
	}
	cool := func(v []float64) float64 {
		minutes, _ := chem.CoolMinutes(v[0]+v[1], t.b.Lye.PureConcentrationPercent/100, v[2], v[3], v[4])
		return minutes
	}
	return modelled("cooling of a still jug ", cool, t.alkali(), t.fig("batch.all_water_g"), t.fig("batch.lye_peak_c"), t.own("lye_c"), t.whole("room.temperature_c"))
}

// handsOf is how long an act takes: its part of the minutes for a whole jug, and a change of jug where it goes in rounds.
func (t teller) handsOf(x Task) Term {
	a := t.b.Script.Acts[x.Act]
	if _, ok := t.sheet.piped(a); ok {
		return t.pipedHands(a)
	}
	field := handFields()[a.Kind]
	if field == "" {
		return t.law("watched at most", trialWatchMin, UnitMinute, "common practice, no source", "common practice")
	}
	minutes := t.whole(field)
	switch a.Kind {
	case script.Turn:
		return product(minutes, t.known("turns", t.b.Script.Brief.Turns, UnitCount, "the plan or its technique"))
	case script.Pipe:
		if a.Jug == script.Whole {
			return product(minutes, bare(float64(t.b.Script.Filled())))
		}
		return minutes
	case script.Wire, script.Comb, script.Level:
		return minutes
	}
	part := product(leaf(Input{Name: "part", V: a.Part, From: "the script of the technique"}), minutes)
	if a.Rounds > 1 && a.Jug != script.Whole {
		return sum(part, t.whole("run.change_min"))
	}
	return part
}
