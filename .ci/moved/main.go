// Command moved lists the cells of the embedded tables whose value or basis is not the same in two revisions, for the notes of a release and
// for whoever imports the module:
//
//	go run ./.ci/moved v1.2.0          # from there to the working tree
//	go run ./.ci/moved v1.2.0 v1.3.0   # from there to there
//
// It prints one line a cell: table, key and field; the value before, the value after. What a row says of its basis is a cell too. A row that came
// or went is one line. Both sets are read as plain TOML, so that a table whose form has changed since is compared all the same.
package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
)

const data = "tables/data"

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err) //nolint:errcheck // nowhere left to say it
		os.Exit(1)
	}
}

func run(args []string, w io.Writer) error {
	if len(args) < 1 || len(args) > 2 {
		return fmt.Errorf("read %d arguments, taken: one revision, or two", len(args))
	}
	was, err := at(args[0])
	if err != nil {
		return err
	}
	is, err := now()
	if len(args) == 2 {
		is, err = at(args[1])
	}
	if err != nil {
		return err
	}
	lines := moved(was, is)
	for _, l := range lines {
		fmt.Fprintln(w, l) //nolint:errcheck // standard output
	}
	fmt.Fprintf(w, "%d cells and rows moved\n", len(lines)) //nolint:errcheck // standard output
	return nil
}

// rows are the rows of all tables, "coating[hard-cuprous]", with their fields as they would be written.
type rows map[string]map[string]string

// at reads the tables of a revision.
func at(revision string) (rows, error) {
	names, err := git("ls-tree", "-r", "--name-only", revision, "--", data)
	if err != nil {
		return nil, err
	}
	out := rows{}
	for name := range strings.FieldsSeq(names) {
		text, err := git("show", revision+":"+name)
		if err != nil {
			return nil, err
		}
		if err := out.add(name, text); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// now reads the tables of the working tree.
func now() (rows, error) {
	names, err := git("ls-files", "--cached", "--others", "--exclude-standard", "--", data)
	if err != nil {
		return nil, err
	}
	out := rows{}
	for name := range strings.FieldsSeq(names) {
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		if err := out.add(name, string(text)); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func git(args ...string) (string, error) {
	cmd := exec.Command("git", args...)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("git %s: %w\n%s", strings.Join(args, " "), err, &stderr)
	}
	return string(out), nil
}

func (r rows) add(name, text string) error {
	if path.Ext(name) != ".toml" {
		return nil
	}
	var file map[string]any
	if _, err := toml.Decode(text, &file); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	for table, v := range file {
		list, ok := v.([]map[string]any)
		if !ok {
			return fmt.Errorf("%s: %s is no list of rows", name, table)
		}
		for _, m := range list {
			fields := map[string]string{}
			for k, e := range m {
				fields[k] = written(e)
			}
			r[fmt.Sprintf("%s[%v]", table, m["key"])] = fields
		}
	}
	return nil
}

// written is a value in one line, the fields of a section by name.
func written(v any) string {
	var parts []string
	switch v := v.(type) {
	case []any:
		for _, e := range v {
			parts = append(parts, written(e))
		}
	case []map[string]any:
		for _, e := range v {
			parts = append(parts, written(e))
		}
	case map[string]any:
		for _, k := range slices.Sorted(maps.Keys(v)) {
			parts = append(parts, k+" "+written(v[k]))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	default:
		return fmt.Sprint(v)
	}
	return strings.Join(parts, "; ")
}

// moved lists what differs, by table, row and field.
func moved(was, is rows) []string {
	var lines []string
	both := maps.Clone(was)
	maps.Copy(both, is)
	for _, row := range slices.Sorted(maps.Keys(both)) {
		before, had := was[row]
		after, has := is[row]
		switch {
		case !had:
			lines = append(lines, row+": new row")
			continue
		case !has:
			lines = append(lines, row+": row is gone")
			continue
		}
		fields := maps.Clone(before)
		maps.Copy(fields, after)
		for _, f := range slices.Sorted(maps.Keys(fields)) {
			if before[f] != after[f] {
				lines = append(lines, fmt.Sprintf("%s.%s: %s -> %s", row, f, cmp.Or(before[f], "(none)"), cmp.Or(after[f], "(none)")))
			}
		}
	}
	return lines
}
