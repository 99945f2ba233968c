// SPDX-License-Identifier: Apache-2.0
// Checks of ultrasonic settings: that they were made when they had to be, and what follows from a
// drift.
#include <algorithm>
#include <set>

#include "conditions/drift.h"
#include "conditions/setting_chain.h"
#include "conditions/test_context.h"

namespace model {
namespace {

using Is = ConditionKind;

std::string minutesText(std::chrono::seconds seconds) {
    return std::to_string(std::chrono::ceil<std::chrono::minutes>(seconds).count()) + " min";
}

class SettingRule {
public:
    SettingRule(const TestContext& context, const ConditionSet& set, const ConditionRule& rule,
                FindingList& findings)
        : context_(context), set_(set), rule_(rule), findings_(findings) {}

    void check() {
        if (rule_.kind == Is::CheckTemperature) return temperatures();
        std::set<std::string> settings;
        for (const TypedSetting& setting : context_.draft.settings) settings.insert(setting.name);
        for (const Scan& scan : context_.conditions().scans) settings.insert(scan.setting);
        if (settings.empty())
            say("", inputError("ultrasonic settings", "none is stated, nor any check of it"));
        for (const std::string& setting : settings) check(setting);
    }

private:
    void check(const std::string& setting) {
        const auto checks = checksOf(context_.conditions(), setting);
        std::vector<TimedScan> scans;
        for (const Scan& scan : context_.conditions().scans)
            if (scan.setting == setting)
                if (const auto times = timed(scan)) scans.push_back(*times);
        const std::string place = "setting " + setting;
        if (checks.empty()) {
            say(setting, inputError(place, "no check of it is stated"));
            return;
        }
        if (scans.empty()) {
            if (rule_.kind == Is::CheckBefore)
                say(setting, inputError(place,
                                        "no scan with it is stated, so that what its checks "
                                        "cover is not known"));
            return;
        }
        const TimedScan& first = *std::ranges::min_element(scans, {}, &TimedScan::start);
        const TimedScan& last = *std::ranges::max_element(scans, {}, &TimedScan::end);
        if (rule_.kind == Is::CheckBefore && checks.front().at > first.start)
            say(setting,
                inputError(place, "was first checked at %1, after scan %2 began at %3",
                           {checks.front().check->at, first.scan->id, first.scan->startedAt}));
        if (rule_.kind == Is::CheckAfter && checks.back().at < last.end)
            say(setting, inputError(place, "was last checked at %1, before scan %2 ended at %3",
                                    {checks.back().check->at, last.scan->id, last.scan->endedAt}));
        if (rule_.kind == Is::CheckInterval) interval(setting, checks, scans);
    }

    void interval(const std::string& setting, const std::vector<TimedCheck>& checks,
                  const std::vector<TimedScan>& scans) {
        const auto tooLong = [&](UtcTime from, UtcTime to) {
            const auto gap =
                ConditionValue::read(std::to_string((to - from).count()), "s", Dimension::Time);
            return !gap || !surelyHolds(*gap, Comparison::AtMost, *rule_.limit);
        };
        for (std::size_t i = 0; i < checks.size(); ++i) {
            const bool isLast = i + 1 == checks.size();
            // After the last check, up to the end of the last scan.
            UtcTime to = isLast ? checks[i].at : checks[i + 1].at;
            bool isUsed = false;
            for (const TimedScan& scan : scans) {
                if (isLast) to = std::max(to, scan.end);
                isUsed = isUsed || (scan.end > checks[i].at && scan.start < to);
            }
            if (!isUsed || !tooLong(checks[i].at, to)) continue;
            const std::string gap = minutesText(to - checks[i].at);
            ConditionFinding& finding =
                say(setting + " " + checks[i].check->id,
                    inputError("setting " + setting,
                               "was not checked for %1 after check %2 while it was in use; at most "
                               "%3 may lie between",
                               {gap, checks[i].check->id, rule_.limit->text()}));
            finding.measured = gap;
            finding.limit = "<= " + rule_.limit->text();
        }
    }

