package keys

import (
	"strings"
	"testing"
)

func TestNoKeyDoesTwoThingsInOnePlace(t *testing.T) {
	const all = Elsewhere<<1 - 1
	for m := Mode(0); int(m) < modes; m++ {
		for _, has := range []Need{all &^ Words &^ Picture, all &^ Held &^ Elsewhere} { // no panel has both of a pair: the panels' own test holds that
			does := map[string]ID{}
			for _, b := range Table() {
				if b.Mode != m || !b.Acts(has) {
					continue
				}
				for _, k := range b.Keys {
					if other, taken := does[k]; taken {
						t.Errorf("%s: %q is both %q and %q", m, k, other, b.ID)
					}
					does[k] = b.ID
				}
			}
		}
	}
}

func TestEveryKeyIsExplained(t *testing.T) {
	for _, b := range Table() {
		if b.Help == "" || b.ID == "" {
			t.Errorf("binding %q of mode %s has no help", b.Keys, b.Mode)
		}
		if b.Foot > 0 && b.Label == "" {
			t.Errorf("binding %q stands in the footer without a label", b.ID)
		}
	}
}

func TestDigitsOnlyEverTypeNumbersAtTheBench(t *testing.T) {
	for _, b := range Table() {
		for _, k := range b.Keys {
			if len(k) == 1 && k[0] >= '0' && k[0] <= '9' && b.ID != Digits && b.Mode != Pouring {
				t.Errorf("digit %s does %q", k, b.ID)
			}
		}
	}
}

func TestAKeyThatActsElsewhereIsFoundWithItsBinding(t *testing.T) {
	b, ok := Lookup(Bench, Elsewhere, "a")
	if ok || b.ID != Add {
		t.Errorf("got %q, %v; want the add key, not acting", b.ID, ok)
	}
	if b, ok = Lookup(Bench, Adding, "a"); !ok || b.ID != Add {
		t.Errorf("got %q, %v; want the add key, acting", b.ID, ok)
	}
	if b, ok = Lookup(Bench, Adding, "Z"); ok || b.ID != "" {
		t.Errorf("an unbound key gave %q", b.ID)
	}
}

func TestTheMarkdownTableHoldsEveryBinding(t *testing.T) {
	page := Markdown()
	for _, b := range Table() {
		if !strings.Contains(page, "| "+b.Help+" |") {
			t.Errorf("the table lacks %q", b.Help)
		}
	}
}
