// SPDX-License-Identifier: Apache-2.0
// How long finding certificates takes, among 1 000 000 of an archive with invented data that is
// made for it in the folder for temporary files and deleted afterwards. The yardstick is the
// same statement, prepared once and run through SQLite itself.
#pragma once

#include "measure/measure.h"

namespace app {

/// The first page of a mix of searches: the time that half of them keep, and that 99 % keep. The
/// lines "-small" are of 100 000 certificates. The archives are made once for both.
model::Result<std::vector<Measurement>> measureSearchMedian();
model::Result<std::vector<Measurement>> measureSearchP99();

}  // namespace app
