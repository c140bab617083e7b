package shape

import "math"

// Parallax is how far a mark seems to stand off where it is, mm, when rule or rim lies so high above the surface and the maker looks down at an
// angle from upright: h·tan θ, away from the eye. Derived.
func Parallax(height, angle float64) float64 { return height * math.Tan(angle) }

// ParallaxFrom is the same for an eye at a height above the rule that stands so far to the side of the mark: h·u/E. Derived.
func ParallaxFrom(height, aside, eye float64) float64 { return height * aside / eye }

// EyeScale is by how much marks seem further apart when they are all read with the eye in one place, so high above the rule: what is marked at x
// from the foot of the eye lands at x·(1 + h/E). Derived.
func EyeScale(height, eye float64) float64 { return 1 + height/eye }
