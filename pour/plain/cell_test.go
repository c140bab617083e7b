package plain_test

import (
	"testing"

	"pourbench/pour/plain"
)

func TestACellRunsNothing(t *testing.T) {
	for in, want := range map[string]string{"": "", "olive": "olive", "=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@x": "'@x", "\tx": "'\tx", "\rx": "'\rx", "a=1": "a=1"} {
		if got := plain.Cell(in); got != want {
			t.Errorf("%q is written as %q, want %q", in, got, want)
		}
	}
}
