// SPDX-License-Identifier: Apache-2.0
// What every check of a test's validity looks at, found out once.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "conditions/condition_set.h"
#include "conditions/facts.h"
#include "conditions/finding_list.h"
#include "conditions/validity.h"

namespace model {

/// A thing that the draft names, and where.
struct NamedItem {
    std::string id;
    std::string place;
};

struct TestContext {
    const CastingFile& file;
    const ExaminationDraft& draft;
    const Testers& testers;
    std::string date;              ///< of the test, valid
    std::optional<UtcTime> start;  ///< as stated
    UtcTime until{};               ///< the stated end, else that of the day (UTC)
    const Procedure* procedure = nullptr;
    const Procedure* sheet = nullptr;
    /// Of procedure and sheet, that of the drift rule included.
    std::vector<const ConditionSet*> sets{};
    const ConditionSet* drift = nullptr;
    const Procedure* driftNamedBy = nullptr;  ///< procedure or sheet

    [[nodiscard]] const TestConditions& conditions() const { return draft.conditions; }
    [[nodiscard]] const Holdings& used() const { return file.used; }
};

/// Equipment that the draft names: its list, instruments of measurements, blocks of checks. Each
/// once.
std::vector<NamedItem> namedEquipment(const ExaminationDraft& draft);
/// Whether a moment can be on that day somewhere on earth (UTC-12 to UTC+14).
bool canBeOn(UtcTime moment, std::string_view date);
/// The day on which a moment lies in UTC.
std::string dayOf(UtcTime moment);

const Equipment* equipmentIn(const Holdings& holdings, std::string_view id);
const Consumable* consumableIn(const Holdings& holdings, std::string_view id);

// The checks, each of one subject, in the order in which an inspector puts things right.

/// Finds start and end into `context`.
void checkTimes(TestContext& context, FindingList& findings);
/// Finds procedure, sheet and sets into `context`.
void checkProcedure(TestContext& context, FindingList& findings);
void checkPeople(const TestContext& context, const std::string& evaluator, FindingList& findings);
void checkEquipment(const TestContext& context, const Facts& facts, FindingList& findings);
void checkConsumables(const TestContext& context, const Facts& facts, FindingList& findings);
void checkParameters(const TestContext& context, const Facts& facts, FindingList& findings);
void checkOrderLimits(const TestContext& context, const Facts& facts, FindingList& findings);
void checkSettings(const TestContext& context, const Facts& facts, FindingList& findings);
void checkCourse(const TestContext& context, const Facts& facts, FindingList& findings);

/// Whether a rule holds for this test. Unknown: `missing` names the parameter that says so.
enum class Applies { No, Yes, Unknown };
Applies applies(const ConditionRule& rule, const Facts& facts, std::string& missing);

/// Every rule of the context's sets that applies, with its set.
template <class Visit>
void forEachRule(const TestContext& context, const Facts& facts, Visit visit) {
    for (const ConditionSet* set : context.sets)
        for (const ConditionRule& rule : set->rules)
            if (std::string missing; applies(rule, facts, missing) == Applies::Yes)
                visit(*set, rule);
}

}  // namespace model
