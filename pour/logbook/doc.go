// Package logbook keeps what really happened: one plain file for every pour, written while she pours.
//
// [Book] is the folder, [Pour] a pour as its file has it: the plan as poured and the [Event]s in their order, each on the disk
// before it counts. What a run under way makes of the events is package live beside this one; what all pours teach the clock is
// package learn.
//
// Units: min and s as the name says, g, °C.
package logbook
