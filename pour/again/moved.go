package again

import (
	"slices"
	"strconv"
	"strings"

	"pourbench/pour"
)

// On sets facts of a pour beside the figures of a sheet of today: by the paths that those have there now. Items of lists are told apart by what they
// are, not by their places: a jug that was moved keeps what happened to it, one that is gone takes it along.
func On(facts []Fact, past, now *pour.Sheet) map[string][]Fact {
	out := map[string][]Fact{}
	for _, f := range facts {
		for _, path := range append([]string{f.Path}, f.Also...) {
			if at, ok := moved(path, past, now); ok && at != "" {
				out[at] = append(out[at], f)
			}
		}
	}
	return out
}

// moved is the path in one sheet of what has a path in another.
func moved(path string, from, to *pour.Sheet) (string, bool) {
	was, now := "", ""
	for {
		list, rest, more := strings.Cut(path, "[")
		was, now = was+list, now+list
		if !more {
			return now, true
		}
		digits, after, _ := strings.Cut(rest, "]")
		i, err := strconv.Atoi(digits)
		if err != nil {
			return "", false
		}
		k := i
		if old, named := names(from, was); named {
			here, _ := names(to, now)
			if i >= len(old) {
				return "", false
			}
			if k = slices.Index(here, old[i]); k < 0 {
				return "", false
			}
		}
		was, now = was+"["+digits+"]", now+"["+strconv.Itoa(k)+"]"
		path = after
	}
}

// names are what the items of a list of a sheet, or of its plan, are told apart by. The path is that of the list, its earlier indices written. A list
// whose items have nothing but their place has no names.
func names(s *pour.Sheet, path string) (list []string, ok bool) {
	switch path {
	case "run":
		return each(s.Run, func(t pour.Task) string { return t.Key }), true
	case "cut_run":
		return each(s.CutRun, func(t pour.Task) string { return t.Key }), true
	case "totals":
		return each(s.Totals, func(w pour.Weighing) string { return w.Kind + " " + w.Name }), true
	case "cut.trims":
		return each(s.Cut.Trims(), func(x pour.CutTrim) string { return x.End }), true
	case "toppings":
		return each(s.Toppings, func(l pour.ToppingLine) string { return l.Name }), true
	case "embed_kinds":
		return each(s.Embeds, func(k pour.EmbedSheet) string { return k.Name }), true
	case "orders":
		return each(s.Mingling.Orders, func(o pour.Order) string { return o.Kind }), true
	case "neighbours":
		return each(s.Mingling.Pairs, func(p pour.Pair) string {
			return strings.Join(slices.Sorted(slices.Values([]string{s.Base.Jugs[p.A].Name, s.Base.Jugs[p.B].Name})), " and ")
		}), true
	}
	n, in, ofBatch := strings.Cut(path, ".")
	b, plan := s.Batch(pour.BatchName(n)), s.Plan.Batch(pour.BatchName(n))
	if !ofBatch || n != string(pour.Base) && n != string(pour.Icing) || b == nil || plan == nil {
		return nil, n == string(pour.Icing) && ofBatch
	}
	jug := func() *pour.JugSheet {
		digits, _, _ := strings.Cut(in[strings.IndexByte(in, '[')+1:], "]")
		if i, err := strconv.Atoi(digits); err == nil && i < len(b.Jugs) {
			return &b.Jugs[i]
		}
		return &pour.JugSheet{}
	}
	switch {
	case in == "jugs" || in == "jug":
		return each(plan.Jugs, func(j pour.Jug) string { return j.Name }), true
	case in == "oils" || in == "oil":
		return each(plan.Oils, func(o pour.OilPart) string { return o.Oil }), true
	case in == "extras" || in == "extra":
		return each(plan.Extras, func(x pour.ExtraPart) string { return x.Extra }), true
	case in == "scents" || in == "scent":
		return each(plan.Scents, func(x pour.ScentPart) string { return x.Scent }), true
	case strings.HasSuffix(in, "].colourants") || strings.HasSuffix(in, "].colourant"):
		return each(jug().Colourants, func(d pour.DoseLine) string { return d.ID }), true
	case strings.HasSuffix(in, "].scents"):
		return each(jug().Scents, func(x pour.ScentGrams) string { return x.ID }), true
	}
	return nil, false
}

// each names every item of a list; of several of one name the later ones by their number too.
func each[T any](list []T, name func(T) string) []string {
	out, seen := make([]string, len(list)), map[string]int{}
	for i, x := range list {
		out[i] = name(x)
		seen[name(x)]++
		if n := seen[name(x)]; n > 1 {
			out[i] += " (" + strconv.Itoa(n) + ")"
		}
	}
	return out
}
