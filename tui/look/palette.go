package look

import (
	"math"

	"charm.land/lipgloss/v2"

	"pourbench/tui/screen"
)

// colours is the whole palette: honey and clay for what is warm, sage and rain for what is calm.
type colours struct {
	quiet, rule, honey, amber, clay, brick, sage, rain screen.Colour
}

// palette is the colours for a true-colour terminal. Each stands out 4.5 to 1 from common grounds of its kind, the rules 3 to 1.
func palette(dark bool) colours {
	pick := lipgloss.LightDark(dark)
	of := func(onLight, onDark string) screen.Colour {
		return screen.From(pick(lipgloss.Color(onLight), lipgloss.Color(onDark)))
	}
	return colours{
		quiet: of("#5f574f", "#c4bbb0"),
		rule:  of("#7a6f63", "#a1988d"),
		honey: of("#785007", "#ecc27e"),
		amber: of("#8a4404", "#f0ac62"),
		clay:  of("#8c3c1e", "#f0a488"),
		brick: of("#9c221a", "#ffa096"),
		sage:  of("#285f36", "#9bc9a5"),
		rain:  of("#26557b", "#a5cdea"),
	}
}

// The terminal's own sixteen colours that are used.
const (
	red, blue, magenta, white                                          = 1, 4, 5, 7
	grey, brightRed, brightGreen, brightYellow, brightPink, brightCyan = 8, 9, 10, 11, 13, 14
)

// sixteen is the colours for a terminal that has no others, chosen by hand: taken to the nearest, half the palette would be one red.
// What they look like is the terminal's affair; those are left out that no usual set of sixteen shows well on such a ground.
func sixteen(dark bool) colours {
	if !dark {
		return colours{quiet: screen.Index(grey), rule: screen.Index(grey), honey: screen.Index(blue), amber: screen.Index(magenta), brick: screen.Index(red)}
	}
	return colours{
		quiet: screen.Index(white), rule: screen.Index(white), honey: screen.Index(brightYellow), amber: screen.Index(brightPink),
		brick: screen.Index(brightRed), sage: screen.Index(brightGreen), rain: screen.Index(brightCyan),
	}
}

// luminance is the relative luminance of WCAG 2.2, from 0 to 1.
func luminance(c screen.Colour) float64 {
	r, g, b := c.Channels()
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// linear undoes the transfer curve of sRGB (IEC 61966-2-1).
func linear(channel uint8) float64 {
	v := float64(channel) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}
