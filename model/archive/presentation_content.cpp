// SPDX-License-Identifier: Apache-2.0
#include "archive/presentation_content.h"

#include "archive/canonical_records.h"
#include "judge/sheet_words.h"

namespace model {
namespace {

constexpr char kFormat[] = "fettlemark-presentation/1";

Canonical::Array wholes(const std::vector<std::int64_t>& numbers) {
    Canonical::Array array;
    for (const std::int64_t number : numbers) array.emplace_back(number);
    return array;
}

Canonical::Array texts(const std::vector<std::string>& list) {
    Canonical::Array array;
    for (const std::string& text : list) array.emplace_back(text);
    return array;
}

/// Takes members out of an object; what is missing or of another type is noted once.
class Reader {
public:
    explicit Reader(const Canonical& object) : object_(object) {}

    std::string text(const char* key) { return held(key, &Canonical::text); }
    std::int64_t whole(const char* key) { return held(key, &Canonical::whole); }
    const Canonical* object(const char* key) {
        const Canonical* member = object_.member(key);
        if (member && member->object()) return member;
        sound_ = false;
        return nullptr;
    }
    template <class Value>
    std::vector<Value> list(const char* key, const Value* (Canonical::*get)() const) {
        std::vector<Value> values;
        for (const Canonical& element : elements(key)) {
            const Value* value = (element.*get)();
            if (value)
                values.push_back(*value);
            else
                sound_ = false;
        }
        return values;
    }
    const Canonical::Array& elements(const char* key) {
        static const Canonical::Array kNone;
        const Canonical* member = object_.member(key);
        if (member && member->array()) return *member->array();
        sound_ = false;
        return kNone;
    }
    [[nodiscard]] bool has(const char* key) const { return object_.member(key) != nullptr; }
    [[nodiscard]] bool sound() const { return sound_; }
    void fail() { sound_ = false; }

private:
    template <class Value>
    Value held(const char* key, const Value* (Canonical::*get)() const) {
        const Canonical* member = object_.member(key);
        const Value* value = member ? (member->*get)() : nullptr;
        if (value) return *value;
        sound_ = false;
        return Value{};
    }

    const Canonical& object_;
    bool sound_ = true;
};

std::optional<IssueFacts> factsFrom(const Canonical& object) {
    Reader in(object);
    IssueFacts facts;
    facts.serial = in.text("serial");
    facts.heat = in.text("heat");
    facts.part = in.text("part");
    facts.order = in.text("order");
    facts.customer = in.text("customer");
    facts.customerOrder = in.text("customer_order");
    facts.type = in.text("certificate_type");
    facts.language = in.text("language");
    const auto verdict = verdictFrom(in.text("verdict"));
    if (!verdict) return std::nullopt;
    facts.verdict = *verdict;
    for (std::string& digest : in.list<std::string>("limit_tables", &Canonical::text))
        facts.tableDigests.insert(std::move(digest));
    if (in.has("printed_head")) {
        const auto head = parseHead(in.text("printed_head"));
        if (!head) return std::nullopt;
        facts.printedHead = *head;
    }
    if (in.has("supersedes")) facts.supersedes = in.whole("supersedes");
    if (in.has("series")) facts.series = in.text("series");
    if (!in.sound()) return std::nullopt;
    return facts;
}

}  // namespace

Canonical::Object canonicalOf(const StoredPresentation& presentation) {
    const Basis& basis = presentation.basis;
    Canonical::Object object;
    object["format"] = kFormat;
    object["facts"] = canonicalOf(presentation.shown.facts);
    object["records"] = wholes(basis.records);
    object["invalid_records"] = wholes(basis.invalid);
    Canonical::Array tables;
    for (const auto& [digest, attested] : basis.tables) {
        Canonical::Object table;
        table["sha256"] = digest;
        table["attested"] = attested;
        tables.emplace_back(std::move(table));
    }
    object["limit_tables"] = std::move(tables);
    object["missing_tests"] = texts(presentation.shown.missingTests);
    object["not_judged"] = texts(presentation.notJudged);
    // Left out where they are empty, as the presentations of earlier schemas have none.
    if (!presentation.openRepairs.empty()) object["open_repairs"] = texts(presentation.openRepairs);
    if (!presentation.unreadable.empty()) object["unreadable"] = texts(presentation.unreadable);
    if (!basis.dossier.empty()) object["dossier"] = basis.dossier;
    object["order_version"] = basis.orderVersion;
    object["part_version"] = basis.partVersion;
    object["casting_version"] = basis.castingVersion;
    object["program_version"] = presentation.shown.programVersion;
    return object;
}

Result<StoredPresentation> readPresentationContent(std::string_view bytes) {
    const Error damaged{ErrorKind::Damaged, "", "is not what was signed", {}};
    const auto object = parseCanonical(bytes);
    if (!object) return damaged;
    Reader in(*object);
    StoredPresentation presentation;
    Presented& shown = presentation.shown;
    Basis& basis = presentation.basis;
    const Canonical* factsObject = in.object("facts");
    const auto facts = factsObject ? factsFrom(*factsObject) : std::nullopt;
    if (!facts || in.text("format") != kFormat) return damaged;
    shown.facts = *facts;
    basis.records = in.list<std::int64_t>("records", &Canonical::whole);
    basis.invalid = in.list<std::int64_t>("invalid_records", &Canonical::whole);
    for (const Canonical& table : in.elements("limit_tables")) {
        const Canonical* digest = table.member("sha256");
        const Canonical* attested = table.member("attested");
        if (!digest || !digest->text() || !attested || !attested->truth()) return damaged;
        basis.tables[*digest->text()] = *attested->truth();
    }
    shown.records = basis.records;
    shown.missingTests = in.list<std::string>("missing_tests", &Canonical::text);
    presentation.notJudged = in.list<std::string>("not_judged", &Canonical::text);
    if (in.has("open_repairs"))
        presentation.openRepairs = in.list<std::string>("open_repairs", &Canonical::text);
    if (in.has("unreadable"))
        presentation.unreadable = in.list<std::string>("unreadable", &Canonical::text);
    if (in.has("dossier"))
        if (const Canonical* dossier = in.object("dossier")) basis.dossier = *dossier->object();
    basis.orderVersion = in.whole("order_version");
    basis.partVersion = in.whole("part_version");
    basis.castingVersion = in.whole("casting_version");
    shown.programVersion = in.text("program_version");
    if (!in.sound()) return damaged;
    return presentation;
}

}  // namespace model
