package planfile

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
)

func TestEveryKeyOfAWrittenPlanIsFoundWhereItStands(t *testing.T) {
	s := shelf(t)
	rapid.Check(t, func(rt *rapid.T) {
		p := drawPlan(rt, s)
		text, err := encode(p)
		if err != nil {
			rt.Fatal(err)
		}
		file, err := form().Open("plan.toml", text)
		if err != nil {
			rt.Fatal(err)
		}
		lines := strings.Split(text, "\n")
		var look func(path string, fields []pour.Field)
		look = func(path string, fields []pour.Field) {
			for _, f := range fields {
				at := strings.TrimPrefix(path+"."+f.Key, ".")
				f.Items(0, func(i int, fields []pour.Field) { look(fmt.Sprintf("%s[%d]", at, i), fields) })
				if f.List() || f.Need == pour.Quiet && f.Zero() {
					continue
				}
				line, column := file.Place(at)
				if line == 0 || !strings.HasPrefix(string([]rune(lines[line-1])[column-1:]), f.Key+" = ") {
					rt.Fatalf("%s is said to stand at %d:%d of\n%s", at, line, column, text)
				}
			}
		}
		for _, table := range p.Tables() {
			look(table.Key, table.Fields)
		}
	})
}

func TestTheReferenceTellsEveryKeyWithRangeDefaultAndMeaning(t *testing.T) {
	text := Reference()
	for _, want := range []string{
		"A plan file is TOML, begins with format = 1",
		"\nabove the first [section]\n  name                       text, 80 letters      required  title on screens and papers\n",
		"\n  pour_at                    2026-12-05T10:00:00             when the base's lye meets its oils;",
		"\n  mass                       g, oz                 g         unit of mass",
		"\n  temperature_c              -10 to 50 °C          21        the air where the pour happens\n",
		"\n  technique                  technique's id        layers    how the jugs meet in the mould\n",
		"\n  seed                       whole number                    which of the many faces",
		"\n  passes                     0 to 60, whole                  rounds,",
		"\n  first                      jug's name                      jug that is poured first",
		"\n  order                      list of tasks                   tasks in your own order;",
		"\n[base]\n  size                       mould, oils           mould     ",
		"\n  superfat_percent           -5 to 40 %            5         lye discount",
		"\n  blend                      list on one line                runs of the stick blender",
		"\n  jug                        tables, 64 at most              coloured portions",
		"\n[[base.blend]]\n  at_min                     0 to 600 min          required  after this batch's lye-in\n",
		"\n[[base.oil]]\n  oil                        oil's id              required  what it is\n",
		"\n  held                       true or false                   keeps its share",
		"\n  batter_colour              \"#rrggbb\"",
		"\n[[base.jug.colourant]]\n  colourant                  colourant's id        required",
		"\n  carrier                                                    what wets it; left out: as the colourant disperses\n                             oil, water, glycerin, none\n",
		"\n  extra                      extra's id            required", "\n  scent                      scent's id            required",
		"\n  into                       list of jugs                    jugs it goes to;",
		"\n  notes                      text of many lines",
		"\n[icing]  left out: no icing. It has what [base] has, its lists too, and:\n  bags                       each, one",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in:\n%s", want, text)
		}
	}
	if strings.Contains(text, "[[icing") || strings.Count(text, "superfat_percent") != 1 {
		t.Errorf("what the icing has in common with the base is told twice:\n%s", text)
	}
	eachTable(func(header string, fields []pour.Field) {
		for _, f := range fields {
			if !strings.Contains(text, "\n  "+f.Key+" ") || !strings.Contains(text, strings.Fields(f.Means)[0]) {
				t.Errorf("%s of %s is not told", f.Key, header)
			}
		}
	})
	for _, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > 120 {
			t.Errorf("a line of %d letters: %s", n, line)
		}
	}
}
