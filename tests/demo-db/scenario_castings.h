// SPDX-License-Identifier: Apache-2.0
// The scenario's castings as the judge is given them.
#pragma once

#include <string>
#include <vector>

#include "record/records.h"

/// Every casting of the scenario with its order, part, plan and examinations.
std::vector<model::CastingFile> scenarioCastings();

model::CastingFile scenarioCasting(const std::string& serial);

model::Sheet scenarioSheet(const std::string& serial);
