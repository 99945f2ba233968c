// SPDX-License-Identifier: Apache-2.0
#include "archive/record_store.h"

#include <set>

#include "archive/canonical_records.h"
#include "archive/details.h"
#include "archive/history_store.h"
#include "archive/stored_words.h"
#include "limits/words.h"

namespace model {
namespace {

std::string oneOrAll(const std::string& column, const std::optional<std::string>& key) {
    return key ? " WHERE " + column + " = ?" : " ORDER BY " + column;
}

Result<void> runFor(SqlStatement& statement, const std::optional<std::string>& key) {
    return key ? statement.run(*key) : statement.run();
}

Result<void> record(WriteTransaction& transaction, const char* action, const std::string& subject,
                    Canonical::Object content, std::int64_t version) {
    content["version"] = version;
    return transaction.record(action, subject, std::move(content));
}

Result<void> checkOrder(const Connection& connection, const Order& order) {
    if (order.certificateType != "2.2" && order.certificateType != "3.1" &&
        order.certificateType != "3.2")
        return inputError(connection.place(),
                          "knows the certificate types 2.2, 3.1 and 3.2, not: %1",
                          {order.certificateType});
    if (std::set(order.forbiddenKinds.begin(), order.forbiddenKinds.end()).size() !=
        order.forbiddenKinds.size())
        return inputError(connection.place(), "stores each forbidden kind of an order once");
    return {};
}

Result<void> writeForbiddenKinds(const Connection& connection, const Order& order) {
    SqlStatement clear(connection, "DELETE FROM order_forbidden_kind WHERE order_number = ?");
    if (auto done = clear.run(order.number); !done) return done;
    SqlStatement add(connection,
                     "INSERT INTO order_forbidden_kind (order_number, position, kind) "
                     "VALUES (?, ?, ?)");
    int position = 0;
    for (const Kind kind : order.forbiddenKinds)
        if (auto done = add.run(order.number, ++position, word(kind)); !done) return done;
    return {};
}

Result<void> readForbiddenKinds(const Connection& connection, Order& order) {
    SqlStatement statement(connection,
                           "SELECT kind FROM order_forbidden_kind WHERE order_number = ? "
                           "ORDER BY position");
    if (auto done = statement.run(order.number); !done) return done;
    return eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        const auto kind =
            known(connection, kindFrom(row.text(0)), "order " + order.number, row.text(0));
        if (!kind) return kind.error();
        order.forbiddenKinds.push_back(*kind);
        return {};
    });
}

}  // namespace

Result<std::int64_t> nextVersion(const Connection& connection, const char* selectVersion,
                                 const char* what, const std::string& key,
                                 std::int64_t knownVersion) {
    if (key.find_first_not_of(" \t\r\n") == std::string::npos)
        return inputError(connection.place(), "stores no %1 without a number", {what});
    SqlStatement statement(connection, selectVersion);
    const auto row = statement.first(key);
    if (!row) return row.error();
    return nextVersion(connection, *row ? statement.whole(0) : 0, what, key, knownVersion);
}

Result<std::int64_t> nextVersion(const Connection& connection, std::int64_t stored,
                                 const char* what, const std::string& key,
                                 std::int64_t knownVersion) {
    if (stored == knownVersion) return stored + 1;
    if (stored == 0) return inputError(connection.place(), "has no %1 %2", {what, key});
    if (knownVersion == 0)
        return Error{ErrorKind::Conflict, connection.place(), "has a %1 %2 already", {what, key}};
    return Error{ErrorKind::Conflict,
                 connection.place(),
                 "has another version of the %1 %2 than was loaded: somebody changed it meanwhile",
                 {what, key}};
}

Result<std::int64_t> saveOrder(WriteTransaction& transaction, const Order& order,
                               std::int64_t knownVersion) {
    const Connection& connection = transaction.connection();
    if (auto checked = checkOrder(connection, order); !checked) return checked.error();
    auto version = nextVersion(connection, "SELECT version FROM customer_order WHERE number = ?",
                               "order", order.number, knownVersion);
    if (!version) return version;
    const auto details = detailsText(canonicalOf(order.terms));
    if (!details) return details.error();
    SqlStatement write(
        connection,
        "INSERT INTO customer_order (number, version, customer, customer_reference, "
        "certificate_type, language, decision_rule, rounding_rule, remarks, details) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (number) DO UPDATE SET version = excluded.version, "
        "customer = excluded.customer, "
        "customer_reference = excluded.customer_reference, "
        "certificate_type = excluded.certificate_type, "
        "language = excluded.language, decision_rule = excluded.decision_rule, "
        "rounding_rule = excluded.rounding_rule, remarks = excluded.remarks, "
        "details = excluded.details");
    if (auto done = write.run(order.number, *version, order.customer, order.customerOrder,
                              order.certificateType, order.language, order.decisionRule,
                              order.roundingRule, order.remarks, *details);
        !done)
        return done.error();
    if (auto done = writeForbiddenKinds(connection, order); !done) return done.error();
    if (auto done =
            record(transaction, action::kOrderSaved, order.number, canonicalOf(order), *version);
        !done)
        return done.error();
    return version;
}

