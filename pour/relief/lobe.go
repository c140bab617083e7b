package relief

import "math"

// The strand a swirl is wound of, figures by eye, no source. Across it goes by the swirl's radius, up by its height.
const (
	strandHalf   = 0.3   // half of how wide the leanest lies
	strandFatter = 0.1   // and how much wider by how fat it is
	strandHigh   = 0.135 // half of how high it lies
	strandRises  = 0.45  // from the middle of its first round to that of its last
	strandLevel  = 0.55  // of a turn it lies on the base before it climbs
	strandDomes  = 0.3   // how much more steeply it climbs at first than at last
	strandInward = 0.86  // how steeply it goes inwards there, against the mean
	strandThins  = 0.3   // how much thinner it is at its end
	strandSwells = 0.07  // how unevenly it is pressed out
	strandStrays = 0.022 // how far the hand strays from the round
	strandStarts = 0.07  // of a turn, over which its first end is round
	strandEnds   = 0.6   // and over which its last one runs out
	strandRound  = 0.8   // how far its sides have fallen at its edge as those of a mound, of its half height
	strandSteep  = 1.2   // and as those of a wall
	ridgeHigh    = 0.12  // how far the ridges of the nozzle stand out, of its half height
	ridges       = 4.5   // between one side of it and the other over its back
	ridgeTwist   = 0.35  // of a ridge in a turn
	strandSinks  = 0.4   // how far its last end sinks into the mound in the middle
	coreWide     = 0.3   // of that mound
	coreHigh     = 0.7
)

// windingStrand is a stretch of the strand where it goes through a plane through the middle of its swirl.
type windingStrand struct {
	out, up    float64 // of its middle
	half, high float64 // to each side, up and down
}

// lead is where the strand is led so many turns from where it begins, were the hand even: half its width there before it thins, how far it has come on its
// way inwards, 0 to 1, and how far out its middle lies.
func (s *pipedSwirl) lead(t float64) (fat, in, out float64) {
	fat = strandHalf + strandFatter*s.lap
	in = max(0, (t-strandLevel)/(s.turns-strandLevel))
	return fat, in, (1 - fat) * (1 - in*(strandInward+(1-strandInward)*in))
}

// winding is the strand so many turns from where it begins; ok is false where there is none.
func (s *pipedSwirl) winding(t float64) (w windingStrand, ok bool) {
	if t <= 0 || t >= s.turns {
		return w, false
	}
	fat, in, out := s.lead(t)
	swell := 1 + strandSwells*math.Sin(2.7*t+s.uneven[0]) + 0.4*strandSwells*math.Sin(7.9*t+s.uneven[1])
	w.half = fat * (1 - strandThins*in) * swell
	w.high = strandHigh * (0.9 + 0.7*s.lap) * (1 - 0.6*strandThins*in) * swell
	w.out = out + strandStrays*math.Sin(3.6*t+s.uneven[1])*(1-in)
	w.up = w.high + strandRises*in*(1+strandDomes*(1-in))
	if t < strandStarts {
		e := 1 - t/strandStarts
		e = math.Sqrt(1 - e*e)
		w.half, w.high = w.half*e, w.high*e
	}
	if e := (s.turns - t) / strandEnds; e < 1 {
		w.up -= strandSinks * (1 - smooth(e))
	}
	return w, true
}

// clear says at little cost whether a place so far out lies well away from the strand so many turns from where it begins.
func (s *pipedSwirl) clear(u, t float64) bool {
	fat, in, out := s.lead(t)
	return math.Abs(u-out) > fat*(1-strandThins*in)*(1+1.4*strandSwells)+strandStrays
}

// first is the turn of the strand at an angle where it begins, 0 to 1.
func (s *pipedSwirl) first(angle float64) float64 {
	t := angle + s.phase
	return t - math.Floor(t)
}

// rounds is how high the strand stands so far out, of the swirl's height: each round lies half over the one below, its sides fall softly to that, and the
// ridges of the nozzle run along it.
func (s *pipedSwirl) rounds(u, angle float64) float64 {
	z := 0.0
	if u < coreWide {
		t := u / coreWide
		z = coreHigh * (1 - t*t)
	}
	for t := s.first(angle); t < s.turns; t++ {
		if s.clear(u, t) {
			continue
		}
		w, ok := s.winding(t)
		if !ok {
			continue
		}
		d := (u - w.out) / w.half
		if d *= d; d >= 1 {
			continue
		}
		h := w.up + w.high*(1-strandRound*d-strandSteep*d*d)
		h += ridgeHigh * w.high * (1 - d*d) * math.Cos(math.Pi*ridges*(u-w.out)/w.half+2*math.Pi*(ridgeTwist*t)+s.uneven[0])
		z = softer(z, h, swirlSoft)
	}
	return z
}

// turn is where across the rounds a place of a swirl lies, in strands.
func (s *pipedSwirl) turn(angle, u float64) float64 {
	fat := strandHalf + strandFatter*s.lap
	k := 1 - u/(1-fat)
	if k < 0 {
		return 0.5*k*(1-fat)/fat - s.first(angle)
	}
	const b = 1 - strandInward
	in := (math.Sqrt(strandInward*strandInward+4*b*k) - strandInward) / (2 * b)
	return strandLevel + (s.turns-strandLevel)*in - s.first(angle) + 0.5
}

// What a knife shows of strands that lie on each other, by eye, no source.
const (
	seamWide   = 0.42  // mm, to each side, over which a seam fades
	seamDark   = 0.075 // how much darker a seam is at the most
	lobeTone   = 0.014 // how much one strand differs from the next, to each side
	pocketDark = 0.3   // how much darker a pocket of air is
	pocketPart = 0.2   // of the places where strands leave one
	pocketNear = 0.2   // and no further from the next than so much more
	pocketFrom = 1.12  // so far from the middle of every strand, in its own half widths
)

// cutAt is how bright a cut through the swirl is so far out and up, of its radius and height: strands grown together, with a faint seam between two of
// them, and here and there a pocket of air where three do not meet.
func (s *pipedSwirl) cutAt(u, angle, up float64) float64 {
	const none = 9
	first, second, name, half := float64(none), float64(none), 0.0, 0.2
	take := func(e, of, wide float64) {
		if e < first {
			first, second, name, half = e, first, of, wide
		} else {
			second = min(second, e)
		}
	}
	for t := s.first(angle); t < s.turns; t++ {
		if w, ok := s.winding(t); ok {
			take(math.Hypot((u-w.out)/w.half, (up-w.up)/max(w.high, 0.05)), math.Round(t-s.first(angle)), w.half)
		}
	}
	in := min(1, max(0, (up-strandHigh)/strandRises))
	take(max(0, 1+(u-(0.75-0.55*strandHalf)*(1-in))/strandHalf), 7, strandHalf) // what the first rounds leave in the middle
	apart := (second - first) / 2 * half * s.radius
	open := 0.5 + 0.5*math.Sin(11*angle+9*up+name+7*s.phase) // a seam closes in places
	seam := max(0, 1-apart/seamWide) * smooth((first-0.5)/0.3)
	tone := 1 - seamDark*seam*seam*open + lobeTone*math.Sin(12.9*(name+31*s.phase))*min(1, apart/2)
	if odd(name+17*s.phase) < pocketPart && up > 0.06 {
		tone -= pocketDark * smooth((first-pocketFrom)/0.07) * smooth((pocketNear-second+first)/0.1)
	}
	return tone
}

// odd is a number from 0 to 1 that goes by another.
func odd(of float64) float64 {
	v := 43758.5453 * math.Sin(12.9898*of)
	return v - math.Floor(v)
}
