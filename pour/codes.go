package pour

import (
	"fmt"
	"slices"
)

// CodeInfo is one warning a sheet can carry.
type CodeInfo struct {
	Code     string
	Severity Severity
	Lye      bool   // stands on the lye
	Meaning  string // one line for help and README
}

// Codes is the table of every warning, the one place their severities are set.
func Codes() []CodeInfo {
	var all []CodeInfo
	for _, group := range codeGroups() {
		all = append(all, group()...)
	}
	return all
}

func codeGroups() [11]func() []CodeInfo {
	return [11]func() []CodeInfo{lyeCodes, scentCodes, colourCodes, mouldCodes, pipingCodes, runCodes, toppingCodes, embedCodes, cutCodes, cureCodes, labelCodes}
}

func lyeCodes() []CodeInfo {
	return []CodeInfo{
		{"plan-fault", Stop, true, "the plan holds something that cannot be"},
		{"blend-unfinished", Stop, true, "the oils do not sum to 100 %: the blend is still being written"},
		{"lye-heavy", Stop, true, "more alkali than the oils can take, in the whole batch or in its leanest jug"},
		{"lye-heavy-worst", Caution, false, "lye-heavy, in the whole batch or in its leanest jug, if every oil sits at the low end of its published range"},
		{"lye-mixed-strong", Stop, true, "lye over 50 % at the moment of dissolving"},
		{"lye-short-water", Stop, true, "stock lye or watery extras bring more water than the plan wants"},
		{"lye-near-boil", Note, false, "the lye water can come near boiling as it dissolves"},
		{"lye-meets-sugar", Caution, false, "sugar meets lye: heat, browning"},
		{"lye-meets-milk", Caution, false, "milk meets lye: heat, browning, smell"},
		{"lye-meets-alcohol", Caution, false, "alcohol meets lye: sudden boil-over"},
		{"lye-meets-acid", Caution, false, "an acid uses up alkali and gives heat"},
		{"lye-on-ice", Caution, false, "juice or purée is the lye's water: heat, foam, smell"},
		{"alkali-rounding", Caution, false, "the steps of the scales, for oils and alkali, move the superfat by more than half a point"},
		{"purity-assumed", Note, false, "the alkali is taken to be pure"},
		{"purity-unusual", Caution, false, "a purity no such alkali is sold at"},
		{"carrier-short", Stop, true, "the carrier oil asked of the batch is more than the blend holds"},
		{"superfat-jug", Note, false, "a jug's carrier oil or scent lifts its superfat well over the batch's"},
	}
}

func scentCodes() []CodeInfo {
	return []CodeInfo{
		{"scent-fast-late", Caution, false, "a fast scent in a jug that is poured late"},
		{"scents-add-up", Caution, false, "several scents in one jug speed it up together"},
		{"scent-fast-icing", Caution, false, "a fast scent in the icing"},
		{"scent-seizes", Caution, false, "a scent that can set the batter within seconds"},
		{"scent-rices", Caution, false, "a scent known to rice or separate"},
		{"scent-over-limit", Stop, false, "more of a scent in the cured bar than its certificate allows"},
		{"scents-limit-sum", Caution, false, "several scents, each under its own limit, add up"},
		{"scent-no-certificate", Note, false, "no certificate limit on the shelf for this scent"},
		{"scent-high-in-jug", Caution, false, "a very high load of scent inside one jug"},
		{"scent-nowhere", Caution, false, "a scent whose jugs have no share: it goes nowhere"},
		{"scent-before-split", Note, false, "a scent is meant to go in before the batter is split"},
		{"vanillin-white", Caution, false, "vanillin in a white jug"},
		{"vanillin-near-white", Caution, false, "vanillin next to a white jug"},
		{"vanillin-browns", Note, false, "vanillin browns the jug over some weeks"},
	}
}

func colourCodes() []CodeInfo {
	return []CodeInfo{
		{"glycerin-rivers", Caution, false, "titanium white, much water and heat together"},
		{"colour-shifts", Caution, false, "a colourant that changes its shade in alkali"},
		{"colour-dies", Caution, false, "a colourant that alkali destroys"},
		{"colour-untested", Note, false, "a colourant whose stability depends on the packet"},
		{"colour-caution", Caution, false, "a colourant with a caution of its own: rules, skin or cloth"},
		{"colour-wrong-carrier", Caution, false, "a colourant wetted with what does not wet it"},
		{"dose-unusual", Note, false, "a dose of a colourant or an extra outside its usual range"},
		{"muddy-neighbours", Caution, false, "two jugs poured beside each other that go muddy where they blend"},
		{"jugs-alike", Note, false, "two jugs that some eyes can hardly tell apart"},
		{"dust", Note, false, "fine powders that must not be breathed"},
	}
}

func mouldCodes() []CodeInfo {
	return []CodeInfo{
		{"swirl-ignored", Note, false, "a number or a pin of the swirl that the technique cannot follow"},
		{"jug-too-small", Caution, false, "a jug that cannot hold its portion"},
		{"mould-overfull", Stop, false, "more batter than the mould holds"},
		{"mould-high", Caution, false, "the batter stands within a finger of the rim"},
		{"icing-over-rim", Note, false, "the icing stands well over the rim"},
		{"mould-underfilled", Caution, false, "the batter does not reach the planned height"},
		{"mould-offcut", Note, false, "the length or a slab's width is no whole number of bars"},
		{"cured-heavier", Caution, false, "a cured bar would weigh more than the cut one"},
		{"salt-bar", Note, false, "so much salt that it is a salt bar: cut while warm"},
		{"glycerin-sweat", Note, false, "sugar or salt in the batch draws damp"},
		{"gel", Note, false, "whether the loaf will gel"},
		{"soda-ash", Note, false, "whether soda ash is likely"},
	}
}

