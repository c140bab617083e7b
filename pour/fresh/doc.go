// Package fresh makes a new plan of a few wishes: a mould, a technique, colours, scents, an icing or none. What was not wished for is an
// everyday choice; what can be tried is tried: which jug a scent harms least, which order makes least mud, how the batter comes to the
// trace the technique wants. It works sheets out and reads them; no figure is made here.
package fresh
