package keys

import (
	"slices"
	"strings"
	"testing"
)

func TestNoKeyDoesTwoThingsInOnePlace(t *testing.T) {
	const all = Reading<<1 - 1
	for m := Mode(0); int(m) < modes; m++ {
		for _, has := range []Need{all &^ Words &^ Picture &^ Found, all &^ Held &^ Elsewhere &^ Reading} { // no place has both of a pair: the panels' own test holds that
			does := map[string]ID{}
			for _, b := range BuiltIn().All() {
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
	for _, b := range BuiltIn().All() {
		if b.Help == "" || b.ID == "" {
			t.Errorf("binding %q of mode %s has no help", b.Keys, b.Mode)
		}
		if b.Foot > 0 && b.Label == "" {
			t.Errorf("binding %q stands in the footer without a label", b.ID)
		}
	}
}

func TestDigitsOnlyEverTypeNumbersAtTheBench(t *testing.T) {
	for _, b := range BuiltIn().All() {
		for _, k := range b.Keys {
			if len(k) == 1 && k[0] >= '0' && k[0] <= '9' && b.ID != Digits && b.Mode != Pouring {
				t.Errorf("digit %s does %q", k, b.ID)
			}
		}
	}
}

func TestAKeyThatActsElsewhereIsFoundWithItsBinding(t *testing.T) {
	b, ok := BuiltIn().Lookup(Bench, Elsewhere, "a")
	if ok || b.ID != Add {
		t.Errorf("got %q, %v; want the add key, not acting", b.ID, ok)
	}
	if b, ok = BuiltIn().Lookup(Bench, Adding, "a"); !ok || b.ID != Add {
		t.Errorf("got %q, %v; want the add key, acting", b.ID, ok)
	}
	if b, ok = BuiltIn().Lookup(Bench, Adding, "ß"); ok || b.ID != "" {
		t.Errorf("an unbound key gave %q", b.ID)
	}
}

func TestTheMarkdownTableHoldsEveryBinding(t *testing.T) {
	page := BuiltIn().Markdown()
	for _, b := range BuiltIn().All() {
		if !strings.Contains(page, "| "+b.Help+" |") {
			t.Errorf("the table lacks %q", b.Help)
		}
	}
}

func TestKeysAreShownAsPeopleReadThem(t *testing.T) {
	for _, c := range []struct {
		b             Binding
		shown, footer string
	}{
		{Binding{Keys: []string{"up", "k"}}, "↑ k", "↑"},
		{Binding{Keys: []string{"0", "1", "2", ",", "."}}, "0–2 , .", "0–2"},
		{Binding{Keys: []string{"1", "2", "9"}}, "1–2 9", "1–2"},
		{Binding{Keys: []string{"e", "l"}, Each: []string{"emulsion", "light"}}, "e l", "e l"},
		{Binding{Keys: []string{"+", "="}, beside: "-"}, "+ =", "+ -"},
		{Binding{Keys: []string{"shift+tab", "ctrl+y", "f1", "pgdown", "backspace", "delete"}}, "Shift+Tab Ctrl+Y F1 PgDn Backspace Delete", "F1"},
		{Binding{Keys: []string{"shift+right", "*"}}, "Shift+→ *", "*"},
		{Binding{ID: Find}, "letters", "a–z"},
		{Binding{ID: Undo}, "no key", ""},
		{Binding{Keys: []string{"alt+up", "ctrl+left", "ctrl+alt+x"}}, "Alt+↑ Ctrl+← Ctrl+Alt+x", "Alt+↑"},
		{Binding{Keys: []string{"space", "f"}}, "Space f", "Space"},
	} {
		if c.b.Shown() != c.shown || c.b.InFooter() != c.footer {
			t.Errorf("%q are shown as %q and in the footer as %q; want %q and %q", c.b.Keys, c.b.Shown(), c.b.InFooter(), c.shown, c.footer)
		}
	}
}

func TestEveryScreenListsItsOwnModesAndTogetherAll(t *testing.T) {
	seen := map[Mode]bool{}
	for _, m := range slices.Concat(OfBench(), OfPour(), OfBatches(), OfStock()) {
		seen[m] = true
	}
	if len(seen) != modes {
		t.Errorf("help lists %d of %d modes", len(seen), modes)
	}
	if b, ok := BuiltIn().Lookup(Pouring, 0, "u"); !ok || b.ID != TakeBack { // what it is everywhere
		t.Errorf("u is %q during a pour", b.ID)
	}
	if b, ok := BuiltIn().Lookup(Bench, 0, "u"); !ok || b.ID != Undo {
		t.Errorf("u is %q at the bench", b.ID)
	}
}

func TestTheManualHoldsEveryKeyUnderItsMode(t *testing.T) {
	page := BuiltIn().Man()
	for _, b := range BuiltIn().All() {
		_, after, found := strings.Cut(page, ".SS "+b.Mode.String()+"\n")
		under, _, _ := strings.Cut(after, "\n.SS ")
		if !found || !strings.Contains(under, b.Help) || !strings.Contains(under, `\fB`+strings.ReplaceAll(b.Shown(), `\`, `\e`)+`\fR`) {
			t.Errorf("the manual lacks %q of mode %s", b.Help, b.Mode)
		}
	}
}

func TestFootersStandInTheOrderOfTheirRank(t *testing.T) {
	for m := range Mode(modes) {
		last := 0
		for _, b := range BuiltIn().Footer(m, Numbers|Held|Adding|Removing|Elsewhere) {
			if b.Mode != m || b.Foot < last || b.Label == "" {
				t.Errorf("%s: %q stands in the footer at rank %d after %d", m, b.ID, b.Foot, last)
			}
			last = b.Foot
		}
		if last == 0 {
			t.Errorf("%s has no footer", m)
		}
	}
	for _, b := range BuiltIn().Footer(Bench, Elsewhere) {
		if b.ID == Add || b.ID == Reroll {
			t.Errorf("the footer of a panel with nothing to add names %q", b.ID)
		}
	}
}
