package report

import "boatyard.example/bottomwork/tables/finding"

// outSource is a document that a basis names.
type outSource struct {
	Key     string   `json:"key" says:"key of the source"`
	Title   string   `json:"title" says:"its title"`
	Edition string   `json:"edition,omitempty" says:"edition or year"`
	Kind    string   `json:"kind,omitempty" says:"what kind of document it is"`
	Note    string   `json:"note,omitempty" says:"what was read of it"`
	Places  []string `json:"places,omitempty" says:"places in it that values of this document were read from"`
}

// outOwnCell is one cell of an own table.
type outOwnCell struct {
	Table string     `json:"table" says:"the table"`
	Row   string     `json:"row" says:"key of the row"`
	Field string     `json:"field" says:"the field"`
	New   bool       `json:"new_row" says:"true: the whole row stands in an own table only"`
	Basis []outBasis `json:"basis,omitempty" says:"what it rests on"`
}

// outSources encodes the sources cited so far.
func (c *composer) outSources() []outSource {
	var out []outSource
	for _, from := range c.sources {
		x := outSource{Key: from.key, Title: from.key, Places: from.places}
		if s, err := c.job.Book.Source(from.key); err == nil {
			x.Title, x.Edition, x.Kind, x.Note = s.Title, s.Edition, s.Kind, s.Note
		}
		out = append(out, x)
	}
	return out
}

func (c *composer) outOwnCells() []outOwnCell {
	var out []outOwnCell
	for cell := range c.job.Book.OwnCells() {
		out = append(out, outOwnCell{cell.Table, cell.Key, cell.Field, cell.New, c.outBases([]finding.Basis{cell.Basis})})
	}
	return out
}
