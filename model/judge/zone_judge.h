// SPDX-License-Identifier: Apache-2.0
// Judges the zones of one bundle.
#pragma once

#include <map>
#include <vector>

#include "judge/reflector_items.h"
#include "judge/rule_check.h"

namespace model {

class ZoneJudge {
public:
    ZoneJudge(const Sheet& sheet, const Bundle& bundle) : sheet_(sheet), bundle_(bundle) {}

    /// The verdict on one member of the bundle, without `superseded` and `attested`.
    ExaminationVerdict judge(std::size_t member);

private:
    enum class Trial { Passes, Fails, Unknown };

    [[nodiscard]] const LimitTable& table() const { return *bundle_.table; }
    /// Grouping depends on the levels only where relevance comes first; then it is kept by levels.
    const Grouped& groupedFor(const Levels& levels);

    void listIndications(const ZoneView& view, ExaminationVerdict& verdict) const;
    void applyRules(const ZoneView& view, ExaminationVerdict& verdict) const;
    /// What the examination itself leaves open, whatever its method.
    void giveStatedReasons(const ZoneView& view, ExaminationVerdict& verdict) const;
    void giveReasons(const ZoneView& view, ExaminationVerdict& verdict) const;
    void giveNotes(const ZoneView& view, ExaminationVerdict& verdict) const;
    void findBestLevels(const ZoneView& view, ExaminationVerdict& verdict);
    Trial tryLevels(const ZoneView& ordered, const Levels& levels,
                    const std::vector<std::string>& keys);

    const Sheet& sheet_;
    const Bundle& bundle_;
    std::map<Levels, Grouped> grouped_;
    std::optional<ReflectorItems> reflectors_;  ///< UT, whose grouping does not depend on levels
};

/// "not acceptable" if any check fails, else "not judged" if any could not be made or a reason
/// stands, else "acceptable".
Word wordOf(const ExaminationVerdict& verdict);

}  // namespace model
