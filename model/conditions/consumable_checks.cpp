// SPDX-License-Identifier: Apache-2.0
// Batches that were used: state, expiry, family, level, batch certificate.
#include <algorithm>

#include "conditions/test_context.h"
#include "limits/words.h"

namespace model {
namespace {

using Is = ConditionKind;

std::string placeOf(const Consumable& item) {
    return item.kind + " " + item.id;
}

/// "1/2" and "2" in halves; none where it is neither a half nor a whole number from 1 to 4.
std::optional<int> halvesOf(std::string_view level) {
    if (level == "1/2" || level == "0.5" || level == "\xC2\xBD") return 1;
    if (level.size() == 1 && level[0] >= '1' && level[0] <= '4') return 2 * (level[0] - '0');
    return std::nullopt;
}

struct OrderedLevel {
    std::optional<int> halves;
    std::string type;  ///< empty: not stated
};

/// "2", "fluorescent 2", "colour contrast 2".
OrderedLevel orderedLevel(const std::string& text) {
    OrderedLevel ordered;
    std::string_view rest = text;
    for (const std::string_view type : {"fluorescent", "colour contrast"})
        if (rest.starts_with(type)) {
            ordered.type = type;
            rest.remove_prefix(type.size());
        }
    const std::size_t first = rest.find_first_not_of(' ');
    if (first != std::string_view::npos) ordered.halves = halvesOf(rest.substr(first));
    return ordered;
}

/// The parts of a penetrant system's designation, "I A a - 2".
struct Designation {
    std::string type;  ///< "I", "II" or "III"
    std::string level;
};

std::optional<Designation> designationFrom(const std::string& text) {
    std::string packed;
    for (const char c : text)
        if (c != ' ') packed += c;
    // A dash may be the typographic one.
    if (const auto at = packed.find("\xE2\x80\x93"); at != std::string::npos)
        packed.replace(at, 3, "-");
    Designation read;
    std::size_t at = 0;
    while (at < packed.size() && packed[at] == 'I') read.type += packed[at++];
    if (read.type.empty() || read.type.size() > 3 || at + 3 > packed.size()) return std::nullopt;
    const bool method = packed[at] >= 'A' && packed[at] <= 'Z';
    const bool form = packed[at + 1] >= 'a' && packed[at + 1] <= 'z';
    if (!method || !form || packed[at + 2] != '-') return std::nullopt;
    read.level = packed.substr(at + 3);
    if (!halvesOf(read.level)) return std::nullopt;
    return read;
}

std::string_view romanOf(std::string_view type) {
    return type == "fluorescent"       ? "I"
           : type == "colour contrast" ? "II"
           : type == "dual purpose"    ? "III"
                                       : "";
}

class ConsumableRule {
public:
    ConsumableRule(const ConditionSet& set, const ConditionRule& rule, FindingList& findings)
        : set_(set), rule_(rule), findings_(findings) {}

    void check(const std::vector<const Consumable*>& all) {
        std::vector<const Consumable*> items;
        for (const Consumable* item : all)
            if (std::ranges::count(rule_.words, item->kind) > 0) items.push_back(item);
        if (items.empty()) {
            if (!rule_.ifStated)
                findings_.addByRule(
                    set_, rule_, "",
                    inputError("consumables", "none of these is named: %1", {listOf(rule_.words)}));
            return;
        }
        if (rule_.kind == Is::OneMaker) return oneMaker(items);
        for (const Consumable* item : items) one(*item);
    }

private:
    void oneMaker(const std::vector<const Consumable*>& items) {
        for (const std::string& kind : rule_.words)
            if (!rule_.ifStated && std::ranges::none_of(items, [&](const Consumable* item) {
                    return item->kind == kind;
                }))
                findings_.addByRule(set_, rule_, kind,
                                    inputError("consumables", "no %1 is named", {kind}));
        for (const Consumable* item : items) {
            if (item->maker == items[0]->maker && !item->maker.empty()) continue;
            ConditionFinding& finding = findings_.addByRule(
                set_, rule_, item->id,
                inputError(placeOf(*item),
                           "is made by %1, and %2 by %3; one maker has to make both",
                           {item->maker, placeOf(*items[0]), items[0]->maker}));
            finding.measured = item->maker;
            finding.limit = items[0]->maker;
        }
    }

    void one(const Consumable& item) {
        switch (rule_.kind) {
            case Is::Expiry:
                if (item.expiresOn.empty())
                    say(item, "until when it may be used is not stated", {});
                return;
            case Is::Certificate:
                if (item.batchCertificate.empty()) say(item, "has no batch certificate", {});
                return;
            case Is::Sulphur:
                return content(item, item.sulphur, "sulphur");
            case Is::Halogens:
                return content(item, item.halogens, "chlorine and fluorine");
            case Is::Designation:
                return designation(item);
            default:
                return;
        }
    }

