package coverage

import "boatyard.example/bottomwork/tables/finding"

// The ids of the rules that this package decides by. Their words and bases are rows of the book.
const (
	areaMeasured        finding.ID = "area-measured"
	areaFromFormula     finding.ID = "area-from-formula"
	areaFromMethod      finding.ID = "area-from-method"
	areaDiffers         finding.ID = "area-differs"
	areaOutOfProportion finding.ID = "area-out-of-proportion"
	stripsNotMeasured   finding.ID = "strips-not-measured"
	padsToPaint         finding.ID = "pads-to-paint"
	padsNotReported     finding.ID = "pads-not-reported"
	padsReckoned        finding.ID = "pads-reckoned"
	patchKept           finding.ID = "patch-kept"
	patchShort          finding.ID = "patch-short"
	patchTwoPack        finding.ID = "patch-two-pack"
)
