package coverage

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// kind is a size of can in whole numbers.
type kind struct {
	can   Can
	size  int64 // nanolitres, above zero
	cost  int64 // nought or more
	limit int64 // how many there are; endless when there is no end of them
}

const (
	endless    = math.MaxInt64
	mostSteps  = 20_000_000 // bounds the search: about a second
	mostVisits = 200_000    // bounds its memory: what was visited after that may be visited again
)

// score is what a choice is judged by: a lower one is better.
type score struct{ cost, volume, cans int64 }

func (s score) cmp(o score) int {
	return cmp.Or(cmp.Compare(s.cost, o.cost), cmp.Compare(s.volume, o.volume), cmp.Compare(s.cans, o.cans))
}

// choice is how many of each kind are taken, in the order of the kinds.
type choice [mostSizes]int32

// level is one kind's turn in the search, with what is true of it and all kinds after it.
type level struct {
	kind          int   // which kind's turn it is
	divisor       int64 // of all sizes from here on: they make up multiples of it only
	cost, forSize int64 // the least cost for a volume: cost ÷ forSize
	held          int64 // volume of all cans from here on; endless when there is no end of them
	many          bool  // the best choices likely take many of this kind, so many are tried first
}

// searcher holds one search. It tries the kinds in the order of levels, every number of each, and leaves a branch when the
// bound shows that nothing in it is better than the best so far. A volume still missing that was reached before, at the same
// level and at a score no worse, has nothing new to give either.
type searcher struct {
	kinds  []kind
	levels []level
	need   int64
	most   int64 // the volume must not be more
	best   score
	taken  choice
	found  bool
	seen   map[place]visit
	left   int // steps
}

type place struct {
	level   int
	missing int64
}

type visit struct {
	score score
	taken choice
}

// search returns how many of each kind to take: the least cost of all choices that hold the need and no more than most; of
// those the least volume; then the fewest cans; then the larger cans. The kinds are sorted, the largest first; either there is an end of
// each or of none. It is not ok when there is no such choice, or when the search is cut off unfinished.
func search(kinds []kind, need, most int64) (choice, bool) {
	return (&searcher{kinds: kinds, levels: arrange(kinds), need: need, most: most}).run()
}

// leastVolume returns the least volume of all choices that hold the need, where there is no end of any kind. It is not ok when
// the search is cut off unfinished.
//
// Whatever a kind makes up whose size is a multiple of another's, the other makes up as well: such kinds are left out.
func leastVolume(kinds []kind, need int64) (int64, bool) {
	var basic []kind
	for _, k := range kinds {
		if !slices.ContainsFunc(kinds, func(o kind) bool { return o.size < k.size && k.size%o.size == 0 }) {
			basic = append(basic, kind{size: k.size, limit: k.limit})
		}
	}
	s := &searcher{kinds: basic, levels: arrange(basic), need: need, most: math.MaxInt64}
	_, ok := s.run()
	return s.best.volume, ok
}

func (s *searcher) run() (choice, bool) {
	s.seen, s.left = map[place]visit{}, mostSteps
	s.try(0, score{}, choice{})
	if !s.found || s.left == 0 {
		return choice{}, false
	}
	return s.taken, true
}

// arrange orders the kinds for the search. The last ones have the largest common divisor, so that the odd sizes come first
// and the bound soon tells what the even ones cannot make up.
func arrange(kinds []kind) []level {
	left := make([]int, len(kinds))
	for i := range left {
		left[i] = i
	}
	levels := make([]level, len(kinds))
	var next level
	for at := len(kinds) - 1; at >= 0; at-- {
		pick := 0
		for i := range left {
			if gcd(next.divisor, kinds[left[i]].size) > gcd(next.divisor, kinds[left[pick]].size) {
				pick = i
			}
		}
		k := kinds[left[pick]]
		l := level{
			kind: left[pick], divisor: gcd(next.divisor, k.size),
			cost: next.cost, forSize: next.forSize, held: endless,
		}
		if l.forSize == 0 || cheaper(k.cost, k.size, l.cost, l.forSize) {
			l.cost, l.forSize, l.many = k.cost, k.size, true
		}
		if k.limit != endless { // at most 1000 cans of 1 000 000 L: it fits
			l.held = next.held + k.limit*k.size
		}
		levels[at], next = l, l
		left = slices.Delete(left, pick, pick+1)
	}
	return levels
}

