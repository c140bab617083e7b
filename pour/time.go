package pour

import (
	"pourbench/chem"
	"pourbench/chem/clock"
)

// Time adds the clock's figures to a sheet made by [Weigh]: stages, windows, chances and the warnings that follow from them.
// The sheet it is called on is not changed.
func (s Sheet) Time(shelf Shelf, h Hand) Sheet {
	s = s.copied()
	if len(s.Base.Jugs) == 0 {
		return s // a plan with faults: there is nothing to time
	}
	for _, b := range s.Batches() {
		t := timer{sheet: &s, batch: b, plan: s.Plan.Batch(b.Name), shelf: shelf}
		t.suits = t.technique()
		t.work(h)
	}
	s.pipeWindow()
	s.inspectToppingHeat(shelf)
	s.dry(h.Rack)
	s.label(shelf)
	s.Timed = true
	s.sortWarnings()
	return s
}

// copied returns a sheet whose parts that Time writes are its own.
func (s Sheet) copied() Sheet {
	s.Warnings = append([]Warning(nil), s.Warnings...)
	s.Run = append([]Task(nil), s.Run...)
	s.Base.Jugs = append([]JugSheet(nil), s.Base.Jugs...)
	if s.Icing != nil {
		icing := *s.Icing
		icing.Jugs = append([]JugSheet(nil), icing.Jugs...)
		s.Icing = &icing
	}
	return s
}

// span is the stages a batter may be in when it is used.
type span struct{ from, to chem.Stage }

type timer struct {
	sheet *Sheet
	batch *BatchSheet
	plan  *Batch
	shelf Shelf
	suits span

	forecasts []*clock.Forecast // by jug; nil: the clock says nothing of it
}

// technique is the span the batch is used in: the plan's technique for the base; for the icing, thick until it is stiff.
func (t *timer) technique() span {
	if t.batch.Name == Icing {
		return span{chem.Thick, chem.Thick}
	}
	tech, _ := t.shelf.Technique(t.sheet.Plan.Swirl.Technique)
	return span{tech.From, tech.To}
}

func (t *timer) work(h Hand) {
	if t.batch.Refused.Masses != "" {
		t.batch.Refused.Times = t.batch.Refused.Masses // its stop stands already
		return
	}
	batter := t.batter()
	c, err := clock.New(batter, h.Clock)
	if err != nil {
		t.batch.Refused.Times = err.Error()
		t.warnRefusal(err.Error())
		t.warnFalseTrace(batter)
		t.bed(nil)
		return
	}
	shown := map[string]bool{}
	t.forecasts = make([]*clock.Forecast, len(t.batch.Jugs))
	for i := range t.batch.Jugs {
		j := &t.batch.Jugs[i]
		f := c.Forecast(t.jug(j))
		if f.Refusal != "" {
			t.warnJugRefusal(j, f.Refusal)
			continue
		}
		t.times(j, f)
		t.warnCautions(f, shown)
		t.forecasts[i] = &f
	}
	t.warnLearnt(h, c, batter)
	t.chances()
	t.batch.Sigma = c.Forecast(clock.Jug{Fraction: 1}).Sigma
	t.warnNoEmulsion()
	t.warnLate()
	t.bed(c)
}

// batter is what the clock needs to know of the batch.
func (t *timer) batter() clock.Batter {
	b, p := t.batch, t.plan
	out := clock.Batter{
		OilG: b.Size.OilsG, SapKOHMgG: b.Fats.SapKOHMgG, Superfat: p.SuperfatPercent / 100, Concentration: b.Lye.PureConcentrationPercent / 100,
		KOHShare: p.kohShare(), StartC: b.Heat.MixC, Measured: p.BatterMeasured, RoomC: t.sheet.Plan.Room.TemperatureC,
		SplitMin: p.SplitAtMin, Recipe: t.sheet.Plan.Name,
	}
	blend := make(chem.Blend, 0, len(p.Oils))
	for _, o := range b.Oils {
		oil, _ := t.shelf.Oil(o.ID)
		blend = append(blend, chem.Part{Fat: oil.Fat, G: max(0, o.G)})
		if oil.Fat.Resin || oil.Fat.Kind == chem.WaxEster {
			out.WaxFraction += o.G / b.Size.OilsG
		}
		if oil.Fat.Profile[chem.Ricinoleic] > 0.5 {
			out.CastorFraction += o.G / b.Size.OilsG
		}
	}
	out.Profile, out.Profiled = blend.Profile()
	if cloud, ok := blend.CloudC(); ok {
		out.CloudC, out.CloudKnown = cloud, true
	}
	for _, x := range p.Blend {
		out.Bursts = append(out.Bursts, clock.Burst{AtMin: x.AtMin, S: x.S})
	}
	out.Additives = t.additives()
	out.FFA, out.CrudeOil = t.freeAcid()
	return out
}

// jug is what the clock needs to know of one jug; its scents go in when the run gets to them.
func (t *timer) jug(j *JugSheet) clock.Jug {
	out := clock.Jug{}
	if t.batch.Size.BatterG > 0 {
		out.Fraction = j.BatterG / t.batch.Size.BatterG
	}
	for _, d := range j.Colourants {
		if d.Carrier == CarryWater {
			out.ExtraWaterG += d.CarrierG
		}
	}
	at := t.scentedAt(j.Name)
	for _, x := range j.Scents {
		sc, _ := t.shelf.Scent(x.ID)
		behaviour := t.shelf.BehaviourOf(sc)
		lnFactor, sd, _ := clock.ScentPrior(behaviour) // every Behaviour… word has one: a test holds it
		load := 0.0
		if t.batch.Size.OilsG > 0 && out.Fraction > 0 {
			load = x.G / (t.batch.Size.OilsG * out.Fraction) * 100
		}
		test := sc.TestLoadPercent
		if test == 0 {
			test = clock.PriorLoadPercent
		}
		out.Scents = append(out.Scents, clock.Scent{
			ID: sc.ID, Name: sc.Name, LnFactor: lnFactor, SD: sd, RefLoadPercent: test, LoadPercent: load,
			AtMin: at, Rices: sc.Rices, Seizes: behaviour == BehaviourSeizes,
		})
	}
	return out
}

// scentedAt is the minute after this batch's lye-in at which the run scents a jug, never before the split.
func (t *timer) scentedAt(jug string) float64 {
	for _, task := range t.sheet.Run {
		if task.Kind == TaskScent && task.Batch == t.batch.Name && task.Jug == jug {
			return max(task.StartMin-t.batch.LyeInAtMin, t.plan.SplitAtMin)
		}
	}
	return t.plan.SplitAtMin
}

func (t *timer) times(j *JugSheet, f clock.Forecast) {
	figure := func(v float64, ok bool) Figure { return Figure{V: v, Known: ok} }
	for stage, at := range f.Stages {
		j.Clock.Stages[stage] = StageTime{Low: figure(at.Low, at.LowOK), Mid: figure(at.Mid, at.MidOK), High: figure(at.High, at.HighOK)}
	}
	if from := j.Clock.Stages[t.suits.from].Mid; from.Known {
		j.Clock.Window.From = Know(from.V + t.batch.LyeInAtMin)
	}
	if past := t.past(); past < chem.Stage(chem.Stages) {
		if to := j.Clock.Stages[past].Mid; to.Known {
			j.Clock.Window.To = Know(to.V + t.batch.LyeInAtMin)
		}
	}
}

// past is the first stage the technique no longer allows.
func (t *timer) past() chem.Stage { return t.suits.to + 1 }
