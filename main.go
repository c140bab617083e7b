// Pourbench is a terminal workbench for designing multi-colour soap pours.
//
// Without a command it opens the workbench on a plan; the other commands print what is worked out from one.
package main

import (
	"os"
	"runtime/debug"

	"pourbench/presets"
	"pourbench/tui/command"
)

// gcPercent lets the heap grow to a few times what is live before it is collected: a whole bench is a few megabytes, and a collection
// in the middle of a keystroke costs more than they do. GOGC in the environment still decides.
const gcPercent = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	os.Exit(command.Main(
		command.Process{Args: os.Args[1:], In: os.Stdin, Out: os.Stdout, Errs: os.Stderr, Environ: os.Environ()},
		command.Builtin{Shelf: presets.Shelf, Overlay: presets.Overlay, Plans: presets.Plans, Plan: presets.Plan, Entry: presets.Entry, Reference: presets.Reference},
	))
}
