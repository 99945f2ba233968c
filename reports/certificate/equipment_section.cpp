// SPDX-License-Identifier: Apache-2.0
// The equipment and consumables that the examinations name, each once.
#include <algorithm>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"

namespace reports {

namespace {

using Row = std::vector<TableCell>;

void addNew(std::vector<std::string>& ids, const std::string& id) {
    if (!id.empty() && std::ranges::find(ids, id) == ids.end()) ids.push_back(id);
}

std::vector<std::string> equipmentIds(const std::vector<Examined>& all) {
    std::vector<std::string> ids;
    for (const Examined& examined : all) {
        const model::TestConditions& conditions = examined.draft->conditions;
        for (const std::string& id : model::itemsOf(conditions.equipment)) addNew(ids, id);
        for (const model::Measurement& measured : conditions.measurements)
            addNew(ids, measured.instrument);
        for (const model::SettingCheck& check : conditions.settingChecks) addNew(ids, check.block);
    }
    return ids;
}

std::vector<std::string> consumableIds(const std::vector<Examined>& all) {
    std::vector<std::string> ids;
    for (const Examined& examined : all)
        for (const std::string& id : model::itemsOf(examined.draft->conditions.consumables))
            addNew(ids, id);
    return ids;
}

/// The values that are there, each in its phrase.
std::string listed(const std::vector<std::pair<const char*, std::string>>& values) {
    std::vector<std::string> texts;
    for (const auto& [phrase, value] : values)
        if (!value.empty()) texts.push_back(filled(phrase, {value}));
    return texts.empty() ? phrases::kDash : joined(texts, ", ");
}

Row unknownRow(const std::string& id) {
    return {{id, Mark::None, true},
            {phrases::kNotInRegister, Mark::NotJudged},
            {phrases::kDash},
            {phrases::kDash}};
}

Row equipmentRow(const std::string& id, const model::Holdings& used) {
    const auto found = std::ranges::find(used.equipment, id, &model::Equipment::id);
    if (found == used.equipment.end()) return unknownRow(id);
    return {{id, Mark::None, true},
            {listed({{"%1", found->kind},
                     {"%1", found->description},
                     {"%1", found->maker},
                     {"%1", found->model},
                     {"%1", found->characteristics}})},
            {listed({{phrases::kSerialOf, found->serial}})},
            {listed({{phrases::kCalibrated, found->calibratedOn},
                     {phrases::kDue, found->calibrationDue},
                     {phrases::kCalibrationCertificate, found->calibrationCertificate}})}};
}

Row consumableRow(const std::string& id, const model::Holdings& used) {
    const auto found = std::ranges::find(used.consumables, id, &model::Consumable::id);
    if (found == used.consumables.end()) return unknownRow(id);
    return {{id, Mark::None, true},
            {listed({{"%1", found->kind},
                     {"%1", found->product},
                     {"%1", found->maker},
                     {"%1", found->type},
                     {"%1", found->designation},
                     {phrases::kSensitivityLevel, found->sensitivityLevel}})},
            {listed({{phrases::kBatchOf, found->batch}})},
            {listed({{phrases::kExpires, found->expiresOn},
                     {phrases::kBatchCertificate, found->batchCertificate}})}};
}

}  // namespace

void addEquipment(std::vector<Block>& blocks, const CertificateInput& input,
                  const std::vector<Examined>& all) {
    Table table{{{phrases::kId, Align::Left, 0.8},
                 {phrases::kWhat, Align::Left, 3},
                 {phrases::kSerialOrBatch, Align::Left, 1.3},
                 {phrases::kHoldsUntil, Align::Left, 2.4}},
                {}};
    for (const std::string& id : equipmentIds(all))
        table.rows.push_back(equipmentRow(id, input.file.used));
    for (const std::string& id : consumableIds(all))
        table.rows.push_back(consumableRow(id, input.file.used));
    if (table.rows.empty()) return;
    blocks.push_back(Heading{1, phrases::kEquipment});
    blocks.push_back(std::move(table));
}

}  // namespace reports
