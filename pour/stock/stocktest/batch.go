package stocktest

import (
	"fmt"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/lot"
)

func dayOf(n int) day.Day { return day.Day(n) }

// batch pours a batch and lives its life.
func (h *house) batch() {
	n := len(h.out.Pours) + 1
	b := &loaf{h: h, p: logbook.Pour{
		ID: fmt.Sprintf("%s-soap-%d", h.day, n), Name: fmt.Sprintf("Soap %d", n), Opened: h.day.At(10, 0, time.UTC), PlanErr: errNoPlan,
	}}
	for i := range h.size.Each {
		m := material((h.dice(h.size.Materials)/h.size.Each*h.size.Each + i) % h.size.Materials)
		jug := ""
		if m.Kind == lot.Colourant {
			jug = []string{"white", "blue"}[h.dice(2)]
		}
		h.take(m, h.quantity(m), b.p.ID, jug)
	}
	for _, list := range []string{"blend-0", "blend-1", "blend-2"} {
		m := lot.Material{Kind: lot.Blend, ID: list}
		left := lot.Quantity(0)
		for _, p := range h.packs[m] {
			left += p.left
		}
		if left > 0 && h.one(3) {
			h.take(m, min(left, h.quantity(m)), b.p.ID, "")
		}
	}
	b.mark(0, logbook.Event{Kind: logbook.Opened})
	b.mark(0, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)})
	if !h.size.Clean && h.one(5) { // typed while pouring, and never taken out of the ledger
		b.mark(0, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: "Rose clay", Value: 12.5, Lot: fmt.Sprintf("T%d", h.dice(40))})
	}
	b.mark(0, logbook.Event{Kind: logbook.Ended})
	b.sell()
	h.out.Pours = append(h.out.Pours, b.p)
}

// loaf is a pour whose life is being drawn.
type loaf struct {
	h *house
	p logbook.Pour
}

func (b *loaf) mark(after int, e logbook.Event) {
	e.ID, e.Wall = fmt.Sprintf("e%d", len(b.p.Events)+1), (b.h.day+day.Day(after)).At(10, len(b.p.Events), time.UTC)
	b.p.Events = append(b.p.Events, e)
}

// sell cuts the loaf, labels its bars and lets them go, as far as there are any.
func (b *loaf) sell() {
	h := b.h
	switch h.dice(20) {
	case 0: // still in its mould
		return
	case 1:
		b.mark(2, logbook.Event{Kind: logbook.Failed, Text: "seized"})
		return
	}
	left := 8 + h.dice(60)
	rejects := h.dice(3)
	b.mark(1, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: left, Seconds: rejects}})
	left -= rejects
	go1 := func(after int, kind logbook.EventKind, n int, e logbook.Event) {
		n = min(n, left)
		if n <= 0 {
			return
		}
		left -= n
		e.Kind, e.Life.Count = kind, n
		b.mark(after, e)
		if kind == logbook.Sold {
			h.told.Sold[b.p.ID] += n
		}
	}
	go1(20, logbook.Kept, 1, logbook.Event{What: logbook.KeptSample})
	if !h.one(4) {
		b.mark(30, logbook.Event{Kind: logbook.Lotted, Lot: fmt.Sprintf("B%d", len(h.out.Pours)), Life: logbook.Life{Count: left}})
	}
	for k := range h.dice(5) {
		go1(40+7*k, logbook.Sold, 1+h.dice(15), logbook.Event{What: "market", Life: logbook.Life{Price: "7.50", Currency: "EUR", Audience: fmt.Sprintf("buyer %d", h.dice(9))}})
	}
	if h.one(3) {
		go1(60, logbook.Given, 1+h.dice(3), logbook.Event{Life: logbook.Life{Audience: "friends"}})
	}
	if h.one(6) {
		go1(70, logbook.Seconds, 1, logbook.Event{Text: "chipped"})
	}
	if h.one(5) {
		left -= min(left, h.dice(2))
		b.mark(80, logbook.Event{Kind: logbook.Counted, Life: logbook.Life{Count: left}})
	}
}
