// Command mutate asks whether the tests would notice: it changes one thing at a time in lines that tests cover, runs the tests, and lists the changes that
// nobody noticed.
//
//	go run ./.ci/mutate -pkg ./compat -n 50 -seed 1 ./compat ./antifoul ./examples/bottomjob
//
// The arguments are the packages whose tests are run for each change, in this order, until one fails. Sources stay as they are: changes are laid over them, all
// that are drawn into one test binary, which is told by its environment which of them to follow. First only those tests are run, with -short, that come
// through the changed line; what they do not notice, all tests are asked. A change that does not compile counts for nothing and is
// replaced by another. A change that stands in .ci/mutants.txt with the reason why nobody can notice it is not drawn. It exits 1 when less than the share of
// -want was noticed, or when the list names a change that there is no longer.
//
// To go through one file, every change of it: -files '^bill' -n 9999. With -short it asks no further than the first tests, which is a quick look and no measure.
package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"time"
)

func main() {
	pkg := flag.String("pkg", "", "package `folder` to change")
	n := flag.Int("n", 50, "`number` of changes")
	seed := flag.Uint64("seed", 1, "of the draw")
	want := flag.Float64("want", 0.9, "`share` that must be noticed")
	list := flag.String("explained", ".ci/mutants.txt", "`file` of changes that nobody can notice")
	files := flag.String("files", "", "`regexp` of the names of the files to change; all where it is left out")
	short := flag.Bool("short", false, "a quick look: only tests that come through the changed line, with -short")
	atOnce := flag.Int("at-once", 2, "`number` of changes tried at once")
	flag.Parse()
	if *pkg == "" || flag.NArg() == 0 {
		fail("taken: -pkg folder, and the packages whose tests are run")
	}
	wanted, err := regexp.Compile(*files)
	check(err)
	dir, err := os.MkdirTemp("", "mutate-*")
	check(err)
	runs := make([]*run, flag.NArg())
	covered := lines{}
	for i, t := range flag.Args() {
		runs[i], err = survey(dir, *pkg, t, i, *atOnce)
		check(err)
		for file, ls := range runs[i].reach {
			for l := range ls {
				covered.add(file, l)
			}
		}
	}
	points, err := collect(*pkg, covered)
	check(err)
	points, stale, err := leaveOut(points, *pkg, *list)
	check(err)
	for _, s := range stale {
		fmt.Printf("NO SUCH CHANGE %s\n", s)
	}
	points = slices.DeleteFunc(points, func(p point) bool { return !wanted.MatchString(filepath.Base(p.file)) })
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(points), func(i, j int) { points[i], points[j] = points[j], points[i] })
	fmt.Printf("%s: %d changes possible in covered lines\n", *pkg, len(points))

	tried, noticed := trial(dir, *pkg, points, *n, *atOnce, *short, runs)
	check(os.RemoveAll(dir))
	if tried == 0 {
		fail("no change could be tried")
	}
	share := float64(noticed) / float64(tried)
	fmt.Printf("%s: %d of %d changes noticed, %.0f %%\n", *pkg, noticed, tried, 100*share)
	if share < *want || len(stale) > 0 {
		os.Exit(1)
	}
}

// trial lays the changes over the package and runs the tests with each, so many at once. What was not noticed is told in the order of the draw.
func trial(dir, pkg string, points []point, n, atOnce int, short bool, runs []*run) (tried, noticed int) {
	drawn, overlay, err := lay(dir, pkg, points, n)
	check(err)
	for i, r := range runs {
		check(r.compile(dir, overlay, i, short))
	}
	lived := make([]chan bool, len(drawn))
	room := make(chan struct{}, max(1, atOnce))
	for i := range drawn {
		lived[i] = make(chan bool, 1)
	}
	go func() {
		for i, p := range drawn {
			room <- struct{}{}
			go func() {
				lived[i] <- !slices.ContainsFunc(runs, func(r *run) bool { return r.notices(p) }) && (short || !slices.ContainsFunc(runs, func(r *run) bool { return r.fails(p.id) }))
				<-room
			}()
		}
	}()
	for i, p := range drawn {
		tried++
		if <-lived[i] {
			fmt.Printf("NOT NOTICED %s: %s: %s\n", p.at, p.what, p.line)
		} else {
			noticed++
		}
	}
	return tried, noticed
}

// patience is how often the time of unchanged tests a change may take, and what is added to it: a change that hangs is noticed.
const (
	patience = 6
	grace    = 10 * time.Second
)

func check(err error) {
	if err != nil {
		fail(err.Error())
	}
}

func fail(why string) {
	fmt.Fprintln(os.Stderr, why)
	os.Exit(2)
}
