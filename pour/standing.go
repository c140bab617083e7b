package pour

import (
	"cmp"
	"math"
	"slices"

	"pourbench/pour/relief"
	"pourbench/pour/script"
	"pourbench/pour/swirl"
)

// stand adds what stands on the loaf and sticks in it, and where it is cut. What is put on after the cut is on the bars, and not on the loaf.
func (d *Drawing) stand(s *Sheet) {
	d.planes(s)
	if s.Plan.Mould.Shape == ShapeTube {
		return // what runs through a tube is not drawn: its faces are level
	}
	r := relief.Recipe{L: d.Recipe.Box.L, W: d.Recipe.Box.W, H: d.Recipe.Box.H, Seed: s.Plan.Swirl.Seed}
	switch {
	case s.Icing == nil:
	case len(s.Piping.At) > 0:
		r.Icing = s.unitsStanding()
	case s.Icing.Size.HeightMM >= leastIcingMM:
		r.Icing = s.byEye(d.Recipe.Box)
	}
	for i := range s.Embeds {
		d.set(&r, &s.Embeds[i], &s.Plan.Top.Embeds[i])
	}
	before := r
	lines := slices.Clone(s.Toppings)
	slices.SortStableFunc(lines, func(a, b ToppingLine) int { return cmp.Compare(a.Turn, b.Turn) })
	for i := range lines {
		strewn := d.strewn(&lines[i])
		r.Strewn = append(r.Strewn, strewn...)
		if lines[i].OnLoaf() {
			before.Strewn = append(before.Strewn, strewn...)
		}
	}
	if r.Icing.Shape != "" || len(r.Pieces)+len(r.Strewn) > 0 {
		d.Stands = &r
	}
	if before.Icing.Shape != "" || len(before.Pieces)+len(before.Strewn) > 0 {
		d.Above = &before
	}
}

// unitsStanding is the icing as its units stand.
func (s *Sheet) unitsStanding() relief.Icing {
	p, m := &s.Plan.Piping, s.Plan.Mould
	long := m.topMM()
	across := p.border() && p.Along != PipeLoaf
	if across {
		long = m.WidthMM
		if m.Shape == ShapeSlab && m.BarWidthMM > 0 {
			long = m.BarWidthMM
		}
	}
	unit := p.piece(long, m.WidthMM)
	c := relief.Icing{
		Shape: p.reliefShape(), Across: across, Volume: unit.volume, Wide: p.WidthMM, High: p.HeightMM, Profile: p.Profile, Strand: p.strand(), Lies: p.strandMM(),
		Overlap: p.OverlapPercent / 100, Inner: p.CoilFromMM, Tiers: p.tiers(), Head: p.HeadMM, Tail: p.TailMM, Long: long, Wind: p.WindMM, Pitch: p.PitchMM,
		Swing: p.SwingMM, Wave: p.WaveMM, Layer: p.LayerMM, Relief: p.ReliefMM, Pattern: p.Relief, Sinks: s.sinks(),
		Shares: s.Plan.Icing.parts(), Striped: s.Plan.Icing.Bags == BagOne || p.Spoons(),
	}
	switch p.Tip {
	case TipStar:
		c.Points, c.Valley = p.Points, p.ValleyMM/p.TipMM
	case TipSlot:
		c.Foot, c.Edge = p.WideMM*orOne(p.Swell), p.NarrowMM*orOne(p.Swell)
	}
	for _, at := range s.Piping.At {
		c.Spots = append(c.Spots, relief.Spot{X: at.AlongMM, Y: m.WidthMM/2 + at.AcrossMM})
	}
	return c
}

// reliefShape is the shape as the picture calls it.
func (p *Piping) reliefShape() string {
	return map[string]string{
		PipeDollop: relief.Dollop, PipeRosette: relief.Rosette, PipeShells: relief.Shell, PipeRope: relief.Rope, PipeRuffle: relief.Ruffle, PipeSpooned: relief.Spooned,
	}[p.Shape]
}

// byEye is icing whose shape is not stated: the whole top is piped full.
func (s *Sheet) byEye(box swirl.Box) relief.Icing {
	return relief.Icing{
		Shape: relief.Piped, Volume: s.Icing.Size.HeightMM * s.Plan.Mould.WidthMM * box.L, Spots: []relief.Spot{{X: box.L / 2, Y: box.W / 2}}, Sinks: s.sinks(),
		Shares: s.Plan.Icing.parts(), Striped: s.Plan.Icing.Bags == BagOne,
	}
}

