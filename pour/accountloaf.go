package pour

import "pourbench/pour/script"

// practice is the confidence of minutes that nobody measured.
const practice = "common practice"

// cutRunAccounts are when everything of the cut's own run is done and how long the hands need.
func cutRunAccounts() []accountRow {
	task := func(of func(*Task) Figure) func(teller) Figure {
		return func(t teller) Figure { return of(&t.sheet.CutRun[t.ix[0]]) }
	}
	return []accountRow{
		{
			pattern: "cut_run[].start_min", label: "start of {}", unit: UnitMinute, value: task(func(x *Task) Figure { return Know(x.StartMin) }), how: teller.cutStart,
			why: "one pair of hands, from when the cut begins; it is no part of the pour's own run",
		},
		{pattern: "cut_run[].length_min", label: "length of {}", unit: UnitMinute, value: task(func(x *Task) Figure { return Know(x.LengthMin) }), how: func(t teller) Term {
			return t.loafHands(t.sheet.CutRun[t.ix[0]])
		}},
		{pattern: "cut_run[].round", label: "which of the cuts {} is", unit: UnitCount, value: task(func(x *Task) Figure { return x.Round }), how: func(t teller) Term {
			return t.known("cut", t.sheet.CutRun[t.ix[0]].Round.V, UnitCount, "the cut plan")
		}},
	}
}

// cutStart is when a task of the cut begins: as the one before it ends, or after the cure.
func (t teller) cutStart() Term {
	i := t.ix[0]
	x := t.sheet.CutRun[i]
	switch {
	case i == 0:
		return t.known("the cut begins here", 0, UnitMinute, "by definition")
	case x.StartMin == t.sheet.CutRun[i-1].StartMin+t.sheet.CutRun[i-1].LengthMin:
		return sum(t.fig("cut_run[].start_min", i-1), t.fig("cut_run[].length_min", i-1))
	}
	return product(t.whole("bed.cure_days"), bare(24), bare(60))
}

// startOnTop is when what is done to the loaf in the pour begins: when the hands are free, or when the top has skinned.
func (t teller) startOnTop(i int) Term {
	x := t.sheet.Run[i]
	free := sum(t.fig("run[].start_min", i-1), t.fig("run[].length_min", i-1))
	if x.StartMin == t.sheet.Run[i-1].StartMin+t.sheet.Run[i-1].LengthMin {
		return free
	}
	for k := i - 1; k >= 0; k-- {
		if y := t.sheet.Run[k]; y.Act != NoAct && (y.Batch != "" || !t.sheet.TopScript.Acts[y.Act].Wait) {
			free = sum(t.fig("run[].start_min", k), t.fig("run[].length_min", k))
			break
		}
	}
	return sum(free, t.usual("run.skin_min", t.sheet.Plan.Run.SkinMin, "until the top has skinned", usualSkinMin))
}

// usual is a number of minutes of the plan or, where that says 0, the usual one.
func (t teller) usual(path string, plan float64, name string, usual float64) Term {
	if plan > 0 {
		return t.whole(path)
	}
	return t.law(name, usual, UnitMinute, "common practice, no source", practice)
}

// loafHands is how long the hands need for what is done to the loaf.
func (t teller) loafHands(x Task) Term {
	a, _ := t.sheet.act(x)
	r := t.sheet.Plan.Run
	switch a.Kind {
	case script.Mark:
		return t.usual("run.mark_min", r.MarkMin, "to lay the marks", usualMarkMin)
	case script.Cut:
		return t.usual("run.cut_min", r.CutMin, "one cut", usualCutMin)
	case script.Weigh:
		return t.usual("run.weigh_min", r.WeighMin, "to weigh one piece", usualWeighMin)
	case script.Embed:
		n := len(t.sheet.Embeds[a.Item].Pieces)
		return product(bare(float64(n)), t.known("to set one piece", x.LengthMin/float64(n), UnitMinute, "your plan, or as it usually takes"))
	case script.Strew:
		return t.known("to put it on", x.LengthMin, UnitMinute, "your plan, or estimated from the shelf's seconds for a bar")
	}
	return t.law("minutes", x.LengthMin, UnitMinute, "common practice, no source", practice)
}

// pipedHands is how long the hands need to try the base, to fill bags or to pipe a shape.
func (t teller) pipedHands(a script.Act) Term {
	switch a.Kind {
	case script.Peak:
		return t.usual("run.peak_min", t.sheet.Plan.Run.PeakMin, "to try the base", usualPeakMin)
	case script.Fill:
		return product(bare(float64(a.Times)), t.whole("piping.fill_min"))
	}
	switch common := a.Jug == script.Whole || t.sheet.Plan.Icing.Bags == BagOne; {
	case common && t.sheet.Plan.Piping.Spoons():
		return t.fig("piping.pipe_min")
	case t.sheet.Plan.Piping.Spoons():
		return t.whole("run.pipe_min")
	case common:
		return t.pipingUnits(1)
	}
	return t.pipingUnits(t.sheet.Plan.Icing.parts()[a.Jug])
}
