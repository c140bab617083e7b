package relief

import (
	"math"
	"slices"
)

// The shapes of icing.
const (
	Dollop  = "dollop"  // pressed out upright
	Rosette = "rosette" // a flat coil
	Shell   = "shell"   // a head and a tail
	Rope    = "rope"    // a strand, straight or wound
	Ruffle  = "ruffle"  // a ribbon in waves
	Spooned = "spooned" // a layer with a relief over the whole top
)

// The reliefs of a spooned top.
const (
	Waves  = "waves"  // ridges
	Swoops = "swoops" // parabolic valleys with sharp crests
	Points = "points" // cones on a square grid
)

// Spot is where the middle of a unit stands.
type Spot struct{ X, Y float64 }

// Icing is the icing of a loaf: one shape, where it stands, and how its colours lie in the bag. Measures that a shape does not use are 0.
type Icing struct {
	Shape  string // one of the shapes; empty: none
	Points int    // of a star tip; 0: round
	Valley float64
	Spots  []Spot
	Across bool // borders lie across the loaf

	Volume  float64   // of one unit, mm³, by its closed form; of a spooned top its layer and relief tell it
	Wide    float64   // of a dollop or shell across
	High    float64   // of a dollop or shell
	Profile float64   // of a dollop: the power its radius falls with
	Strand  float64   // mm², section of the strand
	Lies    float64   // mm, how wide it lies
	Overlap float64   // of a coil's turns, fraction
	Inner   float64   // of a coil: where its middle line begins
	Tiers   []float64 // of a coil: where it ends, tier by tier from below
	Head    float64   // of a shell
	Tail    float64
	Long    float64 // of a border
	Wind    float64 // of a rope: radius of its winding; 0: straight
	Pitch   float64 // of a rope: one winding
	Swing   float64 // of a ruffle
	Wave    float64 // of a ruffle: one wave
	Foot    float64 // of a ruffle's ribbon: its width below and above; both 0: a strand
	Edge    float64
	Layer   float64 // spooned
	Relief  float64 // spooned
	Pattern string  // spooned: one of the reliefs; empty: Waves
	Sinks   float64 // how far thick icing sinks into the base, mm; 0: it stands on it as on a table

	Striped bool      // the portions side by side in one bag; else each unit is of one colour
	Shares  []float64 // of the icing, by portion; they sum to 1
}

func (c *Icing) equal(o *Icing) bool {
	a, b := *c, *o
	a.Spots, a.Tiers, a.Shares, b.Spots, b.Tiers, b.Shares = nil, nil, nil, nil, nil, nil
	return a.measures() == b.measures() && slices.Equal(c.Spots, o.Spots) && slices.Equal(c.Tiers, o.Tiers) && slices.Equal(c.Shares, o.Shares)
}

// measures is all of an icing that can be compared at once.
func (c *Icing) measures() any {
	return [...]any{
		c.Shape, c.Points, c.Valley, c.Across, c.Volume, c.Wide, c.High, c.Profile, c.Strand, c.Lies, c.Overlap, c.Inner, c.Head, c.Tail,
		c.Long, c.Wind, c.Pitch, c.Swing, c.Wave, c.Foot, c.Edge, c.Layer, c.Relief, c.Pattern, c.Striped, c.Sinks,
	}
}

// form is the shape of one unit about its middle.
type form interface {
	// at is the height over a place, 0 outside, and how far across the bag what shows there has come from, 0 to 1.
	at(x, y float64) (z, across float64)
	// reach is how far the unit reaches to each side of its middle.
	reach() (x, y float64)
	// high is how high it stands at its highest.
	high() float64
}

// form is the shape of one unit; nil where there is none or it has no size.
func (c *Icing) form(r Recipe) form {
	tip := opening{c.Points, c.Valley}
	switch c.Shape {
	case Dollop:
		if c.Wide > 0 && c.High > 0 {
			return &dollop{tip: tip, radius: c.Wide / 2, top: c.High, power: c.profile()}
		}
	case Rosette:
		if c.Strand > 0 && c.Lies > 0 && len(c.Tiers) > 0 {
			return newCoil(c, tip)
		}
	case Shell:
		if c.Wide > 0 && c.High > 0 && c.Head > 0 && c.Tail > 0 {
			return newShell(c, tip)
		}
	case Rope, Ruffle:
		if c.Strand > 0 && c.Lies > 0 && c.Long > 0 {
			return c.border(tip)
		}
	case Piped:
		return newPiped(c, r)
	case Spooned:
		if c.Layer+c.Relief > 0 {
			return newSpoonful(c, r)
		}
	}
	return nil
}

func (c *Icing) profile() float64 {
	if c.Profile > 0 {
		return c.Profile
	}
	return 1
}

// turned says whether units come to stand turned this way and that.
func (c *Icing) turned() bool { return c.Shape == Dollop || c.Shape == Rosette }

// stripe is the portion so far across the bag.
func (c *Icing) stripe(across float64) uint8 {
	sum := 0.0
	for i, s := range c.Shares {
		if sum += s; across < sum {
			return uint8(i)
		}
	}
	return uint8(max(0, len(c.Shares)-1))
}

// dollop is pressed out upright: a section of the tip's shape whose radius falls with height, its ridges wound about it. Winding by the distance
// from the middle leaves every ring's area, so the volume is that of the form that is not wound.
type dollop struct {
	tip                opening
	radius, top, power float64
}

// wound is how far the ridges of a dollop turn from its middle to its foot, radians.
const wound = 1.7

func (d *dollop) at(x, y float64) (z, across float64) {
	r := math.Hypot(x, y)
	if r >= d.radius {
		return 0, 0
	}
	angle := math.Atan2(y, x) + wound*r/d.radius
	u := r / (d.radius * d.tip.radius(angle))
	turn := angle / (2 * math.Pi)
	across = turn - math.Floor(turn)
	if u >= 1 {
		return 0, across
	}
	switch d.power {
	case 0.5:
		return d.top * (1 - u*u), across
	case 1:
		return d.top * (1 - u), across
	}
	return d.top * (1 - math.Pow(u, 1/d.power)), across
}

func (d *dollop) reach() (x, y float64) { return d.radius, d.radius }
func (d *dollop) high() float64         { return d.top }
