// SPDX-License-Identifier: Apache-2.0
#include "conditions/facts.h"

#include <algorithm>

#include "conditions/test_context.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

bool isBlankText(std::string_view text) {
    return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

/// Temperatures and echo steps go below zero; nothing else does.
bool maybeNegative(Dimension dimension) {
    return dimension == Dimension::Temperature || dimension == Dimension::Decibels;
}

Result<Fact> factOf(const Parameter& parameter, const std::string& value, const std::string& unit) {
    Fact fact;
    fact.text = value;
    switch (parameter.kind) {
        case ParameterKind::Number: {
            auto number = ConditionValue::read(value, unit, parameter.dimension);
            if (!number) return number.error();
            if (number->isNegative() && !maybeNegative(parameter.dimension))
                return inputError("", "%1 is below 0, which cannot be", {number->text()});
            fact.text = number->text();
            fact.number = *number;
            return fact;
        }
        case ParameterKind::Choice:
        case ParameterKind::YesNo: {
            const std::string_view choices =
                parameter.kind == ParameterKind::YesNo ? "yes|no" : parameter.choices;
            if (std::ranges::count(partsOf(choices), value) == 0)
                return inputError("", "\"%1\" is none of: %2", {value, std::string(choices)});
            break;
        }
        case ParameterKind::Moment:
            fact.moment = timeFrom(value);
            if (!fact.moment)
                return inputError("", "\"%1\" is not a time such as 2026-11-25T09:30:00Z", {value});
            break;
        case ParameterKind::Text:
            break;
    }
    if (parameter.kind != ParameterKind::Number && !unit.empty())
        return inputError("", "it has no unit; \"%1\" is stated", {unit});
    return fact;
}

}  // namespace

class Facts::Reader {
public:
    Reader(Facts& facts, const CastingFile& file, const ExaminationDraft& draft,
           FindingList& findings)
        : facts_(facts), file_(file), draft_(draft), findings_(findings) {}

    void readAll() {
        for (const Measurement& measured : draft_.conditions.measurements) read(measured);
        readHeader();
        readConsumables();
        readDevelopment();
        if (draft_.header.method != Method::Ultrasonic) return;
        readSettings();
        readScans();
    }

private:
    void read(const Measurement& measured) {
        const auto number = std::to_string(&measured - draft_.conditions.measurements.data() + 1);
        const Parameter* known = parameter(measured.parameter);
        if (known == nullptr) {
            findings_.add(
                "unreadable measurement " + number, Reaction::Block,
                inputError("measurement " + number, "\"%1\" is not a parameter that is known",
                           {measured.parameter}));
            return;
        }
        const std::string method(word(draft_.header.method));
        if (std::ranges::count(partsOf(known->methods), method) == 0)
            findings_.add(
                "not of " + method + " " + measured.parameter, Reaction::Warn,
                inputError(std::string(known->label), "is not a condition of %1", {method}));
        auto fact = factOf(*known, measured.value, measured.unit);
        if (!fact) return unreadable(*known, number, fact.error());
        fact->place = measured.place;
        facts_.facts_[measured.parameter].push_back(*fact);
        if (!known->meters.empty()) checkEvidence(*known, measured, number);
    }

    void unreadable(const Parameter& known, const std::string& number, Error error) {
        facts_.unreadable_[std::string(known.key)] = true;
        error.place = std::string(known.label);
        findings_.add("unreadable " + std::string(known.key) + " " + number, Reaction::Block,
                      std::move(error));
    }

    /// A reading proves something only with its meter, time and person.
    void checkEvidence(const Parameter& known, const Measurement& measured,
                       const std::string& number) {
        const std::string about = measured.parameter + " " + number;
        const std::string label(known.label);
        if (measured.instrument.empty()) {
            findings_.add("instrument " + about, Reaction::Block,
                          inputError(label, "the instrument is not stated; needed: %1",
                                     {std::string(known.meters)}));
        } else if (const Equipment* meter = equipmentIn(file_.used, measured.instrument);
                   meter != nullptr &&
                   std::ranges::count(partsOf(known.meters), meter->kind) == 0) {
            findings_.add("kind of instrument " + about, Reaction::Warn,
                          inputError(label, "was read with %1, a %2; needed: %3",
                                     {meter->id, meter->kind, std::string(known.meters)}));
        }
        if (measured.by.empty())
            findings_.add("person " + about, Reaction::Warn,
                          inputError(label, "who took the reading is not stated"));
        const auto at = timeFrom(measured.at);
        if (measured.at.empty())
            findings_.add("time " + about, Reaction::Warn,
                          inputError(label, "when the reading was taken is not stated"));
        else if (!at)
            findings_.add("time " + about, Reaction::Block,
                          inputError(label, "\"%1\" is not a time such as 2026-11-25T09:30:00Z",
                                     {measured.at}));
        else if (!canBeOn(*at, draft_.examinedOn))
            findings_.add("time " + about, Reaction::Warn,
                          inputError(label, "was read at %1, not on the day of the test, %2",
                                     {measured.at, draft_.examinedOn}));
    }

