// SPDX-License-Identifier: Apache-2.0
#include "conditions/drift.h"

#include <algorithm>
#include <cassert>
#include <map>
#include <set>

#include "conditions/setting_chain.h"

namespace model {
namespace {

using Is = ConditionKind;

/// How a check stands to the limits of drift.
struct CheckState {
    TimedCheck timed;
    const ConditionRule* voids = nullptr;    ///< rule by which scans before it are void
    const ConditionRule* reopens = nullptr;  ///< rule by which indications are evaluated again
    std::string why;
    /// From here on the setting is as it was set.
    bool isGoodFromHere = false;

    [[nodiscard]] bool isBad() const { return voids != nullptr || reopens != nullptr; }
};

const ConditionRule* ruleOf(const ConditionSet& set, Is kind) {
    const auto found = std::ranges::find(set.rules, kind, &ConditionRule::kind);
    return found == set.rules.end() ? nullptr : &*found;
}

/// Whether a drift, in millionths, is beyond what a rule allows.
bool isBeyond(std::int64_t drift, const char* unit, const ConditionRule* rule) {
    if (rule == nullptr || drift <= 0) return false;
    const auto value =
        ConditionValue::read(formatMillionths(drift), unit, rule->limit->dimension());
    return !value || surelyHolds(*value, rule->comparison, *rule->limit);
}

class DriftSearch {
public:
    DriftSearch(const ExaminationDraft& draft, const ConditionSet& set)
        : draft_(draft),
          conditions_(draft.conditions),
          loss_(ruleOf(set, Is::DriftLoss)),
          gain_(ruleOf(set, Is::DriftGain)),
          range_(ruleOf(set, Is::DriftRange)) {}

    DriftConsequences find() {
        checkIds();
        for (const std::string& setting : settings_) follow(setting);
        collect();
        return std::move(found_);
    }

private:
    /// A bad check with the checks between which the setting was not as it was set.
    struct Stretch {
        const CheckState* bad;
        std::vector<std::string> checks;  ///< ids: scans after these are meant
        std::optional<UtcTime> from, to;  ///< times between which scans are meant; none: open
    };

    void unclear(std::string place, std::string reason, std::vector<std::string> arguments = {}) {
        Error error = inputError(std::move(place), std::move(reason), std::move(arguments));
        const auto isSaid = [&](const Error& other) { return other.message() == error.message(); };
        if (std::ranges::none_of(found_.unclear, isSaid))
            found_.unclear.push_back(std::move(error));
    }

    [[nodiscard]] const SettingCheck* checkNamed(const std::string& id) const {
        const auto at = std::ranges::find(conditions_.settingChecks, id, &SettingCheck::id);
        return at == conditions_.settingChecks.end() ? nullptr : &*at;
    }
    [[nodiscard]] const Scan* scanNamed(const std::string& id) const {
        const auto at = std::ranges::find(conditions_.scans, id, &Scan::id);
        return at == conditions_.scans.end() ? nullptr : &*at;
    }

    void checkIds() {
        std::set<std::string> names;
        for (const TypedSetting& setting : draft_.settings) names.insert(setting.name);
        std::set<std::string> ids;
        for (const SettingCheck& check : conditions_.settingChecks) {
            const std::string place = "setting check " + check.id;
            settings_.insert(check.setting);
            if (!ids.insert(check.id).second) unclear(place, "stands there twice");
            if (!names.contains(check.setting))
                unclear(place, "is of the setting \"%1\", which there is not", {check.setting});
            if (!timeFrom(check.at)) unclear(place, "its time \"%1\" cannot be read", {check.at});
        }
        ids.clear();
        for (const Scan& scan : conditions_.scans) {
            if (!ids.insert(scan.id).second) unclear("scan " + scan.id, "stands there twice");
            checkScan(scan, names);
        }
        for (const TypedReflector& row : draft_.reflectors)
            if (!isBlank(row)) checkReflector(row);
    }

