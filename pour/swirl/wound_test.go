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
