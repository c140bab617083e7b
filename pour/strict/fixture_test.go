package strict

import (
	"errors"
	"testing"
)

// recipe is a made-up kind of file.
func recipe() Form {
	return Form{
		Noun: "recipe", Bytes: 4096, Items: 5, Letters: 12, Long: "the rest goes into notes", Again: "begin again",
		Home: func(key string) []string {
			if key == "heat" {
				return []string{"under [oven]", "under [hob]"}
			}
			return nil
		},
	}
}

func open(t testing.TB, src string) *File {
	t.Helper()
	f, err := recipe().Open("r.toml", src)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// faultsIn are what reading a text finds wrong.
func faultsIn(t testing.TB, src string, read func(*Table)) []Fault {
	t.Helper()
	f := open(t, src)
	read(f.Top())
	err := f.Err()
	if err == nil {
		return nil
	}
	var e *Error
	if !errors.As(err, &e) {
		t.Fatalf("%T is no error of ours", err)
	}
	return e.Faults
}
