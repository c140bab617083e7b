// Package live is a run under way: where a pour stands by its plan's sheet, its events and the moment, and what is still possible.
//
// [Begin] and [Resume] give a [Run], which journals every mark in the logbook before it counts; [Live] and [State] are the same
// without a file, pure functions. [Outlook] and [Board] say what is still possible.
//
// Lye does not pause. A run has a clock of its own, which goes on while the laptop sleeps and while no terminal is open,
// and which a changed wall clock cannot turn back; every event carries its run time and its wall time, and every jump
// between the two is an event of its own.
//
// Units: min and s as the name says, g, °C.
package live
