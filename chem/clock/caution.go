package clock

import (
	"fmt"

	"pourbench/chem"
)

// CautionKind is a stable name for one thing to know beside a forecast.
type CautionKind string

// The kinds of caution.
const (
	StartingGuess CautionKind = "starting guess"   // no logs yet
	FromLogs      CautionKind = "from logs"        // rests on logged pours
	HandStirred   CautionKind = "hand stirred"     // no blender: poorly modelled
	FalseTrace    CautionKind = "false trace"      // near the cloud point
	Heats         CautionKind = "heat"             // an additive brings heat
	AlcoholIn     CautionKind = "alcohol"          // an additive holds alcohol
	HighLoad      CautionKind = "high scent load"  // 2 to 4 times the test load
	OffLoad       CautionKind = "other scent load" // under 0.3 or over 1.7 times the test load
	SeizePossible CautionKind = "seize possible"   // can set within seconds
	Ricing        CautionKind = "ricing"           // separates: not trace
	FarLye        CautionKind = "far lye"          // concentration near the ends of the range
	FarSize       CautionKind = "far size"         // batch size outside 0.2 to 5 kg of oil
	UnknownFFA    CautionKind = "unknown free acid"
	FreeAcidSoap  CautionKind = "free acid soap" // free acid alone makes it look like trace at lye-in
	OffDose       CautionKind = "other dose"     // an additive over 1.7 times the dose its effect was stated for
	LateBurst     CautionKind = "late burst"     // blending planned after the split: not counted
)

// Caution is one thing to know beside a forecast. It promises nothing.
type Caution struct {
	Kind    CautionKind
	Subject string // scent or additive it is about; empty: the jug
	Text    string // one sentence or two
}

// falseTraceK is how far above the cloud estimate setting fat may still look like trace, K.
const falseTraceK = 3

func (c *Clock) cautions(j Jug) []Caution {
	out := append(c.basis(), c.batter.Cautions()...)
	if len(blending(c.batter.Bursts)) == 0 && len(blending(j.Bursts)) == 0 {
		out = append(out, Caution{HandStirred, "", "Stirred by hand only: hand stirring is poorly modelled, so the band is wide."})
	}
	if conc := c.batter.jugConcentration(j); conc > 0.43 || conc < 0.27 {
		out = append(out, Caution{FarLye, "", "Far from the lye strengths the model was tuned at: over 43 % soap grains out, under 27 % the emulsion is weak."})
	}
	for _, s := range j.Scents {
		if s.LoadPercent > 0 {
			out = append(out, s.cautions()...)
		}
	}
	return out
}

// basis says what the numbers rest on.
func (c *Clock) basis() []Caution {
	if c.hand.Pours == 0 {
		return []Caution{{StartingGuess, "", "A starting guess. Could easily be half or double. Log this pour to sharpen it."}}
	}
	if n := c.hand.recipePours(c.batter.Recipe); n > 0 {
		return []Caution{{FromLogs, "", "Based on " + pours(n) + " of this recipe."}}
	}
	return []Caution{{FromLogs, "", "Based on " + pours(c.hand.Pours) + ", none of this recipe."}}
}

// Cautions are what is to know of the batch itself, whoever pours it, and also where the clock refuses it.
func (b Batter) Cautions() []Caution {
	var out []Caution
	if s, ok := b.StageAtLyeIn(); ok {
		out = append(out, Caution{FreeAcidSoap, "", fmt.Sprintf(
			"Free acid, %.2g %% of the oils, turns to soap the moment lye comes in and can look like %s trace. That is not trace.", b.ffa()*100, s)})
	}
	if b.CloudKnown && b.StartC < b.CloudC+falseTraceK {
		out = append(out, falseTrace())
	}
	for _, a := range b.Additives {
		out = append(out, a.cautions()...)
	}
	if b.OilG < 200 || b.OilG > 5000 {
		out = append(out, Caution{FarSize, "", "Outside 0.2 to 5 kg of oil, where blending and cooling are only guessed at."})
	}
	if b.CrudeOil {
		out = append(out, Caution{UnknownFFA, "", "Used, unrefined and pomace oils can hold free acid, which brings trace sooner; how much is in this lot is not known."})
	}
	for _, r := range blending(b.Bursts) {
		if r.to > b.SplitMin {
			out = append(out, Caution{LateBurst, "", "Blending planned after the split is not counted."})
			break
		}
	}
	return out
}

func (a Additive) cautions() []Caution {
	var out []Caution
	if a.Heat {
		out = append(out, Caution{Heats, a.Name, "May heat strongly in the mould: sugars and milk add heat."})
	}
	if a.Alcohol {
		out = append(out, Caution{AlcoholIn, a.Name, "Alcohol speeds a batter by an amount that varies a great deal."})
	}
	return append(out, strayed(a.doseSD(), a.Name, "dose its effect was stated for", OffDose, OffDose)...)
}

func (s Scent) cautions() []Caution {
	var out []Caution
	if s.Seizes {
		out = append(out, Caution{SeizePossible, s.Name, "This scent can set within seconds. Have the mould ready; the minutes cannot tell."})
	}
	if s.Rices {
		out = append(out, Caution{Ricing, s.Name, "This scent rices or separates, which is not a thickening: the clock cannot tell it."})
	}
	return append(out, strayed(loadSD(s.Ratio()), s.Name, "load it was tested at", HighLoad, OffLoad)...)
}

// strayed says it where a load or dose is far from the one its effect is known at.
func strayed(sd float64, subject, known string, high, off CautionKind) []Caution {
	switch sd {
	case highLoadSD:
		return []Caution{{high, subject, "Over twice the " + known + ": its effect here is a guess."}}
	case offLoadSD:
		return []Caution{{off, subject, "Far from the " + known + ": its effect here is less sure."}}
	default:
		return nil
	}
}

func falseTrace() Caution {
	return Caution{FalseTrace, "", "At this temperature some fat may be setting. Thickness would not mean trace."}
}

// setting looks whether a jug that started warm enough cools into false trace before it is stiff.
func (c *Clock) setting(f *Forecast) []Caution {
	limit := c.batter.CloudC + falseTraceK
	if !c.batter.CloudKnown || c.batter.StartC < limit {
		return nil
	}
	for s := chem.Light; s <= chem.Stiff; s++ {
		if f.Stages[s].MidOK && f.StageC[s] < limit {
			return []Caution{falseTrace()}
		}
	}
	return nil
}

// pours says how many, in words.
func pours(n int) string {
	if n == 1 {
		return "1 of your pours"
	}
	return fmt.Sprintf("%d of your pours", n)
}
