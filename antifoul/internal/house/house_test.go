package house

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

func TestTheHouseStands(t *testing.T) {
	_, imports := modulePackages(t, moduleRoot(t))
	if _, ok := imports[self]; !ok {
		t.Fatalf("the walk did not come past %s; it saw %d packages", self, len(imports))
	}
	for _, b := range Floors(imports) {
		t.Error(b)
	}
}

func TestTheHouseIsPure(t *testing.T) {
	files := goFiles(t, moduleRoot(t))
	if _, ok := files[self+"/purity.go"]; !ok {
		t.Fatalf("the walk did not come past this package; it saw %d files", len(files))
	}
	for _, b := range Purity(files) {
		t.Error(b)
	}
}

func TestTheTopLevelIsAsAgreed(t *testing.T) {
	root := moduleRoot(t)
	names := topNames(t, root)
	if !slices.Contains(names, "go.mod") {
		t.Fatalf("go.mod is not among the names read at the top level: %q", names)
	}
	for _, b := range TopLevel(names) {
		t.Error(b)
	}
}

// The whole module is copied and one file added that imports upward.
func TestAnUpwardImportIsNamed(t *testing.T) {
	root, dir := moduleRoot(t), t.TempDir()
	files := goFiles(t, root)
	for _, name := range []string{"go.mod", "go.sum"} {
		files[name] = &fstest.MapFile{Data: read(t, filepath.Join(root, name))}
	}
	if err := os.CopyFS(dir, files); err != nil {
		t.Fatal(err)
	}
	module, before := modulePackages(t, dir)
	breach := "tables (floor 1) imports compat (floor 2): imports only point down"
	if slices.Contains(Floors(before), breach) {
		t.Fatal("the breach is there before it is planted")
	}

	// Either package may be missing in the copy, so both get a file.
	for name, src := range map[string]string{
		"tables/planted.go": "package tables\n\nimport _ \"" + module + "/compat\"\n",
		"compat/planted.go": "package compat\n",
	} {
		at := filepath.Join(dir, filepath.FromSlash(name))
		if err := errors.Join(os.MkdirAll(filepath.Dir(at), 0o750), os.WriteFile(at, []byte(src), 0o600)); err != nil {
			t.Fatal(err)
		}
	}
	_, after := modulePackages(t, dir)
	if got := Floors(after); !slices.Contains(got, breach) {
		t.Errorf("not reported: %s\nbreaches: %q", breach, got)
	}
}

// A real and pure file is copied into a library package, and a call of the
// clock added to it under another name.
func TestACallOfTheClockIsNamed(t *testing.T) {
	src := read(t, filepath.Join(moduleRoot(t), filepath.FromSlash(self), "purity.go"))
	files := fstest.MapFS{"tables/copied.go": {Data: src}}
	if got := Purity(files); len(got) > 0 {
		t.Fatalf("the copy is not pure before the call is planted: %q", got)
	}
	src = bytes.Replace(src, []byte("import (\n"), []byte("import (\n\tclock \"time\"\n"), 1)
	src = append(src, "\nvar planted = clock.Now()\n"...)
	files["tables/copied.go"] = &fstest.MapFile{Data: src}
	got := Purity(files)
	if len(got) != 1 || !strings.HasPrefix(got[0], "tables/copied.go:") || !strings.HasSuffix(got[0], ": time.Now reads the clock") {
		t.Errorf("one call of time.Now in tables/copied.go is expected, got %q", got)
	}
}

// moduleRoot is the folder of the nearest go.mod.
func moduleRoot(t *testing.T) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod in this folder or above it")
		}
		dir = up
	}
}

// modulePackages asks the go command for the module's path, its packages and
// what the non-test files of each import from this module, all relative to it.
// Packages that are missing or broken do not stop it; the compiler tells of those.
func modulePackages(t *testing.T, dir string) (module string, imports map[string][]string) {
	t.Helper()
	module = strings.TrimSpace(run(t, dir, "go", "list", "-m"))
	imports = map[string][]string{}
	for line := range strings.Lines(run(t, dir, "go", "list", "-e", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...")) {
		fields := strings.Fields(line)
		pkg := relative(module, fields[0])
		imports[pkg] = []string{}
		for _, imp := range fields[1:] {
			if imp == module || strings.HasPrefix(imp, module+"/") {
				imports[pkg] = append(imports[pkg], relative(module, imp))
			}
		}
	}
	return module, imports
}

func relative(module, pkg string) string {
	return strings.TrimPrefix(strings.TrimPrefix(pkg, module), "/")
}

// run returns what a command prints. It skips the test when there is no such command.
func run(t *testing.T, dir, command string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(command); err != nil {
		t.Skipf("the %s command is needed for this check: %v", command, err)
	}
	cmd := exec.CommandContext(t.Context(), command, args...)
	cmd.Dir = dir
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s: %v\n%s", cmd, err, &stderr)
	}
	return string(out)
}

// goFiles reads all Go files of the module, tests and examples too.
func goFiles(t *testing.T, root string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && name == ".git" {
			return fs.SkipDir
		}
		if !d.IsDir() && strings.HasSuffix(name, ".go") {
			files[name] = &fstest.MapFile{Data: read(t, filepath.Join(root, filepath.FromSlash(name)))}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func read(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// topNames lists the top level: in a git checkout what git does not ignore,
// elsewhere all that lies there.
func topNames(t *testing.T, root string) []string {
	t.Helper()
	if _, err := os.Stat(filepath.Join(root, ".git")); err == nil {
		if _, err := exec.LookPath("git"); err == nil {
			var names []string
			for line := range strings.Lines(run(t, root, "git", "ls-files", "--cached", "--others", "--exclude-standard")) {
				first, _, _ := strings.Cut(strings.Trim(strings.TrimSpace(line), `"`), "/")
				names = append(names, first)
			}
			return names
		}
	}
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}
