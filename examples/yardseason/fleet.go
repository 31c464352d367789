package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"sync"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// boatJob is one boat of the season with her job.
type boatJob struct {
	file string
	job  *antifoul.Job
}

// name is what she is called here.
func (x boatJob) name() string {
	if n := x.job.Boat.Name; n != "" {
		return n
	}
	return x.file
}

// readFleet reads every TOML file of the folder; the error holds every fault of every file.
func readFleet(book *tables.Book, files fs.FS) (map[string]antifoul.Boat, error) {
	names, err := fs.Glob(files, "*.toml")
	if err != nil || len(names) == 0 {
		return nil, errors.Join(err, errors.New("-boats: no boat file, *.toml, in the folder"))
	}
	fleet := map[string]antifoul.Boat{}
	var faults []error
	for _, name := range names {
		boat, err := antifoul.ReadBoatWith(book, files, name)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		fleet[path.Base(name)] = boat
	}
	return fleet, errors.Join(faults...)
}

// planFleet plans every boat, on all cores: they share the book and nothing else. The jobs come back by launch day, then by name of the file.
func planFleet(book *tables.Book, fleet map[string]antifoul.Boat) ([]boatJob, error) {
	var names []string
	for name := range fleet {
		names = append(names, name)
	}
	slices.Sort(names)
	jobs := make([]boatJob, len(names))
	faults := make([]error, len(names))
	next := make(chan int)
	var yard sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		yard.Go(func() {
			for i := range next {
				job, err := antifoul.Plan(book, fleet[names[i]])
				if bad, ok := errors.AsType[finding.Faults](err); ok {
					err = bad.Under(names[i], "")
				}
				if err != nil {
					faults[i] = fmt.Errorf("%w", err)
				}
				jobs[i] = boatJob{names[i], job}
			}
		})
	}
	for i := range names {
		next <- i
	}
	close(next)
	yard.Wait()
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	slices.SortStableFunc(jobs, func(a, b boatJob) int {
		x, y := a.job.Boat.Work.Launch, b.job.Boat.Work.Launch
		switch {
		case x.Given() != y.Given():
			if x.Given() {
				return -1
			}
			return 1
		default:
			return x.Compare(y)
		}
	})
	return jobs, nil
}
