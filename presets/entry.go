package presets

import "pourbench/pour"

// Entry tells every key of an entry on a shelf as its table in the shelf file has them, with what stands there now; of a blank entry where
// the id is empty. It is nil where the shelf has no such table or entry.
func Entry(base pour.Shelf, of pour.EntryName) []pour.ShelfKey {
	for _, t := range (&shelf{Shelf: base}).tables() {
		if t.name != of.Table {
			continue
		}
		told, ok := t.tell(of.ID)
		if !ok {
			return nil
		}
		out := make([]pour.ShelfKey, len(told))
		for i, k := range told {
			out[i] = k.is
		}
		return out
	}
	return nil
}
