package pour

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/chem/clock"
)

// LikelyPercent is the chance from which a jug is called likely late or early.
const LikelyPercent = 50

func (t *timer) warnRefusal(reason string) {
	t.sheet.warn(warning("clock-refused", string(t.batch.Name), reason, "go by what you see in the jug; the weights above still stand"))
}

func (t *timer) warnJugRefusal(j *JugSheet, reason string) {
	t.sheet.warn(warning("clock-refused", t.where(j), reason, "go by what you see in this jug"))
}

func (t *timer) where(j *JugSheet) string { return t.batch.Name.jug(j.Name) }

// warnCautions passes on, once, what the clock says beside its times. What a scent's own warning says already is left out.
func (t *timer) warnCautions(f clock.Forecast, shown map[string]bool) {
	for _, c := range f.Cautions {
		if shown[c.Text] {
			continue
		}
		shown[c.Text] = true
		switch c.Kind {
		case clock.StartingGuess, clock.FromLogs, clock.SeizePossible, clock.Ricing, clock.Heats, clock.AlcoholIn:
			// the run page says the first two, the scents' and extras' own warnings the others
		case clock.FalseTrace:
			t.sheet.warn(warning("false-trace", string(t.batch.Name), said(c), "work a few degrees warmer, or with fewer hard fats"))
		case clock.FreeAcidSoap:
			t.sheet.warn(warning("false-trace", string(t.batch.Name), said(c), "take less free acid or refined oils; else stir it smooth by hand and do not pour by its thickness"))
		default:
			t.sheet.warn(warning("clock-wide", string(t.batch.Name), said(c), "watch the batter itself and log what you see"))
		}
	}
}

// warnFalseTrace passes on what looks like trace in a batch that the clock refuses: that is when nobody expects it.
func (t *timer) warnFalseTrace(b clock.Batter) {
	f := clock.Forecast{}
	for _, c := range b.Cautions() {
		if c.Kind == clock.FalseTrace || c.Kind == clock.FreeAcidSoap {
			f.Cautions = append(f.Cautions, c)
		}
	}
	t.warnCautions(f, map[string]bool{})
}

// said words a clock's caution like the other warnings: what it is about first, no stop at the end.
func said(c clock.Caution) string {
	text := strings.TrimSuffix(c.Text, ".")
	if c.Subject == "" {
		return text
	}
	return c.Subject + ": " + strings.ToLower(text[:1]) + text[1:]
}

// warnLate judges every jug at its turn.
func (t *timer) warnLate() {
	late, last := 0, ""
	for i := range t.batch.Jugs {
		j := &t.batch.Jugs[i]
		if j.Clock.LateChancePercent.Known && j.Clock.LateChancePercent.V >= LikelyPercent {
			late, last = late+1, j.Name
			t.warnLateJug(i)
			continue
		}
		if j.Clock.EarlyChancePercent.Known && j.Clock.EarlyChancePercent.V >= LikelyPercent {
			t.warnEarlyJug(j)
		}
	}
	if late > 1 && t.batch.Name == Base {
		t.sheet.warn(warning("base-stiff", string(t.batch.Name), fmt.Sprintf("%d jugs are likely past %s before they are poured, %s among them", late, t.suits.to, last),
			"work cooler or with less stick-blending, use weaker lye, or plan fewer jugs"))
	}
	if b := t.batch; b.Name == Icing && b.LyeInAtMin > t.plan.StartAtMin+busyMin {
		show := t.sheet.Plan.Show
		t.sheet.warn(warning("hands-busy", string(b.Name), fmt.Sprintf("its lye-in is planned at %s but the hands are free at %s", show.Minutes(t.plan.StartAtMin), show.Minutes(b.LyeInAtMin)),
			"start it later, or make it before the base"))
	}
}

// busyMin is how long the icing may have to wait before it is worth a word.
const busyMin = 0.5

// warnLateJug says that a jug comes late. In the pot all are poured out together: the pot speaks for them, but for a quick scent's own jug.
func (t *timer) warnLateJug(i int) {
	j := &t.batch.Jugs[i]
	tenths := chances(j.Clock.LateChancePercent.V)
	if t.batch.Name == Icing {
		t.sheet.warn(warning("icing-stiff", t.where(j), fmt.Sprintf("likely stiff before it is piped (%s)", tenths), "mix the icing later, cooler or with less stick-blending"))
		return
	}
	code, do := "jug-late", "pour it earlier, work cooler, or choose a technique for thicker batter"
	for _, x := range j.Scents {
		if sc, ok := t.shelf.Scent(x.ID); ok && fast(t.shelf.BehaviourOf(sc)) {
			code, do = "scent-fast-late", "pour it first, scent it last, or put "+sc.Name+" into the jug poured first"
			if t.isFirst(j) {
				do = "scent it last, work cooler, or take a slower scent than " + sc.Name
			}
		}
	}
	text := fmt.Sprintf("likely past %s when it is poured (%s)", t.suits.to, tenths)
	if t.batch.Script.Brief.Technique.InPot() {
		if code == "jug-late" && i > 0 {
			return
		}
		text = fmt.Sprintf("likely past %s when the pot is poured out (%s)", t.suits.to, tenths)
		if j.Clock.LateJug != j.Name {
			text += ": " + j.Clock.LateJug + " is the quickest in it"
		}
	}
	t.sheet.warn(warning(code, t.where(j), text, do))
}

// isFirst says whether no other jug of the batch is poured before this one.
func (t *timer) isFirst(j *JugSheet) bool {
	return !slices.ContainsFunc(t.batch.Jugs, func(o JugSheet) bool { return o.Clock.PourAtMin.V < j.Clock.PourAtMin.V })
}

func (t *timer) warnEarlyJug(j *JugSheet) {
	tenths := chances(j.Clock.EarlyChancePercent.V)
	if t.batch.Name == Icing {
		t.sheet.warn(warning("icing-thin", t.where(j), fmt.Sprintf("likely not yet thick when it is piped (%s)", tenths), "mix the icing earlier, stick-blend it more, or wait before piping"))
		return
	}
	yet := t.suits.from.String()
	if t.suits.from == chem.Emulsion {
		yet = "an emulsion"
	}
	t.sheet.warn(warning("jug-early", t.where(j), fmt.Sprintf("likely not yet %s when it is poured (%s)", yet, tenths), "wait, or stick-blend a little longer before the split"))
}

// chances draws a chance as makers say it: "about 7 in 10", never certain.
func chances(percent float64) string {
	tenths := math.Round(percent / 10)
	return fmt.Sprintf("about %.0f in 10", min(9, max(1, tenths)))
}
