package swirl

// border is the uneven border between a pour and what it was poured on: where the surface was dented batter from above comes down, where it
// stood up batter from below, and as much goes aside. Seen in a cross-section its stream function is S(y)·B(z): S the integral of how far
// the border goes up, B a window that is 1 at the border and 0 so far under and over it. It keeps area however the border runs, and the
// border's mean height in every cross-section.
type border struct {
	width    float64
	at       float64 // mm, the border
	down, up float64 // mm, how far under and over it batter still moves
	ground   ground
}

// borderMeshMM is the mesh across the mould on which a border's height is worked out.
const borderMeshMM = 0.75

// dented is a border in one cross-section.
type dented struct {
	border *border
	perY   float64   // meshes per mm
	rise   []float64 // mm, how far the border goes up at equal steps across; its mean is 0
	sum    []float64 // mm², integral of rise from the left wall
	steps  int
}

const (
	borderSide = 1.54 // greatest value of 4u(1-u²)
	borderStep = 9    // mm, so far batter goes to the side in one step: keeps the return error under 0.5 mm
)

// cut makes the border ready for a cross-section; it writes into the memory of d.
func (r *border) cut(x float64, d *dented) {
	n := max(2, int(r.width/borderMeshMM))
	if cap(d.rise) < n+1 {
		d.rise, d.sum = make([]float64, n+1), make([]float64, n+1)
	}
	d.border, d.perY, d.rise, d.sum = r, float64(n)/r.width, d.rise[:n+1], d.sum[:n+1]
	r.ground.heights(x, d.rise, r.width/float64(n))
	mean := 0.5 * (d.rise[0] + d.rise[n])
	for _, v := range d.rise[1:n] {
		mean += v
	}
	mean /= float64(n)
	d.sum[0] = 0
	most := 0.0
	for i := range d.rise {
		d.rise[i] -= mean
		if i > 0 {
			d.sum[i] = d.sum[i-1] + 0.5*(d.rise[i]+d.rise[i-1])/d.perY
			most = max(most, d.sum[i], -d.sum[i])
		}
	}
	d.steps = 1 + int(most*borderSide/(borderStep*min(r.down, r.up)))
}

func (d *dented) velocity(y, z float64) (vy, vz float64) {
	e := z - d.border.at
	inv := 1 / d.border.up
	if e < 0 {
		inv = 1 / d.border.down
	}
	u := e * inv
	q := 1 - u*u
	if q <= 0 {
		return 0, 0
	}
	t := y * d.perY
	i := max(0, min(int(t), len(d.rise)-2))
	f := t - float64(i)
	a, b := d.rise[i], d.rise[i+1]
	return (d.sum[i] + f*(a+0.5*f*(b-a))/d.perY) * 4 * u * q * inv, (a + f*(b-a)) * q * q
}

// press carries a point along (dir 1) or back (dir -1) by fourth-order Runge-Kutta steps.
func (d *dented) press(y, z, dir float64) (float64, float64) {
	if z <= d.border.at-d.border.down || z >= d.border.at+d.border.up {
		return y, z
	}
	h := dir / float64(d.steps)
	for range d.steps {
		ay, az := d.velocity(y, z)
		by, bz := d.velocity(y+0.5*h*ay, z+0.5*h*az)
		cy, cz := d.velocity(y+0.5*h*by, z+0.5*h*bz)
		ey, ez := d.velocity(y+h*cy, z+h*cz)
		y, z = clamp(y+h*(ay+2*(by+cy)+ey)/6, 0, d.border.width), z+h*(az+2*(bz+cz)+ez)/6
	}
	return y, z
}

func (r *border) move(x, y, z, dir float64) (float64, float64) {
	var d dented
	r.cut(x, &d)
	return d.press(y, z, dir)
}
