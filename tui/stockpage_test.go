package tui

import (
	"errors"
	"strings"
	"testing"
)

func TestThePageOfStockIsOpenedFromTheBench(t *testing.T) {
	m := opened(t, 120, 36)
	told(t, m, "D", "no ledger was opened with this bench")
	m.opt.Stock = func() error { return nil }
	if m.goStock() == nil {
		t.Fatal("D goes nowhere")
	}
	m.Update(stockMsg{errors.New("no terminal")})
	if m.status.Text() != "× no terminal" {
		t.Errorf("said is %q", m.status.Text())
	}
	m.Update(stockMsg{})
	if !strings.Contains(m.status.Text(), "back from the stock") {
		t.Errorf("said is %q", m.status.Text())
	}
}
