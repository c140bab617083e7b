package lines

import (
	"strings"
	"testing"
)

func TestLinesComeOneByOneAndTheEndAsOftenAsItIsAskedFor(t *testing.T) {
	in := Open(strings.NewReader("2 16\r\n\n\x1b[Aposh\x07 \xff\n\x1b[A\x1b[B\n" + strings.Repeat("x", 1<<20) + "\n" + strings.Repeat("y", longest-1) + "\nlast"))
	defer in.Close()
	for i, want := range []Event{{Text: "2 16"}, {}, {Text: "posh"}, {Text: noAnswer}, {Long: true}, {Text: strings.Repeat("y", longest-1)}, {Text: "last"}, {End: true}, {End: true}} {
		got := <-in.Events
		if want.Long {
			got.Text = ""
		}
		if got != want {
			t.Errorf("event %d is %.40q %+v, want %.40q", i, got.Text, got.End, want.Text)
		}
	}
}
