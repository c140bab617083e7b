package label

import (
	"fmt"
	"slices"
	"strings"
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

// stem is how a word of a claim begins, in small letters; a stem that ends in a blank is the whole word.
type stem struct{ text, class, clause string }

const (
	onlySoap = "21 CFR 701.20(a); read"
	ofDrugs  = "FD&C Act s. 201(g), and medicines law elsewhere; which words is memory"
	proof    = "Cosmetic Regulations s. 21, Regulation (EU) 655/2013; which words is memory"
)

// stems are the words that are looked for. Moisturises, deodorises and soothes, and what kills or treats, were read on the agency's page for consumer
// products; the others are such words from memory. It is no list that could be complete.
func stems() []stem {
	var out []stem
	add := func(class, clause, words string) {
		for w := range strings.SplitSeq(words, ",") {
			out = append(out, stem{strings.TrimLeft(w, " "), class, clause})
		}
	}
	add(ClaimDrug, ofDrugs, "antibac, anti-bac, antimicrob, anti-microb, antisept, anti-sept, antifung, anti-fung, disinfect, germ , germs , germicid, kills , eczema, psoriasis, acne, dermatitis, heals , healing , "+
		"cures , treats , treating , treatment , therap, inflammat, anti-inflam, itch , itching , itchy , rash , rashes , dandruff, sunscreen, spf , medicat, medicin, pain , wound")
	add(ClaimCosmetic, onlySoap, "moisturi, hydrat, sooth, deodor, soften, nourish, rejuven, anti-ag, antiag, anti-wrinkle, exfoliat, brighten, whiten, conditions , conditioning , calm, refresh, tone , tones , toning , "+
		"beautif, youth, firming , perfume , perfumes , scents your skin")
	add(ClaimProof, proof, "hypoallerg, non-toxic, nontoxic, chemical-free, chemical free, harmless, dermatolog, clinically, proven, safe for , 100 % natural , 100% natural ")
	return out
}

// Claims finds words in a text that move a bar into another class in the market, in the order of the text: of soap sold only as soap each that claims more
// than soap; elsewhere what claims to treat, and what needs proof. Upper and lower case are the same; a stem stands at the beginning of a word.
func Claims(says string, m Market) []Claim {
	text := []rune(strings.ToLower(says))
	shown := []rune(says)
	var out []Claim
	for _, s := range stems() {
		if s.class == ClaimCosmetic && !m.OnlySoap {
			continue
		}
		for _, at := range found(text, []rune(strings.TrimRight(s.text, " ")), strings.HasSuffix(s.text, " ")) {
			c := Claim{At: at, Class: s.class, Clause: s.clause}
			if len(shown) == len(text) { // a letter that is two in small ones would move all behind it
				c.Word = string(shown[at:wordEnd(text, at+len([]rune(strings.TrimRight(s.text, " "))))])
			} else {
				c.Word = strings.TrimSpace(s.text)
			}
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Claim) int { return a.At - b.At })
	return slices.CompactFunc(out, func(a, b Claim) bool { return a.At == b.At })
}

// found is where a stem begins a word of a text; whole: where it is the word.
func found(text, stem []rune, whole bool) []int {
	var at []int
	for i := 0; i+len(stem) <= len(text); i++ {
		if i > 0 && unicode.IsLetter(text[i-1]) || !slices.Equal(text[i:i+len(stem)], stem) {
			continue
		}
		if end := i + len(stem); whole && end < len(text) && unicode.IsLetter(text[end]) {
			continue
		}
		at = append(at, i)
	}
	return at
}

// wordEnd is where the word that goes on at a place ends.
func wordEnd(text []rune, at int) int {
	for at < len(text) && unicode.IsLetter(text[at]) {
		at++
	}
	return at
}
