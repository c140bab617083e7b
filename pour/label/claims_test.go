package label_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

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

// Whatever a maker writes: each word stands where it is said to stand, none lies in another, and soap sold only as soap has all that others have.
func TestClaimsStandWhereTheyAreSaidToStand(t *testing.T) {
	piece := rapid.OneOf(rapid.SampledFrom([]string{"moisturising", "kills", "germs", "anti", "-", "\u2011", " ", "bacterial", "100", "%", "natural", "İ", "safe for ", "\n"}), rapid.StringN(0, 6, 20))
	rapid.Check(t, func(t *rapid.T) {
		says := strings.Join(rapid.SliceOfN(piece, 0, 12).Draw(t, "says"), "")
		text, past := []rune(says), 0
		soap := label.Claims(says, label.Market{OnlySoap: true})
		for _, c := range soap {
			n := len([]rune(c.Word))
			if n == 0 || c.At < past || string(text[c.At:c.At+n]) != c.Word || c.Clause == "" || !strings.Contains(c.Tell(), "(") {
				t.Fatalf("%+v of %q", c, says)
			}
			past = c.At + n
		}
		if others := label.Claims(says, label.Market{}); len(others) > len(soap) {
			t.Fatalf("%d elsewhere, %d of soap", len(others), len(soap))
		}
	})
}

func BenchmarkClaims(b *testing.B) {
	says := strings.Repeat("A bar of the meadow, cured for six weeks, with oats and honey. ", 8)
	for b.Loop() {
		label.Claims(says, label.Market{OnlySoap: true})
	}
}
