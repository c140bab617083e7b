package pour

import (
	"fmt"
	"time"
)

// SetPourAt says when the base's lye will meet its oils, wall clock at the bench; the zero time: papers carry relative times.
func SetPourAt(at time.Time) Edit {
	return func(p Plan) (Plan, error) { p.PourAt = at; return p, nil }
}

// SetCarrier says what a colourant is wetted with: one of the Carry… words; empty: as the colourant disperses.
func SetCarrier(n BatchName, jug, place int, carrier string) Edit {
	return editDose(n, jug, place, func(d *Dose) { d.Carrier = carrier })
}

// SetCarrierOil names the oil that wets oil-borne colourants by its id; empty: the blend's largest.
func SetCarrierOil(n BatchName, id string) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error { b.CarrierOil = id; return nil })
}

// SetReadyBlend names a ready-mixed oil blend that is weighed as one; empty: oil by oil.
func SetReadyBlend(n BatchName, name string) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if len([]rune(name)) > maxBlendName {
			return fmt.Errorf("name the ready-mixed blend: %d letters are too many to print; keep it under %d", len([]rune(name)), maxBlendName)
		}
		b.ReadyBlend = name
		return nil
	})
}

// maxBlendName is the longest name of a ready-mixed blend that fits a line of the checklist, letters.
const maxBlendName = 40

// SetExtraIn says where an extra goes in: InOils, InLye or InWater; empty: where the shelf says.
func SetExtraIn(n BatchName, extra int, in string) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Extras, extra, "extra"); err != nil {
			return err
		}
		b.Extras[extra].In = in
		return nil
	})
}
