package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/script"
)

// What the hands cannot do is refused with its reason; the key says which task, and by which way it is moved.
func TestTheRunRefusesWhatTheHandsCannotDo(t *testing.T) {
	for _, c := range []struct {
		technique script.Technique
		key       string
		by        int
		change    func(*pour.Plan)
		reason    string // empty: it may be moved
	}{
		{script.Layers, "base put to bed", -1, nil, "put to bed"},
		{script.Layers, "base split", -1, nil, "lye"},
		{script.Layers, "base pour poppy", -1, nil, ""},
		{script.Layers, "base pour poppy", 1, func(p *pour.Plan) { p.Swirl.First = "poppy" }, "pinned"},
		{script.Layers, "base pour poppy", -1, func(p *pour.Plan) { p.Swirl.Last = "poppy" }, "pinned"},
		{script.Hanger, "base draw the wire", -1, nil, "the technique says"},
		{script.Pot, "base turn", 1, nil, "the technique says"},
		{script.Pot, "base pour gentian", 1, nil, ""},
	} {
		p, shelf := paced(t, c.technique)
		p.Swirl.Passes = 1
		if c.change != nil {
			c.change(&p)
		}
		s := pour.Weigh(p, shelf)
		_, err := pour.Apply(p, shelf, pour.MoveTask(s, c.key, c.by))
		if c.reason == "" && err != nil || c.reason != "" && (err == nil || !strings.Contains(err.Error(), c.reason)) {
			t.Errorf("%s, %q by %d: %v, want %q", c.technique, c.key, c.by, err, c.reason)
		}
	}
}

// Whatever order the plan asks for, the pot is coloured and scented before anything is poured into it.
func TestThePotIsReadyBeforeColoursGoIntoIt(t *testing.T) {
	p, shelf := paced(t, script.Pot)
	p.Base.Jugs[0].Colourants = []pour.Dose{{Colourant: "titanium-white-oil", DosePercent: 0.5}}
	s := pour.Weigh(p, shelf)
	var last []string
	for _, key := range taskKeys(s) {
		if key != "base colour pot" {
			last = append(last, key)
		}
	}
	p.Run.Order = append(last, "base colour pot")
	s = pour.Weigh(p, shelf)
	for _, task := range s.Run {
		switch {
		case task.Key == "base colour pot":
			return
		case task.Act != pour.NoAct:
			t.Fatalf("%s comes before the pot is coloured", task.Key)
		}
	}
	t.Fatal("the pot is never coloured")
}

// The icing goes on top of the base, whatever order the plan asks for.
func TestTheIcingIsPipedOntoWhatIsPoured(t *testing.T) {
	p, shelf := paced(t, script.Layers)
	icing := p.Base.Clone()
	icing.Size, icing.PerBarG, icing.Scents, icing.Extras, icing.StartAtMin = pour.SizeBar, 25, nil, nil, -60
	p.Icing = &icing
	var pipes, others []string
	for _, task := range pour.Weigh(p, shelf).Run {
		if task.Kind == pour.TaskPipe {
			pipes = append(pipes, task.Key)
		} else {
			others = append(others, task.Key)
		}
	}
	p.Run.Order = append(pipes, others...)
	piped := false
	for _, task := range pour.Weigh(p, shelf).Run {
		piped = piped || task.Kind == pour.TaskPipe
		if piped && task.Batch == "base" && task.Act != pour.NoAct {
			t.Errorf("%s comes after icing is piped", task.Key)
		}
	}
	if !piped {
		t.Error("nothing is piped")
	}
}
