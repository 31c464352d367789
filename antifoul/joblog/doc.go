// Package joblog answers: what was really done, coat by coat, and can it have been so?
//
// A job log is a small TOML file that is kept during the job: one [[coat]] a coat laid on a part, one [[task]] for what is no coat, one
// [[gauged]] for each film that a gauge read before the launch, and after it one [[look]] for each look at the film. Nothing in it is a plan, and nothing of it is ever rewritten.
//
//	log, err := joblog.Read(tables.Default(), os.DirFS("."), "job-log.toml", time.UTC)
//	if err != nil {
//		return err // every fault of the file, one a line
//	}
//	fmt.Println(len(log.Coats), log.Coats[0].Begun)
//
// Check holds the log against itself: numbers, names, order, times on one place. What needs the boat or the plan (parts, films from
// litres, windows, the dew point against air and humidity) is asked by the package antifoul.
//
//	question                                  file
//	what stands in a log                      log.go
//	how is it read, which version             read.go
//	how is a moment written                   moment.go
//	can each entry have been so               check.go
//	can they all have been so together        order.go
//
// Not covered: money, hours of work, photographs. A coat that went on over two days is two sections with the same number on different zones.
package joblog
