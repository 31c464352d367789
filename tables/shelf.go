package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// shelf holds the rows of one table in file order, found by key.
type shelf[T any] struct {
	what string // the table's name, for faults
	rows []T
	at   map[string]int
	from []*record
}

func (s *shelf[T]) get(key string) (T, error) {
	if i, ok := s.at[key]; ok {
		return s.rows[i], nil
	}
	var none T
	return none, finding.Faults{{Kind: finding.ErrUnknown, Key: s.what, Got: entry.Describe(key), Want: finding.Suggest(key, s.keys())}}
}

func (s *shelf[T]) all() iter.Seq[T] { return slices.Values(s.rows) }

func (s *shelf[T]) keys() []string {
	out := make([]string, 0, len(s.rows))
	for _, r := range s.from {
		out = append(out, r.key())
	}
	return out
}

// fill reads the table's records into rows.
func (s *shelf[T]) fill(what string, records []*record, faults *finding.Faults, read func(*entry.Row) T) {
	s.what = what
	s.at = make(map[string]int, len(records))
	s.from = records
	s.rows = make([]T, 0, len(records))
	for _, rec := range records {
		s.at[rec.key()] = len(s.rows)
		s.rows = append(s.rows, readRecord(what, rec, faults, read))
	}
}
