// SPDX-License-Identifier: Apache-2.0
#include "reference/record_registers.h"

#include <QCoreApplication>
#include <algorithm>

#include "exchange/register_lines.h"
#include "limits/words.h"
#include "looks/text.h"
#include "reference/order_touches.h"
#include "reference/record_texts.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Registers", text);
}

using Choosable = std::vector<std::pair<std::string, QString>>;

model::Result<Choosable> limitTables(const model::Archive& archive) {
    const auto tables = archive.tables();
    if (!tables) return tables.error();
    Choosable choices;
    for (const auto* table : tables->all()) {
        choices.emplace_back(table->id,
                             tr("%1 · %2").arg(qt(table->id), methodText(table->method)));
    }
    return choices;
}

/// Levels are judged by a table: it has to be there, for the method, and to know each of them.
std::optional<model::Error> wrongTest(const model::TableSet& tables, const EntryTexts& row,
                                      const std::string& place) {
    const std::string& id = textOf(row, "table");
    const auto* table = tables.find(id);
    if (!table) return model::inputError(place + "table", "is no limit table: %1", {id});
    if (model::word(table->method) != textOf(row, "method")) {
        return model::inputError(place + "table", "is a table for %1: %2",
                                 {std::string(model::word(table->method)), id});
    }
    const auto levels = model::levelsFrom(textOf(row, "levels"));
    for (const auto& [key, level] : *levels) {
        const auto* known = table->key(key);
        if (!known) {
            std::vector<std::string> keys;
            for (const auto& one : table->keys) keys.push_back(one.name);
            return model::inputError(place + "levels", "takes levels for %1; not for: %2",
                                     {model::listOf(keys), key});
        }
        if (std::ranges::find(known->levels, level) == known->levels.end()) {
            return model::inputError(place + "levels", "takes for %1 one of: %2; not: %3",
                                     {key, model::listOf(known->levels), level});
        }
    }
    return std::nullopt;
}

model::Result<void> checkTests(const model::Archive& archive, const Entry& entry) {
    const auto found = entry.rows.find("tests");
    if (found == entry.rows.end() || found->second.empty()) return {};
    const auto tables = archive.tables();
    if (!tables) return tables.error();
    for (std::size_t i = 0; i < found->second.size(); ++i) {
        if (auto error = wrongTest(*tables, found->second[i], "tests." + std::to_string(i) + ".")) {
            return *error;
        }
    }
    return {};
}

model::Error placed(const model::FieldError& error) {
    model::Error placed = error.error;
    placed.place = error.field;
    return placed;
}

template <class Values, class ToEntry>
model::Result<std::vector<Entry>> entriesOf(const model::Result<Values>& values, ToEntry toEntry) {
    if (!values) return values.error();
    std::vector<Entry> entries;
    entries.reserve(values.value().size());
    for (const auto& value : values.value()) entries.push_back(toEntry(value));
    return entries;
}

model::Result<std::string> saveOrder(model::Archive& archive, const Entry& entry,
                                     const Keeper& keeper) {
    if (auto checked = checkTests(archive, entry); !checked) return checked.error();
    std::vector<model::FieldError> errors;
    const auto order = orderFrom(entry, errors);
    if (!errors.empty()) return placed(errors.front());
    const auto saved = archive.save(order, entry.version, keeper.actor);
    if (!saved) return saved.error();
    return order.number;
}

model::Result<Entry> loadPart(const model::Archive& archive, const std::string& number) {
    const auto part = archive.part(number);
    if (!part) return part.error();
    Entry entry{textsOf(model::lineOf(part->value)), {}, part->version, {}, {}};
    const auto revisions = archive.zonePlanRevisions(number);
    if (!revisions) return revisions.error();
    model::ZonePlan plan;
    if (!revisions->empty()) {
        auto newest = archive.zonePlan(number, revisions->back());
        if (!newest) return newest.error();
        plan = std::move(*newest);
        entry.note = tr("zone plan revision %1").arg(plan.revision);
    }
    addPlan(entry, plan);
    return entry;
}

