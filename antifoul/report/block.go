package report

// block is one piece of a report. The renderers know these six and nothing else.
type block interface{ isBlock() }

type (
	heading struct {
		level int // 1 to 3
		text  string
	}
	para    struct{ text string }
	bullets struct {
		items    []string
		numbered bool
		runOn    bool // many short items, which may run on where room is dear
	}
	table struct {
		head []string
		rows [][]string
		wide bool // it has so many columns that a printed page gives it its whole width
	}
	// pairs is a list of names and values.
	pairs struct{ rows [][2]string }
	// drawing is a picture that shows what the words beside it say. Text and Markdown leave it out; HTML has both.
	drawing struct {
		title, says string // what it is of, and every fact that it shows
		note        string // how to read it, under the title; may be empty
		body        canvas
	}
)

func (heading) isBlock() {}
func (para) isBlock()    {}
func (bullets) isBlock() {}
func (table) isBlock()   {}
func (pairs) isBlock()   {}
func (drawing) isBlock() {}
