package chem

// TheorySap returns the saponification value, mg KOH per g, that the fat's fatty acids call for, before anything
// unsaponifiable is taken off; for a free acid, its acid value. ok is false for a wax, whose alcohols the profile does
// not name, and for a fat without a profile.
func (f Fat) TheorySap() (sap float64, ok bool) {
	if !f.Profile.Known() {
		return 0, false
	}
	switch f.Kind {
	case Triglyceride:
		return f.Profile.SapKOH(), true
	case FreeAcid:
		return f.Profile.acidValue(), true
	case WaxEster:
	}
	return 0, false
}

// LowSap returns the low end of the saponification value used for the worst case, mg KOH per g: the smaller of the
// published minimum and, for a triglyceride with a profile, theory less the published maximum of unsaponifiable matter.
// It is never above the working value; a published minimum of 0 counts as not published.
func (f Fat) LowSap() float64 {
	low := f.Sap
	if f.SapLow > 0 {
		low = min(low, f.SapLow)
	}
	if f.Kind != Triglyceride {
		return low
	}
	if theory, ok := f.TheorySap(); ok {
		low = min(low, theory*(1-f.UnsaponifiableGKg/1000))
	}
	return low
}

// HighSap returns the published maximum of the saponification value, mg KOH per g, never below the working value.
func (f Fat) HighSap() float64 { return max(f.Sap, f.SapHigh) }

// TheoryIodine returns the iodine value, g I2 per 100 g, by AOCS Cd 1c-85 from the fat's fatty acids, with the factors
// for free acids where it is one. ok is false for a wax and for a fat without a profile.
func (f Fat) TheoryIodine() (iodine float64, ok bool) {
	if !f.Profile.Known() {
		return 0, false
	}
	switch f.Kind {
	case Triglyceride:
		return f.Profile.IodineValue(), true
	case FreeAcid:
		return f.Profile.iodine(iodineFree()), true
	case WaxEster:
	}
	return 0, false
}

// iodine is the theory, or else the middle of the published range.
func (f Fat) iodine() (float64, bool) {
	if iodine, ok := f.TheoryIodine(); ok {
		return iodine, true
	}
	return (f.IodineLow + f.IodineHigh) / 2, f.IodineHigh > 0
}
