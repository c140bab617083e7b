// Package logbook keeps what really happened: one plain file for every pour, written while she pours, and what all of
// them together teach the clock about her hand.
//
// [Book] is the folder. [Book.Begin] and [Book.Resume] give a [Run], which journals every mark she makes; [Live] and
// [State] are the same without a file, pure functions of the plan's sheet, the events and the moment. [Outlook] and [Board]
// say what is still possible. [Learn] turns logs into a [clock.Hand] by section 3 of the trace model.
//
// Lye does not pause. A run has a clock of its own, which goes on while the laptop sleeps and while no terminal is open,
// and which a changed wall clock cannot turn back; every event carries its run time and its wall time, and every jump
// between the two is an event of its own.
//
// Units: min and s as the name says, g, °C; fractions inside formulas.
package logbook
