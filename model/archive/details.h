// SPDX-License-Identifier: Apache-2.0
// What parts, castings and zones hold beyond their columns, as one text: canonical bytes of an
// object, "{}" where nothing is said. Orders and examinations hold their terms and conditions so
// (order_terms.h, test_conditions.h). For the .cpp files of this folder only.
#pragma once

#include <string>

#include "archive/connection.h"
#include "record/records.h"
#include "trust/canonical.h"

namespace model {

Canonical::Object detailsOf(const Part& part);
Canonical::Object detailsOf(const Casting& casting);
Canonical::Object detailsOf(const PlannedZone& zone);

/// Input: a text is not UTF-8.
Result<std::string> detailsText(const Canonical::Object& details);

// From such a text. Damaged: it is not understood; `what` names what it belongs to.
Result<void> takeDetails(const Connection& connection, const std::string& text, Order& order);
Result<void> takeDetails(const Connection& connection, const std::string& text, Part& part);
Result<void> takeDetails(const Connection& connection, const std::string& text, Casting& casting);
Result<void> takeDetails(const Connection& connection, const std::string& text,
                         const std::string& what, PlannedZone& zone);
Result<void> takeDetails(const Connection& connection, const std::string& text,
                         ExaminationDraft& draft);

}  // namespace model
