package swirl

// How the posts of a column are drawn out: by eye, no source.
const (
	liftFrom   = 0.4  // of the height, the lowest from which batter comes along with a post
	liftTo     = 0.62 // and the highest
	liftMM     = 4.5  // so far about it at least
	liftsMM    = 7.   // and at most
	liftGrip   = 0.65 // of its way that what lies at it is dragged along at least
	liftsGrip  = 0.9  // and at most
	liftLean   = 0.1  // of the width, by which it leans over on its way at most
	liftAlong  = 6.   // mm along the loaf, to either side of a post, at the least: what comes along
	liftsAlong = 11.  // and at most
	liftSkinMM = 1.2  // mm under the surface, where it fades
	twistMM    = 9.   // mm, how far about it the batter on top goes round with it
	twistGrip  = 0.65 // of its way, at most
	twistUnder = 3.5  // mm under the surface, where it is twisted
)

// liftPosts draws the posts out: what lies at one comes up along it, and what closes over it is twisted a little, ever another way.
func (b *builder) liftPosts(p *posts) {
	for _, c := range p.holds.cells {
		y := clamp(p.line.at(c.post)+p.at*b.Box.W, 0.2*b.Box.W, 0.8*b.Box.W)
		y += b.Box.W * b.d.Between(-0.04, 0.04)
		from := vec2{y, b.Box.H * b.d.Between(liftFrom, liftTo)}
		to := vec2{y + b.d.Between(-liftLean, liftLean)*b.Box.W, b.Box.H + pullOutMM}
		b.local(bent(from, to), local{
			radius: b.d.Between(liftMM, liftsMM), grip: b.d.Between(liftGrip, liftsGrip), skin: liftSkinMM, x: c.post, far: b.d.Between(liftAlong, liftsAlong),
		})
		side, high := b.d.Sign()*b.d.Between(0.8, 1.3)*twistMM, b.Box.H-twistUnder
		for _, off := range [...]float64{-1, 1} {
			path := []vec2{{y - side*off, high}, {y + side*off, high}}
			b.local(path, local{radius: twistMM, grip: twistGrip * b.d.Float(), skin: liftSkinMM, x: c.post + off*twistMM, far: 1.2 * twistMM})
		}
	}
}
