package relief

import "sync"

// keptFields is how many fields are kept: those of a loaf and of another it is compared with, each as it stands and as it is seen from above.
const keptFields = 4

// Kept is the fields that were worked out last. Setting every swirl of a top takes longer than a small picture of it, so the pictures of one loaf and
// whoever asks for its height share it, and loaves whose icing is of one form share that. It may be asked from several goroutines at once; the zero Kept holds nothing yet, and a nil one never does.
type Kept struct {
	lock sync.Mutex
	all  []*keptField // the one asked for last is last
}

// keptField is a field that is worked out once, by whoever asks first; others wait for it.
type keptField struct {
	recipe Recipe
	like   *keptField // has icing of the same form; nil: none does
	once   sync.Once
	field  *Field
}

// work works the field out, or waits until that is done.
func (f *keptField) work() *Field {
	f.once.Do(func() {
		if f.like == nil {
			f.field = New(f.recipe)
			return
		}
		f.field = newField(f.recipe, f.like.work().form)
		f.like = nil
	})
	return f.field
}

// formed says whether icing has one form on two loaves: how far it sinks in, which follows the clock at every key, is no part of that, nor what else stands
// there.
func (r *Recipe) formed(o *Recipe) bool {
	a, b := r.Icing, o.Icing
	a.Sinks, a.Spots, b.Sinks, b.Spots = 0, nil, 0, nil
	return r.L == o.L && r.W == o.W && r.H == o.H && r.Seed == o.Seed && a.equal(&b)
}

// Field is a recipe worked out; nil where there is none.
func (k *Kept) Field(r *Recipe) *Field {
	switch {
	case r == nil:
		return nil
	case k == nil:
		return New(*r)
	}
	return k.of(r).work()
}

// of finds or makes the place of a recipe.
func (k *Kept) of(r *Recipe) *keptField {
	k.lock.Lock()
	defer k.lock.Unlock()
	for i, f := range k.all {
		if f.recipe.Equal(r) {
			k.all = append(append(k.all[:i:i], k.all[i+1:]...), f)
			return f
		}
	}
	f := &keptField{recipe: *r}
	for _, o := range k.all {
		if o.recipe.formed(r) {
			f.like = o
			break
		}
	}
	k.all = append(k.all, f)
	if len(k.all) > keptFields {
		k.all = append([]*keptField(nil), k.all[1:]...)
	}
	return f
}
