package relief

import (
	"math"

	"pourbench/pour/shape"
)

// border is the form of a rope or a ruffle.
func (c *Icing) border(tip opening) form {
	s := strand{tip: tip, half: c.Lies / 2, long: c.Long, crown: parabola * c.Strand / c.Lies, groove: grooves(tip)}
	if s.groove > 0 { // grooves take away what the ridges between them get
		s.crown /= grooved(s.groove, tip.points)
	}
	switch {
	case c.Shape == Rope && c.Wind > 0 && c.Pitch > 0:
		half := c.Wind + c.Lies/2
		return &rope{long: c.Long, half: half, pitch: c.Pitch, crown: 2 * c.Strand * shape.RopeRatio(c.Wind, c.Pitch) / (math.Pi * half)}
	case c.Shape == Ruffle && c.Wave > 0:
		r := &ruffle{strand: s, swing: c.Swing, wave: c.Wave}
		if c.Foot+c.Edge > 0 {
			r.foot, r.edge = c.Foot, c.Edge
			r.top = 2 * c.Strand / (c.Foot + c.Edge)
		}
		return r
	}
	return &s
}

// grooved is the mean height of a grooved strand against a smooth one.
func grooved(groove float64, points int) float64 {
	const looks = 400
	sum := 0.0
	for i := range looks {
		sum += strandAt(2*(float64(i)+0.5)/looks-1, groove, points)
	}
	return sum / looks * 1.5
}

// strand is a straight strand along x.
type strand struct {
	tip           opening
	half, long    float64
	crown, groove float64
}

func (s *strand) at(x, y float64) (z, across float64) {
	if x < -s.long/2 || x > s.long/2 {
		return 0, 0
	}
	u := y / s.half
	return s.crown * strandAt(u, s.groove, s.tip.points), 0.5 + 0.5*u
}

func (s *strand) reach() (x, y float64) { return s.long / 2, s.half }
func (s *strand) high() float64         { return s.crown }

// rope is a strand wound along x: a rope whose turns lie slanted side by side. Its mean section is the strand's times how much longer that is.
type rope struct {
	long, half, pitch, crown float64
}

const (
	ropeRipple = 0.3  // how deep the furrows between turns are, as a part of the height
	ropeSlant  = 0.55 // of a winding, from one side of the rope to its middle
)

func (w *rope) at(x, y float64) (z, across float64) {
	v := y / w.half
	if v <= -1 || v >= 1 || x < -w.long/2 || x > w.long/2 {
		return 0, 0
	}
	turn := (x+w.long/2)/w.pitch + ropeSlant*v
	across = turn - math.Floor(turn)
	// The furrow is a sharp valley between round backs: a parabola in each turn, less its mean.
	ripple := 1 - 3*(2*across-1)*(2*across-1)
	return w.crown * math.Sqrt(1-v*v) * (1 + ropeRipple*ripple/2), across
}

func (w *rope) reach() (x, y float64) { return w.long / 2, w.half }
func (w *rope) high() float64         { return w.crown * (1 + ropeRipple/2) }

// ruffle is a ribbon, standing on its foot, or a strand, in a sine wave along x. Its section is laid off at right angles to the wave, so that its
// volume is the section times the wave's length.
type ruffle struct {
	strand
	swing, wave     float64
	foot, edge, top float64
}

func (r *ruffle) at(x, y float64) (z, across float64) {
	if x < -r.long/2 || x > r.long/2 {
		return 0, 0
	}
	k := 2 * math.Pi / r.wave
	sin, cos := math.Sincos(k * (x + r.long/2))
	d := (y - r.swing*sin) / math.Hypot(1, r.swing*k*cos)
	if r.top == 0 {
		u := d / r.half
		return r.crown * strandAt(u, r.groove, r.tip.points), 0.5 + 0.5*u
	}
	low, high := min(r.foot, r.edge)/2, max(r.foot, r.edge)/2
	switch d = math.Abs(d); {
	case d <= low:
		return r.top, 0.999
	case d >= high:
		return 0, 0
	default:
		z = (high - d) / (high - low)
		return r.top * z, z
	}
}

func (r *ruffle) reach() (x, y float64) {
	return r.long / 2, r.swing + max(r.half, r.foot/2, r.edge/2)
}

func (r *ruffle) high() float64 { return max(r.top, r.crown) }

// spoonful is a spooned top: a layer and a relief of which the closed form knows the mean. What bends its ridges shifts whole lines of it, which
// leaves that mean.
type spoonful struct {
	layer, relief float64
	pattern       string
	long, wide    float64
	pitch         float64
	bend          [2]float64
}

func newSpoonful(c *Icing, r Recipe) form {
	s := &spoonful{layer: c.Layer, relief: c.Relief, pattern: c.Pattern, long: r.L, wide: r.W}
	want := min(max(2.2*c.Relief, 14), 30)
	s.pitch = r.L / max(1, math.Round(r.L/want))
	s.bend = [2]float64{0.5 + 0.1*float64(r.Seed%5), 0.9 * float64(r.Seed%7)}
	return s
}

func (s *spoonful) at(x, y float64) (z, across float64) {
	x, y = x+s.long/2, y+s.wide/2
	if x < 0 || y < 0 || x > s.long || y > s.wide {
		return 0, 0
	}
	if s.pattern == Points {
		rows := max(1, math.Round(s.wide/s.pitch))
		a, b := x/s.pitch, y/s.wide*rows
		across = (math.Mod(math.Floor(a)+2*math.Floor(b), 5) + 0.5) / 5
		a, b = a-math.Floor(a)-0.5, b-math.Floor(b)-0.5
		return s.layer + s.relief*max(0, 1-2*math.Hypot(a, b)), across
	}
	t := x/s.pitch + s.bend[0]*math.Sin(2*math.Pi*y/s.wide+s.bend[1])
	across = math.Mod(math.Floor(t)*0.38196601125+10, 1) // each ridge its colour, by the golden angle
	t = 2*(t-math.Floor(t)) - 1
	if s.pattern == Swoops {
		return s.layer + s.relief*t*t, across
	}
	return s.layer + s.relief*0.5*(1+math.Cos(math.Pi*t)), across
}

func (s *spoonful) reach() (x, y float64) { return s.long / 2, s.wide / 2 }
func (s *spoonful) high() float64         { return s.layer + s.relief }
