// SPDX-License-Identifier: Apache-2.0
// What a standard asks of the conditions of a test, as data: one edition, with a source for each
// limit. The files are sets/*.conditions, their grammar is sets/FORMAT.md. A procedure names the
// sets that a test by it has to keep; nothing here knows a standard.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "conditions/reaction.h"
#include "conditions/unit.h"
#include "limits/limit_table.h"

namespace model {

enum class ConditionKind {
    // On parameters, see parameters.h.
    Limit,    ///< every value of `parameter` `comparison` `limit`
    Compare,  ///< every value of `parameter` `comparison` every one of `second`, where it is stated
    Stated,   ///< `parameter` has a value
    OneOf,    ///< every value of `parameter` is one of `words`
    Same,     ///< `parameter` and `second` have the same values
    Elapsed,  ///< from `second` to `parameter`, `comparison` `limit`
    // On equipment and consumables.
    Check,        ///< `check` of equipment of the kinds `words` (empty: of any) within `every`
    Calibration,  ///< of equipment of the kinds `words` within `every`
    Expiry,       ///< consumables of the kinds `words` state until when they may be used
    OneMaker,     ///< consumables of the kinds `words` are from one maker
    Designation,  ///< consumables of the kinds `words`: is one, and agrees with type and level
    Certificate,  ///< consumables of the kinds `words` have a batch certificate
    Sulphur,      ///< the same, and it states sulphur `comparison` `limit`
    Halogens,     ///< the same of chlorine with fluorine
    // On ultrasonic settings.
    CheckBefore,       ///< a setting is checked before its first scan
    CheckAfter,        ///< and after its last
    CheckInterval,     ///< checks around a scan lie at most `limit` apart
    CheckTemperature,  ///< block and part differ by at most `limit`
    DriftLoss,         ///< a loss of sensitivity `comparison` `limit` makes scans void
    DriftGain,         ///< a gain reopens recorded indications
    DriftRange,        ///< a drift of range either way makes scans void
    // On people.
    Sight,              ///< the eye test `check` within `every`
    CertificatePeriod,  ///< a certificate holds for at most `every`
    Sector,             ///< it is for a sector named with one of `words`
    Authorisation,      ///< the employer permits testing by this procedure
    // On the course of tests.
    PenetrantFirst  ///< PT of a zone goes before its MT
};

/// A kind of equipment for rules: probes that an angle-beam setting names.
inline constexpr std::string_view kAngleProbe = "angle probe";

/// How long a check holds, its last day or hour included.
struct Every {
    int count = 0;  ///< of days 0: on the day of the test itself
    enum class Unit { Hours, Days, Months } unit = Unit::Months;

    [[nodiscard]] std::string text() const;  ///< "6 months", "on the day"
};

/// A parameter and the values that it may have; none: any.
struct WhenClause {
    std::string parameter;
    std::vector<std::string> values;
};

/// What the reading of a check has to be: one of a rule's alternatives.
struct CheckValue {
    Comparison comparison = Comparison::AtLeast;
    ConditionValue limit;
    /// Only where the check's condition, such as the spacing of poles, lies between these.
    std::optional<ConditionValue> from, to;
};

struct ConditionRule {
    std::string id;  ///< unique in all sets of the program: "MT-10", "MT-12 ASME V"
    ConditionKind kind = ConditionKind::Stated;
    std::string parameter, second;
    Comparison comparison = Comparison::AtMost;
    std::optional<ConditionValue> limit;
    std::vector<std::string> words;
    std::string check;
    std::optional<Every> every;  ///< of a check: none: once, ever
    std::vector<CheckValue> values;
    std::vector<WhenClause> when;    ///< holds where all do
    std::vector<WhenClause> unless;  ///< and none of these
    bool ifStated = false;           ///< an absent value is no finding
    Reaction reaction = Reaction::Warn;
    Source source;
    std::string note;  ///< added to what is said
    int line = 0;
};

struct ConditionSet {
    std::string id;  ///< as in Procedure::conditionSets: "ISO 3059:2012"
    std::string standard;
    std::string edition;
    int revision = 1;
    std::string digest;  ///< SHA-256 of the file's bytes, hexadecimal
    std::string file;
    std::vector<Method> methods;  ///< empty: it is about people
    std::vector<std::string> remarks;
    std::vector<ConditionRule> rules;

    [[nodiscard]] bool hasDrift() const;
};

/// The set in `text`; `file` names it in errors. Refuses, with "file:line" as place, what is
/// unknown, missing, there twice, or without source.
Result<ConditionSet> parseConditionSet(std::string_view text, const std::string& file);

/// The program's own sets, by id.
const std::vector<ConditionSet>& builtInConditionSets();
/// Null: there is none of that id.
const ConditionSet* conditionSet(std::string_view id);
/// The set about people for a scheme as typed in a qualification: of that id, else the last one of
/// a standard that the scheme begins with. Null: there is none.
const ConditionSet* schemeSet(std::string_view scheme);

}  // namespace model
