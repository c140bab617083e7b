package keys

import (
	"strings"
	"testing"

	"pourbench/tui/layout"
)

func TestNoKeyDoesTwoThingsInOnePlace(t *testing.T) {
	for m := Mode(0); int(m) < Modes; m++ {
		for p := layout.Kind(0); int(p) < layout.Kinds; p++ {
			does := map[string]ID{}
			for _, b := range Table() {
				if b.Mode != m || !b.Acts(p) {
					continue
				}
				for _, k := range b.Keys {
					if other, taken := does[k]; taken {
						t.Errorf("%s: %q is both %q and %q on panel %d", m, k, other, b.ID, p)
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

func TestDigitsOnlyEverTypeNumbers(t *testing.T) {
	for _, b := range Table() {
		for _, k := range b.Keys {
			if len(k) == 1 && k[0] >= '0' && k[0] <= '9' && b.ID != Digits {
				t.Errorf("digit %s does %q", k, b.ID)
			}
		}
	}
}

func TestAKeyThatActsElsewhereIsFoundWithItsBinding(t *testing.T) {
	b, ok := Lookup(Bench, layout.Clock, "a")
	if ok || b.ID != Add {
		t.Errorf("got %q, %v; want the add key, not acting", b.ID, ok)
	}
	if b, ok = Lookup(Bench, layout.Oils, "a"); !ok || b.ID != Add {
		t.Errorf("got %q, %v; want the add key, acting", b.ID, ok)
	}
	if b, ok = Lookup(Bench, layout.Oils, "Z"); ok || b.ID != "" {
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
