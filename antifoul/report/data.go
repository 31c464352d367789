package report

import "io"

// data reports whether the format is for programs: it has one form, long or short, and no pages.
func (f Format) data() bool {
	switch f {
	case Calendar, JSON, LayersCSV, ShoppingCSV:
		return true
	default: // pages for readers
		return false
	}
}

// writeData writes the job in a format for programs.
func (c *composer) writeData(w io.Writer, f Format) error {
	switch f {
	case JSON:
		return c.writeJSON(w)
	case LayersCSV:
		return c.writeLayersCSV(w)
	case ShoppingCSV:
		return c.writeShoppingCSV(w)
	default:
		return c.writeCalendar(w)
	}
}
