package readme_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// shell lists the lines of all sh blocks of a page.
func shell(t *testing.T, page string) []string {
	t.Helper()
	var out []string
	for _, m := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(read(t, page), -1) {
		for line := range strings.Lines(m[1]) {
			out = append(out, strings.TrimSpace(line))
		}
	}
	return out
}

// words parts a command line as a shell does that knows spaces and quotes.
func words(line string) []string {
	var out []string
	for _, m := range regexp.MustCompile(`"([^"]*)"|'([^']*)'|(\S+)`).FindAllStringSubmatch(line, -1) {
		out = append(out, m[1]+m[2]+m[3])
	}
	return out
}

// The commands that the README shows run as they stand there, from the module's root. What they write goes to a temporary folder,
// and a file that only a reader has is one of ours.
func TestTheCommandsRun(t *testing.T) {
	if testing.Short() || underRace {
		t.Skip("runs the go command")
	}
	if _, err := exec.LookPath("go"); err != nil {
		t.Skip(err)
	}
	dated := map[string]string{"boat.toml": "examples/boats/late.toml"}
	logged := map[string]string{"boat.toml": "examples/boats/steel.toml", "job-log.toml": "examples/boats/steel-log.toml"}
	hauled := map[string]string{"boat.toml": "examples/haulouts/boat-2027.toml", "job-log.toml": "examples/haulouts/log-2027.toml"}
	ran := 0
	for _, line := range shell(t, "../../README.md") {
		if !strings.HasPrefix(line, "go run ") && !strings.HasPrefix(line, "go build ") {
			continue
		}
		args := words(line)
		mine := dated
		if slices.Contains(args, "-log") {
			mine = logged // half way, asked about on a day
		}
		if slices.Contains(args, "-passport") {
			mine = hauled
		}
		if slices.Contains(args, "-note") {
			mine = map[string]string{"note.toml": "examples/surveynote/note.toml"}
		}
		dir := t.TempDir()
		for i, a := range args {
			switch {
			case args[max(i-1, 0)] == "-o" || args[max(i-1, 0)] == "-out" || args[max(i-1, 0)] == "-passport":
				args[i] = filepath.Join(dir, filepath.Base(a))
			case mine[a] != "":
				args[i] = mine[a]
			}
		}
		ran++
		t.Run(line, func(t *testing.T) {
			cmd := exec.CommandContext(t.Context(), args[0], args[1:]...)
			cmd.Dir = "../.."
			out, err := cmd.CombinedOutput()
			if err != nil {
				t.Fatalf("%v\n%s", err, out)
			}
			wrote, err := os.ReadDir(dir)
			if err != nil {
				t.Fatal(err)
			}
			if len(out) == 0 && len(wrote) == 0 {
				t.Error("it prints nothing and writes nothing")
			}
		})
	}
	if ran < 4 {
		t.Errorf("%d commands are found in the README", ran)
	}
}

// programs are the example commands that take flags, with the part of the README that tells of each, from its first words to those after it.
var programs = map[string][2]string{
	"bottomjob":       {"go run ./examples/bottomjob", "One question on one screen"},
	"overcoat":        {"One question on one screen", "A surveyor's condition note, with"},
	"surveynote":      {"A surveyor's condition note, with", "A yard's spring in one go"},
	"yardseason":      {"A yard's spring in one go", "Contents: "},
	"referencetables": {"**The tables themselves**", "**To cite a report,**"},
}

// A flag of an example command stands in the README's part on it, and a flag that stands there exists.
func TestTheFlagsAreTheCommands(t *testing.T) {
	text := read(t, "../../README.md")
	for name, part := range programs {
		_, rest, from := strings.Cut(text, part[0])
		told, _, to := strings.Cut(rest, part[1])
		if !from || !to {
			t.Fatalf("%s: README.md has no part from %q to %q", name, part[0], part[1])
		}
		told = part[0] + told
		var has []string
		for _, m := range regexp.MustCompile(`set\.(?:\w+Var\(&[\w.]+, |\w+\()"([a-z]+)"`).FindAllStringSubmatch(read(t, "../"+name+"/main.go"), -1) {
			has = append(has, "-"+m[1])
		}
		if len(has) == 0 {
			t.Fatalf("%s: no flags are found in its source", name)
		}
		var says []string
		for _, m := range regexp.MustCompile("`[^`\n]+`|(?m)^go run .*$").FindAllString(told, -1) {
			for i, w := range words(strings.Trim(m, "`")) {
				if regexp.MustCompile(`^-[a-z]+$`).MatchString(w) && (i == 0 || !strings.Contains(m, "go build")) {
					says = append(says, w)
				}
			}
		}
		for _, f := range has {
			if !slices.Contains(says, f) {
				t.Errorf("README.md does not tell of the flag %s of %s", f, name)
			}
		}
		for _, f := range says {
			if !slices.Contains(has, f) {
				t.Errorf("README.md tells of a flag %s of %s, which has none", f, name)
			}
		}
	}
	examples, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range examples {
		if main, err := os.ReadFile("../" + e.Name() + "/main.go"); err == nil && strings.Contains(string(main), "flag.NewFlagSet") {
			if _, ok := programs[e.Name()]; !ok {
				t.Errorf("%s takes flags, and programs does not say where README.md tells of them", e.Name())
			}
		}
	}
}