// cheaper reports whether a ÷ b is less than c ÷ d, in 128 bits.
func cheaper(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	return h1 < h2 || h1 == h2 && l1 < l2
}

// add takes n of the kind.
func (s *searcher) add(got score, taken choice, kind int, n int64) (score, choice) {
	k := s.kinds[kind]
	taken[kind] += int32(n) // a need of 1 000 000 L takes at most a thousand million cans of 1 mL
	return score{got.cost + n*k.cost, got.volume + n*k.size, got.cans + n}, taken
}

// offer keeps the choice if it is the best so far.
func (s *searcher) offer(got score, taken choice) {
	if got.volume > s.most {
		return
	}
	if c := got.cmp(s.best); s.found && (c > 0 || c == 0 && !larger(taken, s.taken)) {
		return
	}
	s.best, s.taken, s.found = got, taken, true
}

// larger reports whether a has more of the largest kind in which a and b differ.
func larger(a, b choice) bool { return slices.Compare(a[:], b[:]) > 0 }

func (s *searcher) try(at int, got score, taken choice) {
	missing := s.need - got.volume
	if missing <= 0 {
		s.offer(got, taken)
		return
	}
	if at == len(s.levels) || s.hopeless(s.levels[at], got, missing) || s.been(at, got, missing, taken) {
		return
	}
	l := s.levels[at]
	k := s.kinds[l.kind]
	full := min(ceil(missing, k.size), k.limit)
	if at == len(s.levels)-1 { // nothing comes after: as many as it takes
		if full*k.size >= missing {
			s.offer(s.add(got, taken, l.kind, full))
		}
		return
	}
	for i := range full + 1 {
		if s.left == 0 {
			return
		}
		s.left--
		n := i
		if l.many {
			n = full - i
		}
		more, with := s.add(got, taken, l.kind, n)
		s.try(at+1, more, with)
	}
}

// hopeless reports whether no choice with the kinds from this level on can be as good as the best so far. What they add is at
// least the missing volume, rounded up to their common divisor; it costs at least their least cost for a volume; it takes at
// least as many cans as there are of the largest kind in it.
func (s *searcher) hopeless(l level, got score, missing int64) bool {
	if l.held < missing {
		return true
	}
	add := ceil(missing, l.divisor) * l.divisor
	bound := score{got.cost + costOf(add, l.cost, l.forSize), got.volume + add, got.cans + ceil(add, s.kinds[0].size)}
	return bound.volume > s.most || s.found && bound.cmp(s.best) > 0
}

// been reports whether this place was reached before at a score no worse; else it notes the visit.
func (s *searcher) been(at int, got score, missing int64, taken choice) bool {
	p := place{at, missing}
	if old, ok := s.seen[p]; ok {
		// The same is missing, so the volume is the same, and both go on alike.
		if c := old.score.cmp(got); c < 0 || c == 0 && !larger(taken, old.taken) {
			return true
		}
	}
	if len(s.seen) < mostVisits {
		s.seen[p] = visit{got, taken}
	}
	return false
}

// costOf is volume × cost ÷ size, rounded up, in 128 bits. Within the limits of Cans it is about 1e18 at most.
func costOf(volume, cost, size int64) int64 {
	hi, lo := bits.Mul64(uint64(volume), uint64(cost))
	lo, carry := bits.Add64(lo, uint64(size)-1, 0)
	q, _ := bits.Div64(hi+carry, lo, uint64(size))
	return int64(q)
}

func ceil(a, b int64) int64 { return (a + b - 1) / b }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
