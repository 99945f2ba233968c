// SPDX-License-Identifier: Apache-2.0
// What the registers hold of a casting and of its examinations. For the .cpp files of this folder
// only.
#pragma once

#include <set>
#include <string>

#include "archive/connection.h"
#include "record/records.h"

namespace model {

/// Of a casting.
Result<Dossier> loadDossier(const Connection& connection, const std::string& serial);
/// Everything that the works has and who may test.
Result<Holdings> loadHoldings(const Connection& connection);
/// What the examinations name, and what entitles `people` to test. Of the checks of a thing those
/// around the examinations' days, and of each kind the last before and the first after.
Result<Holdings> loadUsed(const Connection& connection,
                          const std::vector<ExaminationDraft>& examinations,
                          const std::set<std::string>& people);

/// Adds what `all` has not yet; of one entry both versions stay, the first before the other.
void addHoldings(Holdings& all, const Holdings& more);

/// Each list that is not empty, under the plural of its register's name.
Canonical::Object canonicalOf(const Dossier& dossier);
Canonical::Object canonicalOf(const Holdings& holdings);
/// None where it is not understood.
std::optional<Dossier> dossierFrom(const Canonical::Object& object);
std::optional<Holdings> holdingsFrom(const Canonical::Object& object);

/// SHA-256 of every set of test conditions that is attested.
Result<std::set<std::string>> attestedConditionSets(const Connection& connection);

}  // namespace model
