//go:build race

package terminal

// raced says that the race detector watches this test.
const raced = true
