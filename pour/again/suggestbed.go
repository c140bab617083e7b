package again

import (
	"fmt"
	"math"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// How much later or earlier a loaf that was too soft or too hard is cut the next time, hours, and what tells two hours apart: common practice, no source.
const (
	laterH    = 6.0
	leastHour = 2.0
)

// cutHour suggests another hour for the cut by how firm the loaf was when it was unmoulded.
func (a *asker) cutHour() {
	for _, e := range a.past.standing {
		at, hour := e.When()
		h, ok := a.past.hoursIn(at)
		if e.Kind != logbook.Unmoulded || !hour || !ok {
			continue
		}
		h = math.Round(h)
		why := fmt.Sprintf("it was %s after %s h, planned to be cut after %s h", e.What, a.show.Number(h, 0), a.show.Number(a.past.Sheet.Plan.Bed.CutAfterH, 0))
		to := h
		switch e.What {
		case logbook.FirmSoft, logbook.FirmSticky:
			to = h + laterH
		case logbook.FirmHard, logbook.FirmCrumbly:
			to = h - laterH
		case logbook.FirmFirm:
		default:
			continue
		}
		if math.Abs(to-a.past.Sheet.Plan.Bed.CutAfterH) >= leastHour {
			a.number("bed.cut_after_h", to, fmt.Sprintf("cut after %s h", a.show.Number(to, 0)), why)
		}
	}
}

// muchAsh is the ash from which on another bed is worth a thought, and littleAsh what the other bed must have shown.
const (
	muchAsh   = 2
	littleAsh = 1
)

// bareOrWrapped suggests another bed where this one left ash and her own pours show less of it in the other.
func (a *asker) bareOrWrapped() {
	own, looked := a.past.lookedFor(logbook.LookAsh)
	was := a.past.Sheet.Plan.Bed.Keep
	if !looked || own < muchAsh {
		return
	}
	for _, keep := range []string{pour.BedInsulate, pour.BedBare, pour.BedChill} {
		told, clean := a.ashIn(keep)
		if keep == was || 2*clean <= told { // more than half
			continue
		}
		a.suggest("bed.keep", "put it to bed: "+keep, fmt.Sprintf("ash on it, put to bed %s; of %s put to bed %s, %d had a trace of it or none", was, pours(told), keep, clean), pour.SetWord("bed.keep", keep))
	}
}

// ashIn is how many of her other pours were looked at for ash that were put to bed so, and how many of them had a trace of it or none.
func (a *asker) ashIn(keep string) (told, clean int) {
	for _, o := range a.others {
		if seen, ok := o.lookedFor(logbook.LookAsh); ok && o.Sheet.Plan.Bed.Keep == keep {
			told++
			if seen <= littleAsh {
				clean++
			}
		}
	}
	return told, clean
}

// decided says whether her own pours that were put to bed so were looked at for ash: then they speak for that bed or against it, and no rule does.
func (a *asker) decided(keep string) bool { told, _ := a.ashIn(keep); return told > 0 }

// coloursSeen suggests to state the colours that jugs really came out with.
func (a *asker) coloursSeen() {
	for _, n := range a.batches() {
		for i, j := range a.plan.Batch(n).Jugs {
			seen := ""
			for _, e := range a.past.standing {
				if e.Kind == logbook.Looked && e.Jug == j.Name && (e.Batch == n || e.Batch == "" && n == pour.Base) && e.Life.Colour != "" {
					seen = e.Life.Colour
				}
			}
			if was := a.past.jugAt(n, j.Name); was >= 0 && seen != "" {
				a.suggest(fmt.Sprintf("%s.jug[%d].batter_colour", n, i), fmt.Sprintf("state the colour of %s%s as %s", j.Name, a.of(n), seen),
					fmt.Sprintf("it was seen so on the bars; the plan drew it as %s", a.past.Sheet.Batch(n).Jugs[was].Colour.Hex), pour.SetBatterColour(n, i, seen))
			}
		}
	}
}
