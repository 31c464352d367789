package report

import _ "embed"

//go:embed schema/job.schema.json
var jobSchema string

// JobSchema is the JSON Schema (draft 2020-12) of the document that the format JSON writes. Within one schema number it is open: new keys may come, so a
// reader leaves alone what it does not know.
func JobSchema() string { return jobSchema }
