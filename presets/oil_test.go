package presets_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
)

// tableRow is a row of the reference table.
type tableRow struct {
	t    *testing.T
	cell map[string]string
}

func (r tableRow) number(key string) float64 {
	r.t.Helper()
	text := r.cell[key]
	if text == "" {
		return 0
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		r.t.Fatalf("%s, %s: %v", r.cell["key"], key, err)
	}
	return v
}

// working reads a composition such as "c16_0=6.5 c18_1=69", percent.
func (r tableRow) working(text string) (p chem.Profile) {
	r.t.Helper()
	for a := range chem.Acid(chem.AcidCount) {
		_, after, ok := strings.Cut(" "+text, " "+a.Key()+"=")
		if !ok {
			continue
		}
		figure, _, _ := strings.Cut(after, " ")
		v, err := strconv.ParseFloat(figure, 64)
		if err != nil {
			r.t.Fatalf("%s, working_acids: %v", r.cell["key"], err)
		}
		p[a] = v
	}
	return p
}

// oilTable reads testdata/oils.csv, whose columns name their sources.
func oilTable(t *testing.T) []tableRow {
	t.Helper()
	var rows []tableRow
	for _, cell := range table(t, "oils.csv") {
		rows = append(rows, tableRow{t: t, cell: cell})
	}
	return rows
}

func TestOilsAgreeWithTheReferenceTable(t *testing.T) {
	s := shelf(t)
	rows := oilTable(t)
	if len(rows) != len(s.Oils) {
		t.Errorf("%d oils on the shelf, %d in the table", len(s.Oils), len(rows))
	}
	for _, row := range rows {
		id := strings.ReplaceAll(row.cell["key"], "_", "-")
		o, ok := s.Oil(id)
		if !ok {
			t.Errorf("%s is not on the shelf", id)
			continue
		}
		agree(t, row, o)
	}
}

func agree(t *testing.T, row tableRow, o pour.Oil) {
	t.Helper()
	f := o.Fat
	for _, c := range []struct {
		what string
		got  float64
		key  string
	}{
		{"low saponification value", f.SapLow, "sap_koh_min"},
		{"saponification value", f.Sap, "sap_koh_mid"},
		{"high saponification value", f.SapHigh, "sap_koh_max"},
		{"low iodine value", f.IodineLow, "iodine_min"},
		{"high iodine value", f.IodineHigh, "iodine_max"},
		{"unsaponifiable", f.UnsaponifiableGKg, "unsaponifiable_max_g_per_kg"},
		{"density", f.DensityGML, "density_g_ml"},
		{"density temperature", f.DensityC, "density_temp_c"},
	} {
		melted := o.ID == "cocoa-butter" && strings.HasPrefix(c.what, "density") // the table's is the solid
		if want := row.number(c.key); c.got != want && !melted {
			t.Errorf("%s: %s %g, want %g", o.ID, c.what, c.got, want)
		}
	}
	if string(f.Kind) != row.cell["kind"] || o.INCI != row.cell["inci_name"] || o.INCISoap != row.cell["inci_saponified_name"] {
		t.Errorf("%s: %s, %q, %q", o.ID, f.Kind, o.INCI, o.INCISoap)
	}
	if o.SapSource.Confidence != row.cell["sap_confidence"] || o.FattyAcidSource.Confidence != row.cell["fatty_acid_confidence"] {
		t.Errorf("%s: confidence %q and %q", o.ID, o.SapSource.Confidence, o.FattyAcidSource.Confidence)
	}
	var want chem.Profile
	for a := range chem.Acid(chem.AcidCount) {
		want[a] = (row.number(a.Key()+"_min") + row.number(a.Key()+"_max")) / 2
	}
	if working := row.cell["working_acids"]; working != "" {
		want = row.working(working)
	}
	want = want.Normalised()
	for a := range chem.Acid(chem.AcidCount) {
		if math.Abs(f.Profile[a]-want[a]) > 1e-9 {
			t.Errorf("%s: %s %g, want %g", o.ID, a.Key(), f.Profile[a], want[a])
		}
	}
}

func TestProfilesSumToOneExceptWhereNoAcidsFit(t *testing.T) {
	// Wax esters, branched acids and hydrocarbons; resin acids and phenols: no fatty-acid table fits.
	none := []string{"beeswax", "lanolin", "carnauba", "pine-tar"}
	for _, o := range shelf(t).Oils {
		sum := 0.0
		for _, w := range o.Fat.Profile {
			sum += w
		}
		want := 1.0
		if slices.Contains(none, o.ID) {
			want = 0
		}
		if math.Abs(sum-want) > 1e-12 {
			t.Errorf("%s: fatty acids sum to %g, want %g", o.ID, sum, want)
		}
	}
}

func TestCocoaButterHasTheDensityOfTheMelt(t *testing.T) {
	o, _ := shelf(t).Oil("cocoa-butter")
	if o.Fat.DensityGML != 0.89 || o.Fat.DensityC != 50 { // from memory; the solid at 25 °C is 0.970
		t.Errorf("cocoa butter %g g/mL at %g °C, want 0.89 at 50", o.Fat.DensityGML, o.Fat.DensityC)
	}
}
