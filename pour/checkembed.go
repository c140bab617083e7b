package pour

import "fmt"

// embed checks what hangs together in one kind of embed.
func (c *checker) embed(at spot, e *Embed) {
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