/// Every revision of the zone plan of a part.
model::Result<std::vector<EntryVersion>> planRevisions(const model::Archive& archive,
                                                       const std::string& part) {
    const auto revisions = archive.zonePlanRevisions(part);
    if (!revisions) return revisions.error();
    std::vector<EntryVersion> versions;
    for (const int revision : *revisions) {
        const auto plan = archive.zonePlan(part, revision);
        if (!plan) return plan.error();
        EntryVersion& version = versions.emplace_back();
        version.entry.version = revision;
        addPlan(version.entry, *plan);
    }
    return versions;
}

/// The part where it changed, then its plan where that changed: what was done before something was
/// refused is not done again at the next try.
model::Result<std::string> savePart(model::Archive& archive, const Entry& entry,
                                    const Keeper& keeper) {
    if (auto checked = checkTests(archive, entry); !checked) return checked.error();
    std::vector<model::FieldError> errors;
    const auto part = partFrom(entry, errors);
    if (!errors.empty()) return placed(errors.front());
    Entry stored;
    if (entry.version != 0) {
        auto loaded = loadPart(archive, part.number);
        if (!loaded) return loaded.error();
        stored = std::move(*loaded);
    }
    if (entry.version == 0 || stored.texts != entry.texts) {
        if (const auto saved = archive.save(part, entry.version, keeper.actor); !saved) {
            return saved.error();
        }
    }
    if (stored.rows == entry.rows) return part.number;
    const auto revisions = archive.zonePlanRevisions(part.number);
    if (!revisions) return revisions.error();
    const auto plan = planFrom(entry, revisions->empty() ? 1 : revisions->back() + 1, errors);
    if (!errors.empty()) return placed(errors.front());
    if (plan.zones.empty() && revisions->empty()) return part.number;
    if (auto added = archive.add(plan, keeper.actor); !added) return added.error();
    return part.number;
}

/// What is wrong by the fields; where nothing is, what is wrong with the whole.
template <class From>
std::vector<model::FieldError> wrongOf(const Register& of, const Entry& entry, From from) {
    auto errors = wrongEntry(of, entry);
    if (errors.empty()) from(errors);
    return errors;
}

}  // namespace

Register orderRegister() {
    Register made;
    made.name = "order";
    made.title = tr("Orders");
    made.newTitle = tr("New order");
    made.files = {{"order", made.title}};
    made.about =
        tr("What the buyer asked. The castings of an order and their examinations "
           "inherit it.");
    made.fields = orderFields();
    made.columns = {"number", "customer", "customer_order", "certificate_type", "item"};
    made.rows = {
        {"tests", tr("Tests ordered"),
         tr("Tests that the order asks for. One takes the place of the zone plan's for the same "
            "zone, method and stage; others are added."),
         fieldInfos<model::OrderedTest>()},
        {"witness_points", tr("Witness points"),
         tr("Where the purchaser's or an official inspector is called. At a hold point the work "
            "waits until the inspector has attended or waived it."),
         fieldInfos<model::WitnessPoint>()}};
    made.all = [](const model::Archive& archive) {
        return entriesOf(archive.orders(),
                         [](const model::Order& order) { return entryOf(order); });
    };
    made.load = [](const model::Archive& archive, const std::string& key) -> model::Result<Entry> {
        const auto order = archive.order(key);
        if (!order) return order.error();
        Entry entry = entryOf(order->value);
        entry.version = order->version;
        return entry;
    };
    made.save = saveOrder;
    made.known = [](const model::Archive& archive) -> model::Result<Known> {
        auto tables = limitTables(archive);
        if (!tables) return tables.error();
        return Known{{"tests.table", std::move(*tables)}};
    };
    made.touches = orderTouches;
    made.wrong = [made](const Entry& entry) {
        return wrongOf(made, entry, [&](auto& errors) { orderFrom(entry, errors); });
    };
    return made;
}

