package swirl

import (
	"image/color"
	"math"
)

// light is a colour in linear light, 0 to 1.
type light struct{ r, g, b float32 }

func decode(c color.NRGBA) light {
	return light{linear(c.R), linear(c.G), linear(c.B)}
}

// linear undoes the sRGB curve of IEC 61966-2-1.
func linear(v uint8) float32 {
	f := float64(v) / 255
	if f <= 0.04045 {
		return float32(f / 12.92)
	}
	return float32(math.Pow((f+0.055)/1.055, 2.4))
}

func (l light) encode() color.NRGBA {
	return color.NRGBA{encode(l.r), encode(l.g), encode(l.b), 255}
}

func encode(v float32) uint8 {
	f := clamp(float64(v), 0, 1)
	if f <= 0.0031308 {
		f *= 12.92
	} else {
		f = 1.055*math.Pow(f, 1/2.4) - 0.055
	}
	return uint8(f*255 + 0.5)
}

func (l light) scaled(f float32) light { return light{l.r * f, l.g * f, l.b * f} }
