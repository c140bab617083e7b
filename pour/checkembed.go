package pour

import "fmt"

// embed checks what hangs together in one kind of embed.
func (c *checker) embed(at spot, e *Embed) {
	c.madeOf(at, e.MadeOf)
	if e.Outline != OutlineOwn {
		return
	}
	given := fmt.Sprint(len(e.Corners)) + " numbers"
	if n := len(e.Corners); n < 6 || n%2 != 0 {
		c.add(at.path("corners"), given, "give no outline", "write x, y of three corners or more: [0, 0, 20, 0, 10, 17]")
		return
	}
	if o := e.drawn(); o.Extent(0) < 1e-6 || o.ExtentAcross(0) < 1e-6 || o.Area() < 1e-6*o.Extent(0)*o.ExtentAcross(0) {
		c.add(at.path("corners"), given, "lie in one line", "give the piece a length and a width")
	}
}

// madeOf checks what an embed is made of: either every part says how much of it there is, or none.
func (c *checker) madeOf(at spot, parts []MadeOf) {
	sum, unstated := 0.0, 0
	for _, p := range parts {
		sum += p.Percent
		if p.Percent == 0 {
			unstated++
		}
	}
	if sum > 0 {
		c.hundred(at.path("made_of"), "the parts of the embed sum", sum, "make the percentages sum to 100, or leave all of them out")
	}
	if sum > 0 && unstated > 0 {
		c.add(at.path("made_of"), "", "some parts of the embed say how much of them there is and some do not", "write a percent for each, or for none")
	}
}
