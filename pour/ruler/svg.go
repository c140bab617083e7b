package ruler

import (
	"errors"
	"fmt"
	"io"

	"pourbench/pour/vector"
)

// SVG writes the ruler in one piece, however long the mould: its numbers are mm, x being the distance from end A, so that a plotter, a laser or
// a roll printer takes it as it is. For sheets of paper there is the PDF.
func (r Ruler) SVG(w io.Writer) error {
	if len(r.Edges) == 0 {
		return errors.New("draw the ruler: there is no length to lay it along")
	}
	d := r.whole()
	text, err := vector.SVG(r.title(), &d.Drawing, nil)
	if err != nil {
		return fmt.Errorf("draw the ruler: %w", err)
	}
	if _, err := io.WriteString(w, text); err != nil {
		return fmt.Errorf("write the ruler: %w", err)
	}
	return nil
}
