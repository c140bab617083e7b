package calendar

// Text is the register as it stands in its file, for tests.
func (r Register) Text() string { return r.text() }

// Parse reads a register, for tests.
func Parse(file, src string) (Register, error) { return parse(file, src) }
