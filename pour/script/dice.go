package script

// Dice draws the random numbers of a pour in the order it is built. The generator is SplitMix64 (Steele, Lea and Flood,
// "Fast splittable pseudorandom number generators", OOPSLA 2014), so that a seed means the same pour in every release of Go.
type Dice struct{ state uint64 }

// NewDice makes dice from a seed; use tells apart those who draw from the same seed.
func NewDice(seed int64, use uint64) Dice { return Dice{state: mix64(uint64(seed)) ^ use} }

// Next draws any 64 bits.
func (d *Dice) Next() uint64 {
	d.state += 0x9e3779b97f4a7c15
	return mix64(d.state)
}

func mix64(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// Float draws from [0, 1).
func (d *Dice) Float() float64 { return float64(d.Next()>>11) / (1 << 53) }

// Between draws from [low, high).
func (d *Dice) Between(low, high float64) float64 { return low + (high-low)*d.Float() }

// Sign draws -1 or 1.
func (d *Dice) Sign() float64 {
	if d.Next()>>63 == 0 {
		return -1
	}
	return 1
}
