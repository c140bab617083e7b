package paper

import "pourbench/pour"

// step is one of the things done to a batch, or another place on the paper where a warning belongs.
type step int

const (
	stepOils step = iota
	stepLye
	stepColours
	stepScents
	stepMix // from here on in the pour
	stepSplit
	stepColour
	stepScent
	stepPour
	placeMould
	placeBed
	placeCut
	placeFront // only on the first page
	stepAhead  // days before
	stepReady  // laid out for the top
)

// section is one section of the full paper: what is weighed of a batch, or a place that both share.
type section struct {
	batch pour.BatchName // of a weighing step
	step  step
	title string
}

// planned lists the sections that this plan needs, in the order it is worked through.
func (d *desk) planned() []section {
	out := []section{{step: placeFront, title: "cautions: read, then tick"}}
	if len(d.sheet.Embeds) > 0 {
		out = append(out, section{step: stepAhead, title: "made days before"})
	}
	out = append(out, section{step: noStep, title: "gather"}, section{step: placeMould, title: "line the mould"})
	for _, n := range d.batches() {
		out = append(out, section{n, stepOils, "weigh the oils"}, section{n, stepLye, "weigh and make the lye"})
		if anyJug(d.batch(n), coloured) {
			out = append(out, section{n, stepColours, "weigh and wet the colours"})
		}
		if anyJug(d.batch(n), scented) {
			out = append(out, section{n, stepScents, "weigh the scents"})
		}
	}
	if d.topped() {
		out = append(out, section{step: stepReady, title: "lay out for the top"})
	}
	return append(out, section{step: stepPour, title: "the pour, in order"}, section{step: placeBed, title: "put to bed"},
		section{step: noStep, title: "clean up"}, section{step: placeCut, title: "cut and cure"})
}

// noStep is the step of a section in which no warning is said.
const noStep step = -1

// number is the number of the section in which a step of a batch stands; what is done in the pour stands in one section for both.
func (d *desk) number(n pour.BatchName, s step) int {
	if s >= stepMix && s < placeMould {
		n, s = "", stepPour
	}
	for i, x := range d.sections {
		if x.step == s && (x.batch == n || x.batch == "") {
			return i + 1
		}
	}
	return 1
}

// batches names the batches of the plan.
func (d *desk) batches() []pour.BatchName {
	if d.sheet.Icing == nil {
		return []pour.BatchName{pour.Base}
	}
	return []pour.BatchName{pour.Base, pour.Icing}
}

// of puts the name of a batch before a text, where the plan has two.
func (d *desk) of(n pour.BatchName, text string) string {
	if d.sheet.Icing == nil || n == "" {
		return text
	}
	return string(n) + ": " + text
}

// placeOf is where on the paper a warning is said: with what it is said of. What is said of a colourant or a dose is said of an extra where
// that is weighed.
func (d *desk) placeOf(w pour.Warning) step {
	at := placeOf(w.Code)
	_, name, extra := w.Extra()
	if !extra || at != stepColours && at != stepOils && at != stepLye {
		return at
	}
	for _, x := range d.batch(batchOf(w)).Extras {
		switch {
		case x.Name != name:
		case x.InTheLye():
			return stepLye
		case at == stepLye && x.Joins == pour.JoinsEmulsion:
			return stepMix
		}
	}
	if at == stepLye {
		return at
	}
	return stepOils
}

// placeOf is where on the paper the warnings of a code are said. A code it does not know stays on the first page.
func placeOf(code string) step {
	switch code {
	case "carrier-short", "blend-unfinished", "glycerin-sweat", "icing-unsized", "icing-mismatch", "icing-small", "icing-rest":
		return stepOils
	case "purity-unusual", "lye-heavy", "lye-heavy-worst", "lye-mixed-strong", "lye-short-water", "lye-near-boil", "lye-meets-sugar", "lye-meets-milk",
		"lye-meets-alcohol", "lye-meets-acid", "lye-on-ice", "alkali-rounding", "purity-assumed":
		return stepLye
	case "superfat-jug", "colour-shifts", "colour-dies", "colour-untested", "colour-caution", "colour-wrong-carrier", "dose-unusual", "dust", "glycerin-rivers":
		return stepColours
	case "scent-over-limit", "scents-limit-sum", "scent-no-certificate", "scent-high-in-jug", "vanillin-white", "vanillin-near-white", "vanillin-browns":
		return stepScents
	case "clock-refused", "clock-wide", "times-learnt", "pour-odd", "false-trace", "hands-busy":
		return stepMix
	case "jug-too-small", "split-early":
		return stepSplit
	case "scents-add-up", "scent-fast-icing", "scent-seizes", "scent-rices", "scent-before-split", "scent-nowhere":
		return stepScent
	case "scent-fast-late", "jug-late", "jug-early", "base-stiff", "icing-thin", "icing-stiff", "muddy-neighbours", "jugs-alike", "swirl-ignored",
		"piping-unfinished", "icing-bags", "icing-crowded", "base-soft", "icing-slides", "pipe-window",
		"topping-bleeds", "topping-untested", "topping-dissolves", "topping-melts", "topping-flammable", "topping-dust", "topping-order", "topping-dose":
		return stepPour
	case "mould-overfull", "mould-high", "icing-over-rim", "mould-underfilled", "mould-offcut":
		return placeMould
	case "gel", "soda-ash":
		return placeBed
	case "embed-tight", "embed-astray", "embed-sight", "embed-high", "embed-weight", "embed-deep", "embed-wall", "embed-touch", "embed-iced", "embed-late", "embed-crowd", "wires-off-pitch", "best-none", "best-shared":
		return stepPour
	case "embed-melts":
		return placeBed
	case "cured-heavier", "salt-bar", "icing-lane", "icing-crosses", "topping-weeps", "topping-damp", "topping-browns", "topping-plastic", "topping-wire", "embed-cut", "embed-hard", "embed-squeeze",
		"cut-none", "cut-outside", "cut-rest", "bars-uneven", "wires-twice", "wires-idle", "slice-none", "cutter-low", "cutter-shallow", "lay-crushes", "packed-damp", "label-over-mass",
		"label-name-unverified", "label-made-of", "label-allergen-open", "label-allergen-unstated", "label-prohibited", "label-claim", "label-food", "label-weight", "outside-report":
		return placeCut
	default:
		return placeFront
	}
}
