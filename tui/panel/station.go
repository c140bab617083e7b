package panel

import (
	"slices"

	"pourbench/pour"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// Place is a station's place among the tabs.
type Place int

// The stations, in the order of their tabs.
const (
	Mould Place = iota
	Batch
	Jugs
	Swirl
	Scent
	Run
	Icing
	Top
	Cut
	Label
	Shelf
	Places int = iota
)

// Station is a place at the bench: one side of the plan, as panels in columns, the most important first.
type Station struct {
	Name    string
	Go      keys.ID   // the key that goes there
	Picture layout.ID // the panel of the picture, where it has one
	with    columns   // in plans with an icing
	without columns   // in plans without
}

type columns [3][]*Panel

// Columns is the station's panels in a plan with or without an icing.
func (s *Station) Columns(icing bool) [3][]*Panel {
	if icing {
		return s.with
	}
	return s.without
}

// Panels lists the station's panels in the order Tab visits them.
func (s *Station) Panels(icing bool) []*Panel {
	c := s.Columns(icing)
	return slices.Concat(c[0], c[1], c[2])
}

// Stations lists the stations by their places.
func Stations() []Station {
	base, icing := pour.Base, pour.Icing
	return []Station{
		Mould: station("Mould", keys.GoMould, of(vessel(), bed()), of(filling(), about()), of(weigh())),
		Batch: station("Batch", keys.GoBatch, of(oils(base), extras(base), bursts(base)), of(lye(base)), of(fats(base), weigh())),
		Jugs:  station("Jugs", keys.GoJugs, of(jugs(base), clock(base)), nil, of(weigh())),
		Swirl: station("Swirl", keys.GoSwirl, of(face()), of(technique(), orders(), measures()), of(pairs())),
		Scent: withIcing(
			station("Scent", keys.GoScent, of(scents(base), clock(base)), of(behaviour()), of(weigh())),
			of(scents(base), scents(icing), clock(base)), of(behaviour()), of(weigh()),
		),
		Run: station("Run", keys.GoRun, of(clock(base), tasks()), of(hands(), bed()), of(weigh())),
		Icing: withIcing(
			station("Icing", keys.GoIcing, of(noIcing()), of(filling()), of(weigh())),
			of(jugs(icing), clock(icing), oils(icing), extras(icing), bursts(icing)), of(lye(icing)), of(fats(icing), filling()),
		),
		Top: withIcing(
			station("Top", keys.GoTop, of(toppings(), embeds()), of(pieces()), of(noIcing(), weigh())),
			of(toppings(), embeds(), piping()), of(follows(), pieces()), of(weigh()),
		),
		Cut:   station("Cut", keys.GoCut, of(cutMap(), cutBars()), of(cutPlan(), drying(), costs()), of(weigh())),
		Label: station("Label", keys.GoLabel, of(ingredients(), allergens()), of(labelForm(), anotherScent()), of(labelChecks(), labelText())),
		Shelf: station("Shelf", keys.GoShelf, of(onShelf()), of(entryForm()), of(packs(), weigh())),
	}
}

// station is a station whose panels are the same with and without an icing.
func station(name string, key keys.ID, cols ...[]*Panel) Station {
	s := Station{Name: name, Go: key}
	copy(s.without[:], cols)
	s.with = s.without
	for _, p := range s.Panels(false) {
		if p.Easel {
			s.Picture = p.ID
		}
	}
	return s
}

// withIcing has other panels in plans with an icing.
func withIcing(s Station, cols ...[]*Panel) Station {
	copy(s.with[:], cols)
	return s
}

func of(panels ...Panel) []*Panel {
	out := make([]*Panel, len(panels))
	for i := range panels {
		out[i] = &panels[i]
	}
	return out
}
