// SPDX-License-Identifier: Apache-2.0
// What the zone plan requires against what was examined, as the certificate prints it.
#pragma once

#include "record/coverage.h"

namespace reports {

using model::coverageOf;
using model::CoveredTest;

}  // namespace reports
