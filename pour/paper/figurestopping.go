package paper

import "pourbench/pour"

// ToppingReport is one topping in the order of the plan; its figures for a bar are of a usual one.
type ToppingReport struct {
	Name           string              `json:"name"`
	When           string              `json:"when"` // "wet", "skin", "cut" or "cured"
	Turn           Number              `json:"turn"` // from 1: the order in which all go on
	PerBarG        Number              `json:"per_bar_g"`
	AllG           Number              `json:"all_g"`
	AddsG          Number              `json:"adds_g"`
	CoversPercent  Number              `json:"covers_percent"`
	Pieces         Number              `json:"pieces"`
	CutHits        Number              `json:"cut_hits"`
	HandsMin       Number              `json:"hands_min"`
	WeepsRHPercent Number              `json:"weeps_rh_percent"`
	MeltsC         Number              `json:"melts_c"`
	PlasticPercent Number              `json:"plastic_percent"`
	Parts          []ToppingPartReport `json:"parts"`
}

// ToppingPartReport is one material of a topping.
type ToppingPartReport struct {
	Name        string   `json:"name"`
	Percent     Number   `json:"percent"`
	G           Number   `json:"g"` // for all bars
	Ingredients []string `json:"ingredients"`
}

func toppingReports(lines []pour.ToppingLine) []ToppingReport {
	out := make([]ToppingReport, len(lines))
	for i, l := range lines {
		out[i] = ToppingReport{
			Name: l.Name, When: l.When, Turn: finite(float64(l.Turn)), PerBarG: known(l.PerBarG), AllG: known(l.AllG), AddsG: known(l.AddsG),
			CoversPercent: known(l.CoversPercent), Pieces: known(l.Pieces), CutHits: known(l.CutHits), HandsMin: finite(l.HandsMin),
			WeepsRHPercent: known(l.WeepsRH), MeltsC: known(l.MeltsC), PlasticPercent: known(l.PlasticPercent), Parts: make([]ToppingPartReport, len(l.Parts)),
		}
		for k, part := range l.Parts {
			out[i].Parts[k] = ToppingPartReport{part.Name, finite(part.Percent), known(part.G), append([]string{}, part.Ingredients...)}
		}
	}
	return out
}
