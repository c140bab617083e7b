// Package learn works out what the pours of a logbook teach the clock: a [clock.Hand] by section 3 of the trace model, what each
// scent has turned out to be, and how plan and pour compare.
//
// Units: min and s as the name says, g, °C; fractions inside formulas.
package learn
