package colour

import "math"

// assign gives each row of cost a column of its own so that the sum is least (Kuhn-Munkres by shortest
// augmenting paths). There must be at least as many columns as rows.
func assign(cost [][]float64) []int {
	if len(cost) == 0 {
		return nil
	}
	s := newMatching(cost)
	for row := range cost {
		s.place(row)
	}
	columns := make([]int, len(cost))
	for column, row := range s.rowOf {
		if row >= 0 {
			columns[row] = column
		}
	}
	return columns
}

// matching is the state of one assignment. Column n, one past the last, stands for the row being placed.
type matching struct {
	cost         [][]float64
	rowOf        []int // row placed in a column, -1 for none
	came         []int // column before this one on the shortest path
	byRow, byCol []float64
	reach        []float64
	done         []bool
}

func newMatching(cost [][]float64) *matching {
	n := len(cost[0])
	s := &matching{
		cost: cost, rowOf: make([]int, n+1), came: make([]int, n+1), byRow: make([]float64, len(cost)),
		byCol: make([]float64, n+1), reach: make([]float64, n+1), done: make([]bool, n+1),
	}
	for i := range s.rowOf {
		s.rowOf[i] = -1
	}
	return s
}

// place finds the cheapest chain of moves that gives row a column, and makes it.
func (s *matching) place(row int) {
	start := len(s.cost[0])
	for i := range s.reach {
		s.reach[i], s.done[i] = math.Inf(1), false
	}
	s.rowOf[start] = row
	at := start
	for s.rowOf[at] >= 0 {
		s.done[at] = true
		at = s.advance(at)
	}
	for at != start {
		s.rowOf[at] = s.rowOf[s.came[at]]
		at = s.came[at]
	}
	s.rowOf[start] = -1
}

// advance looks from the row in column at, shifts the prices, and returns the nearest new column.
func (s *matching) advance(at int) int {
	row, nearest := s.rowOf[at], -1
	for c := range s.cost[row] {
		if s.done[c] {
			continue
		}
		if d := s.cost[row][c] - s.byRow[row] - s.byCol[c]; d < s.reach[c] {
			s.reach[c], s.came[c] = d, at
		}
		if nearest < 0 || s.reach[c] < s.reach[nearest] {
			nearest = c
		}
	}
	shift := s.reach[nearest]
	for c := range s.reach {
		if s.done[c] {
			s.byRow[s.rowOf[c]] += shift
			s.byCol[c] -= shift
		} else {
			s.reach[c] -= shift
		}
	}
	return nearest
}
