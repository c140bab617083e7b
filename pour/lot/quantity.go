package lot

import (
	"math"
	"strconv"
	"strings"
)

// Quantity is how much of a material: ten-thousandths of a gram, or of a piece where its kind is counted. It is whole, so that sums are exact.
type Quantity int64

// One is a gram, or a piece.
const One Quantity = 10_000

// most is the largest quantity there is, a hundred tonnes: sums of a lifetime of them still fit.
const most = 1e8

// Weighed is a quantity of so many grams or pieces, to the nearest ten-thousandth. False: it is no number, below 0, or beyond a hundred tonnes.
func Weighed(v float64) (Quantity, bool) {
	if !(v >= 0 && v <= most) {
		return 0, false
	}
	return Quantity(math.Round(v * float64(One))), true
}

// V is the quantity in grams or pieces.
func (q Quantity) V() float64 { return float64(q) / float64(One) }

// String writes the quantity in grams or pieces, exactly and in its shortest form.
func (q Quantity) String() string {
	n, sign := int64(q), ""
	if n < 0 {
		n, sign = -n, "-"
	}
	whole, rest := n/int64(One), n%int64(One)
	s := sign + strconv.FormatInt(whole, 10)
	if rest != 0 {
		s += "." + strings.TrimRight(strconv.FormatInt(int64(One)+rest, 10)[1:], "0")
	}
	return s
}
