package tui

import "testing"

// What is on the loaf is built beside the keyboard: a key waits for none of it, and what comes back late is dropped.
func TestTheHeightOfTheIcingIsFoundBesideTheKeyboard(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.studio.peak.mm
	if before <= 0 || m.studio.peak.mm != m.studio.design.Topping().PeakMM() {
		t.Fatalf("the icing of the example is %v mm high", before)
	}
	m.studio.peak.raise(m.studio.design.Stands)
	early := m.studio.peak.climb()
	m.studio.peak.raise(nil)
	late := m.studio.peak.climb()
	if early == nil || late == nil || m.studio.peak.climb() != nil {
		t.Fatal("a height that is due is not found, or one that is not due is")
	}
	if m.studio.peak.mm != before {
		t.Error("the height changed before it was found")
	}
	finish(m, late)
	if m.studio.peak.mm != 0 {
		t.Errorf("without an icing it is %v mm high", m.studio.peak.mm)
	}
	finish(m, early)
	if m.studio.peak.mm != 0 {
		t.Error("the height of an icing that is gone came back")
	}
}
