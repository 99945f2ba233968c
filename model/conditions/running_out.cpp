// SPDX-License-Identifier: Apache-2.0
#include "conditions/running_out.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "conditions/condition_set.h"
#include "conditions/test_context.h"

namespace model {
namespace {

using Is = ConditionKind;

/// How long an eye test holds by a scheme's set; 0: it says nothing.
int monthsOf(const ConditionSet* set, std::string_view kind) {
    if (set == nullptr) return 0;
    for (const ConditionRule& rule : set->rules)
        if (rule.kind == Is::Sight && rule.check == kind) return rule.every->count;
    return 0;
}

class Search {
public:
    Search(const Holdings& holdings, std::string_view today, int days)
        : holdings_(holdings), today_(today), until_(daysAfter(today, days)) {}

    std::vector<RunsOut> run() {
        equipment();
        checks();
        consumables();
        procedures();
        qualifications();
        eyeTests();
        authorisations();
        std::ranges::sort(found_, [](const RunsOut& a, const RunsOut& b) {
            return std::tie(a.lastDay, a.registers, a.key, a.what) <
                   std::tie(b.lastDay, b.registers, b.key, b.what);
        });
        return std::move(found_);
    }

private:
    template <class T>
    void add(const T& entry, const std::string& lastDay, std::string what, std::string who) {
        // Whatever has no date that can be read is shown where it is used.
        if (!isDate(lastDay) || lastDay > until_) return;
        found_.push_back({lastDay, T::kRegister, keyOf(entry), std::move(what), std::move(who),
                          lastDay < today_});
    }

    /// Of the entries with the same name the one that holds longest.
    template <class T>
    using Latest = std::map<std::string, std::pair<const T*, std::string>>;

    template <class T>
    static void keep(Latest<T>& latest, const std::string& name, const T& entry,
                     const std::string& lastDay) {
        auto& [kept, day] = latest[name];
        if (kept != nullptr && day >= lastDay) return;
        kept = &entry;
        day = lastDay;
    }

    void equipment() {
        for (const Equipment& item : holdings_.equipment)
            if (item.state == "in use") add(item, item.calibrationDue, "calibration", item.id);
    }

    void checks() {
        std::map<std::string, const EquipmentCheck*> last;
        for (const EquipmentCheck& check : holdings_.checks) {
            const Equipment* item = equipmentIn(holdings_, check.equipment);
            if (item != nullptr && item->state != "in use") continue;
            const EquipmentCheck*& kept = last[check.equipment + "\n" + check.check];
            if (kept == nullptr || check.at >= kept->at) kept = &check;
        }
        for (const auto& [name, check] : last)
            add(*check, check->nextDue, check->check, check->equipment);
    }

    void consumables() {
        for (const Consumable& item : holdings_.consumables)
            if (item.state == "in use") add(item, item.expiresOn, item.kind, item.id);
    }

    void procedures() {
        for (const Procedure& entry : holdings_.procedures)
            if (entry.state == "current" && isDate(entry.obsoleteFrom))
                add(entry, daysAfter(entry.obsoleteFrom, -1), entry.kind,
                    entry.number + " / " + entry.revision);
    }

    void qualifications() {
        Latest<Qualification> latest;
        for (const Qualification& held : holdings_.qualifications)
            if (held.state == "valid")
                keep(latest, held.person + "\n" + held.method, held, held.expiresOn);
        for (const auto& [name, kept] : latest)
            add(*kept.first, kept.second, "certificate " + kept.first->method, kept.first->person);
    }

    /// The shortest time that a scheme of the person's certificates leaves to an eye test.
    [[nodiscard]] int monthsFor(const EyeTest& test) const {
        int months = 0;
        for (const Qualification& held : holdings_.qualifications) {
            if (held.person != test.person || held.state != "valid") continue;
            const int ofScheme = monthsOf(schemeSet(held.scheme), test.kind);
            if (ofScheme != 0 && (months == 0 || ofScheme < months)) months = ofScheme;
        }
        return months != 0 ? months : monthsOf(schemeSet("ISO 9712"), test.kind);
    }

    void eyeTests() {
        std::map<std::string, const EyeTest*> last;
        for (const EyeTest& test : holdings_.eyeTests) {
            const EyeTest*& kept = last[test.person + "\n" + test.kind];
            if (kept == nullptr || test.testedOn >= kept->testedOn) kept = &test;
        }
        for (const auto& [name, test] : last) {
            const int months = monthsFor(*test);
            if (test->result == "failed")
                add(*test, daysAfter(test->testedOn, -1), test->kind + " (not passed)",
                    test->person);
            else if (months > 0)
                add(*test, monthsAfter(test->testedOn, months), test->kind, test->person);
        }
    }

    void authorisations() {
        // One without an end outlasts every other.
        Latest<Authorisation> latest;
        for (const Authorisation& given : holdings_.authorisations)
            if (given.state == "valid")
                keep(latest, given.person + "\n" + given.method + "\n" + given.procedures, given,
                     given.until.empty() ? std::string("9999-12-31") : given.until);
        for (const auto& [name, kept] : latest)
            add(*kept.first, kept.second, "authorisation " + kept.first->method,
                kept.first->person);
    }

    const Holdings& holdings_;
    std::string today_;
    std::string until_;
    std::vector<RunsOut> found_;
};

}  // namespace

std::vector<RunsOut> runningOut(const Holdings& holdings, std::string_view today, int days) {
    if (!isDate(today)) return {};
    return Search(holdings, today, days).run();
}

}  // namespace model
