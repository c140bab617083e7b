package panel

import "testing"

func TestADoseIsShownAsItWasTyped(t *testing.T) {
	f := worked(t, meadow, nil)
	for dose, want := range map[float64]string{0.275: "0.275", 0.28: "0.28", 0.4: "0.40", 10: "10.00", 0: "0.00", 0.005: "0.005"} {
		if got := f.dosed(dose); got != want {
			t.Errorf("%v is shown as %s, want %s", dose, got, want)
		}
	}
}
