package logbook

// How firm a loaf is when it comes out of its mould.
const (
	FirmSoft    = "soft"
	FirmFirm    = "firm"
	FirmHard    = "hard"
	FirmSticky  = "sticky"
	FirmCrumbly = "crumbly"
)

// Firmness lists the words for how firm a loaf is; a maker may write her own.
func Firmness() []string { return []string{FirmSoft, FirmFirm, FirmHard, FirmSticky, FirmCrumbly} }

// What is looked for on a bar.
const (
	LookRivers   = "rivers"   // translucent veins
	LookAsh      = "ash"      // white bloom of sodium carbonate
	LookBrowning = "browning" // of vanillin
	LookColour   = "colour"   // how far a jug's colour is off the plan's
	LookCracks   = "cracks"
	LookSweating = "sweating" // beads of water
	LookSpots    = "spots"    // orange ones: the oil turns
)

// Looks lists what is looked for; a maker may write her own word.
func Looks() []string {
	return []string{LookRivers, LookAsh, LookBrowning, LookColour, LookCracks, LookSweating, LookSpots}
}

// The tests there are.
const (
	TestPH        = "pH"
	TestTitration = "titration" // free alkali, % NaOH by mass of the bar
)

// What a bar is kept for.
const (
	KeptSample = "sample" // the batch's own, kept with its record
	KeptOwn    = "own"
)

// Strongest is the most of anything that is sniffed or looked at; nothing of it is 0.
const Strongest = 4