Register partRegister() {
    Register made;
    made.name = "part";
    made.title = tr("Parts and zone plans");
    made.newTitle = tr("New part");
    made.files = {{"part", tr("Parts")}, {"zone plan", tr("Zone plans")}};
    made.about =
        tr("Casting designs. Changed zones or tests are kept as the next revision of the "
           "zone plan; castings stay on the revision that they have.");
    made.fields = fieldInfos<model::PartLine>();
    made.columns = {"number", "description", "drawing", "drawing_revision", "material"};
    made.rows = {{"zones", tr("Zones"),
                  tr("Named areas of the part, rectangles from their datum. Zones that lie "
                     "together on a developed surface are judged across their common edge."),
                  zoneFields()},
                 {"tests", tr("Required tests"),
                  tr("What must be tested in each zone, at which stage, by which limit table and "
                     "to which level."),
                  zoneTestFields()}};
    made.all = [](const model::Archive& archive) {
        return entriesOf(archive.parts(), [](const model::Part& part) {
            return Entry{textsOf(model::lineOf(part)), {}, 0, {}, {}};
        });
    };
    made.load = loadPart;
    made.versions = planRevisions;
    made.versionsTitle = tr("Zone plan &revisions…");
    made.save = savePart;
    made.known = [](const model::Archive& archive) -> model::Result<Known> {
        auto tables = limitTables(archive);
        if (!tables) return tables.error();
        return Known{{"tests.table", std::move(*tables)}};
    };
    made.wrong = [made](const Entry& entry) {
        return wrongOf(made, entry, [&](auto& errors) {
            partFrom(entry, errors);
            planFrom(entry, 1, errors);
        });
    };
    return made;
}

Register castingRegister() {
    Register made;
    made.name = "casting";
    made.title = tr("Castings");
    made.newTitle = tr("New casting");
    made.files = {{"casting", made.title}};
    made.about =
        tr("The pieces, each with its heat, order and part. One piece can stand for a "
           "series where the order allows sampling.");
    made.fields = fieldInfos<model::CastingLine>();
    made.columns = {"serial", "heat", "order", "part", "series"};
    made.all = [](const model::Archive& archive) {
        return entriesOf(archive.castings(), [](const model::Casting& casting) {
            return Entry{textsOf(model::lineOf(casting)), {}, 0, {}, {}};
        });
    };
    made.load = [](const model::Archive& archive, const std::string& key) -> model::Result<Entry> {
        const auto casting = archive.castingEntry(key);
        if (!casting) return casting.error();
        return Entry{textsOf(model::lineOf(casting->value)), {}, casting->version, {}, {}};
    };
    made.save = [](model::Archive& archive, const Entry& entry,
                   const Keeper& keeper) -> model::Result<std::string> {
        std::vector<model::FieldError> errors;
        const auto casting = castingFrom(entry, errors);
        if (!errors.empty()) return placed(errors.front());
        const auto saved = archive.save(casting, entry.version, keeper.actor);
        if (!saved) return saved.error();
        return casting.serial;
    };
    made.known = [](const model::Archive& archive) -> model::Result<Known> {
        const auto orders = archive.orders();
        if (!orders) return orders.error();
        const auto parts = archive.parts();
        if (!parts) return parts.error();
        Known known;
        for (const auto& order : *orders) {
            known["order"].emplace_back(order.number,
                                        tr("%1 · %2").arg(qt(order.number), qt(order.customer)));
        }
        for (const auto& part : *parts) {
            known["part"].emplace_back(part.number,
                                       tr("%1 · %2").arg(qt(part.number), qt(part.description)));
        }
        return known;
    };
    made.wrong = [made](const Entry& entry) {
        return wrongOf(made, entry, [&](auto& errors) { castingFrom(entry, errors); });
    };
    return made;
}

}  // namespace app
