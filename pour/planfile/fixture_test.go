package planfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"pourbench/pour"
	"pourbench/presets"
)

// plans is the folder of plans that packages share.
const plans = "../../testdata/plans"

func shelf(t testing.TB) pour.Shelf {
	t.Helper()
	s, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func planText(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(plans, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func mustRead(t testing.TB, text string) pour.Plan {
	t.Helper()
	p, err := Read("plan.toml", strings.NewReader(text), shelf(t))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return p
}

func mustEncode(t testing.TB, p pour.Plan) string {
	t.Helper()
	var text strings.Builder
	if err := Write(&text, p); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

// difference compares plans exactly; an empty list and none are the same.
func difference(a, b pour.Plan) string { return cmp.Diff(a, b, cmpopts.EquateEmpty()) }

// goodPlans are the names of all shared plans that load.
func goodPlans() []string { return []string{"smallest.toml", "meadow.toml", "everykey.toml"} }
