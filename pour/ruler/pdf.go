package ruler

import (
	"errors"
	"fmt"
	"io"

	"pourbench/pour/vector"
)

// PDF writes the ruler for sheets of paper, at true scale, its letters part of the file.
func (r Ruler) PDF(w io.Writer, p Paper) error {
	sheets := r.sheets(p)
	if len(sheets) == 0 {
		return errors.New("draw the ruler: there is no length to lay it along")
	}
	pages := make([]vector.Drawing, len(sheets))
	for i := range sheets {
		pages[i] = sheets[i].Drawing
	}
	whole, err := vector.PDF(r.title(), pages)
	if err != nil {
		return fmt.Errorf("draw the ruler: %w", err)
	}
	if _, err := w.Write(whole); err != nil {
		return fmt.Errorf("write the ruler: %w", err)
	}
	return nil
}
