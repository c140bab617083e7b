package relief

import "math"

// The strand a swirl is wound of, figures by eye, no source. Across it goes by the swirl's radius, up by its height.
const (
	turnsLeast   = 1.75 // turns it is wound in
	turnsMost    = 2.85
	strandHalf   = 0.295 // half of how wide the leanest lies
	strandFatter = 0.1   // and how much wider by how fat it is
	strandHigh   = 0.165 // half of how high it lies
	strandRises  = 0.5   // from the middle of its first round to that of its last
	strandLevel  = 0.3   // of a turn it lies on the base before it climbs
	strandDomes  = 0.2   // how much more steeply it climbs at first than at last
	strandInward = 0.98  // how steeply it goes inwards there, against the mean
	strandThins  = 0.35  // how much thinner it is at its end
	strandSwells = 0.08  // how unevenly it is pressed out
	strandStrays = 0.03  // how far the hand strays from the round
	strandStarts = 0.07  // of a turn, over which its first end is round
	strandEnds   = 0.5   // and over which its last one runs out
	strandRound  = 0.8   // how far its sides have fallen at its edge as those of a mound, of its half height
	strandSteep  = 1.2   // and as those of a wall
	ridgeHigh    = 0.21  // how far the ridges of the nozzle stand out, of its half height
	ridgeFlank   = 0.6   // and how far out of its sides, of that
	ridges       = 7     // points of the nozzle
	rollLeast    = 0.55  // of once about the strand in a turn the star goes where the wrist goes along with the hand
	rollMost     = 1.05
	ridgeMean    = 0.637 // 2/π: the mean of what stands out
	strandSinks  = 0.2   // how far its last end sinks into the mound in the middle
	coreWide     = 0.38  // of that mound
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
	return math.Abs(u-out) > fat*(1-strandThins*in)*(1+1.4*strandSwells)*(1+ridgeFlank*ridgeHigh*(1-ridgeMean))+strandStrays
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
		across := (u - w.out) / w.half
		stands := s.ridge(across, t) - ridgeMean
		across /= 1 + ridgeFlank*s.star*stands
		d := across * across
		if d >= 1 {
			continue
		}
		h := w.up + w.high*(1-strandRound*d-strandSteep*d*d)
		h += s.star * w.high * (1 - d*d) * stands
		z = softer(z, h, swirlSoft)
	}
	return z
}

// ridge is how far the nozzle's star stands out at a place across the strand, -1 to 1, so many turns from where it begins, 0 to 1. The hand goes round and
// does not turn the nozzle, so that in a turn the whole star goes once about the strand and its ridges run aslant; their backs are round and the furrows
// sharp.
func (s *pipedSwirl) ridge(across, t float64) float64 {
	return math.Abs(math.Cos(ridges * (0.25*math.Pi*across + math.Pi*s.roll*t + s.uneven[0])))
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
	seamWide  = 1.0   // mm, to each side, over which a seam fades
	seamDark  = 0.05  // how much darker it is at the most: no more than a breath
	seamFades = 14    // mm of icing over it, that make it a third as dark: deeper in strands have grown together
	foldTone  = 0.037 // how much lighter and darker the folds of a rope are, to each side
	foldMM    = 2.3   // from one to the next
	foldFades = 0.7   // mm, over which they fade towards the skin of their round
	foldBends = 0.9   // mm, how far they stray from the round
	lobeTone  = 0.05  // how much one round differs from the next, to each side
	lobeTurns = 4.3   // radians in a turn, by which a round is lighter or darker than the one it lies on
	lobeCloud = 3.0   // mm, over which one goes over into the next
	lobeSways = 0.8   // mm, how far that cloud strays from the seam
	lobeInner = 0.5   // so far out, of the radius, rounds begin to be alike: towards the neighbour
	lobeOuter = 0.35  // and so much further out they are
	slitDark  = 0.27  // how much darker a slit is, where air was shut in between two rounds
	slitPart  = 0.85  // of the places where one may be that have one
	slitGap   = 1.6   // mm along the seam from one place to the next
	slitLeast = 0.12  // mm, half of how long one is
	slitMore  = 0.95  // and how much longer the longest
	slitFlat  = 0.06  // mm, half of how high the flattest is
	slitFat   = 0.16  // and how much higher the fattest
	slitEdge  = 0.09  // mm, over which its edge is soft
	slitBends = 0.14  // mm, how far it strays from the seam
	slitDeep  = 1.5   // mm of icing over it at the least: nearer to the skin the wire has smeared them over
)

