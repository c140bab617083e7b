package logbook

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// ScentLeftOut is what a changed plan is where a jug, or without a jug the whole batch, goes without its scent.
const ScentLeftOut = "leave its scent out"

// Stirred is the key of the step that stirs colour or scent into a jug.
func Stirred(n pour.BatchName, kind pour.TaskKind, jug string) string {
	return string(n) + " " + string(kind) + " " + jug
}

// Omitted is what was planned and did not go in: scents that were left out, steps that were not done, jugs that were left as they were. This is the one
// place that decides it, for the live run, labels, stock, traces and papers alike. What was stirred in was, whatever was said before.
type Omitted struct {
	done, skipped map[string]bool
	unused        map[jugOf]bool
	scentless     map[jugOf]bool // jug empty: the whole batch
}

type jugOf struct {
	batch pour.BatchName
	jug   string
}

// OmittedBy works out what did not go in, by the events that stand.
func OmittedBy(standing []Event) Omitted {
	o := Omitted{done: map[string]bool{}, skipped: map[string]bool{}, unused: map[jugOf]bool{}, scentless: map[jugOf]bool{}}
	for _, e := range standing {
		switch {
		case e.Kind == Done:
			o.done[e.Step] = true
		case e.Kind == Skipped:
			o.skipped[e.Step] = true
		case e.Kind == Unpoured:
			o.unused[jugOf{e.Batch, e.Jug}] = true
		case e.Kind == Rescued && e.What == ScentLeftOut:
			o.scentless[jugOf{e.Batch, e.Jug}] = true
		}
	}
	return o
}

// Skipped reports whether a step was marked as one that was not done.
func (o Omitted) Skipped(key string) bool { return o.skipped[key] && !o.done[key] }

// Unused reports whether a jug was left as it was: nothing of it was poured.
func (o Omitted) Unused(n pour.BatchName, jug string) bool { return o.unused[jugOf{n, jug}] }

// Stirring reports whether what a step stirs into a jug, its colour or its scent, did not go in.
func (o Omitted) Stirring(n pour.BatchName, kind pour.TaskKind, jug string) bool {
	key := Stirred(n, kind, jug)
	scentless := kind == pour.TaskScent && (o.scentless[jugOf{n, jug}] || o.scentless[jugOf{n, ""}])
	return !o.done[key] && (o.skipped[key] || o.Unused(n, jug) || scentless)
}

// Thing reports whether something that is weighed into a jug did not go in, by one of the Weigh… words for what it is.
func (o Omitted) Thing(n pour.BatchName, jug, kind string) bool {
	switch {
	case jug == "":
		return false
	case kind == pour.WeighScent:
		return o.Stirring(n, pour.TaskScent, jug)
	case kind == pour.WeighColour || kind == pour.WeighCarrier:
		return o.Stirring(n, pour.TaskColour, jug)
	}
	return false
}

// Weighing reports whether what a mark weighed into a jug did not go in after all.
func (o Omitted) Weighing(sheet *pour.Sheet, e Event) bool {
	b := sheet.Batch(e.Batch)
	if b == nil || e.Kind != Weighed {
		return false
	}
	for _, w := range b.Weighings() {
		if w.Jug == e.Jug && strings.EqualFold(w.Name, e.What) {
			return o.Thing(e.Batch, e.Jug, w.Kind)
		}
	}
	return false
}

// Tell lists what did not go into the jugs of a sheet, each in a few words.
func (o Omitted) Tell(sheet *pour.Sheet) []string {
	var out []string
	for _, b := range sheet.Batches() {
		for _, j := range b.Jugs {
			if o.Unused(b.Name, j.Name) {
				out = append(out, fmt.Sprintf("all of %s %s", b.Name, j.Name))
				continue
			}
			for _, x := range j.Scents {
				if o.Thing(b.Name, j.Name, pour.WeighScent) {
					out = append(out, fmt.Sprintf("%s in %s %s", x.Name, b.Name, j.Name))
				}
			}
			for _, x := range j.Colourants {
				if o.Thing(b.Name, j.Name, pour.WeighColour) {
					out = append(out, fmt.Sprintf("%s in %s %s", x.Name, b.Name, j.Name))
				}
			}
		}
	}
	return out
}
