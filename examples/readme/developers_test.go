package readme_test

import (
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// heldBy says how a command of DEVELOPERS.md, or a go test or go mod of README.md, is held.
type heldBy struct {
	run string // what is run: the line as it stands, or cheaper where an argument says only how long, how many or where to
	why string // why it is not run, or not as it stands
}

// asItStands is a command that is run as the page has it.
const asItStands = "as it stands"

var developersCommands = map[string]heldBy{
	"go test ./...":      {why: "it would run itself"},
	".ci/run":            {why: "it would run itself"},
	".ci/fuzz 2m":        {why: "minutes a test; .ci/run runs it for two seconds each"},
	".ci/schemas":        {why: ".ci/run runs it, with a validator from the module proxy"},
	".ci/broken":         {why: ".ci/run runs it, with linters from the module proxy"},
	"go run ./.ci/api":   {run: asItStands},
	"go run ./.ci/moved": {why: "without the revision, which the line of the table has"},

	"go run ./.ci/api -write":                                              {run: "go run ./.ci/api -write -kept DIR/api.txt", why: "the list stays as it is"},
	"go run ./.ci/moved v1.2.0":                                            {run: "go run ./.ci/moved HEAD", why: "a copy need not have a release"},
	"go test -run NoInvented -v ./tables":                                  {run: asItStands},
	"go test ./antifoul -run Panel -v":                                     {run: asItStands},
	"go test ./antifoul -run AnyBoat -boats 100000":                        {run: "go test ./antifoul -run AnyBoat -boats 20", why: "a quarter of an hour"},
	"go test ./compat -run ByClass -update":                                {run: "go test ./compat -run ByClass", why: "what is kept stays as it is"},
	"go test ./antifoul -run BoatSchema -update":                           {run: "go test ./antifoul -run BoatSchema", why: "what is kept stays as it is"},
	"go test ./antifoul/report -run JobSchema -update":                     {run: "go test ./antifoul/report -run JobSchema", why: "what is kept stays as it is"},
	"go test -run '^$' -fuzz '^FuzzParse$' -fuzztime 1m ./tables/quantity": {run: "go test -run '^$' -fuzz '^FuzzParse$' -fuzztime 10x ./tables/quantity", why: "a minute"},
	"go run ./.ci/mutate -pkg ./compat -n 30 -seed 4 ./compat": {
		run: "go run ./.ci/mutate -pkg ./antifoul/cost -n 1 -seed 4 -want 0 ./antifoul/cost", why: "minutes; a small package and one change, noticed or not",
	},
	"go test ./examples/bottomjob ./examples/overcoat ./examples/surveynote -update": {why: "what is kept stays as it is; go test ./... runs them without"},
	"go test -run '^$' -bench . -benchmem ./...":                                     {why: "minutes"},
	"GOARCH=386 go test ./antifoul/calendar ./antifoul/report":                       {why: "ten minutes each"},
	"go test -run '^$' -bench 'Rank$|Plan$' -benchmem -count 10 ./antifoul >old.out": {
		run: "go test -run '^$' -bench 'Rank$|Plan$' -benchmem -count 1 -benchtime 1x ./antifoul", why: "ten times a second each, before a change and after it",
	},
	"go test -run '^$' -bench 'Rank$|Plan$' -benchmem -count 10 ./antifoul >new.out": {why: "the same after the change"},
	"go tool -modfile=.ci/tools/go.mod benchstat old.out new.out":                    {why: "fetched from the module proxy"},
	"go tool -modfile=.ci/tools/go.mod NAME":                                         {why: "NAME stands for a tool"},
	"go mod edit -module new.example/path":                                           {why: "it renames the module"},
}

// developersShow lists what DEVELOPERS.md shows, and those commands of README.md that TestTheCommandsRun leaves to this file.
func developersShow(t *testing.T, root string) []string {
	t.Helper()
	out := commands(read(t, filepath.Join(root, "DEVELOPERS.md")), root)
	for _, c := range commands(read(t, filepath.Join(root, "README.md")), root) {
		if strings.HasPrefix(c, "go test ") || strings.HasPrefix(c, "go mod ") {
			out = append(out, c)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Each command that DEVELOPERS.md shows is run or has the reason why not, and what it names exists: packages, scripts, tools, flags, and for
// each pattern a test, a benchmark or a fuzz test.
func TestDevelopersCommandsNameWhatThereIs(t *testing.T) {
	const root = "../.."
	shown := developersShow(t, root)
	if len(shown) < 20 {
		t.Fatalf("%d commands are found: does the pattern still fit?", len(shown))
	}
	for _, line := range shown {
		if _, ok := developersCommands[line]; !ok {
			t.Errorf("%s: nothing says how it is held", line)
		}
		for _, fault := range names(root, line) {
			t.Errorf("%s: %s", line, fault)
		}
	}
	for line, h := range developersCommands {
		if !slices.Contains(shown, line) {
			t.Errorf("%s: no page shows it", line)
		}
		if (h.run == asItStands) != (h.why == "") {
			t.Errorf("%s: run %q because %q", line, h.run, h.why)
		}
		if script, _, _ := strings.Cut(line, " "); strings.Contains(h.why, ".ci/run runs it") && !strings.Contains(read(t, root+"/.ci/run"), " "+script) {
			t.Errorf("%s: .ci/run does not run it", line)
		}
	}
}

// The commands of DEVELOPERS.md that take seconds are run.
func TestDevelopersCommandsRun(t *testing.T) {
	if testing.Short() || underRace {
		t.Skip("runs the go command")
	}
	if _, err := exec.LookPath("go"); err != nil {
		t.Skip(err)
	}
	for _, line := range slices.Sorted(maps.Keys(developersCommands)) {
		run := developersCommands[line].run
		if run == "" {
			continue
		}
		if run == asItStands {
			run = line
		}
		t.Run(line, func(t *testing.T) {
			args := words(strings.ReplaceAll(run, "DIR", filepath.ToSlash(t.TempDir())))
			if slices.Contains(args, "HEAD") && exec.CommandContext(t.Context(), "git", "-C", "../..", "rev-parse", "HEAD").Run() != nil {
				t.Skip("no history here")
			}
			cmd := exec.CommandContext(t.Context(), args[0], args[1:]...)
			cmd.Dir = "../.."
			out, err := cmd.CombinedOutput()
			if err != nil {
				t.Fatalf("%v\n%s", err, out)
			}
			for _, empty := range []string{"no tests to run", "no test files", "no fuzz tests to fuzz"} {
				if strings.Contains(string(out), empty) {
					t.Errorf("%s: %s", run, out)
				}
			}
			if i := slices.Index(args, "-bench"); i >= 0 {
				for one := range strings.SplitSeq(args[i+1], "|") {
					if !strings.Contains(string(out), "Benchmark"+strings.Trim(one, "^$")+"-") && !strings.Contains(string(out), "Benchmark"+strings.Trim(one, "^$")+" ") {
						t.Errorf("no benchmark %s ran:\n%s", one, out)
					}
				}
			}
		})
	}
}

// A page with slips of each kind: every one is found, and what is right beside it is left alone.
func TestDevelopersCommandsCanFail(t *testing.T) {
	const root = "../.."
	for _, line := range developersShow(t, root) {
		if strings.Contains(line, "NoInvented") && len(names(root, strings.ReplaceAll(line, "NoInvented", "NoInventedAtAll"))) != 1 {
			t.Errorf("a pattern that matches nothing is not found in %s", line)
		}
	}
	for line, want := range map[string]string{
		"go test ./antifoul -run AnyBoat -boats 100000":                         "",
		"go test ./antifoul -run NoBoatAtAll -boats 100000":                     "-run NoBoatAtAll matches nothing in ./antifoul",
		"go test ./antifoul -run 'AnyBoat|NoBoatAtAll'":                         "-run NoBoatAtAll matches nothing in ./antifoul",
		"go test ./antifoul -run '['":                                           "-run [: error parsing regexp: missing closing ]: `[`",
		"go test ./antifoul -run AnyBoat -ships 100000":                         "-ships is no flag of ./antifoul",
		"go test ./compat -run ByClass -boats 3":                                "-boats is no flag of ./compat",
		"go test ./antifoul ./compat -run ByClass -update":                      "-run ByClass matches nothing in ./antifoul",
		"go test ./antifouling":                                                 "no package ./antifouling",
		"go test ./antifouling/...":                                             "no package ./antifouling/...",
		"go test -run '^$' -bench 'Rank$|Plans$' ./antifoul >old.out":           "-bench Plans$ matches nothing in ./antifoul",
		"go test -run '^$' -fuzz '^FuzzParsed$' -fuzztime 1m ./tables/quantity": "-fuzz ^FuzzParsed$ matches nothing in ./tables/quantity",
		"GOARCH=386 go test ./antifoul/calender":                                "no package ./antifoul/calender",
		"go run ./.ci/api -rewrite":                                             "-rewrite is no flag of ./.ci/api",
		"go run ./.ci/mutate -pkg ./compact -n 30 ./compat":                     "no package ./compact",
		"go run ./.ci/removed v1.2.0":                                           "no package ./.ci/removed",
		"go run ./tables":                                                       "./tables is no command",
		"go tool -modfile=.ci/tools/go.mod benchstat old.out":                   "",
		"go tool -modfile=.ci/tools/go.mod benchstats old.out":                  "benchstats is no tool of .ci/tools/go.mod",
		"go tool -modfile=.ci/tool/go.mod NAME":                                 "no file .ci/tool/go.mod",
		".ci/schemas":                                                           "",
		".ci/scheme":                                                            "no file .ci/scheme",
		".ci/api.txt 2":                                                         ".ci/api.txt cannot be run",
		"go build ./...":                                                        "nothing is known of go build",
	} {
		if got := strings.Join(names(root, line), "; "); got != want {
			t.Errorf("%s: %q, want %q", line, got, want)
		}
	}
	page := "Run `go test ./x -run A` or\n`.ci/run`, see `.ci/api.txt` and `.ci/mutate`, `.ci/none`.\n\n| `GOARCH=386 go test ./y` | `go` |\n\n```sh\ngo vet ./...\n# no command\n```\n\n```go\ngo f()\n```\n"
	if got, want := strings.Join(commands(page, root), "; "), "go test ./x -run A; .ci/run; .ci/none; GOARCH=386 go test ./y; go vet ./..."; got != want {
		t.Errorf("of the page: %q, want %q", got, want)
	}
	if got := words(`go test -run '^$' "a b" c=d`); strings.Join(got, ";") != "go;test;-run;^$;a b;c=d" {
		t.Errorf("words: %q", got)
	}
	if _, err := os.Stat(filepath.Join(root, ".ci/none")); err == nil {
		t.Error(".ci/none is there: this shows nothing")
	}
}
