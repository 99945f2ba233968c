// SPDX-License-Identifier: Apache-2.0
// Which indications stand behind a "not acceptable", as far as a concession can name them.
#include <algorithm>

#include "limits/words.h"
#include "repair/case_context.h"

namespace model {
namespace {

/// Rules whose check names everything that exceeds the limit by itself. Every other rule names the
/// most unfavourable place only; what else the zone holds may exceed its limit elsewhere.
bool namesAll(const Check& check, Method method) {
    return method != Method::Ultrasonic &&
           (check.rule == RuleKind::IndividualLength || check.rule == RuleKind::IndividualArea ||
            check.rule == RuleKind::ForbiddenKind);
}

class Collector {
public:
    Collector(const CaseContext& context, const ExaminationVerdict& of)
        : context_(context), of_(of) {}

    void collect(FailedIndications& failed) {
        failed_ = &failed;
        if (of_.rejected) unknown("it was rejected: " + of_.rejected->reason);
        for (const std::string& reason : of_.reasons) unknown(reason);
        for (const Check& check : of_.checks) {
            if (!check.passes)
                unknown("the check of " + std::string(word(check.rule)) +
                        " could not be made: " + check.reason);
            else if (!*check.passes)
                take(check);
        }
    }

private:
    void unknown(const std::string& why) {
        if (failed_->notKnown.empty()) failed_->notKnown = why;
    }
    void take(const Check& check) {
        for (const std::string& member : check.members) name(member);
        if (!namesAll(check, of_.method)) takeClasses(check);
        if (check.rule == RuleKind::ForbiddenKind) takeUnstatedKinds();
        if (check.members.empty() && failed_->indications.empty())
            unknown("the failed check of " + std::string(word(check.rule)) +
                    " names no indication");
    }
    /// Everything considered that may count in the check, wherever it lies.
    void takeClasses(const Check& check) {
        for (const JudgedIndication& indication : of_.indications)
            if (indication.considered && mayCount(check, indication.classified))
                insert(of_, indication.id);
        for (const JudgedGroup& group : of_.groups)
            if (mayCount(check, group.classified)) takeGroup(of_, group.id);
    }
    /// An ultrasonic check also takes what is in a cluster, or whose class is open.
    [[nodiscard]] bool mayCount(const Check& check,
                                std::optional<IndicationClass> classified) const {
        if (of_.method == Method::Ultrasonic || !classified || check.classText == "all")
            return true;
        const auto between = [](std::string_view text) {
            std::string parted(" and ");
            return parted.append(text).append(" and ");
        };
        return between(check.classText).find(between(word(*classified))) != std::string::npos;
    }
    /// Beside a forbidden kind the check does not say whose kind is open.
    void takeUnstatedKinds() {
        for (const ExaminationDraft& draft : context_.file.examinations) {
            if (verdictOn(context_, draft) != &of_) continue;
            for (const TypedIndication& row : draft.rows)
                if ((row.kind.empty() || row.kind == word(Kind::Unknown)) &&
                    (row.relevance.empty() || row.relevance == "relevant"))
                    insert(of_, row.id);
            for (const TypedReflector& row : draft.reflectors)
                if (row.kind.empty() && (row.relevance.empty() || row.relevance == "relevant"))
                    insert(of_, row.id);
        }
    }
    void insert(const ExaminationVerdict& where, const std::string& id) {
        const bool isOwn = std::ranges::count(where.indications, id, &JudgedIndication::id) > 0;
        if (!isOwn && id.find('/') != std::string::npos)
            failed_->indications.insert(id);
        else
            failed_->indications.insert(where.zone + "/" + id);
    }
    /// An indication, or a group as its members; a group need not have a member in this zone.
    void name(const std::string& member) {
        if (std::ranges::count(of_.indications, member, &JudgedIndication::id) > 0 ||
            member.find('/') != std::string::npos)
            return insert(of_, member);
        bool found = takeGroup(of_, member);
        for (const ExaminationVerdict& other : context_.verdict.examinations)
            if (!found && !other.superseded && other.method == of_.method &&
                other.stage == of_.stage)
                found = takeGroup(other, member);
        if (!found) unknown("what " + member + " stands for is not known");
    }
    bool takeGroup(const ExaminationVerdict& where, const std::string& id) {
        const auto group = std::ranges::find(where.groups, id, &JudgedGroup::id);
        if (group == where.groups.end()) return false;
        for (const std::string& member : group->members) insert(where, member);
        return true;
    }

    const CaseContext& context_;
    const ExaminationVerdict& of_;
    FailedIndications* failed_ = nullptr;
};

}  // namespace

FailedIndications failedOf(const CaseContext& context, const std::string& zone, Method method,
                           Stage stage) {
    FailedIndications failed;
    for (const ExaminationVerdict& verdict : context.verdict.examinations)
        if (!verdict.superseded && verdict.word == Word::NotAcceptable && verdict.zone == zone &&
            verdict.method == method && verdict.stage == stage)
            Collector(context, verdict).collect(failed);
    return failed;
}

std::set<std::string> indicationsIn(const std::string& list, const std::string& zone) {
    std::set<std::string> indications;
    for (const std::string& item : itemsOf(list)) {
        std::string name = item.find('/') == std::string::npos ? zone + "/" : std::string();
        indications.insert(name.append(item));
    }
    return indications;
}

}  // namespace model
