package entry_test

import (
	"io"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

func TestFilesThatCannotBeRead(t *testing.T) {
	for name, c := range map[string]struct {
		text  string
		words []string
	}{
		"bad TOML":             {"a = 1\n\nb = \n", []string{"read line 3: ", "TOML 1.0"}},
		"key twice":            {"a = 1\nb = 2\na = 3\n", []string{"read line 3: ", "TOML 1.0"}},
		"NUL":                  {"a = \"x\x00y\"\n", []string{"NUL", "UTF-8"}},
		"NUL in a comment":     {"# \x00\n", []string{"NUL"}},
		"not UTF-8":            {"a = \"\xff\xfe\"\n", []string{"not UTF-8"}},
		"Latin 1":              {"name = \"K\xf6nig\"\n", []string{"not UTF-8"}},
		"nested lists":         {"a = " + strings.Repeat("[", 33) + strings.Repeat("]", 33), []string{"deeper than 32"}},
		"nested inline tables": {"a = " + strings.Repeat("{a=", 33) + "1" + strings.Repeat("}", 33), []string{"deeper than 32"}},
		"closed before":        {"# " + strings.Repeat("]", 100) + "\na = " + strings.Repeat("[", 33) + strings.Repeat("]", 33), []string{"deeper than 32"}},
		"closed once within":   {"a = [[[]," + strings.Repeat("[", 31) + strings.Repeat("]", 31) + "]]", []string{"deeper than 32"}},
		"open brackets only":   {strings.Repeat("[", 1_000_000), []string{"deeper than 32"}},
		"dotted text":          {"x = 1\ny = \"" + strings.Repeat("a.", 33) + "\"\n", []string{"line 2", "more than 32 full stops"}},
		"dotted key":           {"x = 1\n" + strings.Repeat("a.", 9) + "b = 1\n", []string{"line 2", "more than 8 full stops"}},
		"dotted section":       {"x = 1\n[" + strings.Repeat("a.", 9) + "b]\n", []string{"line 2", "more than 8 full stops"}},
		"long dotted key":      {strings.Repeat("a.", 400_000) + "b = 1\n", []string{"line 1", "full stops"}},
		"long dotted section":  {"[" + strings.Repeat("a.", 400_000) + "b]", []string{"line 1", "full stops"}},
	} {
		t.Run(name, func(t *testing.T) {
			row, faults := entry.Open(fstest.MapFS{"boat.toml": {Data: []byte(c.text)}}, "boat.toml")
			if row != nil {
				t.Error("a row is returned all the same")
			}
			one(t, *faults, finding.ErrSyntax, "", c.words...)
		})
	}
}

// largest is the largest file that is read: a mebibyte, as Open promises.
const largest = 1 << 20

func TestFilesAtTheLimits(t *testing.T) {
	for name, text := range map[string]string{
		"empty":              "",
		"comment":            "# nothing\n",
		"nested 32 deep":     "a = " + strings.Repeat("[", 32) + strings.Repeat("]", 32),
		"nested beside":      "a = [" + strings.Repeat("[],", 100) + "]\nb = {}\nc = " + strings.Repeat("[", 32) + strings.Repeat("]", 32),
		"32 full stops":      "a = \"" + strings.Repeat("a.", 32) + "\"\n",
		"8 in a key":         strings.Repeat("a.", 8) + "b = 1\n",
		"9 in a comment":     "# " + strings.Repeat("a.", 9) + " = 1\n",
		"largest file taken": "#" + strings.Repeat(" ", largest-2) + "\n",
		"long text":          "a = \"" + strings.Repeat("word ", 100_000) + "\"",
	} {
		t.Run(name, func(t *testing.T) {
			row, faults := entry.Open(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
			if row == nil || len(*faults) != 0 {
				t.Errorf("refused: %v", *faults)
			}
		})
	}
}

func TestFileMissing(t *testing.T) {
	row, faults := entry.Open(fstest.MapFS{}, "boat.toml")
	if row != nil {
		t.Error("a row is returned all the same")
	}
	one(t, *faults, finding.ErrSyntax, "", "boat.toml", "a file that can be opened")
	row, faults = entry.Open(fstest.MapFS{"boat.toml/x": {}}, "boat.toml")
	if row != nil {
		t.Error("a folder is read as a file")
	}
	one(t, *faults, finding.ErrSyntax, "", "a file that can be read")
}

// endless is a file of spaces without an end; read counts what was taken of it.
type endless struct {
	fs.FileInfo
	read int
}

func (e *endless) Open(string) (fs.File, error) { return e, nil }
func (e *endless) Stat() (fs.FileInfo, error)   { return e, nil }
func (e *endless) Close() error                 { return nil }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	e.read += len(p)
	return len(p), nil
}

func TestFileTooLarge(t *testing.T) {
	var file endless
	row, faults := entry.Open(&file, "boat.toml")
	if row != nil {
		t.Error("a row is returned all the same")
	}
	one(t, *faults, finding.ErrSyntax, "", "more than 1048576 bytes", "a smaller file")
	if file.read > largest+1 {
		t.Errorf("%d bytes were read, want no more than one beyond the limit", file.read)
	}
}

// torn is a file that breaks off.
type torn struct{ endless }

func (e *torn) Open(string) (fs.File, error) { return e, nil }
func (e *torn) Read([]byte) (int, error)     { return 0, io.ErrUnexpectedEOF }

func TestFileBreaksOff(t *testing.T) {
	row, faults := entry.Open(new(torn), "boat.toml")
	if row != nil {
		t.Error("a row is returned all the same")
	}
	one(t, *faults, finding.ErrSyntax, "", io.ErrUnexpectedEOF.Error())
}
