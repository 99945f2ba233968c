// SPDX-License-Identifier: Apache-2.0
#include "exchange/canonical_json.h"

#include <string>
#include <string_view>

namespace model {
namespace {

/// The name that a quantity has in its own unit; empty: it is none.
std::string nameInUnit(std::string_view name) {
    constexpr std::string_view kNanometres = "_nm";
    constexpr std::string_view kMillionths = "_millionth_";
    if (name.ends_with(kNanometres))
        return std::string(name.substr(0, name.size() - kNanometres.size())) + "_mm";
    const std::size_t at = name.find(kMillionths);
    if (at == std::string_view::npos) return {};
    return std::string(name.substr(0, at)) + "_" +
           std::string(name.substr(at + kMillionths.size()));
}

JsonValue converted(const Canonical& value, bool inUnits) {
    if (const auto* text = value.text()) return JsonValue::string(*text);
    if (const auto* whole = value.whole()) return JsonValue::count(*whole);
    if (const auto* truth = value.truth()) return JsonValue::boolean(*truth);
    if (const auto* array = value.array())
        return JsonValue::arrayOf(
            *array, [&](const Canonical& element) { return converted(element, inUnits); });
    JsonValue::Members members;
    for (const auto& [name, member] : *value.object()) {
        const std::string inUnit = inUnits && member.whole() ? nameInUnit(name) : "";
        if (inUnit.empty())
            members.push_back({name, converted(member, inUnits)});
        else
            members.push_back({inUnit, JsonValue::number(*member.whole())});
    }
    return JsonValue::object(std::move(members));
}

}  // namespace

JsonValue jsonOf(const Canonical& value) {
    return converted(value, false);
}

JsonValue jsonInUnits(const Canonical& value) {
    return converted(value, true);
}

JsonValue dossierToJson(const Dossier& dossier) {
    Canonical::Object object;
    addList(object, "nonconformances", dossier.nonconformances);
    addList(object, "dispositions", dossier.dispositions);
    addList(object, "excavations", dossier.excavations);
    addList(object, "weld_repairs", dossier.weldRepairs);
    addList(object, "heat_treatments", dossier.heatTreatments);
    addList(object, "concessions", dossier.concessions);
    addList(object, "other_results", dossier.otherResults);
    addList(object, "attachments", dossier.attachments);
    return jsonOf(Canonical(std::move(object)));
}

}  // namespace model
