package label_test

import (
	"testing"

	"pourbench/pour/label"
)

// Numbers of general references (water, ethanol, caffeine, linalool, limonene), and such with a digit changed or two exchanged.
func TestCheckDigitsOfCASNumbers(t *testing.T) {
	for number, want := range map[string]bool{
		"7732-18-5": true, "64-17-5": true, "58-08-2": true, "78-70-6": true, "5989-27-5": true, "1234567-89-5": true,
		"7732-18-6": false, "7723-18-5": false, "64-71-5": false, "58-08-22": false, "8-08-2": false, "12345678-08-2": false, "58-082": false, "58-0-2": false,
		"": false, "a8-08-2": false, "58-08-x": false, " 58-08-2": false, "5a-08-2": false, "--": false,
	} {
		if got := label.CheckCAS(number); got != want {
			t.Errorf("%q: %v", number, got)
		}
	}
}

func TestAStatementsWordsFindTheirRow(t *testing.T) {
	list := someAllergens()
	for _, c := range []struct {
		part label.Part
		want []string
	}{
		{label.Part{Name: "anything", CAS: "78-70-6"}, []string{"Linalool"}},
		{label.Part{Name: "Coumarin", CAS: "78-70-6"}, []string{"Linalool"}}, // the number goes before the name
		{label.Part{Name: "citral", CAS: "5392-40-5 / 141-27-5"}, []string{"Citral"}},
		{label.Part{Name: "x", CAS: "CAS 106-26-3."}, []string{"Citral"}},
		{label.Part{Name: "α-Pinene"}, []string{"Pinene"}},
		{label.Part{Name: " BETA-pinene "}, []string{"Pinene"}},
		{label.Part{Name: "linalyl   acetate"}, []string{"Linalyl Acetate"}},
		{label.Part{Name: "Linalool", CAS: "999-99-9"}, []string{"Linalool"}},
		{label.Part{Name: "flower", CAS: "8028-48-6"}, []string{"Citrus Aurantium Flower Oil", "Citrus Aurantium Peel Oil"}},
		{label.Part{Name: "Citrus Aurantium Peel Oil", CAS: "8028-48-6"}, []string{"Citrus Aurantium Peel Oil"}}, // the statement says which
		{label.Part{Name: "Linalool", CAS: "8028-48-6"}, []string{"Citrus Aurantium Flower Oil", "Citrus Aurantium Peel Oil"}},
		{label.Part{CAS: "78-70-6, 91-64-5"}, []string{"Linalool", "Coumarin"}},
		{label.Part{Name: "Hedione"}, nil},
		{label.Part{}, nil},
		{label.Part{Name: "  "}, nil},
	} {
		rows := label.Match(c.part, list)
		same := len(rows) == len(c.want)
		for i := 0; same && i < len(rows); i++ {
			same = list[rows[i]].Name == c.want[i]
		}
		if !same {
			t.Errorf("%+v is row %v, want %v", c.part, rows, c.want)
		}
	}
	twice := []label.Allergen{{Name: "A", Covers: []string{"Balm"}}, {Name: "B", Covers: []string{"balm"}}, {Name: "Balm"}}
	if rows := label.Match(label.Part{Name: "Balm"}, twice); len(rows) != 2 {
		t.Errorf("what two rows cover is row %v", rows)
	}
}
