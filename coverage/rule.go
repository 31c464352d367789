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
	patchCan            finding.ID = "patch-can"
	patchTwoPack        finding.ID = "patch-two-pack"
	kitEven             finding.ID = "kit-even"
	kitLeftOver         finding.ID = "kit-left-over"
	mixAtOnce           finding.ID = "mix-at-once"
	mixTooSmall         finding.ID = "mix-too-small"
	batchNoMatter       finding.ID = "batch-no-matter"
	batchOne            finding.ID = "batch-one"
	batchToBuy          finding.ID = "batch-to-buy"
	batchMixed          finding.ID = "batch-mixed"
)
