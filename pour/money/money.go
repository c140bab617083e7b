// Package money is prices and sums of them as decimal numbers, which are exact: no figure of it goes through a float. It is the only one
// that knows the decimal library.
package money

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// Amount is an amount of money in whatever currency. The zero value is nothing.
type Amount struct{ d decimal.Decimal }

// mostDigits bounds a price, before and after the point: no bar costs more, and none is priced finer.
const mostDigits = 9

// Parse reads a decimal number as it is written in a file: one to nine digits, and after a point one to nine more.
func Parse(text string) (Amount, error) {
	d, err := parse("price", text, "7.50")
	return Amount{d}, err
}

// Typed is a price as a hand types it into a field, with a comma or a point, written as in a file; nothing typed stays nothing. The error says what to type.
func Typed(text string) (string, error) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	if text == "" {
		return "", nil
	}
	written := strings.TrimSuffix(text, ".")
	if strings.HasPrefix(written, ".") {
		written = "0" + written
	}
	if _, err := Parse(written); err != nil {
		return "", fmt.Errorf("%q is no price: type a number without a sign or a currency, as in 7.70", text)
	}
	return written, nil
}

// parse reads a decimal number of a kind, of which the mend shows one.
func parse(kind, text, such string) (decimal.Decimal, error) {
	before, after, point := strings.Cut(text, ".")
	if !digits(before) || point && !digits(after) {
		return decimal.Decimal{}, fmt.Errorf("read the %s %q: write a decimal number, such as %s", kind, text, such)
	}
	d, err := decimal.NewFromString(text)
	if err != nil {
		return decimal.Decimal{}, fmt.Errorf("read the %s %q: %w", kind, text, err)
	}
	return d, nil
}

// digits reports whether a text is digits alone, at least one and no more than a price has.
func digits(text string) bool {
	return text != "" && len(text) <= mostDigits && strings.Trim(text, "0123456789") == ""
}

// Plus is the sum of two amounts of one currency.
func (a Amount) Plus(b Amount) Amount { return Amount{a.d.Add(b.d)} }

// Times is the amount n times.
func (a Amount) Times(n int) Amount { return Amount{a.d.Mul(decimal.NewFromInt(int64(n)))} }

// Over is the amount divided by n, above 0, rounded to a number of digits after the point, half away from 0.
func (a Amount) Over(n, digits int) Amount {
	return Amount{a.d.DivRound(decimal.NewFromInt(int64(n)), int32(min(max(digits, 0), mostDigits)))}
}

// Compare is below 0 where a is less than b, above 0 where it is more.
func (a Amount) Compare(b Amount) int { return a.d.Cmp(b.d) }

// Equal reports whether two amounts are the same, however they were written.
func (a Amount) Equal(b Amount) bool { return a.d.Equal(b.d) }

// usualDigits are those after the point that most currencies have (ISO 4217, minor unit; memory).
const usualDigits = 2

// String writes the amount with two digits after the point, and with more where it has them.
func (a Amount) String() string {
	return a.d.StringFixed(max(usualDigits, -a.d.Exponent()))
}
