package swirl

import "math"

const (
	waveModes  = 8
	slumpQuick = 1.4 // times as many waves along the loaf as batter has that rolls: what stands on edge gives way in shorter stretches (by eye, no source)
	waveSteps  = 1   // Runge-Kutta steps over a settling; the flow is smooth, one is exact to 0.01 mm at 8 mm
)

// wave is how batter slumps and settles: slow rolls that turn with and against one another.
// Its stream function is a sum of sines that are 0 on the walls and at the level.
type wave struct {
	width, level float64
	modes        [waveModes]mode
	more         int // Runge-Kutta steps beyond the usual
}

type mode struct {
	amp    float64 // mm²
	ky, kz int     // half waves across and up
	k      float64 // 1/mm along the loaf
	offset float64
}

// newWave draws a settling that moves batter by about amp mm.
func newWave(d *dice, box Box, level, amp float64) *wave {
	w := &wave{width: box.W, level: level}
	ky := [waveModes]int{1, 2, 2, 3, 3, 4, 4, 5}
	kz := [waveModes]int{1, 1, 2, 1, 2, 1, 2, 3}
	for i := range w.modes {
		w.modes[i] = d.mode(box.W, level, amp, ky[i], kz[i])
	}
	return w
}

// slow stretches a settling along the loaf: what a wire as long as the loaf was drawn through slumps alike from end to end.
func (w *wave) slow(by float64) *wave {
	for i := range w.modes {
		w.modes[i].k /= by
	}
	return w
}

// mode draws a roll of so many half waves across and up that moves batter by about a part of amp mm.
func (d *dice) mode(width, level, amp float64, ky, kz int) mode {
	along := math.Hypot(float64(ky)/width, float64(kz)/level) * math.Pi
	return mode{
		amp: 0.6 * amp / along * d.Between(0.6, 1.4), ky: ky, kz: kz,
		k: 2 * math.Pi / d.Between(55, 170) * d.Sign(), offset: d.Between(0, 2*math.Pi),
	}
}

// newSlump draws how what stands side by side slumps by about amp mm: every few bands by themselves, as rolls narrower than the mould turn their
// feet out here and in there. Two rolls of each pair take from each other what they move at the surface, which stays.
func newSlump(d *dice, box Box, level, amp float64) *wave {
	w := &wave{width: box.W, level: level, more: 1}
	ky, kz := [waveModes / 2]int{2, 3, 4, 5}, [waveModes / 2]int{2, 1, 1, 1}
	for i := range ky {
		m := d.mode(box.W, level, amp, ky[i], kz[i])
		m.k *= slumpQuick
		w.modes[2*i] = m
		m.amp, m.kz = m.amp*float64(kz[i])/float64(kz[i]+1), kz[i]+1
		w.modes[2*i+1] = m
	}
	return w
}

// newFolds draws how what stands on edge buckles between the bottom it sticks to and the surface, which stays: to and fro on its way up, by about
// amp mm. Two rolls of each pair take from each other what they move there.
func newFolds(d *dice, box Box, level, amp float64) *wave {
	w := &wave{width: box.W, level: level}
	ky := [waveModes / 2]int{1, 1, 2, 3}
	for i, n := range ky {
		kz := 1 + i%2
		m := d.mode(box.W, level, amp, n, kz)
		w.modes[2*i] = m
		m.amp, m.kz = -m.amp*float64(kz)/float64(kz+2), kz+2
		w.modes[2*i+1] = m
	}
	return w
}

// rolls is a wave at one cross-section.
type rolls struct {
	width, level float64
	amp          [waveModes]float64
	modes        *[waveModes]mode
	steps        int
}

func (w *wave) at(x float64) rolls {
	r := rolls{width: w.width, level: w.level, modes: &w.modes, steps: waveSteps + w.more}
	for i := range w.modes {
		m := &w.modes[i]
		r.amp[i] = m.amp * math.Cos(m.k*x+m.offset)
	}
	return r
}

func (w *wave) move(x, y, z, dir float64) (float64, float64) {
	r := w.at(x)
	return r.move(y, z, dir)
}

func (r *rolls) velocity(y, z float64) (vy, vz float64) {
	var sy, cy, sz, cz [6]float64
	multiples(math.Pi*y/r.width, &sy, &cy)
	multiples(math.Pi*z/r.level, &sz, &cz)
	for i := range r.modes {
		m := &r.modes[i]
		vy += r.amp[i] * float64(m.kz) * sy[m.ky] * cz[m.kz]
		vz -= r.amp[i] * float64(m.ky) * cy[m.ky] * sz[m.kz]
	}
	return vy * math.Pi / r.level, vz * math.Pi / r.width
}

// multiples fills the sines and cosines of 0 to 5 times an angle by their recurrence.
func multiples(a float64, s, c *[6]float64) {
	s1, c1 := sincos(a)
	s[0], c[0] = 0, 1
	for i := 1; i < len(s); i++ {
		s[i] = s[i-1]*c1 + c[i-1]*s1
		c[i] = c[i-1]*c1 - s[i-1]*s1
	}
}

