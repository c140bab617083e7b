package shape

import "math"

// RoundBar is the volume in mm³ of a slice of a round log: π·R²·t. Derived.
func RoundBar(radius, thickness float64) float64 { return math.Pi * radius * radius * thickness }

// HalfRoundBar is that of a slice of half a round log. Derived.
func HalfRoundBar(radius, thickness float64) float64 { return RoundBar(radius, thickness) / 2 }

// Draft is a mould whose walls lean outwards, to let the loaf go.
type Draft struct {
	Bottom, Top float64 // inside width at the bottom and at the rim, mm
	Height      float64 // mm
	End         float64 // how far one end wall leans over the whole height, mm
}

// Section is the loaf's area across, H·(bottom + top)/2 in mm². Derived.
func (d Draft) Section() float64 { return d.Height * (d.Bottom + d.Top) / 2 }

// EndWedge is what an end bar lacks because the end wall leans, in mm³: the wedge H·lean/2 over the mean width. The trim that leaves a whole
// bar is at least the lean. Derived.
func (d Draft) EndWedge() float64 { return d.Height * d.End / 2 * (d.Bottom + d.Top) / 2 }
