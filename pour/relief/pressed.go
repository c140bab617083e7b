package relief

import "math"

// How icing lies in the base it is put on, figures by eye, no source.
const (
	pressMM = 12   // of icing press it in two thirds of the way
	deepest = 1.3  // how deep the highest is, of what the icing sinks in
	lipMM   = 0.55 // how high the edge of icing hangs over the base
	lipAtMM = 1.3  // where it is that thick
	roughly = 2.5  // how uneven it sinks in, of a wobble
	dented  = 0.11 // how far a dent of the nozzle goes to each side of that, as a part
)

// pressed is how much lower the surface of icing so thick, of which so much bears on it, lies than on a hard top: it has sunk into the base under its own weight, and at its thin
// edge it curls up and hangs over. Its underside is as much below the top of the base, or above it, so that it stays as thick as it is.
func (c *Icing) pressed(thick, load, x, y float64) float64 {
	if c.Sinks == 0 {
		return 0
	}
	t := thick / lipAtMM
	dent := math.Sin(x/2.1+1.4*math.Sin(y/6.1)) * math.Sin(y/1.7+1.2*math.Sin(x/5.3))
	rough := 1 + roughly*wobble(y, x) + dented*dent
	return rough*c.weighs(load) - lipMM*t*math.Exp(1-t)
}

// weighs is how far icing so thick sinks in in the mean, mm: a swirl dips where it was pressed out, and hardly between two.
func (c *Icing) weighs(thick float64) float64 {
	t := thick / pressMM
	return deepest * c.Sinks * (1 - math.Exp(-t*t))
}

// least is how much lower icing so thick lies at the least.
func (c *Icing) least(thick float64) float64 {
	return max(0, (1-roughly*mostWobble-dented)*c.weighs(thick)-lipMM)
}

// mostWobble is the most a place wobbles by.
const mostWobble = 0.12

// wobble is how far the stripes of a strand are shifted at a place, as a part of its width: a bag never gives its portions evenly. It is nothing in
// the mean.
func wobble(x, y float64) float64 {
	return 0.07*math.Sin(x/3.7+1.3*math.Sin(y/5.3)) + 0.05*math.Sin(y/2.9-x/8.1)
}
