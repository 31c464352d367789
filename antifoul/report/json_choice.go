package report

import (
	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outAnswer is the job in a few lines.
type outAnswer struct {
	Parts    []outPartAnswer `json:"parts" says:"one for each part, in the order of the boat file"`
	Days     string          `json:"days,omitempty" says:"the plan of days in a sentence or two"`
	Without  []string        `json:"without,omitempty" says:"parts that should be painted and for which nothing may be used or suits"`
	Findings []outFinding    `json:"findings,omitempty" says:"what is between the parts, and wishes that were refused"`
}

// outPartAnswer is the answer for one part.
type outPartAnswer struct {
	Part     string   `json:"part" says:"name of the part"`
	Zone     string   `json:"zone" says:"key of its zone"`
	LeftBare bool     `json:"left_bare" says:"true: it is never painted"`
	Coating  *outName `json:"coating,omitempty" says:"the type chosen; absent where it gets none or nothing may be used"`
	Tier     tierWord `json:"tier,omitempty" says:"the tier of that type"`
	Says     string   `json:"says" says:"the same in words"`
}

// tierWord is a tier.
type tierWord string

// outRanking is every type of the tables for one part.
type outRanking struct {
	Part     string       `json:"part" says:"name of the part"`
	Zone     string       `json:"zone" says:"key of its zone"`
	LeftBare []outFinding `json:"left_bare,omitempty" says:"why it is never painted; it then ranks no type"`
	InWords  []outFinding `json:"in_words,omitempty" says:"the choice in a few findings"`
	Types    []outPlace   `json:"types,omitempty" says:"every type, best first, ruled-out ones last"`
	Firm     *outFirm     `json:"firm,omitempty" says:"how firm the first place is"`
	Swaps    []outChange  `json:"swaps,omitempty" says:"single facts of her use that would put another type first"`
	Lifts    []outChange  `json:"lifts,omitempty" says:"single facts that would let a type in that her use rules out"`
}

// outPlace is one type's place.
type outPlace struct {
	Coating  outName        `json:"coating" says:"the type"`
	Rank     int            `json:"rank" says:"its place"`
	Tied     bool           `json:"tied" says:"true: another type shares the place"`
	Tier     tierWord       `json:"tier" says:"how it stands; no score lifts a type over its tier"`
	Score    float64        `json:"score" says:"points that order the types of one tier, 50 is neutral"`
	Why      []string       `json:"why,omitempty" says:"what moved it most, or every reason that rules it out"`
	Asks     []string       `json:"asks,omitempty" says:"ids of the rules whose questions stand open"`
	Past     []outFinding   `json:"past,omitempty" says:"what own past results at her berth tell"`
	Findings []outFinding   `json:"findings,omitempty" says:"of metal, zone, old film and way"`
	Law      []outFinding   `json:"law,omitempty" says:"of the places where she is painted, kept and visited"`
	Way      *outWay        `json:"way,omitempty" says:"the cheapest way from what is there; absent where none leads there"`
	Criteria []outCriterion `json:"criteria,omitempty" says:"what the score is made of"`
}

// outWay is a way from what is there to the coating.
type outWay struct {
	Steps   []outStep   `json:"steps,omitempty" says:"the work, in order"`
	Keeps   []outName   `json:"keeps,omitempty" says:"films that stay, the lowest first"`
	Adds    []outName   `json:"adds,omitempty" says:"undercoats that it puts on, the lowest first"`
	HoursM2 *outNumbers `json:"hours_m2,omitempty" says:"hours of one hand for a square metre"`
}

// outCriterion is one criterion of a score.
type outCriterion struct {
	Key     string      `json:"key" says:"key of the criterion"`
	Name    string      `json:"name" says:"what it asks"`
	Judged  bool        `json:"judged" says:"false: the boat file does not say, so it counts as neutral"`
	Value   float64     `json:"value" says:"0, does not suit, to 1, suits"`
	Points  float64     `json:"points" says:"what it added to the score or took from it"`
	Bars    bool        `json:"bars" says:"true: the use speaks against the type, whatever its score"`
	Boat    outValue    `json:"boat,omitzero" says:"the boat's value"`
	Type    outValue    `json:"type,omitzero" says:"the type's value"`
	Finding *outFinding `json:"finding,omitempty" says:"why"`
}

// outFirm is how often the first type stays first when the ranges of the tables are drawn.
type outFirm struct {
	Draws  int       `json:"draws" says:"number of draws"`
	Seed   uint64    `json:"seed" says:"seed of the draws"`
	Rivals []outLead `json:"rivals" says:"the next types, each against the first"`
}

// outLead is the first against one other type.
type outLead struct {
	Coating    outName        `json:"coating" says:"the other type"`
	Share      quantity.Share `json:"share" says:"draws in which the first leads"`
	TooClose   bool           `json:"too_close" says:"true: neither leads in four of five"`
	HowItStand outFinding     `json:"finding" says:"the same in words"`
}

// outChange is one fact of her use, turned.
type outChange struct {
	Key     string     `json:"key" says:"key of the boat file"`
	From    outValue   `json:"from,omitzero" says:"what she has"`
	To      outValue   `json:"to,omitzero" says:"the nearest value that changes the answer"`
	Type    string     `json:"type,omitempty" says:"key of the type that then comes first, or may be used; absent where none may"`
	Finding outFinding `json:"finding" says:"the same in words"`
}

func (c *composer) outAnswer() outAnswer {
	out := outAnswer{Days: c.headline(), Without: c.job.Without()}
	for _, p := range c.job.Ranking.Parts {
		x := outPartAnswer{Part: p.Part, Zone: p.Zone, LeftBare: len(p.Left) > 0, Says: c.partAnswer(p)}
		if s, ok := c.job.Scheme(p.Part); ok && !x.LeftBare {
			k := coating(s.Coating)
			x.Coating = &k
			if place, ok := p.Of(k.Key); ok {
				x.Tier = tierWord(place.Tier.String())
			}
		}
		out.Parts = append(out.Parts, x)
	}
	for _, f := range c.job.Findings {
		if f.Verdict >= finding.Caution {
			out.Findings = append(out.Findings, *c.outFinding(f))
		}
	}
	return out
}

func (c *composer) outRankings() []outRanking {
	var out []outRanking
	for _, p := range c.job.Ranking.Parts {
		x := outRanking{Part: p.Part, Zone: p.Zone, LeftBare: c.outFindings(p.Left)}
		if len(p.Places) > 0 {
			x.InWords, x.Swaps, x.Lifts = c.outFindings(p.InWords()), c.outChanges(p.Swaps()), c.outChanges(p.Lifts())
		}
		for _, y := range p.Places {
			x.Types = append(x.Types, c.outPlace(y))
		}
		if rows := p.Closeness(draws, seed, rivals).Rows; len(rows) > 0 {
			x.Firm = &outFirm{Draws: draws, Seed: seed}
			for _, l := range rows {
				x.Firm.Rivals = append(x.Firm.Rivals, outLead{coating(l.Coating), amountNear(100*l.Share, quantity.Percent, quantity.Nearest), l.Equal, *c.outFinding(l.Finding)})
			}
		}
		out = append(out, x)
	}
	return out
}

func (c *composer) outPlace(p antifoul.Place) outPlace {
	out := outPlace{
		Coating: coating(p.Coating()), Rank: p.Rank, Tied: p.Tied, Tier: tierWord(p.Tier.String()), Score: p.Score,
		Past: c.outFindings(p.Past), Findings: c.outFindings(p.Findings()), Law: c.outFindings(p.Law()), Way: c.outWay(p.Route()),
	}
	for _, f := range p.Reasons() {
		out.Why = append(out.Why, c.it(f))
	}
	for _, f := range p.Asks() {
		out.Asks = append(out.Asks, string(f.Rule))
	}
	for _, k := range p.Criteria() {
		name := k.Key
		if row, err := c.job.Book.Criterion(k.Key); err == nil {
			name = row.Name
		}
		out.Criteria = append(out.Criteria, outCriterion{k.Key, name, k.Judged, digits(k.Value), digits(k.Points), k.Bars, outValueOf(k.Boat), outValueOf(k.Type), c.outFinding(k.Finding)})
	}
	return out
}

// outWay encodes a route; nil for none.
func (c *composer) outWay(r compat.Route) *outWay {
	if r.Findings.Worst() == finding.Forbidden && len(r.Steps) == 0 {
		return nil
	}
	out := &outWay{Steps: outSteps(r.Steps), HoursM2: plainRange(r.Effort)}
	for _, l := range r.Keeps {
		out.Keeps = append(out.Keeps, coating(l.Coating))
	}
	for _, l := range r.Adds {
		out.Adds = append(out.Adds, coating(l.Coating))
	}
	return out
}

func (c *composer) outChanges(list []antifoul.Change) []outChange {
	var out []outChange
	for _, x := range list {
		out = append(out, outChange{x.Key, outValueOf(x.From), outValueOf(x.To), x.Type, *c.outFinding(x.Finding)})
	}
	return out
}
