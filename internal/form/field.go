// Package form describes a plan as people fill it in: the cards with their
// fields, what may be chosen, what a new row starts with. It reads what was typed
// into the fields and writes what they show. The page builds its form from it and
// knows no field of its own.
package form

// Kinds of field.
const (
	Text   = "text"   // one line
	Length = "length" // typed with or without a unit; Form says how it is written
	Number = "number" // of Unit
	Choice = "choice" // one of Choices
	Check  = "check"  // there or not
)

// Short is the form of a length that is written as clubs and clearances are.
// Other forms are the kinds of units.ParseQuantity.
const Short = "short"

// Field is one value of the plan.
type Field struct {
	Path     string      `json:"path"` // in the plan, or within its row or part: ball.speed
	Label    string      `json:"label"`
	Kind     string      `json:"kind"`
	Form     string      `json:"form,omitempty"`
	Unit     string      `json:"unit,omitempty"`
	Hint     string      `json:"hint,omitempty"`
	Optional bool        `json:"optional,omitempty"` // blank leaves it to the defaults
	Choices  [][2]string `json:"choices,omitempty"`  // value and words
}

// Card is one part of the form that folds away.
type Card struct {
	ID     string  `json:"id"`
	Title  string  `json:"title"`
	Open   bool    `json:"open,omitempty"` // from the start
	Fields []Field `json:"fields,omitempty"`
	Lists  []List  `json:"lists,omitempty"`
	Parts  []Part  `json:"parts,omitempty"`
}

// List is a list of the plan whose rows come and go.
type List struct {
	Path      string  `json:"path"`
	Title     string  `json:"title"`
	One       string  `json:"one"`                 // what a row is
	Bare      bool    `json:"bare,omitempty"`      // the card's title says it all
	Duplicate bool    `json:"duplicate,omitempty"` // a row may be copied
	Fields    []Field `json:"fields"`
	More      *More   `json:"more,omitempty"`
}

// More is what most people leave alone in a row.
type More struct {
	Title   string   `json:"title"`
	Fields  []Field  `json:"fields"`
	Members []Member `json:"members,omitempty"`
}

// Member is a choice among the names of another list; none chosen stands for all.
type Member struct {
	Path  string `json:"path"`
	Title string `json:"title"`
	From  string `json:"from"` // the other list
}

// Part is a part of the plan that is there or not.
type Part struct {
	Path   string  `json:"path"`
	Title  string  `json:"title"`
	Fields []Field `json:"fields"`
}

// each calls visit with every field of the cards and the pattern of its paths in
// a plan, such as players[].height.
func each(visit func(pattern string, f *Field)) {
	under := func(base string, fields []Field) {
		for i := range fields {
			visit(base+fields[i].Path, &fields[i])
		}
	}
	for _, card := range Cards() {
		under("", card.Fields)
		for _, l := range card.Lists {
			under(l.Path+"[].", l.Fields)
			if l.More != nil {
				under(l.Path+"[].", l.More.Fields)
			}
		}
		for _, p := range card.Parts {
			under(p.Path+".", p.Fields)
		}
	}
}

// Value reads what was typed into a field that is not one of the cards'; a length that
// is bare is read in the units of the plan.
func (f *Field) Value(typed, system string) (float64, error) {
	v, _, err := f.read("", typed, system)
	return v, err
}

// Text is what such a field shows for a number.
func (f *Field) Text(v float64, system string) string { return f.show(v, system) }
