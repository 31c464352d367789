package compat

import "boatyard.example/bottomwork/tables/finding"

// The rules that this package decides by itself. The rules of overcoating and of a found state are named by their rows.
const (
	ruleMaterialUnknown finding.ID = "material-unknown"
	ruleNeverPainted    finding.ID = "never-painted"
	ruleBareStays       finding.ID = "bare-stays"
	ruleAskPartMaker    finding.ID = "ask-part-maker"
	ruleMetalTakes      finding.ID = "metal-takes"
	ruleMetalNever      finding.ID = "metal-never"
	ruleOverBarrier     finding.ID = "metal-over-barrier"
	ruleBarrierThere    finding.ID = "metal-barrier-there"
	ruleMetalAsk        finding.ID = "metal-ask"
	ruleOldCopperOff    finding.ID = "old-copper-off"
	ruleNotReported     finding.ID = "not-reported"
	ruleCarrierOnly     finding.ID = "carrier-only"
	ruleOnePackOnly     finding.ID = "one-pack-only"
	ruleZoneMechanism   finding.ID = "zone-mechanism"
	ruleZoneUnknown     finding.ID = "zone-unknown"
	ruleBarrierNeeded   finding.ID = "barrier-needed"
	ruleBarrierAdvised  finding.ID = "barrier-advised"
	ruleBarrierHarms    finding.ID = "barrier-harms"
	ruleWetLaminate     finding.ID = "wet-laminate"

	ruleTooThick     finding.ID = "film-too-thick"
	ruleStateUnknown finding.ID = "state-unknown"
	ruleWindowEarly  finding.ID = "window-early"
	ruleWindowPast   finding.ID = "window-past"
	ruleUnwritten    finding.ID = "over-unwritten"
	ruleUndercoat    finding.ID = "over-undercoat"
	ruleCopperBelow  finding.ID = "over-copper-below"

	ruleStackEmpty     finding.ID = "stack-empty"
	ruleBarrierThin    finding.ID = "stack-barrier-thin"
	ruleBuried         finding.ID = "stack-buried"
	ruleBuriedAsk      finding.ID = "stack-buried-ask"
	ruleFoundPair      finding.ID = "stack-found-pair"
	ruleLightness      finding.ID = "stack-lightness"
	ruleLightnessThere finding.ID = "stack-lightness-there"
	ruleLightnessAsk   finding.ID = "stack-lightness-ask"
	ruleAirNew         finding.ID = "stack-air-new"
	ruleLaunchEarly    finding.ID = "stack-launch-early"

	rulePatchStart    finding.ID = "patch-start"
	rulePatchLap      finding.ID = "patch-lap"
	rulePatchNoLap    finding.ID = "patch-no-lap"
	rulePatchOldFilm  finding.ID = "patch-old-film"
	rulePatchBySystem finding.ID = "patch-by-system"
	rulePatchNothing  finding.ID = "patch-nothing"

	ruleBesideStrip    finding.ID = "beside-strip"
	ruleBesideMetallic finding.ID = "beside-metallic"
	ruleBesideFine     finding.ID = "beside-fine"
	ruleBesideNone     finding.ID = "beside-none"

	ruleRouteNone finding.ID = "route-none"
)
