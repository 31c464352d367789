package joblog_test

import (
	"fmt"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/tables"
)

// A coat as it was noted, and one that cannot have been so.
func ExampleRead() {
	const coat = `
[log]
version = 1

[[coat]]
part = "hull"
layer = "working"
coat = 1
coating = "ablative-cuprous-multi"
begun = "2027-04-17 09:30"
`
	files := fstest.MapFS{
		"log.toml": {Data: []byte(coat + "ended = \"2027-04-17 11:15\"\n")},
		"odd.toml": {Data: []byte(coat + "ended = \"2027-04-17 08:15\"\n")},
	}
	l, err := joblog.Read(tables.Default(), files, "log.toml", time.UTC)
	fmt.Println(l.Coats[0].Coating, l.Coats[0].Ended.Sub(l.Coats[0].Begun), err)
	_, err = joblog.Read(tables.Default(), files, "odd.toml", time.UTC)
	fmt.Println(err)
	// Output:
	// ablative-cuprous-multi 1h45m0s <nil>
	// odd.toml: coat[1].ended: impossible: read 2027-04-17 08:15; accepted: after it was begun, 2027-04-17 09:30
}
