package pour

import (
	"reflect"
	"strings"
	"testing"
	"time"
)

// TestEveryFieldOfAPlanHasARow walks the structs of a plan and asks the list for each place in them, so that a field
// without a row is found.
func TestEveryFieldOfAPlanHasARow(t *testing.T) {
	p := Plan{Icing: &Batch{}, Top: grownTop()}
	grown(&p.Base)
	grown(p.Icing)
	rows := map[any]bool{}
	for _, table := range p.Tables() {
		note(rows, table.Fields)
	}
	places(reflect.ValueOf(&p).Elem(), "Plan", func(path string, at any) {
		if !rows[at] && path != "Plan.Base.Bags" { // the base is in no bag
			t.Errorf("%s has no row", path)
		}
		delete(rows, at)
	})
	for at := range rows {
		t.Errorf("a row points at a %T that is no place in the plan, or two rows at one", at)
	}
}

func grown(b *Batch) {
	b.Blend, b.Oils, b.Extras, b.Scents = make([]Burst, 1), make([]OilPart, 1), make([]ExtraPart, 1), make([]ScentPart, 1)
	b.Jugs = []Jug{{Colourants: make([]Dose, 1)}}
}

func grownTop() Top {
	return Top{Toppings: []Topping{{Parts: make([]ToppingPart, 1)}}, Embeds: make([]Embed, 1)}
}

func note(rows map[any]bool, fields []Field) {
	for _, f := range fields {
		rows[f.At] = true
		if f.Known != nil {
			rows[f.Known] = true
		}
		f.Items(0, func(_ int, fields []Field) { note(rows, fields) })
	}
}

// places visits every place of a plan that a key can fill: what is no struct, and lists of structs both as a whole and item by item.
func places(v reflect.Value, path string, visit func(path string, at any)) {
	parts := v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct
	switch {
	case v.Kind() == reflect.Pointer:
		places(v.Elem(), path, visit)
		return
	case v.Kind() == reflect.Struct && v.Type() != reflect.TypeFor[time.Time]():
		for i := range v.NumField() {
			places(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
		}
		return
	}
	visit(path, v.Addr().Interface())
	for i := 0; parts && i < v.Len(); i++ {
		places(v.Index(i), path+"[]", visit)
	}
}

func TestEveryRowSaysWhatItIs(t *testing.T) {
	p := Blank()
	p.Icing, p.Top = &Batch{}, grownTop()
	grown(&p.Base)
	grown(p.Icing)
	var check func(table string, fields []Field)
	check = func(table string, fields []Field) {
		seen := map[string]bool{}
		for _, f := range fields {
			at := table + "." + f.Key
			_, number := f.At.(*float64)
			_, text := f.At.(*string)
			switch {
			case seen[f.Key]:
				t.Errorf("%s has two rows", at)
			case f.Label == "" || f.Means == "" || strings.ToLower(f.Key) != f.Key:
				t.Errorf("%s has no label, no meaning or a key in capitals: %+v", at, f)
			case number && (f.Low >= f.High || f.Step <= 0 || f.Step > f.High-f.Low):
				t.Errorf("%s goes from %g to %g in steps of %g", at, f.Low, f.High, f.Step)
			case number && f.Need == Standing && (f.Default < f.Low || f.Default > f.High || f.Default == 0):
				t.Errorf("%s is %g where the file says nothing, outside %g to %g", at, f.Default, f.Low, f.High)
			case number && f.Need == Quiet && (f.Low > 0 || f.High < 0):
				t.Errorf("%s is left out at 0, which it cannot be", at)
			case text && f.Takes == TakesWord && len(f.Choices()) < 2:
				t.Errorf("%s has the words %q", at, f.Words)
			}
			seen[f.Key] = true
			f.Items(0, func(_ int, fields []Field) { check(at, fields) })
		}
	}
	for _, table := range p.Tables() {
		check(table.Key, table.Fields)
	}
}

func TestAFieldIsFoundByItsPathAndSetThere(t *testing.T) {
	p := Plan{Icing: &Batch{}}
	grown(&p.Base)
	p.Base.Jugs = append(p.Base.Jugs, Jug{Colourants: make([]Dose, 3)})
	for path, at := range map[string]func(Plan) float64{
		"mould.fill_mm": func(p Plan) float64 { return p.Mould.FillMM }, "icing.start_at_min": func(p Plan) float64 { return p.Icing.StartAtMin },
		"base.jug[1].share_percent":              func(p Plan) float64 { return p.Base.Jugs[1].SharePercent },
		"base.jug[1].colourant[2].carrier_parts": func(p Plan) float64 { return p.Base.Jugs[1].Colourants[2].CarrierParts },
		"swirl.passes":                           func(p Plan) float64 { return float64(p.Swirl.Passes) },
	} {
		next, err := SetNumber(path, 7)(p.Clone())
		if v, f, ok := Number(next, path); err != nil || at(next) != 7 || at(p) != 0 || !ok || v != 7 || !strings.HasSuffix(path, f.Key) {
			t.Errorf("%s: set to %g, read as %g (%v)", path, at(next), v, err)
		}
	}
	for _, path := range []string{"", "mould", "mould.fill", "fill_mm", "base.jug[2].share_percent", "base.jug[0]", "base.jug", "base.size", "base.jug[1].name", "swirl.technique"} {
		if _, _, ok := Number(p, path); ok {
			t.Errorf("%q is read as a number", path)
		}
		if _, err := SetNumber(path, 1)(p.Clone()); err == nil || !strings.Contains(err.Error(), path) {
			t.Errorf("%q is set as a number: %v", path, err)
		}
	}
	for _, path := range []string{"base.superfat_percent", "name", "swirl.technique", "base.nothing"} {
		if _, _, ok := Word(p, path); ok {
			t.Errorf("%q is read as one of a set of words", path)
		}
		if _, err := SetWord(path, "x")(p.Clone()); err == nil || !strings.Contains(err.Error(), path) {
			t.Errorf("%q is set as a word: %v", path, err)
		}
	}
}

func TestABatterTemperatureThatIsSetCountsAsMeasuredAndOneOfNothingDoesNot(t *testing.T) {
	p, err := SetNumber("icing.batter_c", 31)(Plan{Icing: &Batch{}})
	if err != nil || p.Icing.BatterC != 31 || !p.Icing.BatterMeasured || p.Base.BatterMeasured {
		t.Errorf("%+v, %v", p.Icing, err)
	}
	if p, _ = SetNumber("icing.batter_c", 0)(p); p.Icing.BatterMeasured {
		t.Error("0 typed over it takes the measurement away")
	}
}

func TestAWordThatIsLeftOutMeansTheFirst(t *testing.T) {
	if v, f, ok := Word(Plan{}, "base.koh_share_by"); !ok || v != ShareMoles || len(f.Choices()) != 2 {
		t.Errorf("%q, %v, %v", v, f.Choices(), ok)
	}
	if v, _, _ := Word(Plan{Base: Batch{KOHShareBy: ShareMass}}, "base.koh_share_by"); v != ShareMass {
		t.Errorf("%q", v)
	}
}
