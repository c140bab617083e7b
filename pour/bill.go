package pour

// bill is a batch with all that its ids name, looked up once: what weighs it reads the shelf nowhere else. Each list stands beside the
// batch's own, place by place. A plan that was checked names nothing that is not there.
type bill struct {
	Batch
	name     BatchName
	unsized  string // why nothing says how much of it there is; empty: something does
	oils     []*Oil
	carrier  *Oil // of the colourants that oil carries
	extras   []Extra
	pigments []*Colourant // beside the extras: those that are colourants
	doses    [][]dye      // beside the jugs and their colourants
	scents   []*Scent
}

// dye is a colourant with what it is wetted with and how many grams of that a gram of it takes.
type dye struct {
	*Colourant
	wetted string
	parts  float64
}

// bill looks up all that a batch names.
func (s *Shelf) bill(n BatchName, b Batch) bill {
	out := bill{Batch: b, name: n, carrier: inList(s.Oils, b.carrierOil(), func(o *Oil) string { return o.ID })}
	for _, o := range b.Oils {
		out.oils = append(out.oils, inList(s.Oils, o.Oil, func(o *Oil) string { return o.ID }))
	}
	for _, x := range b.Extras {
		extra, _ := s.Extra(x.Extra)
		out.extras = append(out.extras, extra)
		var pigment *Colourant
		if c := s.colourant(x.Extra); c.ID != "" {
			pigment = c
		}
		out.pigments = append(out.pigments, pigment)
	}
	for _, j := range b.Jugs {
		doses := make([]dye, len(j.Colourants))
		for k, d := range j.Colourants {
			doses[k] = s.dye(d)
		}
		out.doses = append(out.doses, doses)
	}
	for _, x := range b.Scents {
		out.scents = append(out.scents, inList(s.Scents, x.Scent, func(x *Scent) string { return x.ID }))
	}
	return out
}

func (s *Shelf) colourant(id string) *Colourant {
	return inList(s.Colourants, id, func(c *Colourant) string { return c.ID })
}

// dye is a dose with what wets it: as the plan says, else as its colourant disperses and the shelf doses the carrier.
func (s *Shelf) dye(d Dose) dye {
	out := dye{Colourant: s.colourant(d.Colourant), wetted: d.Carrier, parts: d.CarrierParts}
	if out.wetted == "" {
		out.wetted = CarryOil
		if out.Disperse == DisperseWater {
			out.wetted = CarryWater
		}
	}
	if out.parts == 0 {
		out.parts = out.CarrierParts
	}
	if out.wetted == CarryNone || out.parts == 0 {
		out.wetted, out.parts = CarryNone, 0
	}
	return out
}

// scent is one of the batch's scents by its id.
func (b *bill) scent(id string) *Scent {
	for _, x := range b.scents {
		if x.ID == id {
			return x
		}
	}
	return &Scent{}
}

// inList is the entry of that id where it stands; one that is not there is blank.
func inList[T any](list []T, id string, key func(*T) string) *T {
	for i := range list {
		if key(&list[i]) == id {
			return &list[i]
		}
	}
	return new(T)
}

// shortOil names the oil of that id in the blend, or nothing.
func (b *bill) shortOil(id string) string {
	for _, o := range b.oils {
		if id != "" && o.ID == id {
			return o.Name
		}
	}
	return ""
}
