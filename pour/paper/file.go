package paper

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"pourbench/pour"
	"pourbench/pour/vector"
)

// For is what writes a paper of text into a file of a name: a name that ends in .pdf gets its pages as PDF, on the paper of the plan's units and in
// letters as large as the page allows; any other gets the text as it is.
func For(path, title, text string, show pour.Show) (func(io.Writer) error, error) {
	if !strings.EqualFold(filepath.Ext(path), ".pdf") {
		return func(w io.Writer) error { _, err := io.WriteString(w, text); return err }, nil
	}
	pdf, err := PDF(title, text, show)
	if err != nil {
		return nil, err
	}
	return func(w io.Writer) error { _, err := w.Write(pdf); return err }, nil
}

// PDF is a paper of text as the pages of a PDF.
func PDF(title, text string, show pour.Show) ([]byte, error) {
	on, err := vector.PaperOf(show.Paper())
	if err != nil {
		return nil, fmt.Errorf("print %s %w", title, err)
	}
	out, err := vector.PDF(title, vector.Typed(text, on))
	if err != nil {
		return nil, fmt.Errorf("print %s as PDF: %w", title, err)
	}
	return out, nil
}
