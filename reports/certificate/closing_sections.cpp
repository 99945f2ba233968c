// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <map>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/sections.h"
#include "limits/words.h"

namespace reports {

namespace {

constexpr std::size_t kFingerprintDigits = 16;
constexpr std::size_t kDigitsInAGroup = 8;

/// Hexadecimal digits in groups that an eye can follow and a line can break between.
std::string grouped(const std::string& digits) {
    std::string text;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && i % kDigitsInAGroup == 0) text += ' ';
        text += digits[i];
    }
    return text;
}

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
    blocks.push_back(Fields{{{"", phrases::kDecisionRule, stated(order.decisionRule)},
                             {"", phrases::kRoundingRule, stated(order.roundingRule)}},
                            1});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kArithmetic});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kFrameRule});
}

void addPeople(std::vector<Block>& blocks, const Issue& issue, const std::vector<Examined>& all) {
    blocks.push_back(Heading{1, phrases::kPeople});
    if (!all.empty()) {
        Table table{{{phrases::kExamination, Align::Left, 2},
                     {phrases::kExaminedBy, Align::Left, 2},
                     {phrases::kExaminedOn, Align::Left, 1},
                     {phrases::kProcedure, Align::Left, 1.4},
                     {phrases::kRecordSignedBy, Align::Left, 2}},
                    {}};
        for (const Examined& examined : all)
            table.rows.push_back({{examined.name()},
                                  {orNotRecorded(examined.draft->examinedBy)},
                                  {orNotRecorded(examined.draft->examinedOn)},
                                  {orNotRecorded(examined.draft->procedure)},
                                  {examined.recorded == nullptr
                                       ? std::string(phrases::kNotSigned)
                                       : filled(phrases::kSignedOn,
                                                {examined.recorded->by, examined.recorded->on})}});
        blocks.push_back(std::move(table));
    }
    Fields fields;
    fields.columns = 1;
    if (issue.forRelease) fields.fields.push_back({"", phrases::kPresentedBy, issue.presentedBy});
    fields.fields.push_back(
        {"Z03", phrases::kReleasedBy,
         issue.forRelease ? phrases::kReleasedBySignature : phrases::kNobodyReleased});
    blocks.push_back(std::move(fields));
}

}  // namespace

void addClosing(std::vector<Block>& blocks, const CertificateInput& input,
                const std::vector<Examined>& all) {
    addLimitTables(blocks, all);
    addRules(blocks, input.file.order);
    addPeople(blocks, input.issue, all);
    blocks.push_back(Heading{1, phrases::kMeaning});
    const auto say = [&blocks](const std::string& text, Paragraph::Tone tone) {
        blocks.push_back(Paragraph{tone, text});
    };
    say(phrases::kScopeStatement, Paragraph::Tone::Strong);
    say(phrases::kAssists, Paragraph::Tone::Plain);
    say(input.issue.forRelease ? phrases::kNotOnDocument : phrases::kNotOnDraft,
        Paragraph::Tone::Plain);
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
    signatures.boxes.push_back({kReleaseField, phrases::kManagerBox});
    blocks.push_back(std::move(signatures));
}

}  // namespace reports
