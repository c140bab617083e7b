package pour

import (
	"slices"
	"strconv"
	"strings"
	"time"
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
	UnitDegree  Unit = "°"
	UnitDensity Unit = "g/mL"
)

// Need says what it means when a key is not in the plan file, and whether it is written when it says nothing new.
type Need uint8

// The needs of a key.
const (
	Required Need = iota // must stand in the file
	Standing             // has a default that is not nothing; always written, so that a later default changes no old plan
	Quiet                // its default is zero or empty; left out while it is
)

// Takes says what a text of the plan can be.
type Takes uint8

// What a text can be.
const (
	TakesLine      Takes = iota // any line
	TakesProse                  // many lines
	TakesName                   // a line that is not empty
	TakesWord                   // one of the field's words
	TakesColour                 // "#rrggbb"
	TakesJug                    // the name of a jug of the same batch; of the base, for what is in no batch
	TakesTask                   // the key of a task of the run
	TakesTechnique              // the id of a technique on the shelf
	TakesOil                    // of an oil
	TakesColourant              // of a colourant
	TakesExtra                  // of an extra or a colourant
	TakesScent                  // of a scent
	TakesTopping                // of a topping material
	TakesMoney                  // an amount of money, "6.50"
	TakesID                     // an id that is on no shelf: small letters, digits and hyphens
	TakesMarket                 // of a market
)

// Field is one row of the list of everything a plan holds: what reading, writing, checking, editing, the screens and the
// reference of the plan file know of one key. A key that is new is a field of its struct and a row here.
type Field struct {
	Key       string  // in its table of the plan file
	Label     string  // on screens
	Means     string  // one clause for the reference
	Words     string  // of a text: the words it can be with a space between, the first the default; where any other can be, the default
	Unit      Unit    // of a number
	Default   float64 // of a number that stands
	Low, High float64 // of a number; of a name High is the most letters, of a list the most items; both 0: no limit
	Step      float64 // what one nudge changes
	At        any     // where it stands in the plan: *float64, *int, *int64, *bool, *string, *[]string, *[]float64, *time.Time or a pointer to a list of parts
	Known     *bool   // becomes true when the key is there; nil: nothing else tells that it is
	Need      Need
	Takes     Takes // what a text can be
	Inline    bool  // of a list: written on one line among the keys rather than as tables after them
}

// Choices are the words a field with a fixed set of words can be.
func (f Field) Choices() []string { return strings.Fields(f.Words) }

// List reports whether the field is a list of parts.
func (f Field) List() bool { return f.each(0, true, func(int, []Field) {}) }

// Items visits the items of a list of parts, each as the rows of its table; with grow above 0 the list is made anew with
// that many. A field that is no such list has none.
func (f Field) Items(grow int, visit func(i int, fields []Field)) { f.each(grow, false, visit) }

// each is Items, and reports whether the field is a list; with scratch the rows point at a copy of the item, and are made
// once for all items of the list.
func (f *Field) each(grow int, scratch bool, visit func(i int, fields []Field)) bool {
	switch at := f.At.(type) {
	case *[]Burst:
		eachOf(at, grow, scratch, (*Burst).Fields, visit)
	case *[]OilPart:
		eachOf(at, grow, scratch, (*OilPart).Fields, visit)
	case *[]ExtraPart:
		eachOf(at, grow, scratch, (*ExtraPart).Fields, visit)
	case *[]Jug:
		eachOf(at, grow, scratch, (*Jug).Fields, visit)
	case *[]Dose:
		eachOf(at, grow, scratch, (*Dose).Fields, visit)
	case *[]ScentPart:
		eachOf(at, grow, scratch, (*ScentPart).Fields, visit)
	case *[]Topping:
		eachOf(at, grow, scratch, (*Topping).Fields, visit)
	case *[]MadeOf:
		eachOf(at, grow, scratch, (*MadeOf).Fields, visit)
	case *[]ToppingPart:
		eachOf(at, grow, scratch, (*ToppingPart).Fields, visit)
	case *[]PackagingPart:
		eachOf(at, grow, scratch, (*PackagingPart).Fields, visit)
	case *[]Embed:
		eachOf(at, grow, scratch, (*Embed).Fields, visit)
	default:
		return false
	}
	return true
}

