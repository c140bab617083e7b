package presets_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"testing"
)

// table reads a reference table of testdata: its rows by their columns.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	text, err := os.ReadFile("../testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, key := range lines[0] {
			row[key] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}
