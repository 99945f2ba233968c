// SPDX-License-Identifier: Apache-2.0
// What the test was made with: state, calibration, and the works' own checks of it.
#include <algorithm>

#include "conditions/test_context.h"
#include "limits/words.h"

namespace model {
namespace {

using Is = ConditionKind;

// Readings of these prove a condition, so they are nothing without a calibration.
constexpr std::string_view kMeters[] = {"light meter", "UV-A meter", "field meter",
                                        "residual field meter", "thermometer"};

/// Made before the test was over; none where its time cannot be read.
std::optional<UtcTime> madeBefore(const EquipmentCheck& check, UtcTime until) {
    const auto at = timeFrom(check.at);
    return at && *at <= until ? at : std::nullopt;
}

/// The last check of that name on a thing before the end of the test; null: there is none.
const EquipmentCheck* lastCheck(const TestContext& context, std::string_view item,
                                std::string_view name) {
    const EquipmentCheck* last = nullptr;
    for (const EquipmentCheck& check : context.used().checks)
        if (check.equipment == item && check.check == name && madeBefore(check, context.until) &&
            (last == nullptr || check.at >= last->at))
            last = &check;
    return last;
}

void checkCalibration(const TestContext& context, const Equipment& item, const std::string& place,
                      FindingList& findings) {
    const std::string id = "calibration " + item.id;
    if (item.calibrationDue.empty()) {
        if (std::ranges::count(kMeters, item.kind) > 0)
            findings.add(id, Reaction::Block,
                         inputError(place, "until when its calibration holds is not stated"));
        return;
    }
    if (!isDate(item.calibrationDue)) {
        findings.add(id, Reaction::Block,
                     inputError(place, "its calibration is due on \"%1\", which is no date",
                                {item.calibrationDue}));
    } else if (item.calibrationDue < context.date) {
        ConditionFinding& finding =
            findings.add(id, Reaction::Block,
                         inputError(place, "its calibration held until %1; the test was on %2",
                                    {item.calibrationDue, context.date}));
        finding.measured = context.date;
        finding.limit = "<= " + item.calibrationDue;
    } else if (!item.calibratedOn.empty() && item.calibratedOn > context.date) {
        findings.add(id, Reaction::Warn,
                     inputError(place,
                                "was calibrated on %1, after the test on %2; state the "
                                "calibration that held then",
                                {item.calibratedOn, context.date}));
    }
}

/// Checks that were not passed, or that say themselves when the next was due.
void checkChecks(const TestContext& context, const std::string& item, const std::string& place,
                 FindingList& findings) {
    std::vector<std::string> names;
    for (const EquipmentCheck& check : context.used().checks)
        if (check.equipment == item && std::ranges::count(names, check.check) == 0)
            names.push_back(check.check);
    for (const std::string& name : names) {
        const EquipmentCheck* last = lastCheck(context, item, name);
        if (last == nullptr) continue;
        std::string id = name;
        id.append(" ").append(item);
        if (last->result != "passed") {
            findings.add(id, Reaction::Block,
                         inputError(place, "the check %1 at %2 was not passed", {name, last->at}));
        } else if (!last->nextDue.empty() &&
                   (!isDate(last->nextDue) || last->nextDue < context.date)) {
            ConditionFinding& finding =
                findings.add(id, Reaction::Block,
                             inputError(place, "the check %1 was due on %2; the test was on %3",
                                        {name, last->nextDue, context.date}));
            finding.measured = context.date;
            finding.limit = "<= " + last->nextDue;
        }
    }
}

/// Whether a probe is one that an angle-beam setting names, or may be.
bool isAngleProbe(const Equipment& item, const std::vector<TypedSetting>& settings,
                  const std::vector<const Equipment*>& probes) {
    const auto names = [](const TypedSetting& setting, const Equipment& probe) {
        return setting.probe.find(probe.id) != std::string::npos ||
               (!probe.serial.empty() && setting.probe.find(probe.serial) != std::string::npos);
    };
    bool isNamed = false;
    bool angleWithoutProbe = false;
    for (const TypedSetting& setting : settings) {
        const bool isAngle = setting.kind == "angle";
        if (names(setting, item)) {
            if (isAngle) return true;
            isNamed = true;
        }
        angleWithoutProbe = angleWithoutProbe ||
                            (isAngle && std::ranges::none_of(probes, [&](const Equipment* probe) {
                                 return names(setting, *probe);
                             }));
    }
    return !isNamed && angleWithoutProbe;
}

class CheckRule {
public:
    CheckRule(const TestContext& context, const ConditionSet& set, const ConditionRule& rule,
              FindingList& findings)
        : context_(context), set_(set), rule_(rule), findings_(findings) {}

