package relief

import "math"

// What a knife shows of strands that lie on each other, by eye, no source.
const (
	lobeWide   = 7     // mm, of a strand
	lobeHigh   = 5.2   // mm, from a row of strands to the one below
	lobeArch   = 0.5   // how much a strand's back rises between its sides, of that
	seamWide   = 0.55  // mm, to each side, over which a seam fades
	seamDark   = 0.13  // how much darker a seam is at the most
	lobeTone   = 0.035 // how much one strand differs from the next, to each side
	lobeShade  = 0.05  // how much darker a strand's foot is than its back
	pocketWide = 0.75  // mm, radius of the largest pocket of air between strands
	pocketDark = 0.4   // how much darker it is
	pocketPart = 0.5   // of the places where three strands meet
)

// lobeAt is how bright the cut is so far out on a swirl, so many strands out and so many mm deep: row under row, each strand on the furrow of two below.
func lobeAt(u, out, deep, phase float64) float64 {
	if u >= 1 { // what ran out between swirls has no strands
		return 1
	}
	row := math.Floor(deep / lobeHigh)
	v := deep/lobeHigh - row
	if arch(out, row+1) <= v { // the back of the next row rises into this one
		row, v = row+1, v-1
	}
	at := out + 0.5*row
	q := at - math.Floor(at)
	side := min(q, 1-q)
	roof := (v + 1 - arch(out, row)) * lobeHigh // mm, below its own back
	foot := (arch(out, row+1) - v) * lobeHigh
	seam := max(0, 1-min(roof, foot, side*lobeWide)/seamWide)
	name := row + 31*phase
	open := 0.55 + 0.45*math.Sin(0.9*deep+9*phase) // a seam closes in places
	tone := 1 - seamDark*seam*seam*open + lobeTone*math.Sin(12.9*name) - lobeShade*max(0, 0.5-foot/lobeHigh)
	if wide := pocketWide * (1 - odd(name)/pocketPart); wide > 0 {
		far := math.Hypot(side*lobeWide, v*lobeHigh) + max(0, 6*(0.45-u)) // none in the middle, where turns are wide
		tone -= pocketDark * smooth((wide-far)/0.3)
	}
	return tone
}

// arch is where the backs of a row lie, in rows below its furrows' row before: they rise between one furrow and the next.
func arch(out, row float64) float64 {
	q := out + 0.5*row
	q -= math.Floor(q)
	return 1 - lobeArch*4*q*(1-q)
}

// odd is a number from 0 to 1 that goes by another.
func odd(of float64) float64 {
	v := 43758.5453 * math.Sin(12.9898*of)
	return v - math.Floor(v)
}
