package paper

import (
	"fmt"

	"pourbench/pour"
)

// Sections of the checklist. Their numbers never move: a plan without icing leaves a gap.
const (
	sectionCautions = iota + 1
	sectionGather
	sectionMould
	sectionMelt
	sectionWeigh // of the base: the steps from stepOils to stepScents
	sectionRun   = sectionWeigh + 5
	sectionMix   = sectionRun + 1 // of the base: the steps from stepMix to stepPour
	sectionIcing = sectionMix + 5 // all ten steps of the icing
	sectionBed   = sectionIcing + 10
	sectionClean = sectionBed + 1
	sectionCut   = sectionClean + 1
)

// step is one of the ten things done to a batch, or another place on the paper where a warning belongs.
type step int

const (
	stepOils step = iota
	stepLye
	stepExtras
	stepColours
	stepScents
	stepMix
	stepSplit
	stepColour
	stepScent
	stepPour
	placeMould
	placeBed
	placeCut
	placeFront // only on the first page
)

// sectionOf is the number of the section in which a step of a batch stands.
func sectionOf(batch pour.BatchName, s step) int {
	switch {
	case batch == pour.Icing:
		return sectionIcing + int(s)
	case s < stepMix:
		return sectionWeigh + int(s)
	default:
		return sectionMix + int(s-stepMix)
	}
}

// titleOf is the heading of a step of a batch.
func titleOf(batch pour.BatchName, s step) string {
	titles := [...]string{
		"weigh the oils", "weigh and make the lye", "weigh the extras", "weigh and wet the colours", "weigh the scents",
		"mix", "split", "colour", "scent", "pour",
	}
	if batch != pour.Icing {
		return titles[s]
	}
	if s == stepPour {
		return "icing: pipe"
	}
	return "icing: " + titles[s]
}

// stepOfTask is the step in which a task of the run is described.
func stepOfTask(t pour.Task) step {
	if t.Act != pour.NoAct {
		return stepPour
	}
	switch t.Kind {
	case pour.TaskCoolLye:
		return stepLye
	case pour.TaskSplit:
		return stepSplit
	case pour.TaskColour:
		return stepColour
	case pour.TaskScent:
		return stepScent
	case pour.TaskBed, pour.TaskEnd:
		return placeBed
	default:
		return stepMix
	}
}

// placeOfWarning is where on the paper a warning is said again: what is said of a colourant or a dose is said of an extra with the extras.
func placeOfWarning(w pour.Warning) step {
	at := placeOf(w.Code)
	if _, _, extra := w.Extra(); extra && at == stepColours {
		return stepExtras
	}
	return at
}

// placeOf is where on the paper the warnings of a code are said again. A code it does not know stays on the first page.
func placeOf(code string) step {
	switch code {
	case "carrier-short", "blend-unfinished":
		return stepOils
	case "purity-unusual", "lye-heavy", "lye-heavy-worst", "lye-mixed-strong", "lye-short-water", "lye-near-boil", "lye-meets-sugar", "lye-meets-milk",
		"lye-meets-alcohol", "lye-meets-acid", "lye-on-ice", "alkali-rounding", "purity-assumed":
		return stepLye
	case "glycerin-sweat":
		return stepExtras
	case "superfat-jug", "colour-shifts", "colour-dies", "colour-untested", "colour-caution", "colour-wrong-carrier", "dose-unusual", "dust", "glycerin-rivers":
		return stepColours
	case "scent-over-limit", "scents-limit-sum", "scent-no-certificate", "scent-high-in-jug", "vanillin-white", "vanillin-near-white", "vanillin-browns":
		return stepScents
	case "clock-refused", "clock-wide", "false-trace", "hands-busy":
		return stepMix
	case "jug-too-small":
		return stepSplit
	case "scents-add-up", "scent-fast-icing", "scent-seizes", "scent-rices", "scent-before-split", "scent-nowhere":
		return stepScent
	case "scent-fast-late", "jug-late", "jug-early", "base-stiff", "icing-thin", "icing-stiff", "muddy-neighbours", "jugs-alike", "swirl-ignored":
		return stepPour
	case "mould-overfull", "mould-high", "mould-underfilled", "mould-offcut":
		return placeMould
	case "gel", "soda-ash":
		return placeBed
	case "cured-heavier", "salt-bar":
		return placeCut
	default:
		return placeFront
	}
}

// icingSections is the numbers a plan without icing leaves free.
func icingSections() string { return fmt.Sprintf("%d-%d", sectionIcing, sectionBed-1) }
