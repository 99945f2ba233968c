// SPDX-License-Identifier: Apache-2.0
#include "exporting/readings_json.h"

#include "archive/signed_record.h"
#include "base/decimal.h"
#include "exchange/canonical_json.h"
#include "exchange/json_text.h"
#include "trust/canonical.h"

namespace app {
namespace {

using model::Canonical;
using model::jsonOf;
using model::JsonValue;
using model::Result;

/// A record holds computed numbers as decimal text; here they are numbers again.
JsonValue sizeFrom(const Canonical::Object& size) {
    JsonValue::Members members;
    for (const auto& [name, value] : size) {
        if (name == "reflector") continue;
        const auto number = value.text() ? model::parseMillionths(*value.text())
                                         : Result<std::int64_t>(model::Error());
        members.push_back({name, number ? JsonValue::number(*number) : jsonOf(value)});
    }
    return JsonValue::object(std::move(members));
}

const Canonical::Array& listOf(const Canonical& object, const char* key) {
    static const Canonical::Array kNone;
    const Canonical* member = object.member(key);
    return member && member->array() ? *member->array() : kNone;
}

/// Each reflector of the record as typed, with what its reading gave.
JsonValue readingsOf(const Canonical& record) {
    JsonValue::Elements readings;
    for (const Canonical& reflector : listOf(record, "reflectors")) {
        const auto position = static_cast<std::int64_t>(readings.size()) + 1;
        JsonValue size;
        for (const Canonical& each : listOf(record, "sizes"))
            if (const Canonical* of = each.member("reflector");
                of && of->whole() && *of->whole() == position)
                size = sizeFrom(*each.object());
        readings.push_back(JsonValue::object({{"typed", jsonOf(reflector)}, {"size", size}}));
    }
    return JsonValue::array(std::move(readings));
}

JsonValue examinationOf(const Canonical& record, const Canonical& header) {
    JsonValue::Members members;
    for (const char* key : {"zone", "method", "stage", "repair_cycle", "repeat", "examined_by",
                            "examined_on", "procedure"})
        if (const Canonical* value = header.member(key)) members.push_back({key, jsonOf(*value)});
    JsonValue::Elements settings;
    for (const Canonical& setting : listOf(record, "settings")) settings.push_back(jsonOf(setting));
    members.push_back({"settings", JsonValue::array(std::move(settings))});
    members.push_back({"readings", readingsOf(record)});
    return JsonValue::object(std::move(members));
}

}  // namespace

Result<std::optional<std::string>> readingsJson(const model::Archive& archive,
                                                const std::vector<std::int64_t>& records) {
    JsonValue::Elements examinations;
    for (const std::int64_t id : records) {
        const auto content = model::signedRecordContent(archive, id);
        if (!content) return content.error();
        const auto record = model::parseCanonical(*content);
        if (!record) return record.error();
        const Canonical* header = record->member("header");
        const Canonical* method = header ? header->member("method") : nullptr;
        if (method && method->text() && *method->text() == "UT")
            examinations.push_back(examinationOf(*record, *header));
    }
    if (examinations.empty()) return std::optional<std::string>();
    return std::optional(model::writeJson(
        JsonValue::object({{"format", JsonValue::string("fettlemark-readings/1")},
                           {"examinations", JsonValue::array(std::move(examinations))}})));
}

}  // namespace app
