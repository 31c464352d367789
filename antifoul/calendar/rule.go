package calendar

import "boatyard.example/bottomwork/tables/finding"

// The rules of a plan, rows of rules_calendar.toml.
const (
	RuleNoWindow      finding.ID = "calendar-no-window"
	RuleWindowWeather finding.ID = "calendar-window-weather"
	RuleNoFreeHour    finding.ID = "calendar-window-no-hour"
	RuleNoFreeHours   finding.ID = "calendar-window-no-hour-often"
	RuleTogetherOften finding.ID = "calendar-one-window-often"
	RuleNoRoomLater   finding.ID = "calendar-window-no-room"
	RuleStands        finding.ID = "calendar-stands-too-long"
	RuleTooFew        finding.ID = "calendar-too-few-hours"
	RuleLate          finding.ID = "calendar-not-ready"
	RuleNoReserve     finding.ID = "calendar-no-reserve"
	RuleNoHour        finding.ID = "calendar-no-hour"
	RuleBooked        finding.ID = "calendar-booked"
	RuleYardsDay      finding.ID = "calendar-yards-day"
	RuleLongCoat      finding.ID = "calendar-long-coat"
	RuleNeverDry      finding.ID = "calendar-never-dry"
	RuleNoForecast    finding.ID = "calendar-no-forecast"
	RuleForecast      finding.ID = "calendar-forecast-ends"
	RuleMeasure       finding.ID = "calendar-measure"
	RuleTogether      finding.ID = "calendar-one-window"
	RuleTight         finding.ID = "calendar-last-start"
)

// The rules of one morning.
const (
	RuleGo       finding.ID = "morning-go"
	RuleRead     finding.ID = "morning-measure"
	RuleUntil    finding.ID = "morning-wait"
	RuleNotToday finding.ID = "morning-not-today"
	RuleNoCoat   finding.ID = "morning-no-coat"
	RuleBefore   finding.ID = "morning-not-yet"
)
