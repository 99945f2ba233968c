// SPDX-License-Identifier: Apache-2.0
#include "record/order_terms.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<OrderedTest>> OrderedTest::fields() {
    static const Field<OrderedTest> kFields[] = {
        {{"zone", "Zone", FieldKind::Line, Need::Optional, "", "", "Empty: every zone of the plan"},
         &OrderedTest::zone},
        {{"method", "Method", FieldKind::Choice, Need::Required, "", "MT|PT|UT", ""},
         &OrderedTest::method},
        {{"stage", "Stage", FieldKind::Choice, Need::Required, "",
          "as cast|heat treated|rough machined|finish machined", ""},
         &OrderedTest::stage},
        {{"table", "Limit table", FieldKind::Line, Need::Required, "", "", ""},
         &OrderedTest::table},
        {{"levels", "Levels", FieldKind::List, Need::Required, "", "",
          "key=level, such as non-linear=SM 2"},
         &OrderedTest::levels},
        {{"reason", "Agreed by", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderedTest::reason},
    };
    return kFields;
}

std::span<const Field<WitnessPoint>> WitnessPoint::fields() {
    static const Field<WitnessPoint> kFields[] = {
        {{"what", "What", FieldKind::Line, Need::Key, "", "", ""}, &WitnessPoint::what},
        {{"kind", "Kind", FieldKind::Choice, Need::Required, "", "witness|hold", ""},
         &WitnessPoint::kind},
        {{"who", "Who", FieldKind::Line, Need::Required, "", "", ""}, &WitnessPoint::who},
        {{"called_on", "Called on", FieldKind::Date, Need::Optional, "", "", ""},
         &WitnessPoint::calledOn},
        {{"attended_on", "Attended on", FieldKind::Date, Need::Optional, "", "", ""},
         &WitnessPoint::attendedOn},
        {{"waived", "Waived by", FieldKind::Line, Need::Optional, "", "", ""},
         &WitnessPoint::waived},
        {{"result", "Result", FieldKind::Line, Need::Optional, "", "", ""}, &WitnessPoint::result},
    };
    return kFields;
}

std::span<const Field<OrderTerms>> OrderTerms::fields() {
    static const Field<OrderTerms> kFields[] = {
        {{"receiver", "Receiver", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderTerms::receiver},
        {{"contact", "Contact", FieldKind::Line, Need::Optional, "", "", ""}, &OrderTerms::contact},
        {{"item", "Item", FieldKind::Line, Need::Optional, "", "", ""}, &OrderTerms::item},
        {{"delivery_conditions", "Delivery conditions", FieldKind::Line, Need::Optional, "", "",
          "Such as EN 1559-1:2011, ISO 4990:2023"},
         &OrderTerms::deliveryConditions},
        {{"product_standard", "Product standard", FieldKind::Line, Need::Optional, "", "",
          "With edition"},
         &OrderTerms::productStandard},
        {{"extra_requirements", "Extra requirements", FieldKind::Paragraph, Need::Optional, "", "",
          ""},
         &OrderTerms::extraRequirements},
        {{"quantity", "Quantity delivered", FieldKind::Whole, Need::Optional, "", "", ""},
         &OrderTerms::quantity},
        {{"sampling_rule", "Sampling", FieldKind::Line, Need::Optional, "", "",
          "In words; empty: every piece"},
         &OrderTerms::samplingRule},
        {{"sampling_percent", "Pieces to test", FieldKind::Number, Need::Optional, "%", "", ""},
         &OrderTerms::samplingPercent},
        {{"finishing_welds", "Finishing welds", FieldKind::Choice, Need::Optional, "",
          "maker free|maker informs|agreement first", "EN 1559-1:2011 6.2.2, options a, b and c"},
         &OrderTerms::finishingWelds},
        {{"operator_level", "Level of the examiner, at least", FieldKind::Choice, Need::Optional,
          "", "1|2|3", ""},
         &OrderTerms::operatorLevel},
        {{"repair_cycles", "Repair cycles, at most", FieldKind::Whole, Need::Optional, "", "", ""},
         &OrderTerms::repairCycles},
        {{"repair_rule", "Major repairs by", FieldKind::Line, Need::Optional, "", "",
          "Name of the rule that parts major from minor repairs"},
         &OrderTerms::repairRule},
        {{"penetrant_level", "Penetrant sensitivity level, at least", FieldKind::Line,
          Need::Optional, "", "", ""},
         &OrderTerms::penetrantLevel},
        {{"residual_field", "Residual field, at most", FieldKind::Number, Need::Optional, "kA/m",
          "", ""},
         &OrderTerms::residualField},
        {{"fixed_procedures", "Fixed procedures", FieldKind::List, Need::Optional, "", "",
          "number / revision, allowed although obsolete"},
         &OrderTerms::fixedProcedures},
        {{"marking", "Marking", FieldKind::Line, Need::Optional, "", "", ""}, &OrderTerms::marking},
        {{"guard_band", "Guard band", FieldKind::Line, Need::Optional, "", "",
          "Of the decision rule, where the order asks for one"},
         &OrderTerms::guardBand},
    };
    return kFields;
}

Canonical::Object canonicalOf(const OrderTerms& terms) {
    Canonical::Object object = canonicalFields(terms);
    addList(object, "tests", terms.tests);
    addList(object, "witness_points", terms.witnessPoints);
    return object;
}

std::optional<OrderTerms> orderTermsFrom(const Canonical::Object& object) {
    Canonical::Object fields = object;
    auto tests = takeList<OrderedTest>(fields, "tests");
    auto witnessPoints = takeList<WitnessPoint>(fields, "witness_points");
    auto terms = fromCanonicalFields<OrderTerms>(fields);
    if (!terms || !tests || !witnessPoints) return std::nullopt;
    terms->tests = std::move(*tests);
    terms->witnessPoints = std::move(*witnessPoints);
    return terms;
}

std::optional<std::map<std::string, std::string>> levelsFrom(const std::string& text) {
    std::map<std::string, std::string> levels;
    for (const std::string& item : itemsOf(text)) {
        const std::size_t equals = item.find('=');
        if (equals == std::string::npos || equals == 0 || equals + 1 == item.size())
            return std::nullopt;
        if (!levels.emplace(item.substr(0, equals), item.substr(equals + 1)).second)
            return std::nullopt;
    }
    return levels;
}

std::string levelsText(const std::map<std::string, std::string>& levels) {
    std::vector<std::string> items;
    for (const auto& [key, level] : levels) items.push_back(key + "=" + level);
    return listOf(items);
}

}  // namespace model
