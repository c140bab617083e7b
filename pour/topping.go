package pour

// When a topping goes on.
const (
	StrewWet  = "wet"   // on the fresh top, right after the icing
	StrewSkin = "skin"  // when the top has skinned but is tacky
	StrewCut  = "cut"   // after the cut
	StrewCure = "cured" // on the cured bar
)