    void temperatures() {
        for (const SettingCheck& check : context_.conditions().settingChecks) {
            const std::string place = "setting check " + check.id;
            const auto block = numberOf(check.blockTemperature);
            const auto part = numberOf(check.partTemperature);
            const std::string limit = "<= " + rule_.limit->text();
            if (!block || !part) {
                say(check.id,
                    inputError(place, "the temperatures of block and part are not stated"))
                    .limit = limit;
                continue;
            }
            const std::string apart =
                formatMillionths(*block < *part ? *part - *block : *block - *part);
            const auto difference = ConditionValue::read(apart, "deg C", Dimension::Temperature);
            if (difference && surelyHolds(*difference, Comparison::AtMost, *rule_.limit)) continue;
            ConditionFinding& finding = say(
                check.id, inputError(place, "block and part differ by %1 deg C; it has to be %2",
                                     {apart, limit}));
            finding.measured = apart + " deg C";
            finding.limit = limit;
        }
    }

    ConditionFinding& say(const std::string& about, Error error) {
        return findings_.addByRule(set_, rule_, about, std::move(error));
    }

    const TestContext& context_;
    const ConditionSet& set_;
    const ConditionRule& rule_;
    FindingList& findings_;
};

/// A Level 3 who approved a procedure that names the rule took its limits over.
bool isTakenOver(const TestContext& context) {
    const Procedure& entry = *context.driftNamedBy;
    return !entry.approvedBy.empty() && isDate(entry.approvedOn) &&
           entry.approvedOn <= context.date;
}

void checkDrift(const TestContext& context, FindingList& findings) {
    const ConditionSet& set = *context.drift;
    const DriftConsequences found = consequencesOf(context.draft, set);
    for (const Error& error : found.unclear)
        findings.add("unclear " + error.place, Reaction::Block, error);
    for (const std::string& id : found.withoutCheck)
        findings.add(
            "check before " + id, Reaction::Warn,
            inputError("indication " + id, "does not say after which setting check it was found"));
    const auto add = [&](std::string id, const ConditionRule& rule, Error error,
                         const std::string& why) {
        const Reaction reaction =
            isTakenOver(context) ? rule.reaction : findings.reactionOf(set, rule);
        ConditionFinding& finding = findings.add(std::move(id), reaction, std::move(error));
        finding.measured = why;
        finding.limit = rule.limit->text();
        finding.source = rule.source;
    };
    for (const VoidScan& scan : found.voidScans) {
        if (!scan.again.empty()) {
            // It stays to be read that the scan was repeated, and why.
            ConditionFinding& finding = findings.add(
                "repeated " + scan.scan, Reaction::Log,
                inputError("scan " + scan.scan,
                           "is void by setting check %1 (%2) and was repeated by scan %3",
                           {scan.check, scan.why, scan.again}));
            finding.measured = scan.why;
            finding.limit = scan.rule->limit->text();
            finding.source = scan.rule->source;
            continue;
        }
        add("void " + scan.scan, *scan.rule,
            inputError("scan " + scan.scan,
                       "is void by setting check %1 (%2) and has to be made again",
                       {scan.check, scan.why}),
            scan.why);
    }
    for (const ReopenedIndication& row : found.reopened)
        add("evaluate again " + row.indication, *row.rule,
            inputError("indication " + row.indication,
                       "has to be evaluated again, as setting check %1 showed: %2",
                       {row.check, row.why}),
            row.why);
}

}  // namespace

void checkSettings(const TestContext& context, const Facts& facts, FindingList& findings) {
    if (context.draft.header.method != Method::Ultrasonic) return;
    forEachRule(context, facts, [&](const ConditionSet& set, const ConditionRule& rule) {
        switch (rule.kind) {
            case Is::CheckBefore:
            case Is::CheckAfter:
            case Is::CheckInterval:
            case Is::CheckTemperature:
                return SettingRule(context, set, rule, findings).check();
            default:
                return;
        }
    });
    if (context.drift != nullptr) checkDrift(context, findings);
}

}  // namespace model
