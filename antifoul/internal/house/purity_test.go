package house

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
)

// file wraps statements into a Go file: the imports on line 2, the body on line 3.
func file(imports, body string) *fstest.MapFile {
	return &fstest.MapFile{Data: []byte("package p\nimport (" + imports + ")\nfunc f() { " + body + " }\n")}
}

func TestPurity(t *testing.T) {
	for _, c := range []struct {
		name, imports, body string
		want                []string
	}{
		{name: "pure", imports: `"fmt"; "io"; "io/fs"; "time"; "embed"; "math/rand/v2"`, body: `fmt.Fprintln(w); fmt.Sprint(1); time.Date(2027, 1, 2, 0, 0, 0, 0, time.UTC); rand.New(rand.NewPCG(1, 2)); _ = embed.FS{}`},
		{name: "own names like the barred ones", imports: `"example.org/log/time2"`, body: `time.Now(); fmt.Println(); x.time.Now(); s.panic()`},

		{name: "os", imports: `"os"`, want: []string{"import of os reaches the machine"}},
		{name: "os below", imports: `"os/exec"`, want: []string{"import of os/exec reaches the machine"}},
		{name: "blank", imports: `_ "net/http"`, want: []string{"import of net/http reaches the network"}},
		{name: "net", imports: `"net"`, want: []string{"import of net reaches the network"}},
		{name: "renamed", imports: `quiet "log"`, want: []string{"import of log logs"}},
		{name: "slog", imports: `"log/slog"`, want: []string{"import of log/slog logs"}},
		{name: "syscall", imports: `"syscall"`, want: []string{"import of syscall reaches the machine"}},
		{name: "ioutil", imports: `"io/ioutil"`, want: []string{"import of io/ioutil reaches the machine"}},
		{name: "filepath", imports: `"path/filepath"`, want: []string{"import of path/filepath differs from machine to machine; fs.FS goes with path"}},
		{name: "rand", imports: `"math/rand"`, want: []string{"import of math/rand draws from a shared source; take a seeded math/rand/v2 source as an argument"}},
		{name: "crypto", imports: `"crypto/rand"`, want: []string{"import of crypto/rand draws anew each time"}},
		{name: "tzdata", imports: `_ "time/tzdata"`, want: []string{"import of time/tzdata brings a time-zone database"}},

		{name: "clock", imports: `"time"`, body: `time.Now(); time.Since(t); time.Until(t)`, want: []string{
			"time.Now reads the clock", "time.Since reads the clock", "time.Until reads the clock",
		}},
		{name: "clock as a value, renamed", imports: `clock "time"`, body: `now := clock.Now`, want: []string{"time.Now reads the clock"}},
		{name: "zone", imports: `"time"`, body: `time.LoadLocation("UTC"); _ = time.Local`, want: []string{
			"time.LoadLocation looks up a time zone", "time.Local looks up a time zone",
		}},
		{name: "print", imports: `"fmt"`, body: `fmt.Print(); fmt.Printf("%d", 1); fmt.Println(); fmt.Scanln()`, want: []string{
			"fmt.Print prints to nobody's writer", "fmt.Printf prints to nobody's writer", "fmt.Println prints to nobody's writer", "fmt.Scanln reads nobody's reader",
		}},
		{name: "shared random source", imports: `"math/rand/v2"`, body: `rand.IntN(6)`, want: []string{"math/rand/v2.IntN draws from a shared source"}},
		{name: "dot import", imports: `. "time"`, body: `Now()`, want: []string{"dot import of time hides what is used"}},
		{name: "built in", body: `println(1); print(1); panic("no")`, want: []string{
			"println is called; return an error or write to the writer given",
			"print is called; return an error or write to the writer given",
			"panic is called; return an error or write to the writer given",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			fsys := fstest.MapFS{"tables/x.go": file(c.imports, c.body)}
			var want []string
			for _, w := range c.want {
				line := "3"
				if strings.HasPrefix(w, "import of") || strings.HasPrefix(w, "dot import of") {
					line = "2"
				}
				want = append(want, "tables/x.go:"+line+": "+w)
			}
			if diff := cmp.Diff(want, Purity(fsys)); diff != "" {
				t.Errorf("breaches (-want +got):\n%s", diff)
			}
		})
	}
}

func TestPurityLooksAtEveryLibraryFile(t *testing.T) {
	bad := file(`"os"`, "")
	fsys := fstest.MapFS{
		"loose.go":                       bad,
		"antifoul/rank.go":               bad,
		"antifoul/internal/score/x.go":   bad,
		"compat/houses/x.go":             bad,
		"tables/quantity/x.go":           bad,
		"tables/quantity/x_test.go":      bad,
		"tables/quantity/testdata/x.go":  bad,
		"tables/quantity/.hidden/x.go":   bad,
		"tables/quantity/x.go.txt":       bad,
		"examples/demo/main.go":          bad,
		"antifoul/internal/house/x.go":   bad,
		".ci/x.go":                       bad,
		"coverage/_old/x.go":             bad,
		"coverage/examples/not_spare.go": bad,
	}
	want := []string{
		"antifoul/internal/score/x.go:2: import of os reaches the machine",
		"antifoul/rank.go:2: import of os reaches the machine",
		"compat/houses/x.go:2: import of os reaches the machine",
		"coverage/examples/not_spare.go:2: import of os reaches the machine",
		"loose.go:2: import of os reaches the machine",
		"tables/quantity/x.go:2: import of os reaches the machine",
	}
	if diff := cmp.Diff(want, Purity(fsys)); diff != "" {
		t.Errorf("breaches (-want +got):\n%s", diff)
	}
}

// What cannot be parsed cannot be called pure.
func TestPurityReportsABrokenFile(t *testing.T) {
	fsys := fstest.MapFS{"coverage/broken.go": {Data: []byte("package coverage\nfunc {")}}
	got := Purity(fsys)
	if len(got) != 1 || !strings.HasPrefix(got[0], "coverage/broken.go does not parse: ") {
		t.Errorf("one breach that names coverage/broken.go is expected, got %q", got)
	}
}