// How far icing sinks into a batter that is just emulsified and into one too stiff to run, mm: by eye, no source.
const (
	sinksThinMM  = 3.2
	sinksStiffMM = 1.8
)

// sinks is how far thick icing sinks into the base, mm.
func (s *Sheet) sinks() float64 { return sinksThinMM + s.thickness()*(sinksStiffMM-sinksThinMM) }

// What is strewn where nothing says how much of the top it hides: by eye, no source.
const (
	usualCover  = 0.12
	usualSpray  = 0.3
	usualPetals = 0.08
)

// strewn is the materials of a topping as they lie.
func (d *Drawing) strewn(l *ToppingLine) (out []relief.Strewn) {
	cover, sum := l.CoversPercent.V/100, 0.0
	for _, p := range l.Parts {
		sum += p.Percent
	}
	for _, p := range l.Parts {
		w := relief.Strewn{Look: relief.Grains, SizeMM: p.SizeMM, Coverage: cover, Stuff: d.stuff(StuffTopping, p.Name, p.Colour)}
		usual := usualCover
		switch {
		case p.Kind == ToppingDrizzle:
			w.Look = relief.Drizzle
		case p.Kind == ToppingSpray:
			w.Look, usual = relief.Sheen, usualSpray
		case p.Kind == ToppingDust:
			w.Look = relief.Dust
		case p.Flat:
			w.Look, usual = relief.Flakes, usualPetals
		}
		if !l.CoversPercent.Known {
			w.Coverage = usual
		}
		w.Coverage *= p.Percent / sum
		out = append(out, w)
	}
	return out
}

// planes is the faces of the bars along the loaf, each once: bars side by side across a slab share one.
func (d *Drawing) planes(s *Sheet) {
	if !s.Plan.Mould.IsCut() { // one cavity stands for all: they are poured alike, and it is shown cut through its middle
		d.Bars = []swirl.Bar{{From: d.Recipe.Box.L / 2, To: d.Recipe.Box.L}}
		return
	}
	if s.Plan.Mould.Shape != ShapeTube { // a tube's lie level under each other: from above there is none to see
		d.Cuts = s.Cut.CutsMM
	}
	for _, b := range s.Cut.Bars {
		if n := len(d.Bars); (n == 0 || b.StartMM > d.Bars[n-1].From) && b.StartMM < s.Plan.Mould.AlongMM() {
			d.Bars = append(d.Bars, swirl.Bar{From: b.StartMM, To: b.EndMM})
		}
	}
	if len(d.Bars) == 0 { // a loaf too short for one whole bar has two ends all the same
		d.Bars = []swirl.Bar{{From: 0, To: d.Recipe.Box.L}}
	}
}

// stuff adds a stuff of a colour to the picture and says which it is.
func (d *Drawing) stuff(kind StuffKind, name, hex string) uint8 {
	d.Stuffs = append(d.Stuffs, Stuff{Kind: kind, Name: name})
	d.Top = append(d.Top, paletteColour(hex))
	return uint8(min(len(d.Top)-1, relief.MostStuffs))
}

// StuffKind says what a stuff of the picture is.
type StuffKind int

// The kinds of stuffs; the icing's jugs are none.
const (
	StuffEmbed StuffKind = iota
	StuffTopping
)

// Stuff is something on the loaf that has a colour of its own in the picture, beside the jugs.
type Stuff struct {
	Kind StuffKind
	Name string
}

// set adds the pieces of an embed. One that may lie any way round is drawn turned this way and that.
func (d *Drawing) set(r *relief.Recipe, k *EmbedSheet, e *Embed) {
	p := relief.Piece{
		Outline: k.Outline, Turn: k.TurnRad, High: k.HeightMM, Out: max(k.OutMM, k.HeightMM-r.H), // what would reach below the floor stands on it
		Ball: e.Outline == OutlineBall, RoundRod: k.RoundRod, Stuff: d.stuff(StuffEmbed, k.Name, e.Colour),
	}
	dice := script.NewDice(r.Seed, uint64(p.Stuff))
	for _, at := range k.Pieces {
		if p.X, p.Y = at.CentreMM, r.W/2+at.AcrossMM; p.X > r.L {
			continue // it stands in another cavity, or beside the loaf
		}
		if k.Rod {
			p.X = r.L / 2
		}
		if e.AnyTurn && !k.Rod {
			p.Turn = dice.Between(0, 2*math.Pi)
		}
		if p.X > 0 && p.X < r.L {
			r.Pieces = append(r.Pieces, p)
		}
	}
}