    void check(const std::vector<NamedItem>& items) {
        std::vector<const Equipment*> probes;
        for (const NamedItem& item : items)
            if (const Equipment* found = equipmentIn(context_.used(), item.id);
                found && found->kind == "probe")
                probes.push_back(found);
        if (rule_.words.empty()) return checkAny(items);
        bool isThere = false;
        for (const NamedItem& item : items) {
            const Equipment* found = equipmentIn(context_.used(), item.id);
            if (found == nullptr || !isMeant(*found, probes)) continue;
            isThere = true;
            checkOne(found->id, found->kind + " " + found->id);
        }
        const bool onlyAngleProbes = rule_.words.size() == 1 && rule_.words[0] == kAngleProbe;
        if (!isThere && rule_.kind == Is::Check && !rule_.ifStated &&
            (!onlyAngleProbes || hasAngleSetting()))
            findings_.addByRule(set_, rule_, "",
                                inputError("equipment", "names no %1, which the check %2 is of",
                                           {listOf(rule_.words), rule_.check}));
    }

private:
    [[nodiscard]] bool hasAngleSetting() const {
        return std::ranges::count(context_.draft.settings, "angle", &TypedSetting::kind) > 0;
    }

    [[nodiscard]] bool isMeant(const Equipment& item,
                               const std::vector<const Equipment*>& probes) const {
        return std::ranges::any_of(rule_.words, [&](const std::string& kind) {
            if (kind != kAngleProbe) return kind == item.kind;
            return item.kind == "probe" && isAngleProbe(item, context_.draft.settings, probes);
        });
    }

    void checkOne(const std::string& id, const std::string& place) {
        if (rule_.kind == Is::Calibration) return calibration(id, place);
        const EquipmentCheck* last = lastCheck(context_, id, rule_.check);
        if (last == nullptr)
            return say(id, inputError(place, "no check %1 before the test is in the register",
                                      {rule_.check}));
        // One that was not passed is said already.
        if (last->result != "passed") return;
        if (auto late = tooOld(*last, place)) return say(id, std::move(*late), last->at);
        value(id, *last, place);
    }

    /// Any thing or consumable that the test names may have the check.
    void checkAny(const std::vector<NamedItem>& items) {
        std::vector<std::string> ids = itemsOf(context_.conditions().consumables);
        for (const NamedItem& item : items) ids.push_back(item.id);
        const EquipmentCheck* last = nullptr;
        for (const std::string& id : ids)
            if (const EquipmentCheck* check = lastCheck(context_, id, rule_.check);
                check && check->result == "passed" && (last == nullptr || check->at > last->at))
                last = check;
        if (last == nullptr)
            return say("", inputError("equipment", "no check %1 before the test is in the register",
                                      {rule_.check}));
        const std::string place = "equipment " + last->equipment;
        if (auto late = tooOld(*last, place)) return say("", std::move(*late), last->at);
        value("", *last, place);
    }

    /// Why the check is too old; none: it is not.
    [[nodiscard]] std::optional<Error> tooOld(const EquipmentCheck& check,
                                              const std::string& place) const {
        if (!rule_.every) return std::nullopt;
        const UtcTime at = *timeFrom(check.at);
        const std::string day = dayOf(at);
        const auto late = [&](std::string reason, std::vector<std::string> arguments) {
            arguments.insert(arguments.begin(), {rule_.check, check.at});
            return inputError(place, std::move(reason), std::move(arguments));
        };
        if (rule_.every->unit == Every::Unit::Hours) {
            if (!context_.start)
                return late(
                    "whether the check %1 at %2 held is not known, as the start of the "
                    "test is not stated",
                    {});
            if (*context_.start - at <= std::chrono::hours(rule_.every->count)) return std::nullopt;
            return late("the check %1 at %2 holds for %3; the test began at %4",
                        {rule_.every->text(), toText(*context_.start)});
        }
        if (rule_.every->unit == Every::Unit::Days && rule_.every->count == 0) {
            if (day == context_.date || (context_.start && day == dayOf(*context_.start)))
                return std::nullopt;
            return late("the check %1 was last made at %2, not on the day of the test, %3",
                        {context_.date});
        }
        const std::string holdsUntil = rule_.every->unit == Every::Unit::Days
                                           ? daysAfter(day, rule_.every->count)
                                           : monthsAfter(day, rule_.every->count);
        if (holdsUntil >= context_.date) return std::nullopt;
        return late("the check %1 at %2 held until %3; the test was on %4",
                    {holdsUntil, context_.date});
    }

