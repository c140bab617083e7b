package shape

import "math"

// Star is the opening of a piping tip with points: straight edges between tips at one radius and valleys at a smaller one.
type Star struct {
	Points int     // how many tips, at least 2
	Tip    float64 // mm from the middle to a tip
	Valley float64 // mm from the middle to a valley, 0 to Tip
}

// Area is the opening's area in mm²: two triangles a point, n·R·r·sin(π/n). Derived.
func (s Star) Area() float64 {
	n := float64(s.Points)
	return n * s.Tip * s.Valley * math.Sin(math.Pi/n)
}

// Fullness is the star's area as a fraction of the circle around its tips: k = n·q·sin(π/n)/π with q the valley's part of the tip's radius.
// It rises with the number of points, is linear in q, and comes to 1 for many points without valleys. Derived.
func (s Star) Fullness() float64 {
	n := float64(s.Points)
	return n * (s.Valley / s.Tip) * math.Sin(math.Pi/n) / math.Pi
}

// Perimeter is the length of the opening's edge in mm: 2n·√(R² + r² − 2Rr·cos(π/n)). Derived.
func (s Star) Perimeter() float64 {
	n := float64(s.Points)
	return 2 * n * math.Sqrt(s.Tip*s.Tip+s.Valley*s.Valley-2*s.Tip*s.Valley*math.Cos(math.Pi/n))
}

// Polygon is the regular polygon of n corners at a radius as the star that it is: its valleys are the middles of its sides. Derived.
func Polygon(n int, radius float64) Star {
	return Star{Points: n, Tip: radius, Valley: radius * math.Cos(math.Pi/float64(n))}
}

// Disc is the area of a circle of a radius, in mm².
func Disc(radius float64) float64 { return math.Pi * radius * radius }

// EqualCircle is the diameter in mm of the circle that has an area.
func EqualCircle(area float64) float64 { return 2 * math.Sqrt(area/math.Pi) }

// RoundedStar is the area in mm² of an opening whose radius waves about a mean by a fraction of it, r(φ) = R·(1 + e·cos nφ): π·R²·(1 + e²/2),
// whatever the number of waves. Derived.
func RoundedStar(mean, ripple float64) float64 { return Disc(mean) * (1 + ripple*ripple/2) }

// Slot is the area in mm² of a petal tip's opening: as long as length, one end as wide as narrow, the other as wide. Derived.
func Slot(length, narrow, wide float64) float64 { return length * (narrow + wide) / 2 }

// Strand is the cross-section in mm² of what a tip lays down: the opening's area, grown by the swell of its diameter (1.00 to 1.05; common practice,
// no measurement on soap) and thinned by the stretch, the hand's speed over that of the batter out of the tip (1: neither stretched nor heaped). The
// area follows from that no volume is lost (derived); a strand that flattens spreads and keeps it.
func Strand(opening, swell, stretch float64) float64 { return opening * swell * swell / stretch }
