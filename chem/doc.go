// Package chem is what the substances of a soap pour do: fats and their alkali, lye, heat, volume and the cured bar.
//
// Percent appears only where a name says so; everything else that is a part of a whole is a fraction. Masses are g,
// volumes mL, temperatures °C, times min, saponification values mg KOH per g of fat, iodine values g I2 per 100 g.
//
// Constants carry their source and one of these words: "read" (checked against the document named), "derived" (worked
// out from read values), "memory" (recalled from the document named, not checked), "assumed" or "common practice" (no
// source). A function that cannot answer returns ok = false or an error, or, where its comment says so, NaN.
package chem
