package tables

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// record is one row as its file gives it, before it is read into its type.
type record struct {
	file  string
	m     map[string]any
	own   map[string]finding.Basis // fields that an own table replaced
	over  string                   // reason of an override of a safety row
	fresh bool                     // the row stands in an own table only
}

func (r *record) key() string {
	s, _ := r.m["key"].(string)
	return s
}

func (r *record) safety() bool {
	b, _ := r.m["safety"].(bool)
	return b
}

// heading is a field of a row that says what the row rests on; an own row's heading is its own and never the base row's.
var heading = []string{"key", "basis", "source", "where", "read", "doubt", "basis_of", "override", "reason", "safety"}

// readRecord reads one record with the fields that every table shares.
func readRecord[T any](what string, rec *record, faults *finding.Faults, read func(*entry.Row) T) T {
	label := rec.key()
	if label == "" {
		label = "?"
	}
	r := entry.New(rec.file, what+"["+label+"]", rec.m, faults)
	v := read(r)
	r.YesNo("safety")
	for _, k := range heading {
		r.Raw(k)
	}
	if h, ok := any(&v).(interface{ heir(*record) }); ok {
		h.heir(rec)
	}
	r.Close()
	return v
}

// heir takes the own table's bases over into the row.
func (r *Row) heir(rec *record) {
	if rec.fresh {
		r.basis.Own = true
		for field, basis := range r.cells {
			basis.Own = true
			r.cells[field] = basis
		}
	}
	if len(rec.own) == 0 {
		return
	}
	cells := maps.Clone(r.cells)
	if cells == nil {
		cells = map[string]finding.Basis{}
	}
	maps.Copy(cells, rec.own)
	r.cells = cells
}

// opened is one file that was read.
type opened struct {
	root   *entry.Row
	faults *finding.Faults
}

// open reads the files at the same time, since parsing is most of what a book costs, and returns them in the order of the names.
func open(fsys fs.FS, names []string) []opened {
	out := make([]opened, len(names))
	var all sync.WaitGroup
	for i, name := range names {
		all.Go(func() { out[i].root, out[i].faults = entry.Open(fsys, name) })
	}
	all.Wait()
	return out
}

// gather reads every TOML file of a folder into records by table name. Unknown tables and double keys are faults.
func gather(fsys fs.FS, known []string, faults *finding.Faults) map[string][]*record {
	var names []string
	err := fs.WalkDir(fsys, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if !d.IsDir() && path.Ext(p) == ".toml" {
			names = append(names, p)
		}
		return nil
	})
	if err != nil {
		*faults = append(*faults, finding.Fault{Kind: finding.ErrSyntax, Got: err.Error(), Want: "a folder of TOML files"})
		return nil
	}
	slices.Sort(names)
	out := map[string][]*record{}
	seen := map[string]string{}
	for i, file := range open(fsys, names) {
		name, root, fileFaults := names[i], file.root, file.faults
		if root != nil {
			for _, table := range root.Keys() {
				if !slices.Contains(known, table) {
					continue // noted by Close below
				}
				list, ok := root.Raw(table).([]map[string]any)
				if !ok {
					root.Fault(finding.ErrValue, table, entry.Describe(root.Raw(table)), "sections, [["+table+"]]")
				}
				for _, m := range list {
					rec := &record{file: name, m: m}
					id := table + "[" + rec.key() + "]"
					if before, dup := seen[id]; dup && rec.key() != "" { // it is read all the same, for its other faults
						root.Fault(finding.ErrDuplicate, id, "also in "+before, "a key that is unique in its table")
					}
					seen[id] = name
					out[table] = append(out[table], rec)
				}
			}
			for _, k := range known {
				root.Raw(k)
			}
			root.Close()
		}
		*faults = append(*faults, *fileFaults...)
	}
	return out
}

// overlay puts own records on top of base records: a known key replaces the fields it gives, a new key is a new row.
func overlay(table string, base, own []*record, faults *finding.Faults) []*record {
	out := slices.Clone(base)
	at := map[string]int{}
	for i, r := range base {
		at[r.key()] = i
	}
	for _, o := range own {
		i, ok := at[o.key()]
		if !ok {
			o.fresh = true
			out = append(out, o)
			continue
		}
		r := entry.New(o.file, table+"["+o.key()+"]", o.m, faults)
		row := readRow(r)
		merged := &record{file: o.file, m: maps.Clone(out[i].m), own: maps.Clone(out[i].own), over: out[i].over, fresh: out[i].fresh}
		if merged.own == nil {
			merged.own = map[string]finding.Basis{}
		}
		for k, v := range o.m {
			if !slices.Contains(heading, k) {
				merged.m[k] = v
				basis := row.Basis(k)
				basis.Own = true
				merged.own[k] = basis
			}
		}
		if out[i].safety() {
			reason := strings.TrimSpace(r.Text("reason"))
			if !r.YesNo("override").True() || reason == "" {
				r.Fault(finding.ErrSafety, "", "a row that replaces a safety row",
					`override = true and reason = "why, and who decided"; both are printed in every report`)
			}
			if merged.over == "" {
				merged.over = fmt.Sprintf("%s[%s]: %s", table, o.key(), reason)
			} else { // what the earlier reason was for may still stand
				merged.over += "; " + reason
			}
		}
		out[i] = merged
	}
	return out
}
