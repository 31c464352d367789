// Package finding answers one question: what does every judgement, and every fault of an input, look like?
//
// A judgement is a [Finding]: the rule that decided, how it decided ([Verdict]), about what, with which facts, what must be
// done first ([Step]) and on what basis ([Basis]). It holds values, not sentences; words are made from the rule's row when a
// report is printed. No judging function of this module returns a bare bool, and an empty [List] means "not judged".
//
//	fs := compat.OnMaterial(book, coating, part)
//	switch fs.Worst() {
//	case finding.Forbidden, finding.Ask: // not allowed, or nobody knows: never read either as allowed
//	case finding.Needs:                  // allowed after the steps in fs
//	}
//
// Bad input is [Faults]: all of them at once, each with its file, the key's path, what was read and what is accepted.
package finding
