package label

import (
	"fmt"
	"unicode"
)

// What a claim makes of a bar.
const (
	ClaimCosmetic = "cosmetic" // of soap that is sold only as soap
	ClaimDrug     = "drug"     // or a medicine: treats, prevents, kills germs
	ClaimProof    = "proof"    // needs proof before it is said
)

// Claim is a word of a maker's own text that makes more of a bar than it may be.
type Claim struct {
	Word   string // as it stands in the text
	At     int    // of its first letter in the text, in runes
	Class  string // one of the Claim… words
	Clause string // where that stands, and how far it was checked
}

// Tell says what the word does.
func (c Claim) Tell() string {
	does := map[string]string{
		ClaimCosmetic: "claims more than soap: the bar is then sold as a cosmetic",
		ClaimDrug:     "claims to treat or to kill germs: the bar is then a drug or a medicine",
		ClaimProof:    "is a claim that needs proof",
	}[c.Class]
	return fmt.Sprintf("%q %s (%s)", c.Word, does, c.Clause)
}

// Claims finds words in a text that move a bar into another class in the market, in the order of the text: of soap sold only as soap each that claims more
// than soap; elsewhere what claims to treat, and what needs proof. Upper and lower case are the same, and so are words written with a hyphen, in two and in
// one. It knows English words only and no list of them could be complete: that it finds none says nothing.
func Claims(says string, m Market) []Claim {
	shown := []rune(says)
	text := make([]rune, len(shown))
	for i, r := range shown {
		text[i] = unicode.ToLower(r)
	}
	all := stems()
	var out []Claim
	for at := 0; at < len(text); at++ {
		if !unicode.IsLetter(text[at]) && !unicode.IsDigit(text[at]) || at > 0 && unicode.IsLetter(text[at-1]) {
			continue
		}
		if end, s := longest(text[at:], all, m); end > 0 {
			out = append(out, Claim{Word: string(shown[at : at+end]), At: at, Class: s.class, Clause: s.clause})
			at += end - 1
		}
	}
	return out
}

// longest is where the word ends that begins a text and that most of a claim's letters stand in, and the claim; 0: none does.
func longest(text []rune, all []stem, m Market) (end int, of stem) {
	for _, s := range all {
		if rune(s.text[0]) != text[0] || s.class == ClaimCosmetic && !m.OnlySoap {
			continue
		}
		if e := s.begins(text); e > end {
			end, of = e, s
		}
	}
	return end, of
}

// begins is where the word ends that begins a text with the stem; 0: it does not. A hyphen of the stem is any hyphen, a blank or nothing there.
func (s stem) begins(text []rune) int {
	at := 0
	for i, r := range s.text {
		switch {
		case r == ' ' && i == len(s.text)-1:
			if at < len(text) && unicode.IsLetter(text[at]) {
				return 0 // the stem is the whole word
			}
			return at
		case r == '-':
			if at < len(text) && joins(text[at]) {
				at++
			}
		case at < len(text) && text[at] == r:
			at++
		default:
			return 0
		}
	}
	for at < len(text) && unicode.IsLetter(text[at]) {
		at++
	}
	return at
}

// joins reports whether a rune may stand between the two words of one.
func joins(r rune) bool { return unicode.Is(unicode.Pd, r) || unicode.IsSpace(r) || r == '\u00ad' }
