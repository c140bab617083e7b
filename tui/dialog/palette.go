package dialog

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
)

// allOf stands for a binding as a whole, whatever each of its keys does.
const allOf = -1

// NewPalette lists the actions of bench, live run and batches to be searched, those of the screen itself first, each with its keys or
// why it cannot act now.
func NewPalette(on Actions) *List {
	l := &List{Title: "Every action: type what it does", Below: true}
	does := map[string]func() tea.Cmd{}
	add := func(b keys.Binding, nth int) {
		it := Item{ID: b.Mode.Word() + " " + b.ID.Word(), Name: string(b.ID), Says: b.Help, Aside: b.Shown(), Detail: []string{string(b.ID) + ": " + b.Help}}
		if nth >= 0 {
			it.ID += " " + b.Each[nth]
			it.Name += ": " + b.Each[nth]
			it.Aside = keys.Shown(b.Keys[nth])
			if on.About != nil {
				it.Name = strings.TrimSpace(it.Name + " " + on.About(b, nth))
			}
		}
		if it.Not = on.WhyNot(b, nth); it.Not != "" {
			it.Detail = append(it.Detail, "not now: "+it.Not)
		}
		l.Items = append(l.Items, it)
		does[it.ID] = func() tea.Cmd { return on.Do(b, nth) }
	}
	for _, mode := range palettes(on.Own) {
		for _, b := range on.Keys.Of(mode) {
			if _, own := on.Keys.Find(on.Own, b.ID); b.ID == keys.Palette || own && mode != on.Own {
				continue // it is open, or stands there already
			}
			if b.Each == nil {
				add(b, allOf)
			}
			for nth := range b.Each {
				add(b, nth)
			}
		}
	}
	l.Choose = func(id string) tea.Cmd {
		if do := does[id]; do != nil {
			return do()
		}
		return nil
	}
	return l
}

// palettes is the modes whose actions a palette lists.
func palettes(own keys.Mode) []keys.Mode {
	switch own {
	case keys.Pouring:
		return []keys.Mode{keys.Pouring, keys.Bench}
	case keys.Batching, keys.Stocking:
		return []keys.Mode{own}
	}
	return []keys.Mode{keys.Bench, keys.Pouring, keys.Batching, keys.Stocking}
}
