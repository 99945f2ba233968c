// SPDX-License-Identifier: Apache-2.0
// Every nonconformance with all that names it, entry by entry, from the registers' own fields.
#include <algorithm>

#include "certificate/conclusion.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"

namespace reports {

namespace {

/// "Length 40 mm; Depth 12 mm": the fields that hold something, but for those whose keys are in
/// `without`.
template <class Entry>
std::string entryText(const Entry& entry, const std::vector<std::string_view>& without) {
    std::vector<std::string> texts;
    for (const model::Field<Entry>& field : Entry::fields()) {
        const std::string& value = entry.*field.text;
        if (value.empty() || std::ranges::find(without, field.info.key) != without.end()) continue;
        std::string unit = field.info.unit.empty() ? "" : " " + std::string(field.info.unit);
        if (field.info.unit == "deg C") unit = phrases::kCelsius;
        texts.push_back(filled(phrases::kFactOf, {std::string(field.info.label),
                                                  unit.empty() ? value : unbroken(value + unit)}));
    }
    return joined(texts, "; ");
}

void addCase(std::vector<Block>& blocks, const model::RepairCase& c) {
    // What the heading and the first page say already, and what stands among the files.
    static const std::vector<std::string_view> kWithout = {
        "number", "nonconformance", "sequence", "casting", "excavation", "file_sha256"};
    Fields fields;
    fields.columns = 1;
    const auto add = [&fields](const char* name, const std::string& number,
                               const std::string& text) {
        fields.fields.push_back({"", filled(name, {number}), orNotRecorded(text)});
    };
    add(phrases::kFound, "", entryText(*c.opened, kWithout));
    for (const model::Disposition* decision : c.decisions)
        add(phrases::kDecisionName, decision->sequence, entryText(*decision, kWithout));
    for (std::size_t i = 0; i < c.excavations.size(); ++i) {
        std::string text = entryText(*c.excavations[i], kWithout);
        if (i < c.severities.size()) {
            text += "; " + filled(phrases::kSeverity,
                                  {std::string(model::word(c.severities[i].severity))});
            if (!c.severities[i].reason.empty()) text += ", " + c.severities[i].reason;
        }
        add(phrases::kExcavationName, c.excavations[i]->number, text);
    }
    for (const model::WeldRepair* weld : c.weldRepairs)
        add(phrases::kWeldName, weld->number, entryText(*weld, kWithout));
    for (const model::HeatTreatment* treatment : c.heatTreatments)
        add(phrases::kHeatTreatmentName, treatment->number, entryText(*treatment, kWithout));
    for (const model::Concession* concession : c.concessions)
        add(phrases::kConcessionName, concession->number, entryText(*concession, kWithout));
    blocks.push_back(Heading{2, c.opened->number});
    blocks.push_back(std::move(fields));
}

}  // namespace

void addRepairs(std::vector<Block>& blocks, const Conclusion& conclusion) {
    if (conclusion.cases.empty()) return;
    blocks.push_back(Heading{1, phrases::kRepairs});
    for (const model::RepairCase& c : conclusion.cases) addCase(blocks, c);
}

}  // namespace reports
