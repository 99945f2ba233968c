// SPDX-License-Identifier: Apache-2.0
// Orders, parts, zone plans and castings as entries with texts, and back. Fields and reading are
// those of exchange/register_lines.h, so that a form and a file say the same.
#pragma once

#include "reference/register.h"

namespace app {

// Of an order "tests" and "witness_points" are rows of it, of a plan "zones" and "tests".
std::vector<model::FieldInfo> orderFields();
std::vector<model::FieldInfo> zoneFields();
std::vector<model::FieldInfo> zoneTestFields();  ///< a test that a zone requires

Entry entryOf(const model::Order& order);
void addPlan(Entry& entry, const model::ZonePlan& plan);

// What is wrong is added to `errors`, with its place in the entry; the value is of no use then.
model::Order orderFrom(const Entry& entry, std::vector<model::FieldError>& errors);
model::ZonePlan planFrom(const Entry& entry, int revision, std::vector<model::FieldError>& errors);
model::Part partFrom(const Entry& entry, std::vector<model::FieldError>& errors);
model::Casting castingFrom(const Entry& entry, std::vector<model::FieldError>& errors);

/// The rows of an entry under a key.
const std::vector<EntryTexts>& rowsOf(const Entry& entry, const std::string& key);

}  // namespace app
