package swirl

import (
	"testing"

	"pourbench/pour/script"
)

// What winds up drifts along the loaf as far as the walls leave room: further, a wall would hold it with a jerk.
func TestWhatWindsUpIsNotHeldByAWall(t *testing.T) {
	for _, technique := range []script.Technique{script.HangerLoops, script.HangerSpiral} {
		for seed := range int64(4) {
			for _, o := range mustPour(t, loaf(technique, seed)).ops {
				if w := o.whirl; w != nil && (w.shift.amp[0]+w.shift.amp[1] > w.room.y+1e-9 || w.sink.amp[0]+w.sink.amp[1] > w.room.z+1e-9) {
					t.Errorf("%s, seed %d: it drifts by %v and %v, with room for %v", technique, seed, w.shift.amp, w.sink.amp, w.room)
				}
			}
		}
	}
}

// A round that is wider at one place along the loaf is as much lower there, and it stays within the walls wherever its middle goes.
func TestARoundThatIsWiderIsLowerAndStaysWithinTheWalls(t *testing.T) {
	w := whirl{centre: vec2{40, 30}, half: vec2{20, 20}, room: vec2{20, 10}, angle: 1, rim: 0.4, oval: wobble{mean: 1.25}}
	if at := w.at(9); !near(1/at.invY, 25, 1e-9) || !near(1/at.invZ, 16, 1e-9) {
		t.Errorf("a quarter wider it reaches %.2f mm across and %.2f up", 1/at.invY, 1/at.invZ)
	}
	w.oval.mean, w.shift.mean = 0.5, 18
	if at := w.at(9); !near(1/at.invY, 10, 1e-9) || !near(1/at.invZ, 30, 1e-9) {
		t.Errorf("half as wide it reaches %.2f mm across and %.2f up, where 30 mm over it is the surface", 1/at.invY, 1/at.invZ)
	}
	w.oval.mean = 1.5
	if at := w.at(9); !near(at.cy+1/at.invY, 80, 1e-9) {
		t.Errorf("it reaches to %.2f mm, the wall is at 80", at.cy+1/at.invY)
	}
}

// Knocked on the table a spiral slumps less than half as far as other batter, so that its arms stay round.
func TestASpiralHoldsWhenItIsKnocked(t *testing.T) {
	for technique, want := range map[script.Technique]float64{script.Hanger: 1, script.HangerLoops: 1, script.HangerSpiral: 0.45} {
		if got := newBuilder(poured(technique, 1)).knocked(); got != want {
			t.Errorf("%s: it slumps %g times as far, want %g", technique, got, want)
		}
	}
}
