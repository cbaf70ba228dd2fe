#pragma once

namespace shoulderline {

struct SizeWriter;

// What must be said of the tenons of a part besides the sizes between their sides, as notes on its
// face side, one for each end, or for both where they are alike: a haunch that slopes, an end that
// is chamfered, rounded or mitred, what stands proud, kerfs for wedges, edges rounded to a cutter.
void addTenonNotes(SizeWriter& writer);

}  // namespace shoulderline
