package pour

import (
	"fmt"
	"math"
)

// inspectWeight says where a piece weighs what nothing of its material and size can: mostly a number in another unit, or the weight of all of them.
func (s *Sheet) inspectWeight(k *EmbedSheet, e *Embed) {
	of, ml := e.material(), k.WholeMM3/1000
	gml := k.PieceG.orUnknown() / ml
	if of.highGML == 0 || gml >= of.lowGML && gml <= of.highGML || math.IsNaN(gml) {
		return
	}
	show := s.Plan.Show
	has := "at most " + show.Number(of.highGML, 1)
	if of.lowGML > 0 {
		has = show.Number(of.lowGML, 1) + " to " + show.Number(of.highGML, 1)
	}
	piece := show.Number(ml, 2) + " mL"
	s.warn(warning("embed-weight", embedPlace(k.Name), fmt.Sprintf("%s: %s in a piece of %s are %s g/mL, and %s has %s", k.Name, show.Dose(k.PieceG.V), piece, show.Number(gml, 2), of.called, has),
		fmt.Sprintf("%s; %s of this size weighs about %s. A weight of 0 is reckoned from the size", e.slip(of, gml, len(k.Pieces)), of.called, show.Dose(ml*of.gml))))
}

// slip names what was likely mistaken where one slip explains a density, and otherwise all that may have been.
func (e *Embed) slip(of stuff, gml float64, pieces int) string {
	for _, x := range []struct {
		told string
		by   float64 // what the density is more than it would be
	}{
		{"it may be the weight of all " + fmt.Sprint(pieces) + " pieces: give that of one", float64(pieces)},
		{"the weight may be meant in grams and typed in ounces", gramsPerOunce},
		{"the weight may be meant in ounces and typed in grams", 1 / gramsPerOunce},
		{"the measures may be half of what they should be, a radius in place of a diameter", 8},
		{"the measures may be meant in centimetres and typed in millimetres", 1000},
		{"the measures may be meant in centimetres and typed in inches", math.Pow(mmPerInch/10, -3)},
		{"the measures may be meant in inches and typed in millimetres", mmPerInch * mmPerInch * mmPerInch},
		{"the measures may be meant in millimetres and typed in inches", math.Pow(mmPerInch, -3)},
	} {
		if v := gml / x.by; v >= of.lowGML && v <= of.highGML && (e.DensityGML == 0 || e.G > 0) && x.by != 1 {
			return x.told
		}
	}
	if e.G == 0 && e.DensityGML > 0 {
		return "look at density_g_ml: it is in g/mL, and water has 1"
	}
	return "look at the unit of its weight and of its measures, and that the weight is of one piece"
}

// onIcing reports whether a kind has nothing of it in the base and all its pieces stand where icing is piped or spooned: they are set into that.
func (s *Sheet) onIcing(i int) bool {
	k := &s.Embeds[i]
	if s.Icing == nil || len(s.Piping.At) == 0 || s.Plan.Mould.Shape == ShapeTube || k.OutMM < k.HeightMM || len(k.Pieces) == 0 {
		return false
	}
	if s.Plan.Piping.Spoons() {
		return true
	}
	n, _, _ := s.under(i, s.Piping.inOrder())
	return n == len(k.Pieces)
}
