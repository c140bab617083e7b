package chem

import "fmt"

// Stage is a stage of trace, thinnest first.
type Stage int

// The stages of trace: how a batter behaves as its first soap forms (common practice, no source).
const (
	Emulsion Stage = iota // uniform, no oil streaks on a still surface
	Light                 // faint drizzle marks that sink at once
	Medium                // drizzle sits on the surface
	Thick                 // holds peaks, still spoonable
	Stiff                 // must be pressed into the mould
	Stages   int   = iota
)

// String returns the stage's word: "emulsion", "light", "medium", "thick" or "stiff".
func (s Stage) String() string {
	switch s {
	case Emulsion:
		return "emulsion"
	case Light:
		return "light"
	case Medium:
		return "medium"
	case Thick:
		return "thick"
	case Stiff:
		return "stiff"
	}
	return fmt.Sprintf("stage %d", int(s))
}