func eachOf[T any](at *[]T, grow int, scratch bool, fields func(*T) []Field, visit func(int, []Field)) {
	if grow > 0 {
		*at = make([]T, grow)
	}
	if len(*at) == 0 {
		return
	}
	if !scratch {
		for i := range *at {
			visit(i, fields(&(*at)[i]))
		}
		return
	}
	item := new(T)
	rows := fields(item)
	for i, v := range *at {
		*item = v
		visit(i, rows)
	}
}

// Zero reports whether the field holds nothing worth writing.
func (f Field) Zero() bool {
	switch at := f.At.(type) {
	case *float64:
		return *at == 0 && (f.Known == nil || !*f.Known)
	case *int:
		return *at == 0
	case *int64:
		return *at == 0
	case *bool:
		return !*at
	case *string:
		return *at == ""
	case *[]string:
		return len(*at) == 0
	case *[]float64:
		return len(*at) == 0
	case *time.Time:
		return at.IsZero()
	}
	items := 0
	f.each(0, true, func(int, []Field) { items++ })
	return items == 0
}

// Table is a table of the plan file with its rows, which point into a plan.
type Table struct {
	Key    string // empty: what stands above the first section
	Fields []Field
}

// Spare reports whether the table need not be written: no plan had it once, and it says nothing but its defaults.
func (t Table) Spare() bool {
	if !slices.Contains([]string{tablePiping, tableTop, tableCut, tableCure, tableCost, tableLabel}, t.Key) {
		return false
	}
	return !slices.ContainsFunc(t.Fields, func(f Field) bool { return !f.Zero() && !f.atDefault() })
}

// atDefault reports whether a field that stands has its default.
func (f Field) atDefault() bool {
	v, number := f.At.(*float64)
	return number && f.Need == Standing && *v == f.Default
}

// Blank is what a plan file that says nothing would mean: every field at its default.
func Blank() Plan {
	var p Plan
	for _, t := range p.Tables() {
		setDefaults(t.Fields)
	}
	return p
}

// BlankBatch is a batch at its defaults.
func BlankBatch(n BatchName) Batch {
	var b Batch
	setDefaults(batchFields(n, &b))
	return b
}

func setDefaults(fields []Field) {
	for _, f := range fields {
		if f.Need != Standing {
			continue
		}
		switch at := f.At.(type) {
		case *float64:
			*at = f.Default
		case *string:
			*at, _, _ = strings.Cut(f.Words, " ")
		}
	}
}

// field finds a row by its path in the plan file, list items counted from 0: "base.jug[1].share_percent".
func (p *Plan) field(path string) (Field, bool) {
	if table, rest, ok := strings.Cut(path, "."); ok {
		return fieldIn(p.fieldsOf(table), rest)
	}
	return fieldIn(p.fieldsOf(""), path)
}

func fieldIn(fields []Field, path string) (found Field, ok bool) {
	key, rest, inList := strings.Cut(path, "[")
	at := slices.IndexFunc(fields, func(f Field) bool { return f.Key == key })
	if at < 0 || !inList {
		return Row(fields, path)
	}
	digits, rest, _ := strings.Cut(rest, "].")
	fields[at].Items(0, func(i int, rows []Field) {
		if strconv.Itoa(i) == digits {
			found, ok = fieldIn(rows, rest)
		}
	})
	return found, ok
}

// Row finds a row among those of a table by its key.
func Row(fields []Field, key string) (Field, bool) {
	for i := range fields {
		if fields[i].Key == key {
			return fields[i], true
		}
	}
	return Field{}, false
}
