// SPDX-License-Identifier: Apache-2.0
// What comes from outside the program's own judging: results of other tests, files, photos.
#include <algorithm>

#include "base/digest.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"
#include "record/other_results.h"

namespace reports {

namespace {

std::string zoneText(const std::string& zone) {
    return zone.empty() ? phrases::kWholeCasting : zone;
}

bool isToPrint(const model::Attachment& attachment) {
    return attachment.printed == "yes";
}

std::string placeOf(const model::Attachment& attachment) {
    return filled(phrases::kAttachmentPlace, {attachment.number});
}

/// Zone, indication, else the whole casting.
std::string shownText(const model::Attachment& attachment) {
    std::vector<std::string> texts;
    if (!attachment.zone.empty()) texts.push_back(filled(phrases::kShowsZone, {attachment.zone}));
    if (!attachment.indication.empty())
        texts.push_back(filled(phrases::kShowsIndication, {attachment.indication}));
    return texts.empty() ? phrases::kWholeCasting : joined(texts, ", ");
}

/// Where the result comes from, and what it is not.
std::string remarksOf(const model::CastingFile& file, const model::OtherResult& result,
                      const std::vector<const model::OtherResult*>& standing) {
    std::vector<std::string> texts;
    if (result.subcontracted == "yes") texts.emplace_back(phrases::kOutsideLaboratory);
    if (result.customerSupplied == "yes") texts.emplace_back(phrases::kCustomerSupplied);
    if (model::isCavityTest(file, result)) texts.emplace_back(phrases::kOfCavity);
    if (std::ranges::find(standing, &result) == standing.end())
        texts.emplace_back(phrases::kReplaced);
    return joined(texts, "; ");
}

std::vector<TableCell> fileRow(const std::string& number, const std::string& revision,
                               const std::string& title, const std::string& name,
                               const std::string& digest) {
    return {{number, Mark::None, true},
            {revision.empty() ? phrases::kDash : revision},
            {title},
            {name.empty() ? phrases::kDash : name},
            {grouped(digest)}};
}

}  // namespace

void addOtherTests(std::vector<Block>& blocks, const model::CastingFile& file) {
    if (file.dossier.otherResults.empty()) return;
    const auto standing = model::standingResultsOf(file);
    Table table{{{phrases::kZone, Align::Left, 0.9},
                 {phrases::kTest, Align::Left, 1.3},
                 {phrases::kStandardAndCriteria, Align::Left, 2},
                 {phrases::kVerdict, Align::Left, 1.2},
                 {phrases::kPerformed, Align::Left, 1.7},
                 {phrases::kReport, Align::Left, 1.1}},
                {}};
    for (const model::OtherResult& result : file.dossier.otherResults) {
        std::string test = result.test;
        const std::string remarks = remarksOf(file, result, standing);
        if (!remarks.empty()) test += "\n" + remarks;
        std::string standard = orNotRecorded(result.standard);
        if (!result.criteria.empty()) standard += "\n" + result.criteria;
        const model::Word word = model::wordOf(result);
        table.rows.push_back(
            {{zoneText(result.zone), Mark::None, true},
             {test},
             {standard},
             {lowerWord(word), markOf(word), true},
             {orNotRecorded(result.performedBy) + "\n" + orNotRecorded(result.performedOn)},
             {orNotRecorded(result.report)}});
    }
    blocks.push_back(Heading{1, phrases::kOtherTests});
    blocks.push_back(Paragraph{Paragraph::Tone::Small, phrases::kOtherTestsMeaning});
    blocks.push_back(std::move(table));
}

model::Result<void> addPhotos(std::vector<Block>& blocks, const CertificateInput& input) {
    std::vector<Photo> photos;
    for (const model::Attachment& attachment : input.file.dossier.attachments) {
        if (!isToPrint(attachment)) continue;
        if (input.pictures == nullptr) {
            if (!input.issue.forRelease) continue;
            return model::inputError(placeOf(attachment),
                                     "it is to be printed, and its file is not at hand");
        }
        const auto bytes = input.pictures->find(attachment.fileSha256);
        if (bytes == input.pictures->end())
            return model::inputError(placeOf(attachment),
                                     "it is to be printed, and its file is not at hand");
        if (model::toHex(model::sha256(bytes->second)) != attachment.fileSha256)
            return model::inputError(placeOf(attachment),
                                     "the file is not the one that was attached (SHA-256 %1)",
                                     {attachment.fileSha256});
        std::string number = attachment.number;
        if (!attachment.revision.empty())
            number = filled(phrases::kPhotoRevision, {number, attachment.revision});
        photos.push_back({filled(phrases::kPhotoCaption, {number, attachment.title}),
                          {{"", phrases::kShows, shownText(attachment)},
                           {"", phrases::kPhotoScale, orNotRecorded(attachment.scale)},
                           {"", phrases::kPhotoDatum, orNotRecorded(attachment.datum)},
                           {"", phrases::kSha256, grouped(attachment.fileSha256)}},
                          placeOf(attachment),
                          bytes->second});
    }
    if (photos.empty()) return {};
    blocks.push_back(Heading{1, phrases::kPhotos});
    std::ranges::move(photos, std::back_inserter(blocks));
    return {};
}

void addAttachments(std::vector<Block>& blocks, const model::CastingFile& file) {
    Table table{{{phrases::kId, Align::Left, 1},
                 {phrases::kRevisionShort, Align::Left, 0.5},
                 {phrases::kTitle, Align::Left, 1.9},
                 {phrases::kFile, Align::Left, 1.2},
                 {phrases::kSha256, Align::Left, 3.2}},
                {}};
    for (const model::Attachment& attachment : file.dossier.attachments)
        table.rows.push_back(fileRow(attachment.number, attachment.revision,
                                     attachment.title + "\n" + shownText(attachment),
                                     attachment.fileName, attachment.fileSha256));
    for (const model::OtherResult& result : file.dossier.otherResults)
        if (!result.fileSha256.empty())
            table.rows.push_back(fileRow(result.report, "",
                                         filled(phrases::kReportOf, {result.test}), "",
                                         result.fileSha256));
    for (const model::Concession& concession : file.dossier.concessions)
        if (!concession.fileSha256.empty())
            table.rows.push_back(
                fileRow(concession.number, "",
                        filled(phrases::kConcessionFile, {concession.customerReference}), "",
                        concession.fileSha256));
    if (table.rows.empty()) return;
    blocks.push_back(Heading{1, phrases::kAttachments});
    blocks.push_back(std::move(table));
}

}  // namespace reports
