package cure

import "fmt"

// Reason is why the law gives no answer.
type Reason string

// The reasons.
const (
	TooFew    Reason = "too few weighings"
	NoSpread  Reason = "no spread in time"
	Rising    Reason = "mass is rising"
	Misfit    Reason = "does not follow the drying law"
	Unsettled Reason = "the fit did not settle"
	BadFigure Reason = "a figure that cannot be"
	BadBar    Reason = "a bar that cannot be"
)

// Refusal is why there is no answer, in words for the maker. The program tells one from another by its Reason.
type Refusal struct {
	Reason Reason
	Words  string
}

// Error returns the words.
func (r *Refusal) Error() string { return r.Words }

// Is reports whether another refusal has the same reason, so that errors.Is(err, &Refusal{Reason: Misfit}) tells.
func (r *Refusal) Is(target error) bool {
	other, ok := target.(*Refusal)
	return ok && other.Reason == r.Reason
}

func refuse(why Reason, format string, args ...any) error {
	return &Refusal{why, fmt.Sprintf(format, args...)}
}
