package layout

// Station is a place at the bench: one side of the plan.
type Station int

// The stations, in the order of their tabs.
const (
	Mould Station = iota
	Batch
	Jugs
	Swirl
	Scent
	Run
	Icing
	Stations int = iota
)

// String is the station's name on its tab.
func (s Station) String() string {
	return [Stations]string{"Mould", "Batch", "Jugs", "Swirl", "Scent", "Run", "Icing"}[s]
}

// Kind is what a panel shows.
type Kind int

// The kinds of panels.
const (
	Grid      Kind = iota // the jugs of a batch
	Clock                 // when each jug reaches each stage
	Filling               // how high the jugs stand in the mould
	Weigh                 // everything to weigh
	Vessel                // size of the mould and its bars
	Technique             // how the jugs meet
	Bed                   // putting to bed, cut and cure
	About                 // name, units and steps of the plan
	Oils                  // the blend
	Extras                // what goes into the whole batch
	Bursts                // the stick blender
	Lye                   // lye, water, superfat and temperatures
	Fats                  // fatty acids of the blend
	Scents                // scents × jugs
	Tasks                 // the run in its order
	Hands                 // how long the hands need
	NoIcing               // an invitation
	Behaviour             // how the plan's scents behave in batter
	Warnings              // what to know before lye meets oil
	Face                  // the picture
	Orders                // the pour orders to choose from
	Pairs                 // the neighbours in the planned order
	Measures              // what can be counted on the face
	Kinds     int  = iota
)

// Panel is one panel: what it shows and of which batch.
type Panel struct {
	Kind  Kind
	Icing bool // of the icing, not the base
}

// panels lists a station's panels in columns, the most important first.
func panels(s Station, icing bool) [3][]Panel {
	base := func(kinds ...Kind) []Panel { return of(false, kinds...) }
	switch s {
	case Mould:
		return [3][]Panel{base(Vessel, Bed), base(Filling, About), base(Weigh)}
	case Batch:
		return [3][]Panel{base(Oils, Extras, Bursts), base(Lye), base(Fats, Weigh)}
	case Jugs:
		return [3][]Panel{base(Grid, Clock), nil, base(Weigh)}
	case Swirl:
		return [3][]Panel{base(Face), base(Technique, Orders), base(Pairs, Measures)}
	case Scent:
		main := base(Scents)
		if icing {
			main = append(main, Panel{Scents, true})
		}
		return [3][]Panel{append(main, base(Clock)...), base(Behaviour), base(Weigh)}
	case Run:
		return [3][]Panel{base(Clock, Tasks), base(Hands, Bed), base(Weigh)}
	default:
		if !icing {
			return [3][]Panel{base(NoIcing), base(Filling), base(Weigh)}
		}
		return [3][]Panel{
			of(true, Grid, Clock, Oils, Extras, Bursts), of(true, Lye), append(of(true, Fats), base(Filling)...),
		}
	}
}

func of(icing bool, kinds ...Kind) []Panel {
	out := make([]Panel, len(kinds))
	for i, k := range kinds {
		out[i] = Panel{k, icing}
	}
	return out
}

// Panels lists a station's panels in the order Tab visits them.
func Panels(s Station, icing bool) []Panel {
	var out []Panel
	for _, column := range panels(s, icing) {
		out = append(out, column...)
	}
	return out
}
