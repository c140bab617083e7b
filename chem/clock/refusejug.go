package clock

// checkJug is check for a jug of the batch.
func (c *Clock) checkJug(j Jug) error {
	if err := first([]rule{
		{"the jug's part of the batter", j.Fraction, tiny, 1 + tiny, " %", 100, "it must be over 0 and up to 100 %"},
		{"the water from the colourant", j.ExtraWaterG, 0, huge, " g", 1, "it must be 0 or more"},
		{"the jug's cooling", j.Cooling, 0, 1000, " W/K", 1, "it must be 0 or more"},
	}); err != nil {
		return err
	}
	if err := first([]rule{{
		"the jug's lye concentration, with the water from its colourant,", c.batter.jugConcentration(j),
		0.22, 0.50, " %", 100, "outside what this model covers, 22 to 50 %",
	}}); err != nil {
		return err
	}
	if err := checkBursts(j.Bursts); err != nil {
		return err
	}
	for _, s := range j.Scents {
		if err := s.check(); err != nil {
			return err
		}
	}
	return nil
}

func (s Scent) check() error {
	if err := first([]rule{
		{"the load of " + s.Name, s.LoadPercent, 0, 100, " %", 1, "it must lie from 0 to 100 %"},
		{"the test load of " + s.Name, s.RefLoadPercent, 0.001, 100, " %", 1, "it must be over 0; the usual one is 3 %"},
		{"ln of the speed factor of " + s.Name, s.LnFactor, -5, 5, "", 1, "it must lie from -5 to 5"},
		{"the sd of the speed factor of " + s.Name, s.SD, 0, 5, "", 1, "it must lie from 0 to 5"},
		{"the minute of " + s.Name, s.AtMin, 0, huge, " min", 1, "it must be 0 or more after lye-in"},
		{"the jump of " + s.Name, s.JumpX, 0, 0.06, "", 1, "it must lie from 0 to 0.06"},
	}); err != nil {
		return err
	}
	if s.LoadPercent == 0 {
		return nil
	}
	if s.Rices {
		return refuse("%s rices or separates, which is not a thickening", s.Name)
	}
	if r := s.Ratio(); r > mostRatio {
		return refuse("%s stands at %.3g %% of this jug's oils, %.2g times the load it was tested at; over 4 times nothing is known: use less, or put it into more jugs",
			s.Name, s.LoadPercent, r)
	}
	return nil
}
