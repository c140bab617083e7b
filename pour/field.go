package pour

import (
	"fmt"
	"strings"
)

// BatchName names one of a plan's two batches.
type BatchName string

// The two batches.
const (
	Base  BatchName = "base"
	Icing BatchName = "icing"
)

// jug, extra and scent say where in a batch a warning stands.
func (n BatchName) jug(name string) string   { return string(n) + " jug " + name }
func (n BatchName) extra(name string) string { return string(n) + " extra " + name }
func (n BatchName) scent(name string) string { return string(n) + " scent " + name }

// Batch returns the batch of that name, or nil: a plan need not have an icing.
func (p *Plan) Batch(n BatchName) *Batch {
	if n == Base {
		return &p.Base
	}
	return p.Icing
}

// Unit is what a number of the plan measures, so that screens can show and read it in the maker's units.
type Unit string

// The units of numbers in a plan.
const (
	UnitPercent Unit = "%"
	UnitGram    Unit = "g"
	UnitMM      Unit = "mm"
	UnitML      Unit = "mL"
	UnitCelsius Unit = "°C"
	UnitMinute  Unit = "min"
	UnitSecond  Unit = "s"
	UnitHour    Unit = "h"
	UnitDay     Unit = "d"
	UnitCount   Unit = ""
	UnitParts   Unit = "parts"
)

// Field is one number of a plan that a maker can set: what it is, and the range outside which it cannot be.
type Field struct {
	Key       string // its key in the plan file, without the array index
	Label     string // on screens
	Unit      Unit
	Low, High float64
	Step      float64 // what one nudge changes
}

// WordField is one word of a plan with a fixed set of values.
type WordField struct {
	Key, Label string
	Words      []string
}

// numberAt is a number in a plan with the place it stands at.
type numberAt struct {
	batch     string // "base" or "icing"; empty: the format is the whole path
	format    string // its path; up to two indices go into it
	i, k      int    // -1: none
	low, high float64
	v         float64
}

// path spells the place out. It is worked out only where a fault needs it: a plan holds a hundred numbers and is checked on every key.
func (n numberAt) path() string {
	path := n.format
	switch {
	case n.k >= 0:
		path = fmt.Sprintf(n.format, n.i, n.k)
	case n.i >= 0:
		path = fmt.Sprintf(n.format, n.i)
	}
	if n.batch != "" {
		path = n.batch + "." + path
	}
	return path
}

type wordAt struct {
	Path  string
	Field WordField
	V     string
}

// Fields lists every number of a plan that stands alone (not in a list), in the order of the file. Icing fields are included only when there is an icing.
func Fields(p Plan) []Field {
	refs := scalars(&p)
	out := make([]Field, len(refs))
	for i, r := range refs {
		out[i] = r.Field
	}
	return out
}

// WordFields lists every word of a plan with a fixed set of values.
func WordFields(p Plan) []WordField {
	refs := words(&p)
	out := make([]WordField, len(refs))
	for i, r := range refs {
		out[i] = r.Field
	}
	return out
}

// Number returns the number at a path of [Fields].
func Number(p Plan, path string) (float64, Field, bool) {
	for _, r := range scalars(&p) {
		if r.Field.Key == path {
			return *r.v, r.Field, true
		}
	}
	return 0, Field{}, false
}

// Word returns the word at a path of [WordFields].
func Word(p Plan, path string) (string, WordField, bool) {
	for _, r := range words(&p) {
		switch {
		case r.Field.Key != path:
		case *r.v == "":
			return r.Field.Words[0], r.Field, true // what is left out means the first
		default:
			return *r.v, r.Field, true
		}
	}
	return "", WordField{}, false
}

type scalarRef struct {
	Field Field
	v     *float64
}

type wordRef struct {
	Field WordField
	v     *string
}

// leftOut says whether a word is one that need not be there, and is not: then the first of its words is meant.
func (r wordRef) leftOut() bool {
	_, key, _ := strings.Cut(r.Field.Key, ".")
	return *r.v == "" && (key == "bags" || key == "koh_share_by")
}

// shareLabel says what the KOH share is a share of.
func (b *Batch) shareLabel() string {
	if b.KOHShareBy == ShareMass {
		return "KOH share (pure mass)"
	}
	return "KOH share (moles)"
}

