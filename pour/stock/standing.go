package stock

import (
	"cmp"
	"slices"
)

// Standing returns the entries that count, in the order in which they are laid onto each other: by their days and on one day as in the file, but a
// pack comes before what happens to it, and what was taken for a pack before it was made, in whatever order they were written. An entry counts that
// was neither taken back nor corrected; of all that correct the same one, or what corrects it, the last that was not taken back stands in its place,
// on its day where it names none. Taking a correction back lets what it corrected stand again.
func Standing(entries []Entry) []Entry {
	out, place := counting(entries)
	slices.SortStableFunc(out, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(place[a.ID], place[b.ID]))
	})
	return inOrder(out)
}

// counting gives the entries that count, and of those that correct others the place in the file of what they correct.
func counting(entries []Entry) (out []Entry, place map[string]int) {
	first := chains(entries)
	back := takenBack(entries)
	place, stands := make(map[string]int, len(entries)), map[string]int{}
	for i, e := range entries {
		place[e.ID] = i
		if root, ok := first[e.ID]; ok && !back[e.ID] {
			stands[root] = i // the last of a chain
		}
	}
	out = make([]Entry, 0, len(entries))
	for i, e := range entries {
		if e.Kind == TakenBack || e.Kind == Torn || back[e.ID] {
			continue
		}
		if root, ok := first[e.ID]; ok {
			if stands[root] != i {
				continue
			}
			if at, there := place[root]; there {
				place[e.ID] = min(i, at)
				if e.Day == 0 {
					e.Day = entries[at].Day
				}
			}
		}
		out = append(out, e)
	}
	return out, place
}

// takenBack gives the ids of what does not count because it was taken back. What was taken back by an entry that was taken back itself counts again.
func takenBack(entries []Entry) map[string]bool {
	back := map[string]bool{}
	for _, e := range slices.Backward(entries) {
		if e.Kind == TakenBack && !back[e.ID] {
			back[e.Of] = true
		}
	}
	return back
}

// chains gives for every entry that corrects another or is corrected the id of what its chain began with. Ones that correct each other in a ring,
// which no program writes, begin with the smallest of their ids.
func chains(entries []Entry) map[string]string {
	corrects := map[string]string{}
	for _, e := range entries {
		if e.Corrects != "" {
			corrects[e.ID] = e.Corrects
		}
	}
	first := make(map[string]string, 2*len(corrects))
	for id := range corrects {
		root, seen := id, map[string]bool{}
		for corrects[root] != "" && !seen[root] {
			seen[root] = true
			root = corrects[root]
		}
		if corrects[root] != "" { // a ring
			for at := corrects[root]; at != root; at = corrects[at] {
				seen[at] = true
			}
			for at := range seen {
				root = min(root, at)
			}
		}
		first[id], first[root] = root, root
	}
	return first
}

// inOrder lets a pack come before what happens to it, and what was taken for a pack before it is made.
func inOrder(entries []Entry) []Entry {
	o := order{entries: entries, comes: map[string]int{}, into: map[string][]int{}, seen: make([]bool, len(entries)), out: make([]Entry, 0, len(entries))}
	for i, e := range entries {
		if _, twice := o.comes[e.Pack]; e.Kind.comes() && !twice {
			o.comes[e.Pack] = i
		}
	}
	for i, e := range entries {
		if at, made := o.comes[e.For]; made && e.Kind == Taken && e.For != e.Pack && entries[at].Kind == Made {
			o.into[e.For] = append(o.into[e.For], i)
		}
	}
	for i := range entries {
		o.visit(i)
	}
	return o.out
}

type order struct {
	entries []Entry
	comes   map[string]int   // of a pack, the entry with which it came
	into    map[string][]int // of a made pack, the entries that took something for it
	seen    []bool
	out     []Entry
}

// visit puts out an entry after all that has to stand before it. Packs that were made of each other, which cannot be, end where they began.
func (o *order) visit(i int) {
	if o.seen[i] {
		return
	}
	o.seen[i] = true
	e := o.entries[i]
	if at, ok := o.comes[e.Pack]; ok && !e.Kind.comes() {
		o.visit(at)
	}
	if e.Kind == Made {
		for _, at := range o.into[e.Pack] {
			o.visit(at)
		}
	}
	o.out = append(o.out, e)
}

// comes reports whether a pack comes with an entry of that kind.
func (k Kind) comes() bool { return k == Received || k == Made }