Result<std::int64_t> savePart(WriteTransaction& transaction, const Part& part,
                              std::int64_t knownVersion) {
    const Connection& connection = transaction.connection();
    auto version = nextVersion(connection, "SELECT version FROM part WHERE number = ?", "part",
                               part.number, knownVersion);
    if (!version) return version;
    const auto details = detailsText(detailsOf(part));
    if (!details) return details.error();
    SqlStatement write(connection,
                       "INSERT INTO part (number, version, description, drawing, drawing_revision, "
                       "material, material_grade, details) VALUES (?, ?, ?, ?, ?, ?, ?, ?) "
                       "ON CONFLICT (number) DO UPDATE SET version = excluded.version, "
                       "description = excluded.description, drawing = excluded.drawing, "
                       "drawing_revision = excluded.drawing_revision, "
                       "material = excluded.material, material_grade = excluded.material_grade, "
                       "details = excluded.details");
    if (auto done =
            write.run(part.number, *version, part.description, part.drawing, part.drawingRevision,
                      word(part.material), part.materialGrade, *details);
        !done)
        return done.error();
    if (auto done =
            record(transaction, action::kPartSaved, part.number, canonicalOf(part), *version);
        !done)
        return done.error();
    return version;
}

Result<std::int64_t> saveCasting(WriteTransaction& transaction, const Casting& casting,
                                 std::int64_t knownVersion) {
    const Connection& connection = transaction.connection();
    auto version = nextVersion(connection, "SELECT version FROM casting WHERE serial = ?",
                               "casting", casting.serial, knownVersion);
    if (!version) return version;
    SqlStatement references(
        connection,
        "SELECT (SELECT count(*) FROM customer_order WHERE number = ?), "
        "(SELECT count(*) FROM zone_plan WHERE part_number = ? AND revision = ?)");
    const auto row = references.first(casting.order, casting.part, casting.zonePlanRevision);
    if (!row) return row.error();
    if (references.whole(0) == 0)
        return inputError(connection.place(), "has no order %1", {casting.order});
    if (references.whole(1) == 0)
        return inputError(connection.place(), "has no zone plan revision %1 of a part %2",
                          {std::to_string(casting.zonePlanRevision), casting.part});
    const auto details = detailsText(detailsOf(casting));
    if (!details) return details.error();
    SqlStatement write(connection,
                       "INSERT INTO casting (serial, version, heat, order_number, part_number, "
                       "zone_plan_revision, details) VALUES (?, ?, ?, ?, ?, ?, ?) "
                       "ON CONFLICT (serial) DO UPDATE SET version = excluded.version, "
                       "heat = excluded.heat, order_number = excluded.order_number, "
                       "part_number = excluded.part_number, "
                       "zone_plan_revision = excluded.zone_plan_revision, "
                       "details = excluded.details");
    if (auto done = write.run(casting.serial, *version, casting.heat, casting.order, casting.part,
                              casting.zonePlanRevision, *details);
        !done)
        return done.error();
    if (auto done = record(transaction, action::kCastingSaved, casting.serial, canonicalOf(casting),
                           *version);
        !done)
        return done.error();
    return version;
}

Result<std::vector<Stored<Order>>> loadOrders(const Connection& connection,
                                              const std::optional<std::string>& number) {
    std::vector<Stored<Order>> orders;
    SqlStatement statement(
        connection,
        "SELECT number, version, customer, customer_reference, certificate_type, "
        "language, decision_rule, rounding_rule, remarks, details FROM customer_order" +
            oneOrAll("number", number));
    if (auto done = runFor(statement, number); !done) return done.error();
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        Stored<Order> order;
        order.version = row.whole(1);
        order.value.number = row.text(0);
        order.value.customer = row.text(2);
        order.value.customerOrder = row.text(3);
        order.value.certificateType = row.text(4);
        order.value.language = row.text(5);
        order.value.decisionRule = row.text(6);
        order.value.roundingRule = row.text(7);
        order.value.remarks = row.text(8);
        if (auto taken = takeDetails(connection, row.text(9), order.value); !taken) return taken;
        orders.push_back(std::move(order));
        return {};
    });
    if (!read) return read.error();
    for (auto& order : orders)
        if (auto done = readForbiddenKinds(connection, order.value); !done) return done.error();
    return orders;
}

Result<std::vector<Stored<Part>>> loadParts(const Connection& connection,
                                            const std::optional<std::string>& number) {
    std::vector<Stored<Part>> parts;
    SqlStatement statement(connection,
                           "SELECT number, version, description, drawing, drawing_revision, "
                           "material, material_grade, details FROM part" +
                               oneOrAll("number", number));
    if (auto done = runFor(statement, number); !done) return done.error();
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        const auto material =
            known(connection, materialFrom(row.text(5)), "part " + row.text(0), row.text(5));
        if (!material) return material.error();
        Stored<Part> part;
        part.version = row.whole(1);
        part.value = {row.text(0), row.text(2), row.text(3), row.text(4), *material, row.text(6)};
        if (auto taken = takeDetails(connection, row.text(7), part.value); !taken) return taken;
        parts.push_back(std::move(part));
        return {};
    });
    if (!read) return read.error();
    return parts;
}

Result<std::vector<Stored<Casting>>> loadCastings(const Connection& connection,
                                                  const std::optional<std::string>& serial) {
    std::vector<Stored<Casting>> castings;
    SqlStatement statement(connection,
                           "SELECT serial, version, heat, order_number, part_number, "
                           "zone_plan_revision, details FROM casting" +
                               oneOrAll("serial", serial));
    if (auto done = runFor(statement, serial); !done) return done.error();
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        Stored<Casting> casting;
        casting.version = row.whole(1);
        casting.value = {row.text(0), row.text(2), row.text(3), row.text(4),
                         static_cast<int>(row.whole(5))};
        if (auto taken = takeDetails(connection, row.text(6), casting.value); !taken) return taken;
        castings.push_back(std::move(casting));
        return {};
    });
    if (!read) return read.error();
    return castings;
}

}  // namespace model