    /// A text of the record itself. An empty one is left out, or said to be missing at `place`.
    void fromRecord(const char* key, const std::string& text, const std::string& unit,
                    const std::string& place = {}, bool isNeeded = false) {
        const Parameter& known = *parameter(key);
        if (isBlankText(text)) {
            if (isNeeded) facts_.facts_[key].push_back({"", {}, {}, place});
            return;
        }
        auto fact = factOf(known, text, unit);
        if (!fact) return unreadable(known, place, fact.error());
        fact->place = place;
        facts_.facts_[key].push_back(*fact);
    }

    void readHeader() {
        const TestConditions& stated = draft_.conditions;
        fromRecord("coating", stated.coating, "um");
        fromRecord("surface_finish", stated.surfaceFinish, "");
        fromRecord("surface_preparation", stated.surfacePreparation, "");
        fromRecord("delivery_state", stated.deliveryState, "");
        fromRecord("stage", std::string(word(draft_.header.stage)), "");
        fromRecord("material", std::string(word(file_.part.material)), "");
    }

    void readConsumables() {
        for (const std::string& id : itemsOf(draft_.conditions.consumables)) {
            const Consumable* item = consumableIn(file_.used, id);
            if (item == nullptr) continue;
            const bool isInk = item->kind == "magnetic ink";
            const bool isPowder = item->kind == "magnetic powder";
            if (isInk || isPowder) addOnce("media", isInk ? "wet" : "dry", "consumable " + id);
            if ((isInk || isPowder || item->kind == "penetrant") && !item->type.empty() &&
                item->type != "dual purpose")
                addOnce("viewing", item->type, "consumable " + id);
        }
    }

    /// The time that the moments show stands beside one that was typed.
    void readDevelopment() {
        for (const Fact& begun : facts_.of("developer_dry_at"))
            for (const Fact& ended : facts_.of("final_look_at")) {
                const auto seconds = (*ended.moment - *begun.moment).count();
                fromRecord("development_time", std::to_string(seconds), "s",
                           "from the times stated");
            }
    }

    void addOnce(const char* key, const std::string& text, const std::string& place) {
        for (const Fact& known : facts_.of(key))
            if (known.text == text) return;
        fromRecord(key, text, "", place);
    }

    void readSettings() {
        const UltrasonicTest& test = draft_.header.ultrasonic;
        if (draft_.header.thickness > Length())
            fromRecord("wall_thickness", toText(draft_.header.thickness), "mm");
        if (test.testability && test.testability->signalToNoise)
            fromRecord("signal_to_noise", toText(*test.testability->signalToNoise), "dB");
        const auto directions = std::ranges::count_if(
            test.directions, [](const std::string& direction) { return !isBlankText(direction); });
        if (directions > 0) fromRecord("scan_directions", std::to_string(directions), "");
        bool twinOnly = !draft_.settings.empty();
        bool onBlock = false;
        for (const TypedSetting& setting : draft_.settings) {
            twinOnly = twinOnly && setting.kind == "twin";
            const bool isOnBlock = setting.referenceOn == "block";
            onBlock = onBlock || isOnBlock;
            readSetting(setting, "setting " + setting.name, isOnBlock);
        }
        if (draft_.settings.empty()) return;
        fromRecord("twin_only", twinOnly ? "yes" : "no", "");
        fromRecord("reference_on_block", onBlock ? "yes" : "no", "");
    }

    void readSetting(const TypedSetting& setting, const std::string& place, bool isOnBlock) {
        const std::string unit(symbol(setting.unit));
        fromRecord("probe_frequency", setting.frequency, "MHz", place, true);
        if (setting.element == "rectangular") {
            fromRecord("element_size", setting.elementWidth, unit, place, true);
            fromRecord("element_size", setting.elementLength, unit, place, true);
        } else {
            fromRecord("element_size", setting.diameter, unit, place, true);
        }
        if (!isOnBlock) return;
        fromRecord("reference_block", setting.block, "", place, true);
        fromRecord("transfer_correction", setting.transfer, "dB", place, true);
    }

    void readScans() {
        const bool speedStated = !facts_.of("scan_speed").empty();
        const bool overlapStated = !facts_.of("scan_overlap").empty();
        for (const Scan& scan : draft_.conditions.scans) {
            fromRecord("scan_speed", scan.speed, "mm/s", "scan " + scan.id, !speedStated);
            fromRecord("scan_overlap", scan.overlap, "%", "scan " + scan.id, !overlapStated);
        }
    }

    Facts& facts_;
    const CastingFile& file_;
    const ExaminationDraft& draft_;
    FindingList& findings_;
};

Facts::Facts(const CastingFile& file, const ExaminationDraft& draft, FindingList& findings) {
    Reader(*this, file, draft, findings).readAll();
}

const std::vector<Fact>& Facts::of(std::string_view parameter) const {
    static const std::vector<Fact> kNone;
    const auto found = facts_.find(parameter);
    return found == facts_.end() ? kNone : found->second;
}

bool Facts::isUnreadable(std::string_view parameter) const {
    return unreadable_.contains(parameter);
}

}  // namespace model