    void checkScan(const Scan& scan, const std::set<std::string>& names) {
        const std::string place = "scan " + scan.id;
        if (!names.contains(scan.setting))
            unclear(place, "is made with the setting \"%1\", which there is not", {scan.setting});
        const auto times = timed(scan);
        if (!times)
            unclear(place,
                    "its times \"%1\" and \"%2\" cannot be read, or it ends before it begins",
                    {scan.startedAt, scan.endedAt});
        if (!scan.examinedAgain.empty() && scanNamed(scan.examinedAgain) == nullptr)
            unclear(place, "is said to be repeated by scan \"%1\", which there is not",
                    {scan.examinedAgain});
        const SettingCheck* before = checkNamed(scan.afterCheck);
        if (before == nullptr)
            return unclear(place, "names the setting check \"%1\", which there is not",
                           {scan.afterCheck});
        if (before->setting != scan.setting)
            return unclear(place, "names check %1 of setting %2, but was made with setting %3",
                           {before->id, before->setting, scan.setting});
        const auto at = timeFrom(before->at);
        if (!times || !at) return;
        if (times->start < *at)
            unclear(place, "began at %1, before the check %2 that it names, at %3",
                    {scan.startedAt, before->id, before->at});
        for (const TimedCheck& other : checksOf(conditions_, scan.setting))
            if (other.at > *at && other.at <= times->start)
                unclear(place, "names check %1, but check %2 lies between",
                        {before->id, other.check->id});
    }

    void checkReflector(const TypedReflector& row) {
        if (row.afterCheck.empty()) {
            found_.withoutCheck.push_back(row.id);
            return;
        }
        const SettingCheck* before = checkNamed(row.afterCheck);
        if (before == nullptr)
            unclear("indication " + row.id, "names the setting check \"%1\", which there is not",
                    {row.afterCheck});
        else if (!row.setting.empty() && before->setting != row.setting)
            unclear("indication " + row.id,
                    "names check %1 of setting %2, but was read with setting %3",
                    {before->id, before->setting, row.setting});
    }

    [[nodiscard]] CheckState stateOf(const TimedCheck& timedCheck, bool isFirst) const {
        const SettingCheck& check = *timedCheck.check;
        CheckState state{timedCheck, nullptr, nullptr, {}, false};
        const auto say = [&](const std::string& why) {
            state.why += (state.why.empty() ? "" : ", ") + why;
        };
        // With its first check a setting begins: there is nothing yet that it could have left.
        const bool mayBeEmpty = isFirst && check.occasion == "start";
        const auto drift = numberOf(check.sensitivityDrift);
        if (loss_ != nullptr || gain_ != nullptr) {
            if (drift && isBeyond(-*drift, "dB", loss_)) {
                state.voids = loss_;
                say("loss of " + formatMillionths(-*drift) + " dB");
            } else if (drift && isBeyond(*drift, "dB", gain_)) {
                state.reopens = gain_;
                say("gain of " + formatMillionths(*drift) + " dB");
            } else if (!drift && !(mayBeEmpty && check.sensitivityDrift.empty())) {
                state.voids = loss_ ? loss_ : gain_;
                say("drift of sensitivity not stated");
            }
        }
        const auto off = numberOf(check.rangeDrift);
        if (range_ != nullptr) {
            if (off && isBeyond(*off < 0 ? -*off : *off, "%", range_)) {
                if (!state.voids) state.voids = range_;
                say("range off by " + formatMillionths(*off) + " %");
            } else if (!off && !(mayBeEmpty && check.rangeDrift.empty())) {
                if (!state.voids) state.voids = range_;
                say("drift of range not stated");
            }
        }
        state.isGoodFromHere = !state.isBad() || check.corrected == "yes";
        return state;
    }

    void follow(const std::string& setting) {
        std::vector<CheckState>& states = states_[setting];
        const auto checks = checksOf(conditions_, setting);
        for (const TimedCheck& check : checks)
            states.push_back(stateOf(check, &check == checks.data()));
        for (std::size_t bad = 0; bad < states.size(); ++bad) {
            if (!states[bad].isBad()) continue;
            // From the last check after which the setting was as set, up to the next.
            std::size_t first = bad;
            bool isOpen = true;
            while (first > 0 && isOpen) isOpen = !states[--first].isGoodFromHere;
            std::size_t end = bad;
            while (end < states.size() && !states[end].isGoodFromHere) ++end;
            Stretch stretch{&states[bad], {}, {}, {}};
            for (std::size_t i = first; i < std::max(end, bad); ++i)
                stretch.checks.push_back(states[i].timed.check->id);
            if (!isOpen) stretch.from = states[first].timed.at;
            if (end < states.size()) stretch.to = states[end].timed.at;
            stretches_[setting].push_back(std::move(stretch));
        }
    }

