package swirl

import (
	"context"
	"image/png"
	"io"
	"testing"

	"pourbench/pour/script"
)

// large are the techniques of which large pictures are timed: all, or one where time is short.
func large() []script.Technique {
	if testing.Short() {
		return []script.Technique{script.Drop}
	}
	return script.Techniques()
}

func BenchmarkNew(b *testing.B) {
	for _, technique := range script.Techniques() {
		b.Run(string(technique), func(b *testing.B) {
			for b.Loop() {
				mustPour(b, loaf(technique, 1))
			}
		})
	}
}

func BenchmarkDraft(b *testing.B) {
	each(b, script.Techniques(), func(f *Face, p *Picture) { f.Draft(p, 120, 60) })
}

func BenchmarkRefine(b *testing.B) {
	each(b, script.Techniques(), func(f *Face, p *Picture) { _ = f.Refine(context.Background(), p, 120, 60) })
}

func BenchmarkRefine1200(b *testing.B) {
	each(b, script.Techniques(), func(f *Face, p *Picture) { _ = f.Refine(context.Background(), p, 1200, 800) })
}

func each(b *testing.B, of []script.Technique, draw func(f *Face, p *Picture)) {
	for _, technique := range of {
		b.Run(string(technique), func(b *testing.B) {
			f := mustPour(b, loaf(technique, 1)).Face(87)
			var p Picture
			draw(f, &p)
			b.ReportAllocs()
			for b.Loop() {
				draw(f, &p)
			}
		})
	}
}

func BenchmarkTenFaces(b *testing.B) {
	for _, technique := range script.Techniques() {
		b.Run(string(technique), func(b *testing.B) {
			var p Picture
			for b.Loop() {
				s := mustPour(b, loaf(technique, 1))
				for k := range 10 {
					s.Face(25*float64(k)).Draft(&p, 120, 60)
				}
			}
		})
	}
}

// BenchmarkPNG goes all the way from the recipe to a finished file.
func BenchmarkPNG(b *testing.B) {
	for _, technique := range large() {
		b.Run(string(technique), func(b *testing.B) {
			for b.Loop() {
				f := mustPour(b, loaf(technique, 1)).Face(87)
				img, err := RenderBar(context.Background(), f, 25, palette(), Topping{}, 15, Soap())
				if err != nil {
					b.Fatal(err)
				}
				fast := png.Encoder{CompressionLevel: png.BestSpeed}
				if err := fast.Encode(io.Discard, img); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLengthwise(b *testing.B) {
	for _, technique := range large() {
		b.Run(string(technique), func(b *testing.B) {
			cut := mustPour(b, loaf(technique, 1)).Lengthwise(40)
			var p Picture
			for b.Loop() {
				if err := cut.Refine(context.Background(), &p, 1200, 298); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