    void content(const Consumable& item, const std::string& text, const std::string& of) {
        const std::string limit = std::string(word(rule_.comparison)) + " " + rule_.limit->text();
        if (item.batchCertificate.empty())
            return say(item, "has no batch certificate for %1", {of}, "", limit);
        if (text.empty()) return say(item, "its %1 is not stated", {of}, "", limit);
        const auto value = ConditionValue::read(text, "mg/kg", Dimension::MassShare);
        if (!value || value->isNegative()) {
            findings_.add("unreadable " + of + " " + item.id, Reaction::Block,
                          inputError(placeOf(item), "its %1, \"%2\", cannot be read", {of, text}));
        } else if (!surelyHolds(*value, rule_.comparison, *rule_.limit)) {
            say(item, "has %1 of %2; it has to be %3", {value->text(), of, limit}, value->text(),
                limit);
        }
    }

    void designation(const Consumable& item) {
        const auto read = designationFrom(item.designation);
        if (!read) {
            say(item, "its designation \"%1\" is not of the form I A a - 2", {item.designation},
                item.designation);
        } else if ((!item.type.empty() && read->type != romanOf(item.type)) ||
                   (!item.sensitivityLevel.empty() &&
                    halvesOf(read->level) != halvesOf(item.sensitivityLevel))) {
            say(item, "its designation %1 does not agree with type %2 and level %3",
                {item.designation, item.type, item.sensitivityLevel}, item.designation);
        }
    }

    void say(const Consumable& item, std::string reason, std::vector<std::string> arguments,
             const std::string& measured = {}, const std::string& limit = {}) {
        ConditionFinding& finding =
            findings_.addByRule(set_, rule_, item.id,
                                inputError(placeOf(item), std::move(reason), std::move(arguments)));
        finding.measured = measured;
        finding.limit = limit;
    }

    const ConditionSet& set_;
    const ConditionRule& rule_;
    FindingList& findings_;
};

void checkBatch(const TestContext& context, const Consumable& item, FindingList& findings) {
    const std::string place = placeOf(item);
    if (item.state == "withdrawn")
        findings.add("state " + item.id, Reaction::Block, inputError(place, "is withdrawn"));
    if (!item.openedOn.empty() && item.openedOn > context.date)
        findings.add("opened " + item.id, Reaction::Block,
                     inputError(place, "was opened on %1, after the test on %2",
                                {item.openedOn, context.date}));
    if (item.expiresOn.empty()) return;
    if (!isDate(item.expiresOn)) {
        findings.add(
            "expiry " + item.id, Reaction::Block,
            inputError(place, "may be used until \"%1\", which is no date", {item.expiresOn}));
    } else if (item.expiresOn < context.date) {
        ConditionFinding& finding =
            findings.add("expiry " + item.id, Reaction::Block,
                         inputError(place, "could be used until %1; the test was on %2",
                                    {item.expiresOn, context.date}));
        finding.measured = context.date;
        finding.limit = "<= " + item.expiresOn;
    }
}

void checkOrderedLevel(const TestContext& context, const std::vector<const Consumable*>& items,
                       FindingList& findings) {
    const std::string& text = context.file.order.terms.penetrantLevel;
    if (text.empty() || context.draft.header.method != Method::Penetrant) return;
    const std::string place = "order " + context.file.order.number;
    const auto block = [&](std::string about, std::string reason,
                           std::vector<std::string> arguments) -> ConditionFinding& {
        ConditionFinding& finding =
            findings.add(std::move(about), Reaction::Block,
                         inputError(place, std::move(reason), std::move(arguments)));
        finding.limit = ">= " + text;
        return finding;
    };
    const OrderedLevel ordered = orderedLevel(text);
    if (!ordered.halves) {
        block("ordered penetrant level", "the penetrant level \"%1\" cannot be read; take 1/2 to 4",
              {text});
        return;
    }
    bool isThere = false;
    for (const Consumable* item : items) {
        if (item->kind != "penetrant") continue;
        isThere = true;
        const auto level = halvesOf(item->sensitivityLevel);
        const bool isType = ordered.type.empty() || ordered.type == item->type;
        if (level && *level >= *ordered.halves && isType) continue;
        block("ordered penetrant level " + item->id,
              "asks for a penetrant of level %1 at least; %2 is of level %3 %4",
              {text, item->id, item->type, item->sensitivityLevel})
            .measured = item->sensitivityLevel;
    }
    if (!isThere)
        block("ordered penetrant level", "asks for a penetrant of level %1 at least; none is named",
              {text});
}

}  // namespace

void checkConsumables(const TestContext& context, const Facts& facts, FindingList& findings) {
    std::vector<const Consumable*> items;
    for (const std::string& id : itemsOf(context.conditions().consumables)) {
        const Consumable* item = consumableIn(context.used(), id);
        if (item == nullptr) {
            findings.add("consumable " + id, Reaction::Block,
                         inputError("consumables", "names %1, which is not in the register", {id}));
            continue;
        }
        items.push_back(item);
        checkBatch(context, *item, findings);
    }
    checkOrderedLevel(context, items, findings);
    forEachRule(context, facts, [&](const ConditionSet& set, const ConditionRule& rule) {
        switch (rule.kind) {
            case Is::Expiry:
            case Is::OneMaker:
            case Is::Designation:
            case Is::Certificate:
            case Is::Sulphur:
            case Is::Halogens:
                return ConsumableRule(set, rule, findings).check(items);
            default:
                return;
        }
    });
}

}  // namespace model
