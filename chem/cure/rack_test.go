package cure_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pourbench/chem/cure"
)

// maker is a room with a diffusivity and a moisture that soap ends at in it; its batches differ as makers' do.
type maker struct{ d, ends, lnDSD, endsSD float64 }

// dried is a batch with the moisture it was cut at.
type dried struct {
	fit         *cure.Fit
	cutMoisture float64
}

func says(all []dried) []cure.Said {
	var out []cure.Said
	for _, b := range all {
		out = append(out, b.fit.Says(b.cutMoisture))
	}
	return out
}

// dries is one batch of hers: a bar cut at a moisture, weighed on the usual days with a scale of 0.1 g.
func (m maker) dries(t testing.TB, r *rand.Rand, box cure.Box, cutMoisture float64) dried {
	t.Helper()
	d, ends := m.d*math.Exp(m.lnDSD*r.NormFloat64()), m.ends+m.endsSD*r.NormFloat64()
	l := []float64{box.ThickMM, box.WideMM, box.HighMM}
	tau := 1 / (math.Pi * math.Pi * d * 86400e6 * (1/(l[0]*l[0]) + 1/(l[1]*l[1]) + 1/(l[2]*l[2])))
	loss, cutG := 1-(1-cutMoisture)/(1-ends), 0.00101*l[0]*l[1]*l[2]
	var w []cure.Weighing
	for _, day := range []float64{0, 1, 2, 4, 7, 14, 21, 28, 42} {
		g := cutG*(1-loss*(1-box.Left(day/tau))) + 0.1*r.NormFloat64()
		w = append(w, cure.Weighing{Day: day, G: math.Round(g*10) / 10})
	}
	p, err := cure.FromRecipe(cutMoisture, 0.10, 0.03)
	if err != nil {
		t.Fatal(err)
	}
	f, err := cure.Of(box, p, w, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	return dried{f, cutMoisture}
}

func bars() []cure.Box {
	return []cure.Box{{25, 80, 62}, {30, 70, 60}, {22, 85, 55}, {25, 60, 60}, {35, 80, 62}}
}

func TestARackKnowsNothingBeforeThreeBatches(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	m := maker{3e-11, 0.13, 0, 0}
	var some []dried
	for i := range 2 {
		some = append(some, m.dries(t, r, bars()[i], 0.19))
	}
	rack := cure.Learn(says(some))
	if rack.LnD.Known() || rack.Moisture.Known() || rack.LnD.Batches != 2 {
		t.Fatalf("%+v", rack)
	}
	got, err := rack.Prior(table(), 280./1470, 0.10, 0.03)
	if err != nil || got != prior(t) {
		t.Errorf("%+v, %v", got, err)
	}
	if r := cure.Learn(nil); r.LnD.Known() || r.Moisture.Known() || len(r.From) > 0 {
		t.Error("no batches taught something")
	}
}

// Bars of five sizes teach one diffusivity, and a bar of a sixth size and another moisture is forecast by it: tau and loss by this test's own arithmetic.
func TestWhatOneBarTaughtHoldsForAnother(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	m := maker{2.2e-11, 0.135, 0, 0}
	var all []dried
	for i, b := range bars() {
		all = append(all, m.dries(t, r, b, 0.17+0.01*float64(i)))
	}
	rack := cure.Learn(says(all))
	near(t, "ln D", rack.LnD.Mean, math.Log(2.2e-11), 0.08)
	near(t, "moisture", rack.Moisture.Mean, 0.135, 0.004)
	p, err := rack.Prior(cure.Box{ThickMM: 40, WideMM: 40, HighMM: 90}, 0.25, 0.10, 0.03)
	if err != nil {
		t.Fatal(err)
	}
	tau := 1 / (math.Pi * math.Pi * 2.2e-11 * 86400e6 * (2/1600. + 1/8100.))
	near(t, "ln tau of the other bar", p.LnTau, math.Log(tau), 0.08)
	mine, recipe := 1/(rack.Moisture.SD*rack.Moisture.SD), 1/(0.03*0.03)
	ends := (mine*rack.Moisture.Mean + recipe*0.10) / (mine + recipe)
	near(t, "its loss", p.Loss, 1-0.75/(1-ends), 1e-12)
	near(t, "its sd", p.LossSD, 0.75/((1-ends)*(1-ends))/math.Sqrt(mine+recipe), 1e-12)
	if !(p.LnTauSD < 0.3 && p.LnTauSD >= 0.1) {
		t.Errorf("ln tau is known to ± %v", p.LnTauSD)
	}
}

// Simulated makers: what a rack says of the next batch holds as often as it claims, and is nearer than the prior of everybody.
func TestTheNextBatchLiesWhereTheRackSays(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	within, nearer, n := 0, 0, 0
	for range 300 {
		m := maker{3.6e-11 * math.Exp(0.5*r.NormFloat64()), 0.10 + 0.014*r.NormFloat64(), 0.2, 0.012}
		var some []dried
		for range 3 + r.IntN(4) {
			some = append(some, m.dries(t, r, bars()[r.IntN(5)], 0.19))
		}
		rack := cure.Learn(says(some))
		if !rack.LnD.Known() {
			continue // a slow room: six weeks tell too little
		}
		n++
		next := math.Log(m.d) + 0.2*r.NormFloat64()
		if math.Abs(next-rack.LnD.Mean) < cure.Band80*rack.LnD.SD {
			within++
		}
		if math.Abs(next-rack.LnD.Mean) < math.Abs(next-math.Log(table().Diffusivity(16))) {
			nearer++
		}
	}
	if n < 200 {
		t.Errorf("only %d of 300 makers learnt something", n)
	}
	if share := float64(within) / float64(n); share < 0.74 || share > 0.90 {
		t.Errorf("a band of 80 %% holds %.0f %%", 100*share)
	}
	if share := float64(nearer) / float64(n); share < 0.66 {
		t.Errorf("nearer than the prior in %.0f %%", 100*share)
	}
}

// The arithmetic of three batches by hand: what the fits say less their priors, put together.
func TestThreeBatchesAreReckonedAsStated(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	m := maker{3e-11, 0.12, 0.5, 0.03}
	var all []dried
	for i := range 3 {
		all = append(all, m.dries(t, r, bars()[i], 0.19))
	}
	var y, v [3]float64
	for i, b := range all {
		f := b.fit
		s2, s02 := f.Covariance[2][2], 0.36
		p := 1/s2 - 1/s02
		u := (f.LnTau/s2 - math.Log(16)/s02) / p
		l := f.Box
		y[i] = -u - math.Log(math.Pi*math.Pi*86400e6*(1/(l.ThickMM*l.ThickMM)+1/(l.WideMM*l.WideMM)+1/(l.HighMM*l.HighMM)))
		v[i] = 1 / p
	}
	mid := (y[0] + y[1] + y[2]) / 3
	excess := (y[0]-mid)*(y[0]-mid) + (y[1]-mid)*(y[1]-mid) + (y[2]-mid)*(y[2]-mid) - (v[0]+v[1]+v[2])*2/3
	if excess <= 0 {
		t.Fatal("these three do not differ: draw others")
	}
	omega2 := (4*0.04 + excess) / 6
	w0, w1, w2 := 1/(v[0]+omega2), 1/(v[1]+omega2), 1/(v[2]+omega2)
	rack := cure.Learn(says(all))
	near(t, "mean", rack.LnD.Mean, (w0*y[0]+w1*y[1]+w2*y[2])/(w0+w1+w2), 1e-10)
	near(t, "sd", rack.LnD.SD, math.Sqrt(1/(w0+w1+w2)+omega2), 1e-10)
}

// A batch that was weighed twice in a day, one that does not follow the law and one fitted by the exponential teach nothing.
func TestABatchThatSaysLittleDoesNotCount(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	good := maker{3e-11, 0.12, 0, 0}.dries(t, r, table(), 0.19)
	short, err := cure.Of(table(), prior(t), weighed()[:2], 0.15)
	if err != nil {
		t.Fatal(err)
	}
	odd := weighed()
	odd[3].G = 123
	misfit, _ := cure.Of(table(), prior(t), odd, 0.15)
	plain, _ := cure.Exponential(table(), prior(t), weighed(), 0.15)
	untouched, err := cure.Forecast(table(), prior(t), 125)
	if err != nil {
		t.Fatal(err)
	}
	all := []dried{good, good, {short, 0.19}, {misfit, 0.19}, {plain, 0.19}, {untouched, 0.19}, {}}
	if rack := cure.Learn(says(all)); rack.LnD.Batches != 2 || rack.Moisture.Batches != 2 {
		t.Errorf("%+v", rack)
	}
	if rack := cure.Learn(says([]dried{good, good, {good.fit, 1}})); rack.LnD.Batches != 3 || rack.Moisture.Batches != 2 {
		t.Errorf("a bar of water alone: %+v", rack)
	}
}

// What a rack is without one of its batches is what the others teach; without another it is as it was.
func TestABatchIsNotForecastFromItself(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	m := maker{3e-11, 0.12, 0.3, 0.01}
	var all []cure.Said
	for i, b := range bars()[:4] {
		d := m.dries(t, r, b, 0.19)
		s := d.fit.Says(d.cutMoisture)
		s.Batch = []string{"fen", "bog", "hay", "moor"}[i]
		all = append(all, s)
	}
	rack, others := cure.Learn(all), cure.Learn([]cure.Said{all[0], all[2], all[3]})
	got := rack.Without("bog")
	if got.LnD != others.LnD || got.Moisture != others.Moisture || got.LnD == rack.LnD || got.LnD.Batches != 3 {
		t.Errorf("%+v, want %+v", got.LnD, others.LnD)
	}
	if same := rack.Without("lea"); same.LnD != rack.LnD || len(same.From) != 4 || len(rack.From) != 4 {
		t.Errorf("%+v", same)
	}
	if few := got.Without("fen"); few.LnD.Known() {
		t.Errorf("two batches teach %+v", few.LnD)
	}
}