// sincos is the sine and cosine of an angle from 0 to π, or a little outside, to 1e-7: by the Taylor series about π/2.
// It needs no reduction of the angle, unlike [math.Sincos].
func sincos(a float64) (sin, cos float64) {
	t := a - math.Pi/2
	q := t * t
	sin = 1 - q*(1./2)*(1-q*(1./12)*(1-q*(1./30)*(1-q*(1./56)*(1-q*(1./90)*(1-q*(1./132))))))
	cos = -t * (1 - q*(1./6)*(1-q*(1./20)*(1-q*(1./42)*(1-q*(1./72)*(1-q*(1./110))))))
	return sin, cos
}

func (r *rolls) move(y, z, dir float64) (float64, float64) {
	t := dir / float64(r.steps)
	for range r.steps {
		ay, az := r.velocity(y, z)
		by, bz := r.velocity(y+0.5*t*ay, z+0.5*t*az)
		cy, cz := r.velocity(y+0.5*t*by, z+0.5*t*bz)
		dy, dz := r.velocity(y+t*cy, z+t*cz)
		y = clamp(y+t*(ay+2*(by+cy)+dy)/6, 0, r.width)
		z = clamp(z+t*(az+2*(bz+cz)+dz)/6, 0, r.level)
	}
	return y, z
}

const (
	coarseMM = 2.5 // mesh on which a wave is worked out
	fineMM   = 1   // mesh it is then spread to; its straight pieces are within 0.02 mm of the flow
)

// waveTable is a wave worked out beforehand for one face: where each point of a mesh came from.
type waveTable struct {
	ny, nz       int
	perY, perZ   float64 // meshes per mm
	width, level float64
	dy, dz       []float32 // displacement at (iz*ny + iy), mm
}

// knots is how many knots a mesh has over a length; the last bit of a length of whole meshes adds none, for that would move every place a
// little.
func knots(length, mesh float64) int { return 1 + int(math.Ceil(length/mesh-1e-6)) }

func (t *waveTable) bake(r *rolls) {
	cy, cz := knots(r.width, coarseMM), knots(r.level, coarseMM)
	stepY, stepZ := r.width/float64(cy-1), r.level/float64(cz-1)
	raw := make([]vec2, cy*cz)
	for j := range cz {
		for i := range cy {
			y, z := float64(i)*stepY, float64(j)*stepZ
			fromY, fromZ := r.move(y, z, -1)
			raw[j*cy+i] = vec2{fromY - y, fromZ - z}
		}
	}
	t.width, t.level = r.width, r.level
	t.ny, t.nz = knots(r.width, fineMM), knots(r.level, fineMM)
	t.perY, t.perZ = float64(t.ny-1)/r.width, float64(t.nz-1)/r.level
	wide := make([]vec2, t.ny*cz) // refined across, still coarse up
	for i := range t.ny {
		k, w := cubic(float64(i)*float64(cy-1)/float64(t.ny-1), cy)
		for j := range cz {
			wide[j*t.ny+i] = blend(raw[j*cy:], k, 1, w)
		}
	}
	t.dy, t.dz = make([]float32, t.ny*t.nz), make([]float32, t.ny*t.nz)
	for j := range t.nz {
		k, w := cubic(float64(j)*float64(cz-1)/float64(t.nz-1), cz)
		for i := range t.ny {
			v := blend(wide[i:], k, t.ny, w)
			t.dy[j*t.ny+i], t.dz[j*t.ny+i] = float32(v.y), float32(v.z)
		}
	}
}

// cubic gives the first of four neighbouring knots among n and their weights in a cubic through them.
func cubic(u float64, n int) (first int, w [4]float64) {
	first = max(0, min(int(u)-1, n-4))
	t := u - float64(first)
	w[0] = (t - 1) * (t - 2) * (t - 3) / -6
	w[1] = t * (t - 2) * (t - 3) / 2
	w[2] = t * (t - 1) * (t - 3) / -2
	w[3] = t * (t - 1) * (t - 2) / 6
	return first, w
}

func blend(v []vec2, first, stride int, w [4]float64) (sum vec2) {
	for i, f := range w {
		p := v[(first+i)*stride]
		sum.y += f * p.y
		sum.z += f * p.z
	}
	return sum
}

// undo looks up where a point came from.
func (t *waveTable) undo(y, z float64) (float64, float64) {
	u, v := y*t.perY, z*t.perZ
	i, j := max(0, min(int(u), t.ny-2)), max(0, min(int(v), t.nz-2))
	fu, fv := u-float64(i), v-float64(j)
	k := j*t.ny + i
	a, b, c, d := (1-fu)*(1-fv), fu*(1-fv), (1-fu)*fv, fu*fv
	fromY := y + a*float64(t.dy[k]) + b*float64(t.dy[k+1]) + c*float64(t.dy[k+t.ny]) + d*float64(t.dy[k+t.ny+1])
	fromZ := z + a*float64(t.dz[k]) + b*float64(t.dz[k+1]) + c*float64(t.dz[k+t.ny]) + d*float64(t.dz[k+t.ny+1])
	return clamp(fromY, 0, t.width), clamp(fromZ, 0, t.level)
}
