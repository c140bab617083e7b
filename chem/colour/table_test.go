package colour

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// readTable reads a reference table without its heading: words columns first, numbers after.
func readTable(t *testing.T, name string, words int) (labels []string, numbers [][]float64) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "colour", name))
	if err != nil {
		t.Fatal(err)
	}
	reader := csv.NewReader(bytes.NewReader(data))
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		labels = append(labels, row[0])
		var line []float64
		for _, cell := range row[words:] {
			v, err := strconv.ParseFloat(cell, 64)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			line = append(line, v)
		}
		numbers = append(numbers, line)
	}
	return labels, numbers
}

func hex(t testing.TB, text string) RGB {
	t.Helper()
	c, err := ParseHex(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func paint(t testing.TB, text string) Paint {
	t.Helper()
	p, err := NewPaint(hex(t, text), 0)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
