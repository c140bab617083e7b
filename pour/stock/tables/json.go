package tables

import (
	"encoding/json"
	"fmt"
	"io"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

type stockJSON struct {
	Today     string         `json:"today"`
	Currency  *string        `json:"currency"`
	Formula   string         `json:"formula"`
	Materials []materialJSON `json:"materials"`
	Odd       []string       `json:"odd"`
}

type materialJSON struct {
	Kind        string     `json:"kind"`
	ID          string     `json:"id"`
	Unit        string     `json:"unit"`
	Usable      string     `json:"usable"`
	PastItsDate string     `json:"past_its_date"`
	Reserved    string     `json:"reserved"`
	Cost        string     `json:"cost"`
	Packs       []packJSON `json:"packs"`
}

type packJSON struct {
	Pack     string  `json:"pack"`
	Name     string  `json:"name"`
	Lot      *string `json:"lot"`
	Supplier *string `json:"supplier"`
	Bought   string  `json:"bought"`
	Opened   *string `json:"opened"`
	Expires  *string `json:"expires"`
	Blocked  bool    `json:"blocked"`
	Made     bool    `json:"made"`
	Size     string  `json:"size"`
	Loss     string  `json:"usual_loss"`
	Taken    string  `json:"taken"`
	Lost     string  `json:"lost"`
	Left     string  `json:"left"`
	Price    string  `json:"price"`
	Postage  string  `json:"postage"`
}

// WriteJSON writes what lies there as JSON. Quantities and money are decimal numbers in quotes, so that none of them is rounded; what is not known is
// null.
func WriteJSON(w io.Writer, s stock.State) error {
	out := stockJSON{Today: s.Today.String(), Currency: orNull(s.Currency), Formula: string(s.Formula), Materials: []materialJSON{}, Odd: []string{}}
	for _, m := range s.Materials() {
		h := s.Held[m]
		usable, blocked := h.Left(s.Today)
		_, cost := h.Layers.Total()
		x := materialJSON{string(m.Kind), m.ID, m.Kind.Unit(), usable.String(), blocked.String(), h.Reserved.String(), cost.String(), []packJSON{}}
		for _, p := range h.Packs {
			x.Packs = append(x.Packs, packOf(p, s.Today))
		}
		out.Materials = append(out.Materials, x)
	}
	for _, d := range s.Odd {
		out.Odd = append(out.Odd, d.Entry+" "+d.Text)
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	if err := enc.Encode(out); err != nil {
		return fmt.Errorf("write the stock as JSON: %w", err)
	}
	return nil
}

func packOf(p lot.Pack, today day.Day) packJSON {
	return packJSON{
		p.ID, p.Name, orNull(p.Lot), orNull(p.Supplier), p.Bought.String(), orNull(date(p.Opened)), orNull(date(p.Expires)), p.Blocked(today), p.Made,
		p.Size.String(), p.Loss.String(), p.Taken.String(), p.Lost.String(), p.Left.String(), p.Price.String(), p.Postage.String(),
	}
}

func orNull(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}