    [[nodiscard]] static bool isMeant(const Scan& scan, const Stretch& stretch) {
        if (std::ranges::count(stretch.checks, scan.afterCheck) > 0) return true;
        const auto times = timed(scan);
        return times && (!stretch.to || times->start < *stretch.to) &&
               (!stretch.from || times->end > *stretch.from);
    }

    /// The stretches that make a scan void.
    [[nodiscard]] std::vector<const Stretch*> voiding(const Scan& scan) const {
        std::vector<const Stretch*> found;
        if (const auto at = stretches_.find(scan.setting); at != stretches_.end())
            for (const Stretch& stretch : at->second)
                if (stretch.bad->voids && isMeant(scan, stretch)) found.push_back(&stretch);
        return found;
    }

    /// Whether a scan was made with a setting that was as set.
    [[nodiscard]] bool isAfterGoodCheck(const Scan& scan) const {
        const auto states = states_.find(scan.setting);
        return states != states_.end() &&
               std::ranges::any_of(states->second, [&](const CheckState& state) {
                   return state.timed.check->id == scan.afterCheck && state.isGoodFromHere;
               });
    }

    /// The scan that stands in a void one's place; empty: none does.
    std::string repeatOf(const Scan& scan, const Stretch& stretch) {
        std::set<const Scan*> passed{&scan};
        const Scan* at = &scan;
        while (!at->examinedAgain.empty()) {
            const Scan* next = scanNamed(at->examinedAgain);
            if (next == nullptr || !passed.insert(next).second) return {};
            const auto times = timed(*next);
            const bool isSame = next->area == scan.area && next->direction == scan.direction;
            if (!isSame)
                unclear("scan " + scan.id,
                        "is said to be repeated by scan %1, which is of another "
                        "area or direction",
                        {next->id});
            if (!isSame || !times || times->start < stretch.bad->timed.at) return {};
            if (voiding(*next).empty()) return isAfterGoodCheck(*next) ? next->id : std::string();
            at = next;
        }
        return {};
    }

    void collect() {
        for (const Scan& scan : conditions_.scans) {
            std::optional<VoidScan> worst;
            for (const Stretch* stretch : voiding(scan)) {
                VoidScan found{scan.id, stretch->bad->timed.check->id, stretch->bad->why,
                               repeatOf(scan, *stretch), stretch->bad->voids};
                if (!worst || !worst->again.empty()) worst = std::move(found);
            }
            if (worst) found_.voidScans.push_back(std::move(*worst));
        }
        for (const TypedReflector& row : draft_.reflectors)
            if (!isBlank(row)) reopen(row);
    }

    void reopen(const TypedReflector& row) {
        for (const auto& [setting, stretches] : stretches_)
            for (const Stretch& stretch : stretches) {
                // Where it is not known after which check it was found, any may be meant.
                const bool isOpen =
                    row.afterCheck.empty() && (row.setting.empty() || row.setting == setting);
                if (!isOpen && std::ranges::count(stretch.checks, row.afterCheck) == 0) continue;
                const ConditionRule* rule =
                    stretch.bad->voids ? stretch.bad->voids : stretch.bad->reopens;
                found_.reopened.push_back(
                    {row.id, stretch.bad->timed.check->id, stretch.bad->why, rule});
                return;
            }
    }

    const ExaminationDraft& draft_;
    const TestConditions& conditions_;
    const ConditionRule* loss_;
    const ConditionRule* gain_;
    const ConditionRule* range_;
    std::set<std::string> settings_;
    std::map<std::string, std::vector<CheckState>> states_;
    std::map<std::string, std::vector<Stretch>> stretches_;
    DriftConsequences found_;
};

}  // namespace

DriftConsequences consequencesOf(const ExaminationDraft& draft, const ConditionSet& rule) {
    assert(rule.hasDrift());
    return DriftSearch(draft, rule).find();
}

}  // namespace model
