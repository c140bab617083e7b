package pour

// Reading is one figure of a sheet as it stands: its path, what it is, and its number, unknown where it is not worked out.
type Reading struct {
	Path  string
	Label string
	Unit  Unit
	Value Figure
}

// Readings lists every figure of the sheet that can be accounted for, in the order of the accounts. A plan with faults has none.
func (s Sheet) Readings() []Reading {
	t := teller{sheet: &s, rows: accountRows()}
	paths := s.Explained()
	out := make([]Reading, 0, len(paths))
	for _, path := range paths {
		if row, at, ok := t.find(path); ok {
			out = append(out, Reading{Path: path, Label: at.label(row), Unit: row.unit, Value: AsFigure(row.value(at).orUnknown())})
		}
	}
	return out
}
