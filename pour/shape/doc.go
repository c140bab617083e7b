// Package shape is the pure geometry of icing, cuts, embeds and rulers: strands and solids out of a tip, what a soft base carries, where
// cuts fall and what they leave clear. It knows no plan, no file and no screen, and uses the standard library only. Lengths are in mm, areas in
// mm², volumes in mm³, masses in g, densities in g/mL, pressures and yield stresses in Pa, angles in radians unless a name says otherwise.
//
// Every formula names its confidence beside it: "derived" is worked out from the definition and checked in the tests against a closed form or an
// integral by another rule, "common practice, no source" is what makers do, "memory" is a textbook figure that was not looked up, "estimate" is
// physics with no measurement on soap behind it.
package shape
