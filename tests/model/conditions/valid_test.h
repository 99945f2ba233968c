// SPDX-License-Identifier: Apache-2.0
// A valid MT, PT and UT, each with everything that its condition sets ask for: tests change one
// thing and see what is said.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "conditions/validity.h"

namespace model {

struct ValidTest {
    CastingFile file;
    ExaminationDraft draft;
    Testers testers;

    [[nodiscard]] std::vector<ConditionFinding> findings(
        const std::set<std::string>& attested = {}) const {
        return validityOf(file, draft, testers, attested);
    }

    Measurement& measured(const std::string& parameter);
    void take(const std::string& parameter, const std::string& value, const std::string& unit = {});
    void drop(const std::string& parameter);

    Equipment& equipment(const std::string& id);
    Consumable& consumable(const std::string& id);
    EquipmentCheck& check(const std::string& equipment, const std::string& name);
    EyeTest& eyeTest(const std::string& person, const std::string& kind);
};

inline constexpr const char* kTestDay = "2026-11-25";

ValidTest magneticTest();
ValidTest penetrantTest();
ValidTest ultrasonicTest();

/// Ids, in order.
std::vector<std::string> idsOf(const std::vector<ConditionFinding>& findings);
/// The only finding; one of no meaning, with a failure, where there is not exactly one.
ConditionFinding onlyOne(const std::vector<ConditionFinding>& findings);
/// SHA-256 of a built-in set.
std::string digestOf(const std::string& set);

}  // namespace model
