package pour

import (
	"pourbench/chem/clock"
	"pourbench/chem/cure"
)

// Hand is what a maker's own pours have taught; the zero value is nothing yet, and then everything is what the models say by themselves.
type Hand struct {
	Clock clock.Hand // how fast her batters thicken
	Rack  cure.Rack  // how her bars dry
	Odd   []string   // ids of the pours that were far from what their elders had taught the clock, each once
}
