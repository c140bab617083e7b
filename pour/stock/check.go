package stock

import (
	"regexp"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/strict"
)

// check faults what an entry of its kind cannot be by itself, whatever else stands in the ledger.
func check(t *strict.Table, e Entry) {
	t.Missing("kind")
	for _, key := range needs(e.Kind) {
		t.Missing(key)
	}
	if e.Day == 0 && e.Corrects == "" && e.Kind != TakenBack && e.Kind != Torn {
		t.Missing("day")
	}
	for _, f := range append(e.lines(), line{"pack", &e.Pack}) {
		if t.Has(f.key) && strings.TrimSpace(*f.at) == "" && needed(e.Kind, f.key) {
			t.Say(f.key, strict.Quote(*f.at), "says nothing", "write it out")
		}
	}
	if e.Q == 0 && t.Has("quantity") && e.Kind != Counted {
		t.Say("quantity", "0", "is nothing", "write how much it is; take the entry back if there was nothing")
	}
	for key, q := range map[string]lot.Quantity{"quantity": e.Q, "usual_loss": e.Loss} {
		if e.Material.Kind.Counted() && q%lot.One != 0 {
			t.Say(key, q.String(), "is no number of pieces", "write whole pieces of what is counted")
		}
	}
	if e.Loss >= e.Q && e.Loss > 0 {
		t.Say("usual_loss", e.Loss.String(), "is all of it", "write what of the pack usually stays in it or is spilled")
	}
	if e.Kind == Made && (t.Has("price") || t.Has("postage")) {
		t.Say("price", "", "is none that is paid: what is made costs what was taken for it", "leave price and postage out")
	}
	if t.Has("currency") && !regexp.MustCompile(`^[A-Z]{3}$`).MatchString(e.Currency) {
		t.Say("currency", strict.Quote(e.Currency), "is no code of a currency", "write its three capital letters, such as EUR")
	}
	if e.Kind == Rule && e.Formula == "" && e.Currency == "" {
		t.Say("formula", "", "is missing", `write formula = "fifo" or "average", or the currency of all prices`)
	}
}

// needs lists the keys that an entry of a kind must have beside its day.
func needs(k Kind) []string {
	switch k {
	case Received:
		return []string{"pack", "material", "quantity", "price"}
	case Made:
		return []string{"pack", "material", "quantity"}
	case Opened:
		return []string{"pack"}
	case Taken:
		return []string{"pack", "quantity", "for"}
	case Counted:
		return []string{"pack", "quantity"}
	case Lost:
		return []string{"pack", "quantity", "text"}
	case TakenBack:
		return []string{"of"}
	case Offered:
		return []string{"material", "quantity"}
	}
	return nil
}

func needed(k Kind, key string) bool {
	for _, need := range needs(k) {
		if need == key {
			return true
		}
	}
	return false
}
