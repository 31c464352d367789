package antifoul

import _ "embed"

//go:embed schema/boat.schema.json
var boatSchema string

// BoatSchema is the JSON Schema (draft 2020-12) of a boat file, for editors that complete and check TOML by one. Dates are texts there, as tools that
// hold TOML against a schema make them. Keys of table rows (coatings, materials, zones, colours, places) are any text, since own tables add rows;
// what only the whole boat shows, as a draught longer than the boat, is left to ReadBoat too. What ReadBoat takes the schema takes.
func BoatSchema() string { return boatSchema }
