// SPDX-License-Identifier: Apache-2.0
#include "judge/forbidden.h"

#include <algorithm>

namespace model {
namespace {

bool contains(const std::vector<Kind>& kinds, Kind kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

}  // namespace

bool isCrackLike(Kind kind) {
    return kind == Kind::Crack || kind == Kind::HotTear || kind == Kind::ColdShut;
}

std::optional<Check> forbiddenKindCheck(const ZoneView& view) {
    const std::vector<Kind>& byTable = view.bundle->table->forbiddenKinds;
    const std::vector<Kind>& byOrder = view.examination().forbiddenKinds;
    if (byTable.empty() && byOrder.empty()) return std::nullopt;
    const bool nonLinearConcerned =
        std::any_of(byTable.begin(), byTable.end(), [](Kind k) { return !isCrackLike(k); }) ||
        std::any_of(byOrder.begin(), byOrder.end(), [](Kind k) { return !isCrackLike(k); });

    Check check;
    check.rule = RuleKind::ForbiddenKind;
    check.classText = "all";
    check.unit = CheckUnit::Count;
    check.limit = Rational(0);
    check.source =
        byTable.empty() ? Source{"order", Grade::Read} : view.bundle->table->forbiddenSource;
    std::vector<std::string> unstated;
    std::int64_t forbidden = 0;
    bool byOrderOnly = true;
    for (std::size_t i = 0; i < view.bundle->findings.size(); ++i) {
        if (!view.isOwn(i)) continue;
        const Finding& finding = view.bundle->findings[i];
        const Kind kind = finding.kind().value_or(Kind::Unknown);
        if (kind == Kind::Unknown) {
            const bool concerned =
                finding.reflector != nullptr ||
                finding.classified.value_or(IndicationClass::Linear) == IndicationClass::Linear;
            if (concerned || nonLinearConcerned) unstated.push_back(view.nameOf(i));
        } else if (contains(byTable, kind) || contains(byOrder, kind)) {
            ++forbidden;
            byOrderOnly = byOrderOnly && !contains(byTable, kind);
            check.members.push_back(view.nameOf(i));
        }
    }
    if (forbidden > 0 && byOrderOnly) check.source = {"order", Grade::Read};
    if (forbidden > 0) {
        check.measured = forbidden * kMillion;
        check.passes = false;
    } else if (!unstated.empty()) {
        check.members = unstated;
        check.reason = "the kind is not stated, and kinds are forbidden";
    } else {
        check.measured = 0;
        check.passes = true;
    }
    return check;
}

}  // namespace model
