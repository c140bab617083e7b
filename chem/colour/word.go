package colour

import "math"

// hueWord is the word for hues up to an angle of OKLCH, degrees. The bounds are our own, between the named colours of CSS Color 4.
type hueWord struct {
	upTo float64
	word string
}

// hueWords are the words round the circle, from red on.
func hueWords() []hueWord {
	return []hueWord{{8, "pink"}, {42, "red"}, {82, "orange"}, {118, "yellow"}, {165, "green"}, {205, "turquoise"}, {282, "blue"}, {318, "violet"}, {360, "pink"}}
}

// The bounds between words: of lightness 0 to 1 and chroma 0 to about 0.3, OKLCH. They are our own.
const (
	greyUnder  = 0.025 // chroma of a colour without a hue
	dullUnder  = 0.06
	paleOver   = 0.84 // lightness
	darkUnder  = 0.45
	whiteOver  = 0.94
	blackUnder = 0.2
	brownUnder = 0.62 // a darker orange is brown, a darker yellow olive
	pinkOver   = 0.72 // a lighter red is pink
)

// Word names the colour in one to three words, as in "dark blue", for who cannot see it. A colour that is no number gives "".
func (c RGB) Word() string {
	if c.Hex() == "" {
		return ""
	}
	lch := c.OKLCH()
	if lch.C < greyUnder {
		return grey(lch.L)
	}
	word := ""
	for _, h := range hueWords() {
		if word = h.word; lch.H <= h.upTo {
			break
		}
	}
	switch {
	case word == "orange" && lch.L < brownUnder:
		word = "brown"
	case word == "yellow" && lch.L < brownUnder:
		word = "olive"
	case word == "red" && lch.L > pinkOver:
		word = "pink"
	case (word == "yellow" || word == "orange") && lch.L > paleOver && lch.C < dullUnder:
		return "cream"
	}
	return shade(lch, word)
}

func shade(lch OKLCH, word string) string {
	if lch.C < dullUnder {
		word = "greyish " + word
	}
	switch {
	case lch.L > paleOver && word != "yellow":
		return "light " + word
	case lch.L < darkUnder:
		return "dark " + word
	}
	return word
}

func grey(l float64) string {
	switch {
	case l > whiteOver:
		return "white"
	case l < blackUnder:
		return "black"
	}
	return [...]string{"dark grey", "grey", "light grey"}[int(math.Min((l-blackUnder)/(whiteOver-blackUnder)*3, 2))]
}
