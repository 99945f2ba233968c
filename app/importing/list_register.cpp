// SPDX-License-Identifier: Apache-2.0
#include "importing/list_register.h"

#include <algorithm>

#include "archive/registers.h"
#include "exchange/register_rows.h"
#include "importing/import_register.h"
#include "importing/person_line.h"
#include "registers/every_register.h"

namespace app {
namespace {

using model::FieldInfo;
using model::Result;

template <class Line>
std::vector<std::string> textsOf(const Line& line) {
    std::vector<std::string> texts;
    for (const auto& field : Line::fields()) texts.push_back(line.*field.text);
    return texts;
}

template <class Line>
ListedEntry listed(std::string key, std::int64_t version, const std::vector<Line>& lines) {
    ListedEntry entry{std::move(key), version, {}};
    for (const Line& line : lines) entry.rows.push_back(textsOf(line));
    return entry;
}

/// Adds one entry for each of `all`.
template <class All, class Add>
Result<std::vector<ListedEntry>> listAll(const Result<All>& all, Add add) {
    if (!all) return all.error();
    std::vector<ListedEntry> entries;
    for (const auto& one : *all) {
        auto entry = add(one);
        if (!entry) return entry.error();
        entries.push_back(std::move(*entry));
    }
    return entries;
}

Result<std::vector<ListedEntry>> listPlans(const model::Archive& archive) {
    const auto parts = archive.parts();
    if (!parts) return parts.error();
    std::vector<ListedEntry> entries;
    for (const model::Part& part : *parts) {
        const auto revisions = archive.zonePlanRevisions(part.number);
        if (!revisions) return revisions.error();
        for (const int revision : *revisions) {
            const auto plan = archive.zonePlan(part.number, revision);
            if (!plan) return plan.error();
            entries.push_back(
                listed(part.number + " / " + std::to_string(revision), 1, model::linesOf(*plan)));
        }
    }
    return entries;
}

/// Orders, parts, zone plans, castings and people; none: another register.
std::optional<Result<std::vector<ListedEntry>>> listOwn(const model::Archive& archive,
                                                        std::string_view name) {
    using Entry = Result<ListedEntry>;
    if (name == model::OrderLine::kRegister)
        return listAll(archive.orders(), [&](const model::Order& order) -> Entry {
            const auto stored = archive.order(order.number);
            if (!stored) return stored.error();
            return listed(order.number, stored->version, model::linesOf(stored->value));
        });
    if (name == model::PartLine::kRegister)
        return listAll(archive.parts(), [&](const model::Part& part) -> Entry {
            const auto stored = archive.part(part.number);
            if (!stored) return stored.error();
            return listed(part.number, stored->version, std::vector{model::lineOf(stored->value)});
        });
    if (name == model::CastingLine::kRegister)
        return listAll(archive.castings(), [&](const model::Casting& casting) -> Entry {
            const auto stored = archive.castingEntry(casting.serial);
            if (!stored) return stored.error();
            return listed(casting.serial, stored->version,
                          std::vector{model::lineOf(stored->value)});
        });
    if (name == model::PersonLine::kRegister)
        return listAll(
            model::people(archive), [](const model::Stored<model::Person>& person) -> Entry {
                return listed(person.value.id, person.version, std::vector{lineOf(person.value)});
            });
    if (name == model::ZonePlanLine::kRegister) return listPlans(archive);
    return std::nullopt;
}

model::Error noSuchRegister(std::string_view name) {
    return model::inputError("", "there is no register \"%1\"; there are: %2",
                             {std::string(name), model::listOf(model::registerNames())});
}

}  // namespace

Result<std::vector<FieldInfo>> fieldsOfRegister(std::string_view registerName) {
    std::optional<std::vector<FieldInfo>> fields;
    const auto take = [&]<class T>() {
        if (registerName == T::kRegister) fields = model::fieldInfos<T>();
    };
    take.operator()<model::PersonLine>();
    take.operator()<model::PartLine>();
    take.operator()<model::ZonePlanLine>();
    take.operator()<model::OrderLine>();
    take.operator()<model::CastingLine>();
    model::forEachRegister(take);
    if (!fields) return noSuchRegister(registerName);
    return std::move(*fields);
}

Result<std::vector<ListedEntry>> listRegister(const model::Archive& archive,
                                              std::string_view registerName,
                                              const std::optional<std::string>& casting) {
    const auto fields = fieldsOfRegister(registerName);
    if (!fields) return fields.error();
    const bool castings = registerName == model::CastingLine::kRegister;
    const auto column = std::ranges::find(
        *fields, castings ? std::string_view("serial") : std::string_view("casting"),
        &FieldInfo::key);
    if (casting && column == fields->end())
        return model::inputError("--casting", "the register of %1 belongs to no casting",
                                 {std::string(registerName)});
    auto own = listOwn(archive, registerName);
    Result<std::vector<ListedEntry>> entries =
        own ? std::move(*own) : Result<std::vector<ListedEntry>>(std::vector<ListedEntry>());
    if (!own)
        model::withRegister(registerName, [&]<class T>() {
            entries = listAll(model::entries<T>(archive),
                              [](const model::Stored<T>& entry) -> Result<ListedEntry> {
                                  return listed(keyOf(entry.value), entry.version,
                                                std::vector{entry.value});
                              });
        });
    if (entries && casting) {
        const auto position = static_cast<std::size_t>(column - fields->begin());
        std::erase_if(*entries, [&](const ListedEntry& entry) {
            return entry.rows.front()[position] != *casting;
        });
    }
    return entries;
}

}  // namespace app
