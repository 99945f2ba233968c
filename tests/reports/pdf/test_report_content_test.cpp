// SPDX-License-Identifier: Apache-2.0
// What a report of test results has to hold by ISO/IEC 17025:2017, 7.8.2.1 a) to p), in our own
// words, looked for in the finished PDF by another program. For what is data, the same report
// without that data must not have it: the list can fail.
#include <QBuffer>
#include <QImage>
#include <algorithm>
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "base/digest.h"
#include "pdf/render.h"
#include "sample/sample_casting.h"
#include "tools.h"

namespace {

using sample::Sample;
using testing::HasSubstr;
using testing::Not;

/// recordedCasting() with a photo that can be drawn.
Sample recorded() {
    Sample sample = sample::recordedCasting();
    QImage image(40, 30, QImage::Format_RGB888);
    image.fill(Qt::gray);
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "png");
    const std::string bytes = buffer.data().toStdString();
    const std::string digest = model::toHex(model::sha256(bytes));
    sample.file.dossier.attachments[0].fileSha256 = digest;
    sample.pictures = {{digest, bytes}};
    return sample;
}

/// The report's text with every run of blanks as one.
std::string printed(const Sample& sample) {
    const auto document = reports::certificateOf(sample.input());
    EXPECT_TRUE(document.ok()) << (document.ok() ? "" : document.error().message());
    if (!document) return {};
    const std::string text = tools::PdfOnDisk(tools::rendered(*document)).text();
    std::string flat;
    for (const char c : text) {
        const char plain = c == '\n' || c == '\f' ? ' ' : c;
        if (plain != ' ' || flat.empty() || flat.back() != ' ') flat += plain;
    }
    return flat;
}

struct Item {
    const char* letter;
    const char* what;
    std::vector<const char*> as;
    std::function<void(Sample&)> without;  ///< null: what is no data
};

void eachDraft(Sample& sample, const std::function<void(model::ExaminationDraft&)>& change) {
    std::ranges::for_each(sample.file.examinations, change);
}

const std::vector<Item> kItems = {
    {"a", "a title", {"Inspection certificate 3.2"}, nullptr},
    {"b",
     "name and address of the works",
     {"Quillmere Castings", "Furnace Lane 12, Quillmere"},
     [](Sample& one) { one.issue.worksName = one.issue.worksAddress = ""; }},
    {"c",
     "place of the test",
     {"Fettling shop, bay 4"},
     [](Sample& one) { eachDraft(one, [](auto& draft) { draft.conditions.place = ""; }); }},
    {"d",
     "one identity on every page, and a clear end",
     {"Certificate QC-2026-0147, casting QM-26-0147", "Page 1 of", "Page 2 of",
      "End of certificate"},
     nullptr},
    {"e",
     "name and contact of the customer",
     {"Łódzka Odlewnia & Søhne", "Perpetua Vance, +44 0000 17"},
     [](Sample& one) { one.file.order.customer = one.file.order.terms.contact = ""; }},
    {"f",
     "method",
     {"ISO 9934-1:2016", "ISO 3452-1:2021", "ISO 4992-1:2020", "QP-MT revision 6"},
     [](Sample& one) {
         eachDraft(one, [](auto& draft) {
             draft.conditions.testStandard = draft.conditions.procedureNumber = draft.procedure =
                 "";
         });
         one.findings.clear();
     }},
    {"g",
     "description, identity and condition of the item",
     {"Bearing housing, upper half", "QM-26-0147", "H 4471", "shot blasted"},
     [](Sample& one) {
         one.file.part.description = one.file.casting.heat = one.file.casting.marking = "";
         one.file.casting.serial = one.file.casting.series = one.file.casting.conditionOnReceipt =
             "";
         eachDraft(one, [](auto& draft) {
             draft.conditions.piecesTested = draft.conditions.surfacePreparation = "";
         });
     }},
    {"h",
     "date of receipt, where it matters",
     {"received 2026-11-18"},
     [](Sample& one) { one.file.casting.conditionOnReceipt = ""; }},
    {"i",
     "date of the test",
     {"2026-11-20"},
     [](Sample& one) {
         eachDraft(one, [](auto& draft) {
             draft.examinedOn = draft.conditions.startedAt = draft.conditions.endedAt = "";
         });
         one.file.order.terms.witnessPoints.clear();
     }},
    {"j",
     "date of issue",
     {"prepared on 2026-11-25"},
     [](Sample& one) { one.issue.date = "2026-11-26"; }},
    {"k",
     "sampling",
     {"every fourth of a heat; 25 % of the pieces"},
     [](Sample& one) { one.file.order.terms.samplingRule = ""; }},
    {"l",
     "that the results are of these items only",
     {"These results are for the castings named here and no others."},
     nullptr},
    {"m",
     "results with their units",
     {"≤ 10 mm", "length and width in mm"},
     [](Sample& one) {
         one.verdict.examinations[0].checks.clear();
         one.file.examinations[0].rows.clear();
         one.verdict.examinations[0].indications.clear();
         eachDraft(one, [](auto& draft) { draft.reflectors.clear(); });
         one.verdict.examinations[1].indications.clear();
     }},
    {"n",
     "additions, deviations, exclusions",
     {"lower MT edge wiped twice", "clamping claw in the way"},
     [](Sample& one) {
         eachDraft(one, [](auto& draft) {
             draft.conditions.deviations = "";
             draft.header.notExamined.clear();
         });
     }},
    {"o",
     "who authorises the report",
     {"Presented by Łucja Ødegård-Brüß", "QA manager, who releases for the manufacturer"},
     [](Sample& one) { one.issue.presentedBy = "Somebody Else"; }},
    {"p",
     "what comes from others",
     {"result of an outside laboratory", "supplied by the customer"},
     [](Sample& one) { one.file.dossier.otherResults.clear(); }},
};

TEST(TestReportContent, OracleIso17025ListIsInTheFinishedPdf) {
    const std::string text = printed(recorded());
    for (const Item& item : kItems)
        for (const char* as : item.as)
            EXPECT_THAT(text, HasSubstr(as)) << item.letter << ") " << item.what;
}

TEST(TestReportContent, OracleIso17025ListHasSixteenItems) {
    std::string letters;
    for (const Item& item : kItems) letters += item.letter;
    EXPECT_EQ(letters, "abcdefghijklmnop");
}

TEST(TestReportContent, WithoutAnItemsDataItIsMissed) {
    for (const Item& item : kItems) {
        if (!item.without) continue;
        Sample sample = recorded();
        item.without(sample);
        const std::string text = printed(sample);
        const bool all = std::ranges::all_of(
            item.as, [&text](const char* as) { return text.find(as) != std::string::npos; });
        EXPECT_FALSE(all) << item.letter << ") " << item.what;
    }
}

TEST(TestReportContent, TheFirstPageHasVerdictPartCriteriaAndRepairs) {
    Sample sample = sample::repairedCasting();
    sample.file.dossier.attachments.clear();
    const auto document = reports::certificateOf(sample.input());
    ASSERT_TRUE(document.ok()) << document.error().message();
    const std::string first = tools::PdfOnDisk(tools::rendered(*document)).text(1);
    for (const char* part : {"ACCEPTABLE", "Conforms after repair R1 (NCR-41)", "P-2201",
                             "QM-26-0147", "Trial Standard 7:2020", "NCR-41", "WR-1"})
        EXPECT_THAT(first, HasSubstr(part));
}

}  // namespace
