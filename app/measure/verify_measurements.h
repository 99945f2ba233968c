// SPDX-License-Identifier: Apache-2.0
// How long checking a whole archive takes: its history, seals, signatures of people and records,
// without PDFs. The yardstick is what cannot be left out, on as many processor cores as the check
// uses: every row of the history hashed, and each seal and each signature checked as a bare
// signature (in place of a person's, which has the same kind of key, the row's seal once more).
#pragma once

#include "measure/measure.h"

namespace app {

model::Result<std::vector<Measurement>> measureVerifyArchive();       ///< 1 000 and 10 000 records
model::Result<std::vector<Measurement>> measureVerifyArchiveLarge();  ///< 100 000

}  // namespace app
