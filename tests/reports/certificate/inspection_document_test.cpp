// SPDX-License-Identifier: Apache-2.0
// The kinds of inspection document of EN 10204:2004: what each has to say and who validates it.
// 2.2: statement of compliance and results, validated by the manufacturer. 3.1: the same of
// specific inspection, validated by the manufacturer's inspection representative, who is
// independent of the manufacturing department. 3.2: as 3.1, and by the purchaser's representative
// or the inspector named by official regulations.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "certificate/certificate.h"
#include "sample/sample_casting.h"

namespace {

using testing::HasSubstr;
using testing::Not;

struct Kind {
    const char* type;
    const char* title;
    bool independent;
    bool thirdParty;
};

class InspectionDocument : public testing::TestWithParam<Kind> {
protected:
    [[nodiscard]] static reports::Document document() {
        sample::Sample sample = sample::signedCasting();
        sample.file.order.certificateType = GetParam().type;
        const auto made = reports::certificateOf(sample.input());
        EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.error().message());
        return made.ok() ? *made : reports::Document();
    }
};

TEST_P(InspectionDocument, OracleEn10204HasItsTitleStatementAndResults) {
    const std::string text = asText(document());
    EXPECT_THAT(text, HasSubstr(std::string(GetParam().title) + " {A02}"));
    EXPECT_THAT(text, HasSubstr("of EN 10204:2004 as ordered."));
    EXPECT_THAT(text, HasSubstr("Conforms to the order's requirements on the tests named here."));
    EXPECT_THAT(text, HasSubstr("Works order {A08}: QO-2026-031"));
    EXPECT_THAT(text, HasSubstr("No indications found"));
}

TEST_P(InspectionDocument, OracleEn10204SaysWhoValidates) {
    const reports::Document made = document();
    const std::string independent = "who is independent of the manufacturing department";
    if (GetParam().independent)
        EXPECT_THAT(made.subtitle, HasSubstr(independent));
    else
        EXPECT_THAT(made.subtitle, Not(HasSubstr(independent)));
    EXPECT_THAT(made.subtitle, HasSubstr("the manufacturer"));
    const std::string both =
        "the purchaser's authorised representative or the inspector named by official regulations";
    if (GetParam().thirdParty)
        EXPECT_THAT(made.subtitle, HasSubstr(both));
    else
        EXPECT_THAT(made.subtitle, Not(HasSubstr(both)));
}

TEST_P(InspectionDocument, OracleEn10204HasAPlaceForEverySignature) {
    const reports::Document made = document();
    ASSERT_FALSE(made.blocks.empty());
    const auto* boxes = std::get_if<reports::SignatureBoxes>(&made.blocks.back());
    ASSERT_NE(boxes, nullptr);
    std::vector<std::string> fields;
    for (const auto& box : boxes->boxes) fields.push_back(box.field);
    std::vector<std::string> expected = {reports::kInspectorField};
    if (GetParam().thirdParty) expected.emplace_back(reports::kThirdPartyField);
    expected.emplace_back(reports::kReleaseField);
    EXPECT_EQ(fields, expected);
    const std::string& manager = boxes->boxes.back().label;
    EXPECT_EQ(manager.find("independent of manufacturing") != std::string::npos,
              GetParam().independent);
}

INSTANTIATE_TEST_SUITE_P(Types, InspectionDocument,
                         testing::Values(Kind{"2.2", "Test report 2.2", false, false},
                                         Kind{"3.1", "Inspection certificate 3.1", true, false},
                                         Kind{"3.2", "Inspection certificate 3.2", true, true}),
                         [](const auto& kind) {
                             return std::string("Type") + kind.param.type[0] + kind.param.type[2];
                         });

}  // namespace
