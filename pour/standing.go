package pour

import (
	"math"

	"pourbench/pour/relief"
	"pourbench/pour/script"
	"pourbench/pour/swirl"
)

// stand adds what stands on the loaf and sticks in it, and where it is cut.
func (d *Drawing) stand(s *Sheet) {
	d.planes(s)
	if s.Plan.Mould.Shape == ShapeTube {
		return // what runs through a tube is not drawn: its faces are level
	}
	r := relief.Recipe{L: d.Recipe.Box.L, W: d.Recipe.Box.W, H: d.Recipe.Box.H, Seed: s.Plan.Swirl.Seed}
	for i := range s.Embeds {
		d.set(&r, &s.Embeds[i], &s.Plan.Top.Embeds[i])
	}
	if r.Icing.Shape != "" || len(r.Pieces)+len(r.Strewn) > 0 {
		d.Stands = &r
		d.Above = &r
	}
}

// planes is the faces of the bars along the loaf, each once: bars side by side across a slab share one.
func (d *Drawing) planes(s *Sheet) {
	if !s.Plan.Mould.IsCut() { // one cavity stands for all: they are poured alike, and it is shown cut through its middle
		d.Bars = []swirl.Bar{{From: d.Recipe.Box.L / 2, To: d.Recipe.Box.L}}
		return
	}
	d.Cuts = s.Cut.CutsMM
	for _, b := range s.Cut.Bars {
		if n := len(d.Bars); n == 0 || b.StartMM > d.Bars[n-1].From {
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
		r.Pieces = append(r.Pieces, p)
	}
}
