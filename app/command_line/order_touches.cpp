// SPDX-License-Identifier: Apache-2.0
#include "order_touches.h"

#include "archive/order_impact.h"
#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/register_rows.h"
#include "qt_core.h"
#include "signing_in.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;

/// The order as it would be: a fettlemark-entry/1 of the same number.
Result<model::Order> changedOrder(const std::string& file, const std::string& number) {
    const auto document = model::readJson(file);
    if (!document) return document.error();
    const std::string name = model::documentName(file);
    const auto table = model::entryFromJson(*document, name, model::OrderLine::kRegister);
    if (!table) return table.error();
    const auto read = model::readOrders(*table);
    if (!read.problems.empty()) return model::inputError(name, read.problems.front().message());
    if (read.entries.size() != 1 || read.entries.front().value.number != number)
        return model::inputError(name, "must hold the order %1 and no other", {number});
    return read.entries.front().value;
}

JsonValue numberOrNull(const std::optional<std::int64_t>& number) {
    return number ? JsonValue::count(*number) : JsonValue();
}

JsonValue castingToJson(const model::TouchedCasting& casting) {
    return JsonValue::object(
        {{"serial", JsonValue::string(casting.serial)},
         {"drafts", JsonValue::strings(casting.drafts)},
         {"records", JsonValue::strings(casting.records)},
         {"waiting", numberOrNull(casting.waiting)},
         {"certificate", numberOrNull(casting.certificate)},
         {"missing",
          JsonValue::arrayOf(casting.missing, [](const model::TouchedCasting::Missing& missing) {
              return JsonValue::object({{"test", JsonValue::string(missing.test)},
                                        {"already", JsonValue::boolean(missing.already)}});
          })}});
}

Result<Outcome> listTouched(const Arguments& arguments) {
    const std::string& number = *arguments.value("--order");
    const std::string* file = arguments.value("--json");
    std::optional<model::Order> changed;
    if (file) {
        auto read = changedOrder(*file, number);
        if (!read) return read.error();
        changed = std::move(*read);
    }
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    if (!changed) {
        const auto stored = archive->order(number);
        if (!stored) return stored.error();
        // Of any change the same castings are touched.
        changed = stored->value;
        changed->remarks += "\n";
    }
    auto impact = model::whatOrderTouches(*archive, *changed);
    if (!impact) return impact.error();
    if (!file) impact->fields.clear();
    return Outcome{ExitCode::Done,
                   model::writeJson(JsonValue::object(
                       {{"format", JsonValue::string("fettlemark-order-touches/1")},
                        {"order", JsonValue::string(number)},
                        {"fields", JsonValue::strings(impact->fields)},
                        {"errors", JsonValue::strings(impact->errors)},
                        {"castings", JsonValue::arrayOf(impact->castings, castingToJson)}}))};
}

}  // namespace

Command orderTouchesCommand() {
    return {
        .name = "order-touches",
        .operand = "",
        .summary = "shows what a change of an order would touch",
        .details =
            "Reads the order as it would be, whole, as fettlemark-entry/1 (as entries prints\n"
            "its rows), and prints fettlemark-order-touches/1: the labels of the fields that\n"
            "change, what cannot be read, and the castings of the order, each with its drafts,\n"
            "which would be judged by the order as changed; its signed records, which keep the\n"
            "order of then; the certificate that waits for release or stands; and the tests\n"
            "that would be missing. Without --json the castings that any change would touch.\n"
            "Nothing is written.\n",
        .options = {kDatabaseOption,
                    {"--order", "N", "the works' number of it", true},
                    {"--json", "FILE", "the order as it would be; - for standard input"}},
        .run = &listTouched};
}

}  // namespace app
