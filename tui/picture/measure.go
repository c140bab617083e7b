package picture

import (
	"math"

	"pourbench/pour/swirl"
)

// countedPerMM is how fine a face is drawn to be counted, pixels per mm; finer detail is missed (see [swirl.Picture.Measure]).
const countedPerMM = 3

// Measure counts the face of a shot's bar, without its icing. It takes a tenth of a second or so.
func Measure(s Shot) (swirl.Measure, error) {
	whole, err := swirl.New(s.Recipe)
	if err != nil {
		return swirl.Measure{}, err
	}
	wide, high := s.Recipe.FaceMM()
	var p swirl.Picture
	s.side(whole, s.at(s.Bar).From).Draft(&p, int(math.Ceil(wide*countedPerMM)), int(math.Ceil(high*countedPerMM)))
	return p.Measure(wide, high, len(s.Recipe.Script.Brief.Shares)), nil
}
