package presets

import (
	"fmt"
	"math"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// mostPart is the letters of the longest name of an ingredient, and of why its share is not sure.
const (
	mostPart  = 120
	mostDoubt = 160
)

// madeOfKeys are the keys of one part of what something is made of.
func madeOfKeys(at string, p pour.Ingredient) []pour.ShelfKey {
	percent := ""
	if p.Name != "" {
		percent = strict.Short(math.Round(1e4*p.Percent) / 1e4)
	}
	return []pour.ShelfKey{
		{Key: at + ".name", Means: "the ingredient, as lists name it", Most: mostPart, Value: p.Name},
		{Key: at + ".percent", Means: "percent of it", Kind: pour.KeyNumber, High: 100, Value: percent, Spare: true},
	}
}

// madeOf reads what something is made of in a list of ingredients, and why its shares are not sure; a maker's list replaces the one that was there.
// whole is what the thing is called.
func (r *row) madeOf(whole string, to *[]pour.Ingredient) {
	const key, doubtKey = "made_of", "made_of_doubt"
	asked := r.ask(key, "list of { name, percent }", "", "what it is in a list of ingredients; shares left out are equal parts of the rest")
	r.is(func(k *pour.ShelfKey) {
		k.Kind, k.Row = pour.KeyRows, madeOfKeys(key, pour.Ingredient{})
		for i, p := range *to {
			k.Parts = append(k.Parts, madeOfKeys(fmt.Sprintf("%s[%d]", key, i), p)...)
		}
	})
	if asked {
		*to = r.parts(key, whole)
	}
	doubt := ""
	for _, p := range *to {
		if doubt == "" {
			doubt = p.Doubt
		}
	}
	r.text(doubtKey, &doubt, mostDoubt, "why its shares are not sure; left out: they are")
	if !r.has(doubtKey) {
		return
	}
	*to = doubted(*to, doubt)
}

// doubted are parts whose shares are not sure for that reason.
func doubted(of []pour.Ingredient, why string) []pour.Ingredient {
	out := append([]pour.Ingredient(nil), of...)
	for i := range out {
		out[i].Doubt = why
	}
	return out
}

// parts reads the parts of something, which sum to 100 afterwards.
func (r *row) parts(key, whole string) []pour.Ingredient {
	list := r.in.List(key)
	out := make([]pour.Ingredient, len(list))
	sum, open := 0.0, 0
	for i, in := range list {
		in.Only("name", "percent")
		in.Line("name", &out[i].Name, mostPart)
		if out[i].Name == "" {
			in.Say("", "", fmt.Sprintf("number %d lacks its name", i+1), "write the ingredient as lists name it")
		}
		in.Within("percent", &out[i].Percent, 0, 100)
		if sum += out[i].Percent; !in.Has("percent") {
			open++
		}
	}
	if open > 0 && sum >= 100 || open == 0 && sum == 0 && len(out) > 0 {
		r.fault(key, "", fmt.Sprintf("the parts sum to %.4g %%, %d of them without a share", sum, open), "write each as percent of the whole, together 100")
		return nil
	}
	share(out, list, whole, sum, open)
	return out
}

// nearWhole is how far parts may be from 100, percent, without anybody having to be told: they are rounded where they are written.
const nearWhole = 0.5

// share gives parts without a share an equal part of the rest, scales all to sum to 100, and says where that makes them unsure.
func share(of []pour.Ingredient, list []*strict.Table, whole string, sum float64, open int) {
	doubt := ""
	switch {
	case open > 1:
		doubt = "how much of each part " + whole + " holds is not stated: taken as equal"
	case open == 0 && math.Abs(sum-100) > nearWhole:
		doubt = fmt.Sprintf("the parts of %s sum to %s %%: taken in proportion", whole, strict.Short(sum))
	}
	for i := range of {
		switch {
		case !list[i].Has("percent"):
			of[i].Percent = (100 - sum) / float64(open)
		case open == 0:
			of[i].Percent *= 100 / sum
		}
		of[i].Doubt = doubt
	}
}