func scalars(p *Plan) []scalarRef {
	out := []scalarRef{
		{Field{"show.scale_step_g", "scale step", UnitGram, 0.001, 50, 0.1}, &p.Show.ScaleStepG},
		{Field{"show.lye_step_g", "lye scale step", UnitGram, 0.001, 5, 0.01}, &p.Show.LyeStepG},
		{Field{"mould.length_mm", "length inside", UnitMM, 20, 3000, 5}, &p.Mould.LengthMM},
		{Field{"mould.width_mm", "width inside", UnitMM, 20, 2000, 1}, &p.Mould.WidthMM},
		{Field{"mould.height_mm", "height to the rim", UnitMM, 10, 1000, 1}, &p.Mould.HeightMM},
		{Field{"mould.fill_mm", "fill height", UnitMM, 5, 1000, 1}, &p.Mould.FillMM},
		{Field{"mould.bar_mm", "bar thickness", UnitMM, 5, 1000, 1}, &p.Mould.BarMM},
		{Field{"mould.bar_width_mm", "bar width (slab)", UnitMM, 0, 2000, 1}, &p.Mould.BarWidthMM},
		{Field{"mould.loss_percent", "stays in the pots", UnitPercent, 0, 50, 0.5}, &p.Mould.LossPercent},
		{Field{"room.temperature_c", "room", UnitCelsius, -10, 50, 1}, &p.Room.TemperatureC},
		{Field{"swirl.turns", "turns of the tool", UnitCount, 0, 20, 0.5}, &p.Swirl.Turns},
		{Field{"swirl.height_mm", "pour height", UnitMM, 0, 1000, 10}, &p.Swirl.HeightMM},
		{Field{"bed.cut_after_h", "cut after", UnitHour, 1, 240, 1}, &p.Bed.CutAfterH},
		{Field{"bed.cure_days", "cure", UnitDay, 0, 730, 1}, &p.Bed.CureDays},
	}
	out = append(out, runScalars(&p.Run)...)
	out = append(out, batchScalars(Base, &p.Base)...)
	if p.Icing != nil {
		out = append(out, batchScalars(Icing, p.Icing)...)
	}
	return out
}

func runScalars(r *RunPlan) []scalarRef {
	return []scalarRef{
		{Field{"run.cool_lye_min", "cool the lye (0: estimate)", UnitMinute, 0, 2880, 5}, &r.CoolLyeMin},
		{Field{"run.split_min", "split, each jug", UnitMinute, 0, 60, 0.25}, &r.SplitMin},
		{Field{"run.stir_min", "stir colour, each jug", UnitMinute, 0, 60, 0.25}, &r.StirMin},
		{Field{"run.scent_min", "stir scent, each jug", UnitMinute, 0, 60, 0.25}, &r.ScentMin},
		{Field{"run.pour_min", "pour, each jug", UnitMinute, 0, 60, 0.25}, &r.PourMin},
		{Field{"run.change_min", "change jugs, in rounds", UnitMinute, 0, 10, 0.05}, &r.ChangeMin},
		{Field{"run.into_pot_min", "into the pot, each jug", UnitMinute, 0, 60, 0.25}, &r.IntoPotMin},
		{Field{"run.turn_min", "turn the spoon once", UnitMinute, 0, 10, 0.25}, &r.TurnMin},
		{Field{"run.pour_out_min", "pour the pot out", UnitMinute, 0, 60, 0.25}, &r.PourOutMin},
		{Field{"run.wire_min", "draw the wire", UnitMinute, 0, 60, 0.25}, &r.WireMin},
		{Field{"run.comb_min", "comb, each stroke", UnitMinute, 0, 60, 0.25}, &r.CombMin},
		{Field{"run.spoon_min", "spoon, each jug", UnitMinute, 0, 60, 0.25}, &r.SpoonMin},
		{Field{"run.level_min", "tap down, level", UnitMinute, 0, 60, 0.25}, &r.LevelMin},
		{Field{"run.pipe_min", "pipe, each jug", UnitMinute, 0, 120, 0.5}, &r.PipeMin},
		{Field{"run.bed_min", "put to bed", UnitMinute, 0, 120, 0.5}, &r.BedMin},
	}
}

func batchScalars(n BatchName, b *Batch) []scalarRef {
	at := string(n) + "."
	return []scalarRef{
		{Field{at + "oils_g", "oils", UnitGram, 0, 100000, 10}, &b.OilsG},
		{Field{at + "per_bar_g", "icing on each bar", UnitGram, 0, 5000, 1}, &b.PerBarG},
		{Field{at + "layer_mm", "mean icing height", UnitMM, 0, 500, 1}, &b.LayerMM},
		{Field{at + "loss_percent", "stays in the bag", UnitPercent, 0, 50, 0.5}, &b.LossPercent},
		{Field{at + "superfat_percent", "superfat", UnitPercent, -5, 40, 0.5}, &b.SuperfatPercent},
		{Field{at + "lye_concentration_percent", "lye concentration", UnitPercent, 10, 60, 0.5}, &b.LyeConcentrationPercent},
		{Field{at + "koh_share_percent", b.shareLabel(), UnitPercent, 0, 100, 1}, &b.KOHSharePercent},
		{Field{at + "naoh_purity_percent", "NaOH purity", UnitPercent, 50, 100, 0.5}, &b.NaOHPurityPercent},
		{Field{at + "koh_purity_percent", "KOH purity", UnitPercent, 50, 100, 0.5}, &b.KOHPurityPercent},
		{Field{at + "stock_lye_percent", "stock lye (0: dry)", UnitPercent, 0, 52, 0.5}, &b.StockLyePercent},
		{Field{at + "oils_c", "oils at", UnitCelsius, 0, 120, 1}, &b.OilsC},
		{Field{at + "lye_c", "lye at", UnitCelsius, 0, 120, 1}, &b.LyeC},
		{Field{at + "batter_c", "batter measured", UnitCelsius, 0, 120, 1}, &b.BatterC},
		{Field{at + "split_at_min", "split at", UnitMinute, 0, 600, 0.25}, &b.SplitAtMin},
		{Field{at + "start_at_min", "lye meets oils at", UnitMinute, -600, 1440, 1}, &b.StartAtMin},
		{Field{at + "final_moisture_percent", "moisture after cure", UnitPercent, 0, 30, 0.5}, &b.FinalMoisturePercent},
	}
}

