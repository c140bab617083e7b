package pour

import (
	"fmt"
	"slices"
)

// AddPackaging puts a piece of packaging that is not there yet on every bar; what it is is named after it.
func AddPackaging() Edit {
	return func(p Plan) (Plan, error) {
		of := "box"
		for n := 2; slices.ContainsFunc(p.Cost.Packaging, func(x PackagingPart) bool { return x.Of == of }); n++ {
			of = fmt.Sprintf("box-%d", n)
		}
		p.Cost.Packaging = append(p.Cost.Packaging, PackagingPart{Of: of})
		return p, nil
	}
}

// RemovePackaging takes a piece of packaging off every bar.
func RemovePackaging(i int) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(p.Cost.Packaging, i, "packaging"); err != nil {
			return p, err
		}
		p.Cost.Packaging = slices.Delete(p.Cost.Packaging, i, i+1)
		return p, nil
	}
}
