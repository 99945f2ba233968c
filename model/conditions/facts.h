// SPDX-License-Identifier: Apache-2.0
// What is known of a test, parameter by parameter: as measured or stated at the bench, and as the
// record itself shows it (zone, settings, scans, consumables).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "conditions/finding_list.h"
#include "conditions/parameters.h"

namespace model {

struct Fact {
    std::string text;  ///< as typed, with its unit: "8 W/m2"; empty: not stated at `place`
    std::optional<ConditionValue> number;  ///< of a number
    std::optional<UtcTime> moment;         ///< of a moment
    std::string place;                     ///< "scan S2"; empty: the test as a whole
};

class Facts {
public:
    /// Adds what cannot be read, or is not proven, to `findings`.
    Facts(const CastingFile& file, const ExaminationDraft& draft, FindingList& findings);

    /// Empty where nothing is known.
    [[nodiscard]] const std::vector<Fact>& of(std::string_view parameter) const;
    /// A text stands there that is already complained about.
    [[nodiscard]] bool isUnreadable(std::string_view parameter) const;

private:
    class Reader;

    std::map<std::string, std::vector<Fact>, std::less<>> facts_;
    std::map<std::string, bool, std::less<>> unreadable_;
};

}  // namespace model
