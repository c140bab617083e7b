package look

import (
	"math"

	"pourbench/tui/screen"
)

// colours is the whole palette: honey and clay for what is warm, sage and rain for what is calm.
type colours struct {
	quiet, rule, honey, amber, clay, brick, sage, rain screen.Colour
}

func palette(dark bool) colours {
	if dark {
		return colours{
			quiet: screen.RGB(0xa6, 0x9c, 0x90),
			rule:  screen.RGB(0x6f, 0x66, 0x5c),
			honey: screen.RGB(0xe3, 0xb3, 0x6b),
			amber: screen.RGB(0xe8, 0x9b, 0x4c),
			clay:  screen.RGB(0xdb, 0x86, 0x63),
			brick: screen.RGB(0xee, 0x84, 0x78),
			sage:  screen.RGB(0x93, 0xc1, 0x9d),
			rain:  screen.RGB(0x8f, 0xb8, 0xd6),
		}
	}
	return colours{
		quiet: screen.RGB(0x67, 0x5f, 0x56),
		rule:  screen.RGB(0xa9, 0x9d, 0x8f),
		honey: screen.RGB(0x83, 0x58, 0x0c),
		amber: screen.RGB(0x94, 0x4a, 0x05),
		clay:  screen.RGB(0x96, 0x42, 0x22),
		brick: screen.RGB(0xa2, 0x26, 0x1d),
		sage:  screen.RGB(0x2c, 0x66, 0x3a),
		rain:  screen.RGB(0x2a, 0x5b, 0x83),
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
