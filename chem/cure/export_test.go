package cure

// Slab is g.
func Slab(s float64) float64 { g, _ := slab(s); return g }

// Elasticity is -s·g'/g.
func Elasticity(s float64) float64 { _, e := slab(s); return e }

// ChiTail is the tail of chi-square.
func ChiTail(x float64, n int) float64 { return chiTail(x, n) }

// Chance is the binomial tail.
func Chance(least, n int, p float64) float64 { return chance(least, n, p) }
