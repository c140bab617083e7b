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

func palette(dark bool) colours {
	pick := lipgloss.LightDark(dark)
	of := func(onLight, onDark string) screen.Colour {
		return screen.From(pick(lipgloss.Color(onLight), lipgloss.Color(onDark)))
	}
	return colours{
		quiet: of("#675f56", "#a69c90"),
		rule:  of("#a99d8f", "#6f665c"),
		honey: of("#83580c", "#e3b36b"),
		amber: of("#944a05", "#e89b4c"),
		clay:  of("#964222", "#db8663"),
		brick: of("#a2261d", "#ee8478"),
		sage:  of("#2c663a", "#93c19d"),
		rain:  of("#2a5b83", "#8fb8d6"),
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
