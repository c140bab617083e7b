package label_test

import (
	"slices"
	"testing"

	"pourbench/pour/label"
)

func TestWordsThatClaimMoreThanSoap(t *testing.T) {
	soap, cosmetic := label.Market{OnlySoap: true}, label.Market{}
	for _, c := range []struct {
		says           string
		soap, cosmetic []string
	}{
		{"A meadow in a bar.", nil, nil},
		{"Moisturises and soothes tired hands", []string{"Moisturises", "soothes"}, nil},
		{"Kills germs; ANTIBACTERIAL.", []string{"Kills", "germs", "ANTIBACTERIAL"}, []string{"Kills", "germs", "ANTIBACTERIAL"}},
		{"Hypoallergenic and proven", []string{"Hypoallergenic", "proven"}, []string{"Hypoallergenic", "proven"}},
		{"Cured six weeks; curing takes patience. Stone, milestone, retreat, germander", nil, nil},
		{"anti bacterial, ANTI-Bacterial, anti\u2011bacterial", []string{"anti bacterial", "ANTI-Bacterial", "anti\u2011bacterial"}, []string{"anti bacterial", "ANTI-Bacterial", "anti\u2011bacterial"}},
		{"non toxic and 100 % natural; cannot harm", []string{"non toxic", "100 % natural", "cannot harm"}, []string{"non toxic", "100 % natural", "cannot harm"}},
		{"for dry skin, İSTANBUL soothing", []string{"dry skin", "soothing"}, nil},
		{"A two-tone bar in calm tones, kept in dry conditions, cures six weeks", nil, nil},
		{"treat", nil, nil},
		{"anti", nil, nil},
		{"a treatment", []string{"treatment"}, []string{"treatment"}},
		{"", nil, nil},
		{"Für dich: soothing", []string{"soothing"}, nil},
	} {
		for _, m := range []struct {
			market label.Market
			want   []string
		}{{soap, c.soap}, {cosmetic, c.cosmetic}} {
			var words []string
			for _, f := range label.Claims(c.says, m.market) {
				words = append(words, f.Word)
				if got := string([]rune(c.says)[f.At : f.At+len([]rune(f.Word))]); got != f.Word {
					t.Errorf("%q: %q does not stand at %d but %q", c.says, f.Word, f.At, got)
				}
			}
			if !slices.Equal(words, m.want) {
				t.Errorf("%q, only soap %v: found %q, want %q", c.says, m.market.OnlySoap, words, m.want)
			}
		}
	}
}
