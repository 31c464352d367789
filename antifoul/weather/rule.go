package weather

import "boatyard.example/bottomwork/tables/finding"

// The rules of an hour, rows of rules_weather.toml.
const (
	RuleCold     finding.ID = "hour-too-cold"
	RuleNearCold finding.ID = "hour-near-cold"
	RuleHot      finding.ID = "hour-too-hot"
	RuleNearHot  finding.ID = "hour-near-hot"
	RuleDew      finding.ID = "hour-dew"
	RuleNearDew  finding.ID = "hour-near-dew"
	RuleHumid    finding.ID = "hour-humid"
	RuleRain     finding.ID = "hour-rain"
	RuleWind     finding.ID = "hour-wind"
	RuleWarming  finding.ID = "hour-warming"
	RuleMeasure  finding.ID = "hour-measure"
	RuleMayPaint finding.ID = "hour-may-paint"
)

// The rules of a fresh film in an hour.
const (
	RuleCondenses     finding.ID = "hour-condenses"
	RuleNearCondenses finding.ID = "hour-near-condensing"
	RuleWetUnknown    finding.ID = "hour-wet-unknown"
	RuleStaysDry      finding.ID = "hour-stays-dry"
)

// The rules of what was filled into a forecast.
const (
	RuleDewFromLow finding.ID = "forecast-dew-from-low"
	RuleDayCurve   finding.ID = "forecast-day-curve"
)
