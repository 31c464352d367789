package tables

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"time"

	"boatyard.example/bottomwork/tables/entry"
)

// Fingerprint returns twelve hexadecimal digits that change with any cell of any row, with what a replaced cell rests on, and with the reason of
// an override. A report prints them, so that a reader can tell by which tables it was made.
func (b *Book) Fingerprint() string {
	if b.digits == nil { // a Book that no loader made holds no row
		return fingerprint(nil)
	}
	return b.digits()
}

func fingerprint(records map[string][]*record) string {
	var text []byte
	for _, t := range tableNames {
		for _, r := range records[t] {
			text = append(append(text, t...), '\n')
			text = canonical(text, r.m)
			text = strconv.AppendQuote(text, r.over)
			for _, field := range slices.Sorted(maps.Keys(r.own)) {
				text = fmt.Appendf(text, "%q %+v\n", field, r.own[field])
			}
		}
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])[:12]
}

// canonical appends a value so that different values give different text and the order of keys does not matter.
func canonical(text []byte, v any) []byte {
	switch v := v.(type) {
	case map[string]any:
		for _, k := range slices.Sorted(maps.Keys(v)) {
			text = append(strconv.AppendQuote(text, k), '{')
			text = append(canonical(text, v[k]), '}')
		}
	case []map[string]any:
		for _, e := range v {
			text = canonical(append(text, '['), e)
		}
	case []any:
		for _, e := range v {
			text = canonical(append(text, '['), e)
		}
	case string:
		text = strconv.AppendQuote(text, v)
	case time.Time:
		text = append(text, entry.Describe(v)...) // without the computer's offset
	default:
		text = fmt.Appendf(text, "%T %v", v, v)
	}
	return text
}