func words(p *Plan) []wordRef {
	out := []wordRef{
		{WordField{"show.mass", "mass", []string{MassGram, MassOunce}}, &p.Show.Mass},
		{WordField{"show.temperature", "temperature", []string{DegreesC, DegreesF}}, &p.Show.Temperature},
		{WordField{"show.length", "length", []string{LengthMM, LengthInch}}, &p.Show.Length},
		{WordField{"mould.shape", "shape", []string{ShapeLoaf, ShapeSlab}}, &p.Mould.Shape},
		{WordField{"bed.keep", "put to bed", []string{BedBare, BedInsulate, BedChill}}, &p.Bed.Keep},
	}
	out = append(out, batchWords(Base, &p.Base)...)
	if p.Icing != nil {
		out = append(out, batchWords(Icing, p.Icing)...)
	}
	return out
}

func batchWords(n BatchName, b *Batch) []wordRef {
	sizes := []string{SizeMould, SizeOils}
	if n == Icing {
		sizes = []string{SizeBar, SizeLayer, SizeOils}
	}
	out := []wordRef{
		{WordField{string(n) + ".size", "sized by", sizes}, &b.Size},
		{WordField{string(n) + ".carrier", "carrier oil is", []string{CarrierExtra, CarrierBatch}}, &b.Carrier},
	}
	out = append(out, wordRef{WordField{string(n) + ".koh_share_by", "KOH share by", []string{ShareMoles, ShareMass}}, &b.KOHShareBy})
	if n == Icing {
		out = append(out, wordRef{WordField{string(n) + ".bags", "jugs in bags", []string{BagEach, BagOne}}, &b.Bags})
	}
	return out
}

// eachNumber visits every number of a plan, those in lists included, with its place and range.
func eachNumber(p Plan, visit func(numberAt)) {
	for _, r := range scalars(&p) {
		visit(numberAt{"", r.Field.Key, -1, -1, r.Field.Low, r.Field.High, *r.v})
	}
	visit(numberAt{"", "swirl.passes", -1, -1, 0, 60, float64(p.Swirl.Passes)})
	eachListNumber("base", p.Base, visit)
	if p.Icing != nil {
		eachListNumber("icing", *p.Icing, visit)
	}
}

func eachListNumber(batch string, b Batch, visit func(numberAt)) {
	see := func(v, high float64, format string, i, k int) {
		visit(numberAt{batch, format, i, k, 0, high, v})
	}
	for i, x := range b.Blend {
		see(x.AtMin, 600, "blend[%d].at_min", i, -1)
		see(x.S, 3600, "blend[%d].s", i, -1)
	}
	for i, o := range b.Oils {
		see(o.Percent, 100, "oil[%d].percent", i, -1)
	}
	for i, x := range b.Extras {
		see(x.PercentOfOils, 50, "extra[%d].percent_of_oils", i, -1)
	}
	for i, j := range b.Jugs {
		see(j.SharePercent, 100, "jug[%d].share_percent", i, -1)
		see(j.CapacityML, 100000, "jug[%d].capacity_ml", i, -1)
		for k, d := range j.Colourants {
			see(d.DosePercent, 20, "jug[%d].colourant[%d].dose_percent", i, k)
			see(d.CarrierParts, 20, "jug[%d].colourant[%d].carrier_parts", i, k)
		}
	}
	for i, s := range b.Scents {
		see(s.PercentOfOils, 20, "scent[%d].percent_of_oils", i, -1)
		see(s.AtMin, 600, "scent[%d].at_min", i, -1)
	}
}

// wordsOf lists every word with a fixed set of values, those in lists included.
func wordsOf(p Plan) []wordAt {
	var out []wordAt
	for _, r := range words(&p) {
		if r.leftOut() {
			continue
		}
		out = append(out, wordAt{r.Field.Key, r.Field, *r.v})
	}
	out = append(out, listWords(Base, p.Base)...)
	if p.Icing != nil {
		out = append(out, listWords(Icing, *p.Icing)...)
	}
	return out
}

func listWords(n BatchName, b Batch) []wordAt {
	var out []wordAt
	for i, x := range b.Extras {
		if x.In != "" {
			f := WordField{Words: []string{InOils, InLye, InWater}}
			out = append(out, wordAt{fmt.Sprintf("%s.extra[%d].in", n, i), f, x.In})
		}
	}
	for i, j := range b.Jugs {
		for k, d := range j.Colourants {
			if d.Carrier != "" {
				f := WordField{Words: []string{CarryOil, CarryWater, CarryGlycerin, CarryNone}}
				out = append(out, wordAt{fmt.Sprintf("%s.jug[%d].colourant[%d].carrier", n, i, k), f, d.Carrier})
			}
		}
	}
	return out
}