    void calibration(const std::string& id, const std::string& place) {
        const Equipment& item = *equipmentIn(context_.used(), id);
        if (!isDate(item.calibratedOn))
            return say(id, inputError(place, "when it was calibrated is not stated"));
        const std::string holdsUntil = monthsAfter(item.calibratedOn, rule_.every->count);
        if (holdsUntil < context_.date)
            say(id,
                inputError(place, "was calibrated on %1, which holds until %2; the test was on %3",
                           {item.calibratedOn, holdsUntil, context_.date}),
                item.calibratedOn);
    }

    /// The reading, where the rule has limits for it: one of its alternatives has to hold.
    void value(const std::string& id, const EquipmentCheck& check, const std::string& place) {
        if (rule_.values.empty()) return;
        const auto read =
            ConditionValue::read(check.value, check.unit, rule_.values[0].limit.dimension());
        if (!read) {
            Error error = read.error();
            error.place = place + ", " + rule_.check;
            return unreadable(id, std::move(error));
        }
        std::string wanted;
        for (const CheckValue& one : rule_.values) {
            std::string bound = std::string(word(one.comparison)) + " " + one.limit.text();
            if (one.from) bound += " at " + one.from->text() + " to " + one.to->text();
            wanted += (wanted.empty() ? "" : ", or ") + bound;
            if (one.from && !isBetween(check.condition, one)) continue;
            if (surelyHolds(*read, one.comparison, one.limit)) return;
        }
        ConditionFinding& finding = findings_.addByRule(
            set_, rule_, id,
            inputError(place, "the check %1 gave %2%3; it has to be %4",
                       {rule_.check, read->text(),
                        check.condition.empty() ? "" : " at " + check.condition, wanted}));
        finding.measured = read->text();
        finding.limit = wanted;
    }

    static bool isBetween(const std::string& condition, const CheckValue& bounds) {
        const std::size_t blank = condition.find_last_of(' ');
        if (blank == std::string::npos) return false;
        const auto at = ConditionValue::read(condition.substr(0, blank),
                                             condition.substr(blank + 1), Dimension::Extent);
        return at && surelyHolds(*at, Comparison::AtLeast, *bounds.from) &&
               surelyHolds(*at, Comparison::AtMost, *bounds.to);
    }

    void unreadable(const std::string& id, Error error) {
        findings_.add("unreadable " + rule_.check + " " + id, Reaction::Block, std::move(error));
    }

    void say(const std::string& about, Error error, const std::string& measured = {}) {
        ConditionFinding& finding = findings_.addByRule(set_, rule_, about, std::move(error));
        finding.measured = measured;
        if (rule_.every)
            finding.limit =
                rule_.every->count == 0 ? rule_.every->text() : "every " + rule_.every->text();
    }

    const TestContext& context_;
    const ConditionSet& set_;
    const ConditionRule& rule_;
    FindingList& findings_;
};

}  // namespace

void checkEquipment(const TestContext& context, const Facts& facts, FindingList& findings) {
    const std::vector<NamedItem> items = namedEquipment(context.draft);
    for (const NamedItem& named : items) {
        const Equipment* item = equipmentIn(context.used(), named.id);
        if (item == nullptr) {
            findings.add("equipment " + named.id, Reaction::Block,
                         inputError(named.place,
                                    "names the equipment %1, which is not in the "
                                    "register",
                                    {named.id}));
            continue;
        }
        const std::string place = item->kind + " " + item->id;
        if (item->state != "in use")
            findings.add("state " + item->id, Reaction::Block,
                         inputError(place, "is %1", {item->state}));
        checkCalibration(context, *item, place, findings);
        checkChecks(context, item->id, place, findings);
    }
    for (const std::string& id : itemsOf(context.conditions().consumables))
        checkChecks(context, id, "consumable " + id, findings);
    forEachRule(context, facts, [&](const ConditionSet& set, const ConditionRule& rule) {
        if (rule.kind == Is::Check || rule.kind == Is::Calibration)
            CheckRule(context, set, rule, findings).check(items);
    });
}

}  // namespace model
