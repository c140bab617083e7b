package chem

// Acid is a fatty acid of the reference table, in the order of its columns.
type Acid int

// The fatty acids the package knows, named by carbon atoms and double bonds: C18x1 is oleic acid.
const (
	C6 Acid = iota
	C8
	C10
	C12
	C14
	C16
	C16x1
	C18
	C18x1
	C18x2
	C18x3
	C20
	C20x1
	C22
	C22x1
	C24
	Ricinoleic
	AcidCount int = iota
)

// Profile is a fatty-acid composition: mass fractions of the fatty acids, summing to 1, or all 0 where none is known.
type Profile [AcidCount]float64

// Kind is what a fat is made of, which decides its glycerol and its alkali.
type Kind string

// The kinds of fat.
const (
	Triglyceride Kind = "triglyceride"
	WaxEster     Kind = "wax ester" // no glycerol
	FreeAcid     Kind = "free acid" // neutralises at once, no glycerol
)

// Fat is what chemistry needs to know of an oil, butter, wax or free acid.
type Fat struct {
	Kind                  Kind
	SapLow, Sap, SapHigh  float64 // published saponification value (a free acid: its acid value), mg KOH per g: low, working value, high
	IodineLow, IodineHigh float64 // published iodine value, g I2 per 100 g; both 0: not published
	UnsaponifiableGKg     float64 // published maximum, g per kg
	Profile               Profile // all 0: not known
	DensityGML            float64 // at DensityC, g/mL
	DensityC              float64
	Resin                 bool    // wax or resin: thickens by setting, not by trace
	MeltC                 float64 // melting point of a wax or resin, °C; 0: not stated, beeswax's is taken
}

// Part is a mass of one fat in a blend.
type Part struct {
	Fat Fat
	G   float64
}

// Blend is the oils of one batch. Its methods are exact for any masses ≥ 0.
type Blend []Part

// Families is a blend's fatty acids by family, percent of all its fatty acids by mass. They are the chemistry, not a score.
type Families struct {
	ShortPercent             float64 // C8 to C14 (with C6)
	PalmiticStearicPercent   float64
	OleicPercent             float64
	LinoleicLinolenicPercent float64
	RicinoleicPercent        float64
	OtherPercent             float64 // the rest, and fats with no profile
}
