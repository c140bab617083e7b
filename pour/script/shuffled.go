package script

// Shuffles reports whether the technique brings jugs together that are not poured one after the other: in the pot, into a bed, by the spoon or
// under the comb. There the acts alone say too little of who touches whom; see [Script.Contact].
func (t Technique) Shuffles() bool {
	return t.InPot() || t == Drop || t == Spooned || t == Combed
}
