package main

import (
	"os"
	"strings"
	"testing"

	"pourbench/pour/paper"
	"pourbench/tui/keys"
)

func TestReadmeTablesComeFromTheirOneSource(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	for name, table := range map[string]string{"keys": keys.Markdown(), "codes": paper.CodeTable()} {
		if !strings.Contains(string(text), strings.TrimSpace(table)) {
			t.Errorf("the table of %s in README.md is not what the program prints; paste it in", name)
		}
	}
}
