package pour_test

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strings"

	"pourbench/pour"
)

// figuresOf lists every mass, volume and height of a sheet's base and bars by its place, however deep it stands: whatever is added to the
// sheet later is in it.
func figuresOf(s pour.Sheet) map[string]pour.Figure {
	out := map[string]pour.Figure{}
	walkFigures("base", reflect.ValueOf(s.Base), out)
	walkFigures("bars", reflect.ValueOf(s.Bars), out)
	delete(out, "bars.ThicknessMM")  // from the plan
	delete(out, "bars.IcingPerBarG") // there is no icing
	return out
}

func walkFigures(path string, v reflect.Value, out map[string]pour.Figure) {
	mass := regexp.MustCompile(`[a-z](KOHG|WeighG|G|ML|MM|ML5)$`)
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			walkFigures(fmt.Sprintf("%s[%d]", path, i), v.Index(i), out)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			at, field := path+"."+f.Name, v.Field(i)
			switch x := field.Interface().(type) {
			case pour.Figure:
				if mass.MatchString(f.Name) {
					out[at] = x
				}
			case float64:
				if (mass.MatchString(f.Name) || f.Name == "G") && !strings.HasSuffix(f.Name, "MgG") {
					out[at] = pour.Figure{V: x, Known: !math.IsNaN(x)}
				}
			default:
				if f.Name != "Script" {
					walkFigures(at, field, out)
				}
			}
		}
	}
}

// oilsAlone says whether a figure depends on nothing but the oils a plan gives in grams, so that it is known though the batch cannot be mixed.
func oilsAlone(path, what string) bool {
	carrier := strings.HasPrefix(what, "carriers")
	if strings.HasPrefix(path, "base.Oils[0]") || path == "base.Size.OilsG" || path == "base.Size.OilsWeighG" {
		return !carrier
	}
	if path == "base.Lye.WaterToAddG" || path == "base.Lye.AllWaterG" {
		return carrier
	}
	return regexp.MustCompile(`^base\.(Oils|Extras)\[|^base\.Size\.ExtrasG|^base\.Lye\.(NaOH|KOH|Stock|WaterInExtras|WaterBefore|Demand|Acid|ExtraFat)`).MatchString(path)
}
