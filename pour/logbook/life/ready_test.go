package life_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// weighed logs a series of weighings of bars 1 to 3, days from the cut on the 6th, each bar as heavy as the worked set of the drying law's page but
// for half a gram either way.
func weighed(b *bench, of []float64, days ...int) {
	b.Helper()
	b.logs(at(12, 6), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 10}})
	for i, g := range of {
		b.logs(date(12, 6+days[i]).At(10, 0, at(12, 6).Location()), logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{g - .5, g, g + .5}}})
	}
}

// cures begins the pour anew with another length of its plan's own cure.
func (b *bench) cures(days float64) {
	b.Helper()
	b.plan.Bed.CureDays = days
	b.pours()
}

// A batch that is weighed, and whose plan's own cure is over, is ready on the day that the law says, with its band, and what is due says so; before that it cures.
func TestAWeighedBatchIsReadyOnItsDay(t *testing.T) {
	b := newBench(t)
	b.cures(7)
	weighed(b, []float64{125.0, 122.1, 120.9, 119.5, 117.9, 117.0, 116.0, 114.6}, 0, 1, 2, 4, 7, 10, 14, 21)
	now := b.on(date(12, 27))
	d := now.Drying
	if !d.Weighed || !d.Known || len(d.Means) != 8 || math.Abs(d.Means[7].G-114.6) > 1e-9 || d.Means[7].Day != 21 || len(d.Bars) != 3 {
		t.Fatalf("%+v", d)
	}
	// The page's own bar of 25 × 80 × 62 mm is ready on day 27.96; this one has other sides and another prior, within some days of it.
	want := life.Around(*now.CutDay, d.Ready.Low(), d.Ready.V, d.Ready.High())
	if now.Ready != want || d.Ready.V < 22 || d.Ready.V > 36 {
		t.Errorf("%+v, want %+v", now.Ready, want)
	}
	text := "ready " + want.Day.Short() + ", " + want.Early.Short() + " to " + want.Late.Short()
	found := false
	for _, due := range now.Due {
		found = found || due.Kind == life.DueReady && due.Text == text && due.Early == want.Early && due.Late == want.Late
	}
	if !found {
		t.Errorf("%q is not among %+v", text, now.Due)
	}
	if got := b.on(want.Day - 1); got.State != life.Curing {
		t.Errorf("the day before it is %s", got.State)
	}
	if got := b.on(want.Day); got.State != life.Ready || got.Since != want.Day || len(got.Due) != 0 {
		t.Errorf("on its day it is %s since %s, due %+v", got.State, got.Since, got.Due)
	}
}

// A batch that nobody weighs is not called ready before the late end of the plan's band.
func TestAnUnweighedBatchIsReadyLate(t *testing.T) {
	b := newBench(t)
	b.cures(7)
	b.logs(at(12, 6), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 10}})
	now := b.on(date(12, 20))
	if !now.Ready.Known || now.Drying.Weighed || now.Ready.Late <= now.Ready.Day {
		t.Fatalf("%+v", now.Ready)
	}
	if got := b.on(now.Ready.Late - 1); got.State != life.Curing {
		t.Errorf("within its band it is %s", got.State)
	}
	if got := b.on(now.Ready.Late); got.State != life.Ready || got.Since != now.Ready.Late {
		t.Errorf("at the end of its band it is %s", got.State)
	}
}

// A batch whose bars are dry before the days of cure of its plan are over cures on until they are.
func TestABatchIsNotReadyBeforeItsPlansCureIsOver(t *testing.T) {
	b := newBench(t)
	b.cures(60)
	weighed(b, []float64{125.0, 122.1, 120.9, 119.5, 117.9, 117.0, 116.0, 114.6}, 0, 1, 2, 4, 7, 10, 14, 21)
	over := date(12, 6) + 60
	if now := b.on(over - 1); now.State != life.Curing || now.Ready.Late >= over || len(now.Due) == 0 || !strings.Contains(now.Due[len(now.Due)-1].Text, "ready "+over.Short()) {
		t.Errorf("the day before: %s, dry by %s, due %+v", now.State, now.Ready.Late, now.Due)
	}
	if now := b.on(over); now.State != life.Ready || now.Since != over {
		t.Errorf("on its day: %s since %s", now.State, now.Since)
	}
}

// Weighings that do not follow the law are refused in words, and the batch cures on.
func TestWeighingsOffTheLawAreRefused(t *testing.T) {
	b := newBench(t)
	weighed(b, []float64{125, 110, 124, 111, 123}, 0, 2, 4, 8, 16)
	now := b.on(date(1, 30))
	if now.Drying.Known || now.Drying.Why == nil || !strings.Contains(now.Drying.Why.Error(), "check scale") || now.State != life.Curing {
		t.Errorf("%s, %v", now.State, now.Drying.Why)
	}
}
