package invoice_test

import (
	"strings"
	"testing"

	"pourbench/pour/lot"
	"pourbench/pour/stock/invoice"
)

func TestAQuantityIsReadAsItIsTyped(t *testing.T) {
	for _, c := range []struct {
		text string
		kind lot.Kind
		want lot.Quantity // in ten-thousandths
		says string
	}{
		{"350", lot.Oil, 3500000, ""},
		{"350,5 g", lot.Oil, 3505000, ""},
		{"1.85kg", lot.Oil, 18500000, ""},
		{"1 lb 4 oz", lot.Oil, 5669905, ""},
		{"0", lot.Oil, 0, ""},
		{"12", lot.Packaging, 120000, ""},
		{"12 pcs", lot.Packaging, 120000, ""},
		{"12.5", lot.Packaging, 0, "pieces"},
		{"12 g", lot.Packaging, 0, "pieces"},
		{"12 pieces", lot.Oil, 0, "measured in g"},
		{"1 l", lot.Oil, 0, "write its weight"},
		{"1.234", lot.Oil, 0, "could be"},
		{"", lot.Oil, 0, "write a weight"},
		{"much", lot.Oil, 0, "write a weight"},
		{"5 EUR", lot.Oil, 0, "write a weight"},
		{"-5", lot.Oil, 0, "below 0"},
	} {
		got, err := invoice.Quantity(c.text, c.kind)
		if c.says == "" && (err != nil || got != c.want) || c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)) {
			t.Errorf("%q: %d %v, want %d %q", c.text, got, err, c.want, c.says)
		}
	}
}
