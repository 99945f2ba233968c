// SPDX-License-Identifier: Apache-2.0
// The result of judging: per examination the word, every check that was made or could not be made,
// and the strictest levels that the zone would meet (the contract's fettlemark-verdict/1).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "judge/sheet.h"
#include "limits/limit_table.h"

namespace model {

enum class Word { Acceptable, NotJudged, NotAcceptable };  // in the order of getting worse

/// How one listed indication was taken. `group` is empty where it belongs to none.
struct JudgedIndication {
    std::string id;
    std::optional<IndicationClass> classified;  ///< none: open, or the table's ratio is unknown
    bool considered = false;
    std::string group;
    std::string openClass{};  ///< UT, where the class is open: "rim or core"; else empty
};

struct JudgedGroup {
    std::string id;  ///< "A1", "A2" ... on its surface
    IndicationClass classified = IndicationClass::Aligned;
    std::vector<std::string> members;  ///< "7", or "Z2/7" where it lies in another zone
    Length length;
    std::string openClass{};  ///< UT, where it counts in several: "rim or core"; else empty
};

/// The deciding frame, in the coordinates of the zone under which the check stands.
struct CheckFrame {
    FrameShape shape;
    double x = 0;             ///< centre, mm
    double y = 0;             ///< centre, mm
    double angleDegrees = 0;  ///< of the frame's width side against the zone's x axis
};

enum class CheckUnit { Millimetre, SquareMillimetre, Count, Percent, Decibel, None };

/// One rule applied to one zone.
struct Check {
    RuleKind rule = RuleKind::IndividualLength;
    std::string key;        ///< the level key it belongs to; empty: the table's or order's own rule
    std::string level;      ///< the ordered level
    std::string classText;  ///< "linear", "linear and aligned", "all"
    Source source;
    std::string note;
    std::optional<std::int64_t> measured;        ///< millionths of `unit` (a count too)
    std::optional<Rational> limit;               ///< millionths of `unit`
    Comparison comparison = Comparison::AtMost;  ///< passes when measured `comparison` limit
    CheckUnit unit = CheckUnit::None;
    std::optional<bool> passes;        ///< none: could not be made
    std::string reason;                ///< why not, where it could not
    std::vector<std::string> members;  ///< what was counted, or what exceeds the limit
    std::optional<CheckFrame> frame;
};

struct ExaminationVerdict {
    std::string zone;
    Method method = Method::Magnetic;
    Stage stage = Stage::AsCast;
    int repairCycle = 0;
    int repeat = 0;
    bool superseded = false;  ///< does not count: a later repair cycle does, or it is invalid
    std::optional<Objection> rejected;  ///< as in the sheet
    std::optional<Objection> invalid;   ///< as in the sheet
    Word word = Word::NotJudged;
    std::string tableId;
    int tableRevision = 0;
    std::string tableDigest;
    bool attested = false;
    std::map<std::string, std::string> levels;  ///< as ordered
    std::vector<JudgedIndication> indications;
    std::vector<JudgedGroup> groups;
    std::vector<Check> checks;
    std::map<std::string, std::optional<std::string>> bestLevels;
    std::vector<std::string> bestLevelsUnknown;
    std::vector<std::string> reasons;  ///< why not judged, beside the checks
    std::vector<std::string> notes;
};

struct Verdict {
    Word word = Word::NotJudged;
    std::vector<ExaminationVerdict> examinations;  ///< in the sheet's order
};

}  // namespace model
