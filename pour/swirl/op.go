package swirl

// op is one step of the pour: exactly one of its pointers is set.
type op struct {
	name   Step
	slab   *slab
	stroke *stroke
	wave   *wave
	comb   *comb
}

type vec3 struct{ x, y, z float64 }

// slab is batter levelled from one height to the next; what it is made of is its filling.
type slab struct {
	bottom, top float64
	fill        filling
}

// filling splits a slab between portions exactly by their shares.
type filling interface {
	label(x, y, z float64) int
}

// backwards undoes a move at one point; a slab leaves the point where it is.
func (o op) backwards(p vec3) vec3 { return o.move(p, -1) }

// forwards repeats a move at one point.
func (o op) forwards(p vec3) vec3 { return o.move(p, 1) }

func (o op) move(p vec3, dir float64) vec3 {
	switch {
	case o.stroke != nil:
		p.y, p.z = o.stroke.move(p.x, p.y, p.z, dir)
	case o.wave != nil:
		p.y, p.z = o.wave.move(p.x, p.y, p.z, dir)
	case o.comb != nil:
		p.x, p.y = o.comb.move(p.x, p.y, p.z, dir)
	}
	return p
}

// Verb says what happens in a step of the pour.
type Verb string

// The verbs of a pour.
const (
	Pours  Verb = "pour"   // a portion is poured
	Plunge Verb = "plunge" // the falling batter carries down what lies below it
	Settle Verb = "settle" // the batter slumps and finds its level
	Draw   Verb = "draw"   // a tool is drawn through
	Heap   Verb = "heap"   // dollops from several jugs
)

// Step is one step of the pour as a maker would tell it.
type Step struct {
	Verb    Verb
	Portion int     // portion poured, or -1 when it is none or several
	LevelMM float64 // how high the batter stands after it
	Text    string  // the step in words, without the portion's name
}

// Steps returns the steps of the pour in order; [Swirl.Upto] takes how many of them are done.
func (s *Swirl) Steps() []Step {
	steps := make([]Step, len(s.ops))
	for i := range s.ops {
		steps[i] = s.ops[i].name
	}
	return steps
}
