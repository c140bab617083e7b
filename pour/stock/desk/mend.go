package desk

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/plain"
	"pourbench/pour/stock"
	"pourbench/pour/stock/invoice"
)

// entry finds an entry that counts by its name or the first letters of it.
func entry(s stock.State, does, id string) (stock.Entry, error) {
	var found []stock.Entry
	for _, e := range s.Entries {
		if e.ID == id || strings.HasPrefix(e.ID, id+"-") {
			return e, nil
		}
		if id != "" && strings.HasPrefix(e.ID, id) {
			found = append(found, e)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return stock.Entry{}, fmt.Errorf("%s %q: no entry that counts begins so; the list of entries has them", does, id)
	}
	var names []string
	for _, e := range found[:min(len(found), 5)] {
		names = append(names, e.ID)
	}
	return stock.Entry{}, fmt.Errorf("%s %q: several entries begin so; type more of one of %s", does, id, strings.Join(names, ", "))
}

// TakeBack lets an entry count no more. A pack of which something was written in since stays until that is taken back.
func TakeBack(s stock.State, id, why string) (Deed, error) {
	e, err := entry(s, "take back", id)
	if err != nil {
		return Deed{}, err
	}
	if e.Kind == stock.Received || e.Kind == stock.Made {
		var later []string
		for _, o := range s.Entries {
			if o.ID != e.ID && (o.Pack == e.Pack || o.For == e.Pack) {
				later = append(later, o.ID)
			}
		}
		if len(later) > 0 {
			return Deed{}, fmt.Errorf("take back %s: other entries are about %s; take those back first: %s", e.ID, e.Pack, strings.Join(later, ", "))
		}
	}
	d := Deed{Entries: []stock.Entry{{Kind: stock.TakenBack, Of: e.ID, Text: why}}}
	d.say("%s is taken back: %s", e.ID, Tell(e))
	return d, nil
}

// Tell says an entry in words.
func Tell(e stock.Entry) string {
	words := []string{string(e.Kind)}
	if e.Pack != "" {
		words = append(words, e.Pack)
	}
	if e.Q != 0 || e.Kind == stock.Counted {
		unit := ""
		if e.Material.Kind != "" {
			unit = " " + e.Material.Kind.Unit()
		}
		words = append(words, e.Q.String()+unit)
	}
	add := func(lead, text string) {
		if text != "" {
			words = append(words, lead+text)
		}
	}
	add("of ", e.Name)
	if e.Kind == stock.Received {
		add("price ", e.Price.String())
	}
	add("lot ", e.Lot)
	add("from ", e.Supplier)
	add("for ", e.For)
	add("by ", string(e.Formula))
	add("in ", e.Currency)
	add("of ", e.Of)
	add("in the place of ", e.Corrects)
	add("- ", e.Text)
	return strings.Join(words, " ")
}

// CorrectKeys are the keys that can be corrected of an entry of a kind; of no kind: of any.
func CorrectKeys(k stock.Kind) []string {
	switch k {
	case stock.Received, "":
		keys := []string{"day", "name", "lot", "supplier", "expires", "quantity", "tare", "loss", "price", "postage"}
		if k == "" {
			keys = append(keys, "text")
		}
		return keys
	case stock.Offered:
		return []string{"day", "name", "supplier", "quantity", "loss", "price"}
	case stock.Made:
		return []string{"day", "name", "lot", "expires", "quantity", "tare", "loss"}
	case stock.Opened:
		return []string{"day"}
	case stock.Taken, stock.Counted, stock.Lost:
		return []string{"day", "quantity", "text"}
	case stock.Rule:
		return []string{"text"}
	}
	return nil
}

// Correct writes an entry anew with some of it changed, as KEY=VALUE; an empty value takes it out.
func Correct(s stock.State, id string, pairs []string) (Deed, error) {
	was, err := entry(s, "correct", id)
	if err != nil {
		return Deed{}, err
	}
	keys := CorrectKeys(was.Kind)
	if len(pairs) == 0 {
		return Deed{}, fmt.Errorf("correct %s: write what is to change as KEY=VALUE; of one that is %s the keys are %s", was.ID, was.Kind, strings.Join(keys, ", "))
	}
	e := was
	e.ID, e.Corrects = "", was.ID
	kind := e.Material.Kind
	if p, ok := s.Pack(e.Pack); ok {
		kind = p.Material.Kind
	}
	for _, pair := range pairs {
		key, value, ok := strings.Cut(pair, "=")
		if !ok || !slices.Contains(keys, key) {
			return Deed{}, fmt.Errorf("correct %s: %q: write KEY=VALUE; of one that is %s the keys are %s", was.ID, pair, was.Kind, strings.Join(keys, ", "))
		}
		if err := set(&e, kind, key, plain.Line(value)); err != nil {
			return Deed{}, fmt.Errorf("correct %s: %w", was.ID, err)
		}
	}
	if err := can(s, e); err != nil {
		return Deed{}, fmt.Errorf("correct %s: %w", was.ID, err)
	}
	d := Deed{Entries: []stock.Entry{e}}
	d.say("%s", Tell(e))
	if was.Kind == stock.Received && slices.ContainsFunc(s.Entries, func(o stock.Entry) bool { return o.Pack == was.Pack && o.Kind == stock.Taken }) {
		d.say("what was taken since is costed anew")
	}
	return d, nil
}

// set sets one key of an entry as it is typed.
func set(e *stock.Entry, kind lot.Kind, key, value string) error {
	var err error
	amount := func(at *lot.Quantity, kind lot.Kind) {
		if *at = 0; value != "" {
			*at, err = invoice.Quantity(value, kind)
		}
	}
	date := func(at *day.Day) {
		if *at = 0; value != "" {
			*at, err = day.Parse(value)
		}
	}
	switch key {
	case "day":
		if value == "" {
			return fmt.Errorf("every entry has a day: write day=2026-11-28")
		}
		date(&e.Day)
	case "expires":
		date(&e.Expires)
	case "name":
		e.Name = value
	case "lot":
		e.Lot = value
	case "supplier":
		e.Supplier = value
	case "text":
		e.Text = value
	case "quantity":
		amount(&e.Q, kind)
	case "tare":
		amount(&e.Tare, lot.Other)
	case "loss":
		amount(&e.Loss, kind)
	case "price":
		e.Price, err = paid(value)
	case "postage":
		e.Postage, err = paid(value)
	}
	return err
}

// can says what of a corrected entry cannot be.
func can(s stock.State, e stock.Entry) error {
	came := e.Kind == stock.Received || e.Kind == stock.Made
	switch {
	case e.Day > s.Today:
		return fmt.Errorf("%s is still to come; write the day it was", e.Day)
	case e.Q <= 0 && (came || e.Kind == stock.Taken || e.Kind == stock.Lost):
		return fmt.Errorf("a quantity of nothing cannot be: take the entry back instead")
	case came && e.Loss >= e.Q:
		return fmt.Errorf("its usual loss of %s is all of it", e.Loss)
	case e.Expires != 0 && e.Expires < e.Day:
		return fmt.Errorf("it expires on %s, before it came on %s", e.Expires, e.Day)
	}
	return nil
}
