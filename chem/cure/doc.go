// Package cure is how bars of soap dry on the rack: the drying law of a block, its fit to a bar's own weighings, what the fit
// says of mass, weekly loss and the day a bar is dry by its maker's criterion, and what her own batches teach of the next.
//
// Time is in days from the cut, mass in g, lengths in mm, moisture and loss as fractions; percent only where a name says so.
// The law is Fick's second law with one diffusivity, no resistance at the surface and no shrinkage, so that forecasts lean
// early: the diffusivity of real soap falls as it dries (assumed; no figure for soap was found anywhere). "Dry" and "ready"
// mean losing less than the criterion a week, and nothing about lye or safety.
//
// Constants carry their source, or "derived", "assumed", "common practice", or "own, no source".
package cure
