// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <map>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"
#include "limits/words.h"

namespace reports {

namespace {

constexpr std::size_t kFingerprintDigits = 16;
/// "88:3ec9f12c f89b8074 ...": the row's number, and its hash in groups.
std::string groupedHead(const std::string& head) {
    const std::size_t hash = head.find(':') + 1;  // 0 where there is no number
    return head.substr(0, hash) + grouped(head.substr(hash));
}

std::string frameText(const model::FrameRule& frame) {
    if (frame.known == model::Known::Absent) return phrases::kFrameAbsent;
    if (frame.known == model::Known::Unknown) return phrases::kFrameUnknown;
    const std::string size =
        frame.shape.circle
            ? filled(phrases::kFrameCircle, {toText(frame.shape.width)})
            : filled(phrases::kSize, {toText(frame.shape.width), toText(frame.shape.height)});
    return filled(phrases::kSourced,
                  {size, frame.source.locator, std::string(model::word(frame.source.grade))});
}

/// The table's frame, and those that rules state for a level, each once.
std::string framesText(const model::LimitTable& table) {
    std::vector<std::string> texts;
    for (const model::Rule& rule : table.rules)
        for (const auto& [level, frame] : rule.frames) {
            std::string text = filled(phrases::kFrameAtLevel, {level, frameText(frame)});
            if (std::ranges::find(texts, text) == texts.end()) texts.push_back(std::move(text));
        }
    // "None" would be wrong beside the rules' own.
    if (texts.empty() || table.frame.known != model::Known::Absent)
        texts.insert(texts.begin(), frameText(table.frame));
    return joined(texts, "\n");
}

void addLimitTables(std::vector<Block>& blocks, const std::vector<Examined>& all) {
    std::map<std::pair<std::string, int>, const Examined*> used;
    for (const Examined& examined : all)
        if (examined.table != nullptr)
            used.try_emplace({examined.table->id, examined.table->revision}, &examined);
    if (used.empty()) return;

    blocks.push_back(Heading{1, phrases::kLimitTables});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kGradeLegend});
    for (const auto& [key, examined] : used) {
        const model::LimitTable& table = *examined->table;
        const bool attested = examined->verdict->attested;
        blocks.push_back(
            Heading{2, filled(phrases::kRevisionOf, {table.id, std::to_string(table.revision)})});
        blocks.push_back(Fields{{
            {"", phrases::kStandard, orNotRecorded(table.standard)},
            {"", phrases::kEdition, orNotRecorded(table.edition)},
            {"", phrases::kRevision, std::to_string(table.revision)},
            {"", phrases::kFingerprint, grouped(table.digest.substr(0, kFingerprintDigits))},
        }});
        Fields wide;
        wide.columns = 1;
        wide.fields.push_back({"", phrases::kDigest, grouped(orNotRecorded(table.digest))});
        wide.fields.push_back(
            {"", phrases::kAttestation, attested ? phrases::kAttested : phrases::kNotAttested});
        wide.fields.push_back({"", phrases::kFrame, framesText(table)});
        if (!table.remarks.empty())
            wide.fields.push_back({"", phrases::kTableRemarks, joined(table.remarks, "\n")});
        blocks.push_back(std::move(wide));
    }
}

void addRules(std::vector<Block>& blocks, const model::Order& order) {
    const auto stated = [](const std::string& rule) {
        return rule.empty() ? std::string(phrases::kNotStatedInOrder) : rule;
    };
    blocks.push_back(Heading{1, phrases::kRules});
    Fields fields{{{"", phrases::kDecisionRule, stated(order.decisionRule)},
                   {"", phrases::kRoundingRule, stated(order.roundingRule)}},
                  1};
    if (!order.terms.guardBand.empty())
        fields.fields.push_back({"", phrases::kGuardBand, order.terms.guardBand});
    blocks.push_back(std::move(fields));
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kArithmetic});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kFrameRule});
}

}  // namespace

void addClosing(std::vector<Block>& blocks, const CertificateInput& input,
                const std::vector<Examined>& all) {
    addLimitTables(blocks, all);
    addRules(blocks, input.file.order);
    addEquipment(blocks, input, all);
    addPeople(blocks, input, all);
    addAttachments(blocks, input.file);
    blocks.push_back(Heading{1, phrases::kMeaning});
    const auto say = [&blocks](const std::string& text, Paragraph::Tone tone) {
        blocks.push_back(Paragraph{tone, text});
    };
    say(serialsOf(input.file.casting).size() == 1 ? phrases::kScopeStatement
                                                  : phrases::kScopeOfSeries,
        Paragraph::Tone::Strong);
    say(phrases::kAssists, Paragraph::Tone::Plain);
    if (!std::ranges::all_of(all, &Examined::conditionsStated))
        say(input.issue.forRelease ? phrases::kNotOnDocument : phrases::kNotOnDraft,
            Paragraph::Tone::Plain);
    say(phrases::kGivenByCustomer, Paragraph::Tone::Plain);
    if (input.issue.historyHead)
        say(filled(phrases::kHistoryHead, {groupedHead(*input.issue.historyHead)}),
            Paragraph::Tone::Plain);
    say(filled(phrases::kMadeWith, {filled(phrases::kProgram, {input.issue.programVersion})}),
        Paragraph::Tone::Small);
}

void addSignatures(std::vector<Block>& blocks, const std::string& type) {
    blocks.push_back(Heading{1, phrases::kSignatures, "Z03"});
    for (const char* text : {phrases::kSignaturesProve, phrases::kSignaturesEnd})
        blocks.push_back(Paragraph{Paragraph::Tone::Plain, text, true});
    SignatureBoxes signatures;
    signatures.boxes.push_back({kInspectorField, phrases::kInspectorBox});
    if (type == "3.2") signatures.boxes.push_back({kThirdPartyField, phrases::kThirdPartyBox});
    const bool independent = type == "3.1" || type == "3.2";
    signatures.boxes.push_back(
        {kReleaseField, independent ? phrases::kIndependentManagerBox : phrases::kManagerBox});
    blocks.push_back(std::move(signatures));
}

}  // namespace reports
