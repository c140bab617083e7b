package shape

// FreshLoafPa is the strength taken for a loaf that is soft enough to cut, Pa. It is assumed; no measurement of a day-old soap was found, so that
// every force worked out with it is an estimate.
const FreshLoafPa = 10e3

// EnoughBuried is the part of a piece's height that ought to be below the surface, so that a cutter does not lift it out; common practice, no source.
const EnoughBuried = 2.0 / 3

// Holding is the force in N with which a soft soap of a strength in Pa holds a piece by the buried part of its sides, in mm²: τ·A. For a cylinder
// that is π·d·z·τ. Derived, an estimate: grip on the sides alone, nothing for suction or a rough skin.
func Holding(sideArea, strength float64) float64 { return strength * sideArea * 1e-6 }

// GangGrowth is by how much a loaf that lies free grows, mm, when so many wires of a thickness enter it at once. Derived.
func GangGrowth(wires int, thickness float64) float64 { return float64(wires) * thickness }

// GangSqueeze is the part of its length by which a loaf between two stops is squeezed then. It acts at once at the top face, where embeds and icing
// stand: pieces are pushed up, cracks open between bars. Derived.
func GangSqueeze(wires int, thickness, length float64) float64 {
	return GangGrowth(wires, thickness) / length
}
