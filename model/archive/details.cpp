// SPDX-License-Identifier: Apache-2.0
#include "archive/details.h"

#include <span>

namespace model {
namespace {

constexpr char kDrawingMinimum[] = "drawing_minimum_nm";
constexpr char kOtherTests[] = "other_tests";

template <class T>
struct Detail {
    const char* key;
    std::string T::*text;
};

constexpr Detail<Part> kPartDetails[] = {{"pattern", &Part::pattern}, {"mass", &Part::mass}};
constexpr Detail<Casting> kCastingDetails[] = {
    {"series", &Casting::series},
    {"marking", &Casting::marking},
    {"condition_on_receipt", &Casting::conditionOnReceipt}};

template <class T>
Canonical::Object textsOf(const T& value, std::span<const Detail<T>> details) {
    Canonical::Object object;
    for (const Detail<T>& detail : details)
        if (const std::string& text = value.*detail.text; !text.empty()) object[detail.key] = text;
    return object;
}

/// False where a key is unknown or a value no text.
template <class T>
bool takeTexts(const Canonical::Object& object, std::span<const Detail<T>> details, T& value) {
    std::size_t taken = 0;
    for (const Detail<T>& detail : details) {
        const auto found = object.find(detail.key);
        if (found == object.end()) continue;
        const std::string* text = found->second.text();
        if (!text || text->empty()) return false;
        value.*detail.text = *text;
        ++taken;
    }
    return taken == object.size();
}

bool takeZone(const Canonical::Object& object, PlannedZone& zone) {
    std::size_t taken = 0;
    if (const auto found = object.find(kDrawingMinimum); found != object.end()) {
        if (!found->second.whole()) return false;
        zone.drawingMinimum = nanometres(*found->second.whole());
        ++taken;
    }
    if (const auto found = object.find(kOtherTests); found != object.end()) {
        if (!found->second.array()) return false;
        for (const Canonical& test : *found->second.array()) {
            if (!test.text()) return false;
            zone.otherTests.push_back(*test.text());
        }
        ++taken;
    }
    return taken == object.size();
}

/// take(object) says whether it was understood.
template <class Take>
Result<void> understood(const Connection& connection, const std::string& text,
                        const std::string& what, Take take) {
    const auto details = parseCanonical(text);
    if (details && details->object() && take(*details->object())) return {};
    return connection.damaged(what, "has details that are not understood");
}

}  // namespace

Canonical::Object detailsOf(const Part& part) {
    return textsOf<Part>(part, kPartDetails);
}

Canonical::Object detailsOf(const Casting& casting) {
    return textsOf<Casting>(casting, kCastingDetails);
}

Canonical::Object detailsOf(const PlannedZone& zone) {
    Canonical::Object object;
    if (zone.drawingMinimum) object[kDrawingMinimum] = zone.drawingMinimum->millionths();
    if (zone.otherTests.empty()) return object;
    Canonical::Array tests;
    for (const std::string& test : zone.otherTests) tests.emplace_back(test);
    object[kOtherTests] = std::move(tests);
    return object;
}

Result<std::string> detailsText(const Canonical::Object& details) {
    return canonicalBytes(details);
}

Result<void> takeDetails(const Connection& connection, const std::string& text, Order& order) {
    return understood(connection, text, "order " + order.number, [&](const auto& object) {
        auto terms = orderTermsFrom(object);
        if (terms) order.terms = std::move(*terms);
        return terms.has_value();
    });
}

Result<void> takeDetails(const Connection& connection, const std::string& text, Part& part) {
    return understood(connection, text, "part " + part.number, [&](const auto& object) {
        return takeTexts<Part>(object, kPartDetails, part);
    });
}

Result<void> takeDetails(const Connection& connection, const std::string& text, Casting& casting) {
    return understood(connection, text, "casting " + casting.serial, [&](const auto& object) {
        return takeTexts<Casting>(object, kCastingDetails, casting);
    });
}

Result<void> takeDetails(const Connection& connection, const std::string& text,
                         const std::string& what, PlannedZone& zone) {
    return understood(connection, text, what,
                      [&](const auto& object) { return takeZone(object, zone); });
}

Result<void> takeDetails(const Connection& connection, const std::string& text,
                         ExaminationDraft& draft) {
    return understood(connection, text, "examination " + std::to_string(draft.id),
                      [&](const auto& object) {
                          auto conditions = testConditionsFrom(object);
                          if (conditions) draft.conditions = std::move(*conditions);
                          return conditions.has_value();
                      });
}

}  // namespace model
