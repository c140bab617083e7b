package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// A ball of 10.16 mm (0.4 in) is 4/3·π·5.08³ = 549.1 mm³, of soap 0.58 g. Of 0.1 oz, 2.83 g, it would be 5.16 g/mL: no soap, whatever is in it. One of
// 24 mm is 7.24 mL: 200 g is 27.6 g/mL, 7.1 oz typed where grams were meant.
func TestAPieceTooHeavyOrTooLightForSoapIsSaidWithTheLikelySlip(t *testing.T) {
	p, shelf := ninth(t)
	for _, c := range []struct {
		name string
		e    pour.Embed
		says []string // none: nothing is said
		do   string
	}{
		{"0.1 oz", pour.Embed{LengthMM: 10.16, G: 2.834952}, []string{"2.8 g in a piece of 0.55 mL", "5.16 g/mL", "soap has 0.7 to 1.3"}, "look at the unit of its weight"},
		{"grams as ounces", pour.Embed{LengthMM: 24, G: 7 * 28.349523}, []string{"27.4"}, "meant in grams and typed in ounces"},
		{"ounces as grams", pour.Embed{LengthMM: 24, G: 0.26}, []string{"0.04 g/mL"}, "meant in ounces and typed in grams"},
		{"all ten at once", pour.Embed{LengthMM: 24, G: 10 * 7}, []string{"9.67 g/mL"}, "all 10 pieces"},
		{"a radius", pour.Embed{LengthMM: 12, G: 6}, []string{"6.63 g/mL"}, "a radius in place of a diameter"},
		{"of its size", pour.Embed{LengthMM: 24, G: 7.6}, nil, ""},
		{"from its size", pour.Embed{LengthMM: 24}, nil, ""},
		{"whipped", pour.Embed{LengthMM: 24, G: 5.2}, nil, ""},
		{"a density of 3", pour.Embed{LengthMM: 24, DensityGML: 3}, []string{"3.00 g/mL"}, "density_g_ml"},
		{"a bead of glass", pour.Embed{LengthMM: 24, G: 18, Material: pour.EmbedOther}, nil, ""},
		{"a dried bud", pour.Embed{LengthMM: 24, G: 0.5, Material: pour.EmbedDried}, nil, ""},
		{"a dried stone", pour.Embed{LengthMM: 24, G: 18, Material: pour.EmbedDried}, []string{"a dried piece has at most 1.6"}, ""},
	} {
		c.e.Name, c.e.Outline = "moon", pour.OutlineBall
		p.Top.Embeds = []pour.Embed{c.e}
		w, said := found(pour.Weigh(p, shelf), "embed-weight")
		if said != (c.says != nil) {
			t.Errorf("%s: said is %v: %q", c.name, said, w.Text)
			continue
		}
		for _, want := range c.says {
			if !strings.Contains(w.Text, want) {
				t.Errorf("%s: it says %q, not %q", c.name, w.Text, want)
			}
		}
		if !strings.Contains(w.Do, c.do) || said && !strings.Contains(w.Do, "of this size weighs about") {
			t.Errorf("%s: what to do is %q", c.name, w.Do)
		}
	}
}

// A piece that stands wholly out of the base, on a rosette, is no piece on bare base that nothing holds: the icing does. Beside its rosettes it stays one.
func TestAPieceOnARosetteIsHeldByTheIcing(t *testing.T) {
	p, shelf := hanger(t)
	p.Piping, p.Icing.Size = rosette(), pour.SizeShape
	p.Piping.PerBar, p.Piping.LeastG, p.Piping.BagG, p.Piping.ResiduePercent = 1, 200, 250, 7
	for _, c := range []struct {
		across float64
		says   string
	}{{0, "sits on the icing"}, {25, "only 0.0 mm of its 10.0 mm are buried"}} {
		p.Top.Embeds = []pour.Embed{{Name: "moon", Outline: pour.OutlineBall, LengthMM: 10, OutMM: 10, AcrossMM: c.across}}
		s := pour.Weigh(p, shelf)
		w, ok := found(s, "embed-high")
		if !ok || !strings.Contains(w.Text, c.says) || c.across == 0 && strings.Contains(w.Text, "buried") {
			t.Errorf("%v mm off: %q", c.across, w.Text)
		}
		if _, iced := found(s, "embed-iced"); iced {
			t.Errorf("%v mm off: the icing is said to cover it", c.across)
		}
	}
}
