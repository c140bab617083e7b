package pour

import (
	"errors"
	"slices"

	"pourbench/pour/label"
	"pourbench/pour/lot"
)

// Went is how much of a material went into a batch or one of its jugs.
type Went struct {
	Batch    BatchName
	Jug      string // empty: the whole batch
	Kind     string // one of the Weigh… words
	Material lot.Material
	G        float64
}

// AsPlanned is everything that goes into the batches by the plan, before any scale rounds.
func (s *Sheet) AsPlanned(shelf Shelf) []Went {
	out := make([]Went, 0, 64)
	for _, b := range s.Batches() {
		b.weighings(func(w Weighing, of lot.Material, _ float64) {
			out = append(out, Went{Batch: b.Name, Jug: w.Jug, Kind: w.Kind, Material: s.material(w.Kind, of, b.Name, shelf), G: w.G})
		})
	}
	return out
}

// Contents is what is in an average bar as it was made, nothing dried: its part of each batch, what is set into it, what is strewn on the loaf and,
// in full, what goes onto it later. By the plan the charges sum to [Bars.CutG] and what goes on later. What went into the batches is handed in, as
// weighed or, where it is nil, as planned; pieces and what is strewn are the plan's in either case. The error is why it cannot be told.
func (s *Sheet) Contents(shelf Shelf, went []Went) ([]label.Charge, error) {
	c, err := s.charged(&shelf, went)
	if err != nil {
		return nil, err
	}
	return c.out, nil
}

// charged charges all that is in an average bar.
func (s *Sheet) charged(shelf *Shelf, went []Went) (*charger, error) {
	if why := s.noBar(); why != "" {
		return nil, errors.New(why)
	}
	if went == nil {
		went = s.AsPlanned(*shelf)
	}
	c := newCharger(s, shelf)
	for _, b := range s.Batches() {
		part := s.inBar(b)
		if part < 0 {
			return nil, errors.New("the pieces set into a bar take more room than it has")
		}
		c.into(string(b.Name), part)
		for _, w := range went {
			if w.Batch == b.Name {
				c.charge(w, s.Plan.Batch(b.Name))
			}
		}
		if b.Name == Base && len(s.Embeds) > 0 {
			c.base, c.baseHas = slices.Clone(c.out), slices.Clone(c.has)
		}
	}
	for i := range s.Embeds {
		c.embed(i)
	}
	for i := range s.Toppings {
		if why := c.strewn(i); why != "" {
			return nil, errors.New(why)
		}
	}
	return c, nil
}

// noBar is why nothing can be said of a bar; empty: it can.
func (s *Sheet) noBar() string {
	if len(s.Base.Jugs) == 0 {
		return "the plan has faults"
	}
	for _, b := range s.Batches() {
		if why := b.Refused.Masses; why != "" {
			return why
		}
	}
	if len(s.Cut.Bars) == 0 {
		return "no whole bar comes out of the cut plan"
	}
	return ""
}

// inBar is the part of all that goes into a batch, what is lost of it too, that an average bar gets.
func (s *Sheet) inBar(b *BatchSheet) float64 {
	in := func(bar BarPiece) Figure { return bar.BaseG }
	if b.Name == Icing {
		in = func(bar BarPiece) Figure { return bar.IcingG }
	}
	return mean(len(s.Cut.Bars), func(i int) float64 { return in(s.Cut.Bars[i]).orUnknown() }) / b.Size.PouredG * b.kept()
}

// MadeG is the mass of an average bar as it was made, with what goes onto it after the cut.
func (s *Sheet) MadeG() Figure { return AsFigure(s.Bars.CutG + s.strewnLate()) }