// cutAt is how bright a cut through the swirl is so far out and up, of its radius and height, that is so many mm. Every round is a cloud a little lighter or
// darker than the one it was laid on, and the seam between them is a chain of flat slits of air.
func (s *pipedSwirl) cutAt(u, angle, up, highMM float64) float64 {
	z, steep, seam, slit, tone, fold := 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
	sways := lobeSways * (math.Sin(u*s.radius/1.9+2.3*up*highMM/5+9*s.phase) + 0.6*math.Sin(up*highMM/1.3-u*s.radius/2.7+5*angle))
	for t := s.first(angle); t < s.turns; t++ {
		if s.clear(u, t) {
			continue
		}
		w, ok := s.winding(t)
		d := (u - w.out) / w.half
		if !ok || d*d >= 1 {
			continue
		}
		h, n := w.up+w.high*(1-strandRound*d*d-strandSteep*d*d*d*d), math.Floor(t)
		if h <= z {
			continue
		}
		if up > z && up <= h {
			fold = s.fold((u-w.out)*s.radius, (up-w.up)*highMM, t) * smooth(min(up-z, h-up)*highMM/foldFades)
		}
		own := math.Sin(lobeTurns*t + 31*s.phase)
		if z == 0 {
			tone = own
		} else {
			over, above := (h-z)*highMM, (up-z)*highMM/math.Hypot(1, steep)
			away := math.Abs(above)
			tone += (own - tone) * smooth(0.5+(above+sways)/lobeCloud)
			seam = max(seam, squared(max(0, 1-away/seamWide))*math.Exp(-over/seamFades))
			along := up*highMM - math.Abs(u-w.out)*s.radius + 5*angle*u*s.radius
			slit = max(slit, s.slit(along, above, n+math.Copysign(0.25, d))*smooth(over/slitDeep-0.5))
		}
		z, steep = h, w.high*highMM/(w.half*s.radius)*(2*strandRound*d+4*strandSteep*d*d*d)
	}
	if slit > 0 {
		slit *= smooth(0.5 + 2*math.Sin(2.1*up*highMM-1.6*u*s.radius+2.9*angle*s.radius+20*s.phase)) // in places it grew together
	}
	alike := smooth((u - lobeInner) / lobeOuter)
	return 1 + lobeTone*tone*(1-alike) + foldTone*fold - max(seamDark*seam, slitDark*slit)
}

// fold is how light or dark the folds of a rope are so far from its middle, mm, -1 to 1: skins that were laid into one another, which a knife shows as
// curves about the middle of each round, here and there and nowhere quite closed.
func (s *pipedSwirl) fold(out, up, t float64) float64 {
	shows := smooth(0.45 + 0.6*math.Sin(0.53*out-0.71*up+4.9*t+11*s.phase) + 0.4*math.Sin(1.3*up+0.9*out))
	if shows == 0 {
		return 0
	}
	a := 0.55*out + foldBends*math.Sin(0.9*up+0.35*out+4.1*t+9*s.phase)
	b := up + foldBends*math.Sin(0.8*out-0.5*up+2.3*t)
	far := math.Sqrt(a*a+b*b) + 0.5*foldBends*math.Sin(2.3*out+1.1*up)
	v := math.Sin(2 * math.Pi * far / foldMM)
	return shows * v * (0.6 - 0.4*v)
}

// slit is how far into a slit a place so far along a seam and away from it lies, 0 to 1: one here and there, long or short, flat or open, thin at its ends.
func (s *pipedSwirl) slit(along, above, name float64) float64 {
	if math.Abs(above) > slitFlat+slitFat+slitEdge+2*slitBends {
		return 0
	}
	away := math.Abs(above + slitBends*(math.Sin(along/0.37+5*name)+math.Sin(along/0.83-name)))
	if away > slitFlat+slitFat+slitEdge {
		return 0
	}
	at := along/slitGap + 7*odd(name+3*s.phase)
	cell := math.Floor(at)
	of := cell + 11.3*name + 17*s.phase
	if odd(of) > slitPart {
		return 0
	}
	long := slitLeast + slitMore*squared(odd(of+0.37))
	from := (at - cell - 0.5) * slitGap
	from -= (odd(of+0.71) - 0.5) * (slitGap - 2*long)
	half := (slitFlat + slitFat*odd(of+0.13)) * (1 - squared(from/long))
	if half <= 0 {
		return 0
	}
	return smooth((half-away)/slitEdge) * min(1, half/slitFlat)
}

// odd is a number from 0 to 1 that goes by another.
func odd(of float64) float64 {
	v := 43758.5453 * math.Sin(12.9898*of)
	return v - math.Floor(v)
}
