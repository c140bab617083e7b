package batches

import (
	"errors"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"

	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi/kitty"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/pixels"
)

// drawnFile writes a picture.
func drawnFile(t testing.TB, path string, w, h int) {
	t.Helper()
	must(t, os.MkdirAll(filepath.Dir(path), 0o700))
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range w * h {
		img.Set(i%w, i/w, color.RGBA{uint8(i), 80, 200, 255})
	}
	f, err := os.Create(path)
	must(t, err)
	must(t, png.Encode(f, img))
	must(t, f.Close())
}

// pictured is a page with a batch that has a picture at a path, in a folder of its own; opened is what the system was asked to open.
func pictured(t testing.TB, path string) (s *shop, folder string, opened *[]string) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), "pours")
	must(t, os.MkdirAll(folder, 0o700))
	list := handful(t)[:1]
	list[0].Events = []logbook.Event{said("e4", logbook.Photo, "2026-12-06", func(e *logbook.Event) { e.Life.Path = path })}
	opened = new([]string)
	s = openedWith(t, Options{
		Folder: folder, Read: func() ([]life.Batch, error) { return list, nil }, Pixels: pixels.Auto,
		Show: func(path string) error { *opened = append(*opened, path); return nil },
	})
	return s, folder, opened
}

func openedWith(t testing.TB, o Options) *shop { return opened(t, o) }

func TestAPictureIsOpenedInTheSystemsProgramWhereTheTerminalDrawsNone(t *testing.T) {
	s, folder, opened := pictured(t, "photos/cut.png")
	s.press("v")
	s.says("× look at the picture", "no such file")
	path := filepath.Join(folder, "photos", "cut.png")
	drawnFile(t, path, 40, 30)
	s.press("v")
	if len(*opened) != 1 || (*opened)[0] != path {
		t.Errorf("opened is %v", *opened)
	}
	s.says("opened: " + path)
	s.m.opt.Show = func(string) error { return errors.New("there is no viewer") }
	s.press("v")
	s.says("× there is no viewer")
}

// A file of a pour can come from anybody: what it names is opened when it is a picture, and told first when it lies outside the logbook.
func TestWhatIsNoPictureOrLiesElsewhereIsNotOpenedUnseen(t *testing.T) {
	s, folder, _ := pictured(t, "run.png")
	must(t, os.WriteFile(filepath.Join(folder, "run.png"), []byte("#!/bin/sh\n"), 0o700)) //nolint:gosec // that is what is tried
	s.press("v")
	s.says("is none that can be shown")
	s, folder, opened := pictured(t, "../away/cut.png")
	outside := filepath.Join(filepath.Dir(folder), "away", "cut.png")
	drawnFile(t, outside, 4, 4)
	s.press("v")
	s.shows("outside the logbook", "../away/cut.png")
	s.press("l")
	if len(*opened) != 0 {
		t.Error("it was opened without being told")
	}
	s.press("v o")
	if len(*opened) != 1 || (*opened)[0] != outside {
		t.Errorf("opened is %v, want %s", *opened, outside)
	}
	s, folder, opened = pictured(t, "link.png")
	must(t, os.Symlink(outside, filepath.Join(folder, "link.png")))
	s.press("v")
	if s.shows("outside the logbook"); len(*opened) != 0 {
		t.Error("a link leads out of the logbook unseen")
	}
}

func TestAPictureIsDrawnWhereTheTerminalDrawsPixelsAndForgotten(t *testing.T) {
	s, folder, opened := pictured(t, "cut.png")
	drawnFile(t, filepath.Join(folder, "cut.png"), 400, 100)
	s.update(tea.ColorProfileMsg{Profile: colorprofile.TrueColor})
	if len(s.sent) != 1 || !strings.Contains(s.sent[0], "\x1b_G") {
		t.Fatalf("the terminal was asked %q", s.sent)
	}
	s.update(uv.KittyGraphicsEvent{Options: kitty.Options{ID: 31}, Payload: []byte("OK")})
	s.update(tea.TerminalVersionMsg{Name: "kitty(0.40.1)"})
	s.update(uv.CellSizeEvent{Width: 8, Height: 16})
	s.update(uv.PrimaryDeviceAttributesEvent{})
	s.sent = nil
	s.press("v")
	if len(*opened) != 0 || len(s.sent) != 1 || !strings.Contains(s.sent[0], "a=T") {
		t.Fatalf("sent is %.60q, opened %v", s.sent, *opened)
	}
	s.shows("cut.png", "\U0010eeee")
	s.says("any key closes the picture")
	s.sent = nil
	s.press("x")
	s.hides("\U0010eeee")
	if len(s.sent) != 1 || !strings.Contains(s.sent[0], "a=d") {
		t.Errorf("the terminal keeps the picture: %q", s.sent)
	}
}

func TestAPictureKeepsItsProportions(t *testing.T) {
	for _, c := range []struct {
		pic, cell image.Point
		columns   int
		rows      int
		w, h      int
	}{
		{image.Pt(400, 100), image.Pt(8, 16), 78, 21, 78, 10},  // 624 × 156 pixels
		{image.Pt(100, 400), image.Pt(8, 16), 78, 21, 11, 21},  // 84 × 336
		{image.Pt(10, 10), image.Pt(10, 20), 50, 20, 40, 20},   // 400 × 400
		{image.Pt(1, 10_000), image.Pt(10, 20), 50, 20, 1, 20}, // never nothing
	} {
		size, w, h := fits(c.pic, c.cell, c.columns, c.rows)
		if w != c.w || h != c.h || size != image.Pt(w*c.cell.X, h*c.cell.Y) {
			t.Errorf("%v in %d × %d cells of %v is %d × %d, %v", c.pic, c.columns, c.rows, c.cell, w, h, size)
		}
	}
}
