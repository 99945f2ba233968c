// SPDX-License-Identifier: Apache-2.0
// What was signed, as JSON for other programs.
#pragma once

#include "exchange/json_value.h"
#include "record/registers.h"
#include "trust/canonical.h"

namespace model {

/// The value as it is.
JsonValue jsonOf(const Canonical& value);

/// The same with quantities in the units of the program's documents: "thickness_nm" 40000000
/// becomes "thickness_mm" 40, "area_millionth_mm2" 400000000 "area_mm2" 400.
JsonValue jsonInUnits(const Canonical& value);

/// Each list that is not empty, under the plural of its register's name.
JsonValue dossierToJson(const Dossier& dossier);

}  // namespace model
