// Package survey answers one question: what was seen on her, and what does it ask for?
//
// A Survey is what a surveyor or a yard foreman writes down ashore: how she was seen, what each place showed, what a moisture meter read,
// how the fittings are. Check finds what cannot be; Judge turns it into advice, each with when it is wanted and why.
//
//	s := survey.Survey{Seen: []survey.Place{{Part: "hull", Zone: "waterline", Marks: []survey.Mark{{What: "rust", Grades: []string{"iso-4628-3-ri-4"}}}}}}
//	a, err := survey.Judge(book, s, parts, day)
//	for _, x := range a.Advice {
//		fmt.Println(x.Urgency, x.Row.Key, x.Row.Do)
//	}
//
// What may be seen, from which grade on, and what it then asks for are rows of observations.toml; scales are rows of grade. The state of
// a film that is planned with stays that of compat.Part: where a look says otherwise the answer says so, in Differs, and changes nothing.
//
// Not covered: whether a hull is strong, what a corroded plate has left, and anything above the paint line.
package survey

import "boatyard.example/bottomwork/tables/finding"

// The rules of this package, rows of rules_survey.toml.
const (
	RuleBeforeLaunch finding.ID = "survey-before-launch"
	RuleThisHaulOut  finding.ID = "survey-this-haul-out"
	RuleMonitor      finding.ID = "survey-monitor"
	RuleNoWork       finding.ID = "survey-no-work"
	RuleNotGraded    finding.ID = "survey-not-graded"
	RuleState        finding.ID = "survey-state"
	RuleStateOff     finding.ID = "survey-state-off"
	RuleFilmUnknown  finding.ID = "survey-film-unknown"

	RuleCoatingDiffers   finding.ID = "survey-coating-differs"
	RuleColourDiffers    finding.ID = "survey-colour-differs"
	RuleStateWorse       finding.ID = "survey-state-worse"
	RuleStateMilder      finding.ID = "survey-state-milder"
	RuleStateNotReported finding.ID = "survey-state-not-reported"
	RuleShareNotGrade    finding.ID = "survey-share-not-grade"
	RuleLaminateDiffers  finding.ID = "survey-laminate-differs"

	RuleMoistureAsDry  finding.ID = "survey-moisture-as-dry"
	RuleMoistureHigher finding.ID = "survey-moisture-higher"
	RuleMoistureAlone  finding.ID = "survey-moisture-alone"
	RuleMoistureSoon   finding.ID = "survey-moisture-soon"
	RuleMoistureWash   finding.ID = "survey-moisture-wash"
	RuleMoistureWhen   finding.ID = "survey-moisture-when"
	RuleMeterReads     finding.ID = "survey-meter-reads"
	RuleMeterBeware    finding.ID = "survey-meter-beware"
	RuleMeterAsk       finding.ID = "survey-meter-ask"
	RuleMeterNot       finding.ID = "survey-meter-not"

	RuleNotAllSeen finding.ID = "survey-not-all-seen"
	RuleWashed     finding.ID = "survey-washed"
	RuleDayUnknown finding.ID = "survey-day-unknown"
	RuleOld        finding.ID = "survey-old"
)
