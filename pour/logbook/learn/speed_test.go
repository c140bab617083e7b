package learn

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
)

// manyLogs are logs of a busy maker: 40 recipes, 60 scents, two jugs a pour, three stages each.
func manyLogs(n int) []Log {
	r := rand.New(rand.NewPCG(1, 2))
	var out []Log
	for i := range n {
		recipe := []string{"balanced", "slow"}[i%2]
		b := testBatter(recipe, 32+6*r.Float64(), clock.Burst{S: 20})
		b.Recipe, b.SplitMin = recipe+strconv.Itoa(i%40), 2
		l := Log{Pour: strconv.Itoa(i / 2), When: day(i / 2), Batch: "base", JugName: strconv.Itoa(i % 2), Batter: b, Jug: clock.Jug{Fraction: .3}}
		if i%2 == 0 {
			l.Jug.Scents = []clock.Scent{{
				ID: "s" + strconv.Itoa(i%60), LnFactor: .7, SD: .35, RefLoadPercent: 3, LoadPercent: 2 + 2*r.Float64(), AtMin: 3,
			}}
		}
		f := math.Exp(.2 * r.NormFloat64())
		if i%2 == 0 {
			f *= .65 // as the scents' priors have it
		}
		l.Seen = []StageAt{{chem.Light, 3.5 * f}, {chem.Medium, 7 * f}, {chem.Thick, 13 * f}}
		out = append(out, l)
	}
	return out
}

func BenchmarkLearnThousandLogsNew(b *testing.B) {
	logs := manyLogs(1000)
	for b.Loop() {
		if l := fromLogs(logs); l.Redone {
			b.Log("drawn anew")
		}
	}
}

func BenchmarkLearnThousandLogsKnown(b *testing.B) {
	lesson := fromLogs(manyLogs(1000))
	var logs []Log
	for _, l := range lesson.Logs {
		logs = append(logs, l.Log)
	}
	for b.Loop() {
		fromLogs(logs)
	}
}
