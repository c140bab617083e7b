package season_test

import (
	"fmt"
	"os"
	"testing"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
)

// much is a season of a thousand pours, half of them planned, for fifty dates, in a house where some of it collides.
func much() season.Facts {
	const pours, dates, designs = 1000, 50, 10
	f := season.Facts{Today: first, Designs: map[string]season.Design{}}
	f.File.House = season.House{RackBars: 900, MostPours: 2, Moulds: []season.Mould{owned(4, 0), owned(4, 1)}}
	for i := range designs {
		d := meadow()
		d.Name, d.Mould = fmt.Sprint("design ", i), moulds()[i%2]
		f.Designs[fmt.Sprint(i)] = d
	}
	for i := range dates {
		d := season.Date{Name: fmt.Sprint("date ", i), Day: first + day.Day(60+7*i), LabelDays: 2}
		for k := range 3 {
			d.Wants = append(d.Wants, season.Want{fmt.Sprint("design ", (i+k)%designs), 40})
		}
		f.File.Dates = append(f.File.Dates, d)
	}
	for i := range pours {
		if i%2 == 0 {
			f.File.Pours = append(f.File.Pours, season.Planned{Plan: fmt.Sprint(i / 2 % designs), For: f.File.Dates[i/2%dates].Name})
			continue
		}
		s := season.Standing{ID: fmt.Sprint("pour ", i), Name: fmt.Sprint("design ", i%designs), State: life.Labelled, Poured: first - day.Day(i/4), Mould: moulds()[0]}
		s.Cut = s.Poured + 1
		s.Ready = season.Band{s.Cut + 21, s.Cut + 28, s.Cut + 40}
		s.Bars = life.Account{Known: true, Bars: 10, Sold: i % 10, Left: 10 - i%10}
		if first-s.Poured < 28 {
			s.State = life.Curing
		}
		f.Standing = append(f.Standing, s)
	}
	return f
}

func BenchmarkBoardOfAThousandPours(b *testing.B) {
	f := much()
	for b.Loop() {
		if len(season.Of(f).Rows) != 1000 {
			b.Fatal("a pour is missing")
		}
	}
}

func BenchmarkReadAThousandPours(b *testing.B) {
	s := season.NewStore(b.TempDir())
	src := "format = 1\n"
	for _, d := range much().File.Dates {
		src += fmt.Sprintf("[[date]]\nname = %q\nday = %s\nwants = [{ design = \"design 1\", bars = 40 }]\n", d.Name, d.Day)
	}
	for i := range 1000 {
		src += fmt.Sprintf("[[pour]]\nplan = \"plan-%d.toml\"\nfor = \"date %d\"\n", i, i%50)
	}
	if err := os.WriteFile(s.Path(), []byte(src), 0o600); err != nil {
		b.Fatal(err)
	}
	b.ResetTimer()
	for b.Loop() {
		if f, err := season.Load(s.Dir); err != nil || len(f.Pours) != 1000 {
			b.Fatal(err)
		}
	}
}

func BenchmarkResultsOfAThousandPours(b *testing.B) {
	var batches []life.Batch
	for i := range 1000 {
		c := life.Batch{Name: fmt.Sprint("design ", i%10), State: life.SoldOut, Bars: life.Account{Known: true, Bars: 20, Sold: 20}}
		for k := range 20 {
			c.Events = append(c.Events, went(logbook.Sold, (first+day.Day(k)).String(), 1, "market", fmt.Sprint("audience ", k%4), "7.50", "EUR"))
		}
		batches = append(batches, c)
	}
	for b.Loop() {
		if len(season.Results(batches)) != 10 {
			b.Fatal("a design is missing")
		}
	}
}
