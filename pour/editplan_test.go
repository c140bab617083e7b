package pour

import (
	"strings"
	"testing"
	"time"
)

func TestEditsOfThePlanReachTheirPlaceAndLeaveTheOriginalAlone(t *testing.T) {
	p := Plan{Base: Batch{Jugs: []Jug{{Name: "pot", Colourants: []Dose{{Colourant: "x"}}}}, Extras: []ExtraPart{{Extra: "salt"}}}}
	at := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	next := p.Clone()
	for _, e := range []Edit{
		SetPourAt(at), SetCarrier(Base, 0, 0, CarryWater), SetExtraIn(Base, 0, InLye), SetCarrierOil(Base, "olive"), SetReadyBlend(Base, "house blend"),
	} {
		var err error
		if next, err = e(next.Clone()); err != nil {
			t.Fatal(err)
		}
	}
	b := next.Base
	if !next.PourAt.Equal(at) || b.Jugs[0].Colourants[0].Carrier != CarryWater || b.Extras[0].In != InLye || b.CarrierOil != "olive" || b.ReadyBlend != "house blend" {
		t.Errorf("the edits gave %+v", next)
	}
	if p.Base.Jugs[0].Colourants[0].Carrier != "" || p.Base.Extras[0].In != "" {
		t.Error("an edit changed the plan it was made on")
	}
}

func TestEditsOfWhatIsNotThereAreRefused(t *testing.T) {
	p := Plan{Base: Batch{Jugs: []Jug{{Name: "pot"}}}}
	for name, e := range map[string]Edit{
		"carrier": SetCarrier(Base, 0, 0, CarryOil), "extra": SetExtraIn(Base, 0, InOils), "icing": SetCarrierOil(Icing, "olive"),
		"blend name": SetReadyBlend(Base, strings.Repeat("x", 41)),
	} {
		if _, err := e(p.Clone()); err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}
