// Package colour is what coloured batters look like: one colour as numbers, how far apart two colours
// are, what two batters become when they touch, and in which order they stay clean beside each other.
//
// It knows nothing of plans, files or screens. Colours are linear light unless a name says otherwise,
// shares are fractions, doses and vanillin are percent. Everything predicted here is an estimate from
// one sRGB colour per batter: two batters that look the same can still mix differently.
package colour

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// RGB is a colour in linear light with the sRGB primaries and the D65 white. 0 is dark, 1 is full;
// a mixture of strong colours can lie a little outside 0 to 1, because sRGB cannot show it.
type RGB struct{ R, G, B float64 }

// ParseHex reads a colour written as "#" and six hexadecimal digits, as in "#f2c230". Nothing else is
// read: a short form, a name or a missing "#" is refused with the spelling that was probably meant.
func ParseHex(text string) (RGB, error) {
	digits, marked := strings.CutPrefix(text, "#")
	value, err := strconv.ParseUint(digits, 16, 32)
	if !marked || len(digits) != 6 || err != nil {
		return RGB{}, fmt.Errorf("read colour %q: %s", text, mendHex(digits))
	}
	return FromBytes(uint8(value>>16), uint8(value>>8), uint8(value)), nil
}

func mendHex(digits string) string {
	_, err := strconv.ParseUint(digits, 16, 64)
	switch {
	case err != nil || (len(digits) != 3 && len(digits) != 6):
		return `write "#" and six hexadecimal digits for red, green and blue, for example "#f2c230"`
	case len(digits) == 3:
		var long strings.Builder
		for _, digit := range digits {
			long.WriteRune(digit)
			long.WriteRune(digit)
		}
		return fmt.Sprintf(`write all six digits, "#%s"`, long.String())
	default:
		return fmt.Sprintf(`put a "#" before the digits, "#%s"`, digits)
	}
}

// FromBytes returns the colour of three sRGB bytes, 0 to 255 (IEC 61966-2-1).
func FromBytes(r, g, b uint8) RGB {
	return RGB{decode(float64(r) / 255), decode(float64(g) / 255), decode(float64(b) / 255)}
}

// Bytes returns the nearest sRGB bytes. Channels outside 0 to 1 are clipped; a channel that is not a
// number reads 0, so check with Valid where a colour comes from outside.
func (c RGB) Bytes() (r, g, b uint8) {
	return encode(c.R), encode(c.G), encode(c.B)
}

// Hex returns the colour as "#rrggbb", clipped to what sRGB can show. A colour with a channel that is
// not a finite number has no spelling and gives "".
func (c RGB) Hex() string {
	if c.Valid() != nil {
		return ""
	}
	r, g, b := c.Bytes()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}

// slack is how far outside 0 to 1 a channel may lie and still be taken for a colour. Mixtures leave
// the sRGB gamut by a few hundredths; a channel far outside is a byte or a percent by mistake.
const slack = 0.5

// Valid returns nil for a colour that can be worked with, and otherwise an error that says which
// channel is not a number or lies far outside 0 to 1.
func (c RGB) Valid() error {
	for i, v := range [3]float64{c.R, c.G, c.B} {
		name := [3]string{"red", "green", "blue"}[i]
		if math.IsNaN(v) || v < -slack || v > 1+slack {
			return fmt.Errorf("take colour: %s is %g: give linear light from 0 to 1", name, v)
		}
	}
	return nil
}

// Luminance returns the relative luminance Y, 0 to 1 (IEC 61966-2-1).
func (c RGB) Luminance() float64 {
	return 0.2126729*c.R + 0.7151522*c.G + 0.0721750*c.B
}

// clip returns the nearest colour whose channels lie between low and high.
func (c RGB) clip(low, high float64) RGB {
	return RGB{min(max(c.R, low), high), min(max(c.G, low), high), min(max(c.B, low), high)}
}

func decode(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func encode(v float64) uint8 {
	switch {
	case !(v > 0): // also where v is not a number
		return 0
	case v >= 1:
		return 255
	case v <= 0.0031308:
		v *= 12.92
	default:
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * v))
}
