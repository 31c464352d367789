package report

// block is one piece of a report. The renderers know these five and nothing else.
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
	}
	table struct {
		head []string
		rows [][]string
	}
	// pairs is a list of names and values.
	pairs struct{ rows [][2]string }
)

func (heading) isBlock() {}
func (para) isBlock()    {}
func (bullets) isBlock() {}
func (table) isBlock()   {}
func (pairs) isBlock()   {}
