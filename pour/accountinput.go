package pour

import (
	"strconv"
	"strings"
)

// fig is another figure of the sheet as an input: its name, number and path come from its own row. Its pattern's indices are filled in order.
func (t teller) fig(pattern string, ix ...int) Term {
	for _, row := range t.rows {
		if row.pattern != pattern {
			continue
		}
		at := t
		at.ix = ix
		path := pattern
		if rest, ok := strings.CutPrefix(pattern, "batch."); ok {
			path = string(t.b.Name) + "." + rest
		}
		for _, i := range ix {
			path = strings.Replace(path, "[]", "["+decimal(i)+"]", 1)
		}
		return leaf(Input{Name: at.label(row), V: row.value(at).orUnknown(), Unit: row.unit, From: "worked out", Figure: path})
	}
	return leaf(Input{Name: pattern, V: Unknown(), From: "missing from the table of figures"}) // a test walks every account
}

// own is a number of the batch in the plan, by its key; whole is one of the whole plan.
func (t teller) own(key string) Term { return t.whole(string(t.b.Name) + "." + key) }

func (t teller) whole(path string) Term {
	v, f, _ := Number(t.sheet.Plan, path)
	return leaf(Input{Name: f.Label, V: v, Unit: f.Unit, From: "your plan, " + path})
}

// listed is a number of the plan that stands in a list, by its name and its place.
func (t teller) listed(name, path string, v float64, u Unit) Term {
	return leaf(Input{Name: name, V: v, Unit: u, From: "your plan, " + string(t.b.Name) + "." + path})
}

// shelved is what the shelf says of a substance.
func (t teller) shelved(name string, v float64, u Unit, src Source) Term {
	return leaf(Input{Name: name, V: v, Unit: u, From: "the shelf", Source: src})
}

// known is a number with the reason why it is so.
func (t teller) known(name string, v float64, u Unit, from string) Term {
	return leaf(Input{Name: name, V: v, Unit: u, From: from})
}

// law is a constant of nature or of the model with its source.
func (t teller) law(name string, v float64, u Unit, text, confidence string) Term {
	return leaf(Input{Name: name, V: v, Unit: u, From: "a constant", Source: Source{Text: text, Confidence: confidence}})
}

// sumOver adds up a term for each of n things.
func sumOver(n int, of func(i int) Term) Term {
	all := make([]Term, n)
	for i := range all {
		all[i] = of(i)
	}
	return sum(all...)
}

// scaleStep and lyeStep are the steps of the two scales.
func (t teller) scaleStep() Term { return t.whole("show.scale_step_g") }
func (t teller) lyeStep() Term   { return t.whole("show.lye_step_g") }

// decimal writes a place in a list.
func decimal(i int) string { return strconv.Itoa(i) }
