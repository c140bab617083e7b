package pour

import (
	"fmt"
	"strings"
)

// ToppingFact is one thing the shelf says of a topping material, and where it has it from.
type ToppingFact struct {
	What   string // "in heat", "in damp and wet", "on fresh soap", "how much"
	Says   string
	Source Source
}

// Behaviour tells what heat, water and fresh soap do to a material and how much of it goes on, each with its source. The humidity from which it
// weeps is that in air of c °C.
func (m ToppingMaterial) Behaviour(show Show, c float64) []ToppingFact {
	return []ToppingFact{
		{"in heat", m.inHeat(show), m.Heat.Source},
		{"in damp and wet", m.inDamp(show, c), m.Wet.Source},
		{"on fresh soap", m.onSoap(), m.Alkali.Source},
		{"how much", m.howMuch(show), m.Use.Source},
	}
}

// clauses joins what is to be said, leaving out what is not.
func clauses(list ...string) string {
	var out []string
	for _, s := range list {
		if s != "" {
			out = append(out, s)
		}
	}
	return strings.Join(out, "; ")
}

func (m ToppingMaterial) inHeat(show Show) string {
	if !m.Heat.MeltsC.Known {
		return clauses("no melting in play", strings.TrimPrefix(strings.TrimPrefix(m.Heat.Note, "no melting in play"), "; "))
	}
	return clauses("softens or melts from "+show.Temp(m.Heat.MeltsC.V), m.Heat.Note)
}

func (m ToppingMaterial) inDamp(show Show, c float64) string {
	weeps, wet := "draws no water that makes it weep", ""
	if rh := m.WeepsRH(c); rh.Known {
		weeps = "wet from " + show.Percent(rh.V, 0) + " of humidity on"
	}
	if m.Wet.Dissolves {
		wet = "dissolves on a top without a skin"
	}
	return clauses(weeps, wet, m.Wet.Note)
}

func (m ToppingMaterial) onSoap() string {
	words := map[string]string{ToppingNever: "does not ", ToppingMay: "may ", ToppingDoes: "will "}
	return clauses(words[m.Alkali.Bleeds]+"bleed", words[m.Alkali.Browns]+"brown", m.Alkali.Note)
}

func (m ToppingMaterial) howMuch(show Show) string {
	u := m.Use
	amount := ""
	switch {
	case u.CoverHighPercent > 0:
		amount = fmt.Sprintf("%s to %s of the top", show.Percent(u.CoverLowPercent, 0), show.Percent(u.CoverHighPercent, 0))
	case u.DoseHighG > 0:
		amount = fmt.Sprintf("%s to %s on a bar", show.grams(u.DoseLowG, doseStepG), show.grams(u.DoseHighG, doseStepG))
	}
	return clauses(amount, fmt.Sprintf("%s s a bar", digits(u.HandsS)), m.Note)
}

// doseStepG is the step in which small doses on a bar are drawn, g: finer than a scale weighs one bar's, which are weighed for all.
const doseStepG = 0.01
