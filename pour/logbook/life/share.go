package life

import (
	"runtime"
	"sync"
)

// share does n things, each once, on every core.
func share(n int, do func(i int)) {
	var group sync.WaitGroup
	workers := min(runtime.GOMAXPROCS(0), n)
	for w := range workers {
		group.Go(func() {
			for i := w; i < n; i += workers {
				do(i)
			}
		})
	}
	group.Wait()
}