func pipingCodes() []CodeInfo {
	return []CodeInfo{
		{"icing-unsized", Stop, true, "the icing is sized by its shape, and the shape cannot be worked out"},
		{"piping-unfinished", Caution, false, "the shape of the icing lacks a measure"},
		{"icing-mismatch", Caution, false, "the icing that is planned is not what its shape comes to"},
		{"icing-small", Caution, false, "too little icing to blend"},
		{"icing-rest", Note, false, "more icing is made than the shape takes, because the vessel blends no less"},
		{"icing-bags", Note, false, "much of the icing stays in its bags"},
		{"icing-crowded", Caution, false, "piped units have no room beside each other"},
		{"icing-lane", Caution, false, "piped units stand in the lane of a cut"},
		{"icing-crosses", Note, false, "every cut goes through the icing"},
		{"base-soft", Caution, false, "the base does not carry the icing yet"},
		{"icing-slides", Caution, false, "the base has set before the icing is piped on it"},
		{"pipe-window", Caution, false, "piping takes longer than the icing stays soft enough"},
	}
}

func runCodes() []CodeInfo {
	return []CodeInfo{
		{"clock-refused", Caution, false, "the clock cannot tell the times of this batch"},
		{"clock-wide", Note, false, "the clock's figures are less sure than usual"},
		{"times-learnt", Note, false, "the times are moved by what your own pours have taught the clock"},
		{"pour-odd", Caution, false, "the times are moved by a pour that was far from expected: it may be a slip"},
		{"false-trace", Caution, false, "fat may be setting: thickness would not mean trace"},
		{"jug-late", Caution, false, "a jug is likely past what the technique allows when its turn comes"},
		{"split-early", Caution, false, "a batch is split, or poured, before it is likely an emulsion"},
		{"jug-early", Note, false, "a jug is likely too thin for the technique when its turn comes"},
		{"base-stiff", Caution, false, "the base is too stiff before the last jug"},
		{"icing-thin", Caution, false, "the icing is not yet thick when it is needed"},
		{"icing-stiff", Caution, false, "the icing is too stiff before it is needed"},
		{"hands-busy", Note, false, "the icing's lye-in has to wait for the hands"},
		{"figure-unknown", Note, false, "a figure that could not be worked out"},
	}
}

func toppingCodes() []CodeInfo {
	return []CodeInfo{
		{"topping-bleeds", Caution, false, "a topping whose colour runs on fresh soap"},
		{"topping-untested", Note, false, "a topping that bleeds or browns by its packet"},
		{"topping-dissolves", Caution, false, "sugar or salt on a top that is still wet"},
		{"topping-weeps", Caution, false, "a topping that draws water at the room's humidity"},
		{"topping-damp", Note, false, "a topping that draws water in damp air, and no humidity stated"},
		{"topping-browns", Caution, false, "plants that turn brown on soap"},
		{"topping-melts", Caution, false, "a topping that the loaf's heat or the room can melt"},
		{"topping-flammable", Caution, false, "a spray whose vapour burns"},
		{"topping-dust", Note, false, "powder or glitter that is dusted into the air"},
		{"topping-plastic", Caution, false, "glitter of plastic, which has dates"},
		{"topping-wire", Caution, false, "grains under the wire, as the loaf lies"},
		{"topping-order", Note, false, "powder or what wets goes on in the wrong turn"},
		{"topping-dose", Note, false, "more or less of a topping than is usual"},
	}
}

// warning makes the warning of that code; a code that is not in the table is a mistake of this package and is shown as a stop.
func warning(code, where, text, do string) Warning {
	for _, group := range codeGroups() {
		for _, c := range group() {
			if c.Code == code {
				return Warning{Code: code, Severity: c.Severity, Where: where, Text: text, Do: do, Lye: c.Lye}
			}
		}
	}
	return Warning{Code: code, Severity: Stop, Where: where, Text: text, Do: fmt.Sprintf("tell the authors that %q is no code", code)}
}

// warn adds a warning. The reason of one that stands on a jug names the jug first, and the icing where it is the icing's.
func (s *Sheet) warn(w Warning) {
	if n, jug, ok := w.Jug(); ok {
		if n == Icing {
			jug += " of the icing"
		}
		w.Text = jug + ": " + w.Text
	}
	s.Warnings = append(s.Warnings, w)
}

// sortWarnings puts the worst first and otherwise keeps the order they were found in.
func (s *Sheet) sortWarnings() {
	slices.SortStableFunc(s.Warnings, func(a, b Warning) int { return b.Severity.rank() - a.Severity.rank() })
}

func (v Severity) rank() int {
	switch v {
	case Stop:
		return 2
	case Caution:
		return 1
	default:
		return 0
	}
}

// Worst is the severest severity among the warnings, or "" when there is none.
func (s *Sheet) Worst() Severity {
	worst := Severity("")
	for _, w := range s.Warnings {
		if worst == "" || w.Severity.rank() > worst.rank() {
			worst = w.Severity
		}
	}
	return worst
}

// LyeStopped says whether a stop stands on the lye: then no paper and no screen shows lye amounts.
func (s *Sheet) LyeStopped() bool {
	return slices.ContainsFunc(s.Warnings, func(w Warning) bool { return w.Severity == Stop && w.Lye })
}
