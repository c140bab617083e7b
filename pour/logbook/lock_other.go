//go:build !unix && !windows

package logbook

import "os"

// lock does nothing where the system offers nothing: there, one terminal at a time.
func lock(*os.File) error { return nil }
