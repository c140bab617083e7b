//go:build !linux && !darwin && !windows

package disk

import "errors"

// move is not offered here.
func move(string, string) error { return errors.ErrUnsupported }
