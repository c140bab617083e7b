//go:build !unix && !windows

package disk

import (
	"errors"
	"os"
)

// tryLock is not offered here: one terminal at a time, and what a killed one left is not swept.
func tryLock(*os.File) error { return errors.ErrUnsupported }
