package swirl

import (
	"context"

	"pourbench/pour/script"
)

// PotView is the pot seen from above, ready to be drawn: what lies in it, and how the tool has turned it. It never changes.
type PotView struct {
	stream *stream
	layout layout
	turned bool
}

// Pot returns the pot as it is after the acts that are done, or nil where the script pours nothing into a pot or out of it already.
// It has the layout that the stream out of it is drawn from.
func (s *Swirl) Pot() *PotView {
	if s.stream == nil {
		return nil
	}
	p := &PotView{stream: s.stream}
	for _, a := range s.recipe.Script.Acts[:s.acts] {
		switch a.Kind {
		case script.PourOut:
			return nil
		case script.Turn:
			p.turned = true
		}
	}
	own := 0
	if s.recipe.Script.Brief.Shares[0] == 0 {
		own = Empty
	}
	p.layout = s.stream.layout.upto(s.acts, own)
	return p
}

// Label returns the portion at a place of the pot, a disk of radius 1 about (0, 0), or [Empty] outside and where nothing lies yet.
func (p *PotView) Label(u, v float64) int {
	if u*u+v*v > 1 {
		return Empty
	}
	if p.turned {
		u, v = p.stream.untwist(u, v, 0, 0)
	}
	return p.layout.at(u, v)
}

// Draft draws the pot w by h pixels, which it fills from edge to edge, with one sample in each.
func (p *PotView) Draft(dst *Picture, w, h int) {
	dst.Reset(w, h)
	Share(dst.H, func(j int) bool {
		for i := range w {
			if label := p.at(float64(i)+0.5, float64(j)+0.5, w, h); label != Empty {
				dst.Pixels[j*w+i] = Pixel{Portion: [3]uint8{uint8(label)}, Part: [3]uint8{255}}
			}
		}
		return true
	})
}

// Refine draws the pot w by h pixels with smooth edges; only its rim is not. It stops early with ctx's error, leaving dst half drawn.
func (p *PotView) Refine(ctx context.Context, dst *Picture, w, h int) error {
	dst.Reset(w, h)
	Share(dst.H, func(j int) bool {
		for i := range w {
			var t tally
			for k := range patchSamples {
				x, y := float64(i)+(float64(k)+0.5)/patchSamples, float64(j)+(float64(reverse4(k))+0.5)/patchSamples
				if label := p.at(x, y, w, h); label != Empty {
					t.add(uint8(label), 1)
				}
			}
			dst.Pixels[j*w+i] = t.pixel()
		}
		return ctx.Err() == nil
	})
	return ctx.Err()
}

// at gives the portion at (x, y) pixels from the upper left corner of a picture.
func (p *PotView) at(x, y float64, w, h int) int {
	return p.Label(2*x/float64(w)-1, 1-2*y/float64(h))
}
