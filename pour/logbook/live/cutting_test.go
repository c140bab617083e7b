package live

import (
	"testing"

	"pourbench/pour"
)

func TestAPieceIsAsMuchTooHeavyAsItWeighsMore(t *testing.T) {
	planned := pour.Piece{PlannedG: pour.Know(117)}
	if off := (Mass{Piece: planned, TrueG: pour.Know(119.5)}).OffG(); !off.Known || off.V != 2.5 {
		t.Errorf("119.5 g where 117 g are planned is off by %+v", off)
	}
	for _, m := range []Mass{{Piece: planned}, {TrueG: pour.Know(119.5)}} {
		if off := m.OffG(); off.Known {
			t.Errorf("%+v is off by %g", m, off.V)
		}
	}
}
