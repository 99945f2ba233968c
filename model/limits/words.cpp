// SPDX-License-Identifier: Apache-2.0
#include "limits/words.h"

#include "base/word_table.h"

namespace model {
namespace {

constexpr WordEntry<Method> kMethods[] = {
    {Method::Magnetic, "MT"}, {Method::Penetrant, "PT"}, {Method::Ultrasonic, "UT"}};
constexpr WordEntry<Material> kMaterials[] = {
    {Material::CastSteel, "cast steel"},
    {Material::SpheroidalGraphiteIron, "spheroidal graphite iron"},
    {Material::GreyIron, "grey iron"}};
constexpr WordEntry<Grade> kGrades[] = {
    {Grade::Read, "R"}, {Grade::ReadTwice, "R2"}, {Grade::Partly, "P"}, {Grade::Memory, "M"}};
constexpr WordEntry<Kind> kKinds[] = {{Kind::Crack, "crack"},
                                      {Kind::HotTear, "hot tear"},
                                      {Kind::ColdShut, "cold shut"},
                                      {Kind::Shrinkage, "shrinkage"},
                                      {Kind::Porosity, "porosity"},
                                      {Kind::Inclusion, "inclusion"},
                                      {Kind::Chaplet, "chaplet"},
                                      {Kind::Insert, "insert"},
                                      {Kind::Clustered, "clustered"},
                                      {Kind::Unknown, "unknown"},
                                      {Kind::Volumetric, "volumetric"},
                                      {Kind::Planar, "planar"},
                                      {Kind::Dross, "dross"}};
constexpr WordEntry<IndicationClass> kClasses[] = {{IndicationClass::NonLinear, "non-linear"},
                                                   {IndicationClass::Isolated, "isolated"},
                                                   {IndicationClass::Clustered, "clustered"},
                                                   {IndicationClass::Linear, "linear"},
                                                   {IndicationClass::Aligned, "aligned"},
                                                   {IndicationClass::Rim, "rim"},
                                                   {IndicationClass::Core, "core"},
                                                   {IndicationClass::Planar, "planar"},
                                                   {IndicationClass::Dross, "dross"}};
constexpr WordEntry<ReflectorMeasure> kReflectorMeasures[] = {
    {ReflectorMeasure::Fbh, "fbh"},
    {ReflectorMeasure::IndicationLength, "length"},
    {ReflectorMeasure::LengthToWidth, "length to width"},
    {ReflectorMeasure::OverReference, "over reference"},
    {ReflectorMeasure::BackWallLoss, "back-wall loss"}};
constexpr WordEntry<TestabilityMeasure> kTestabilityMeasures[] = {
    {TestabilityMeasure::SmallestFbh, "smallest fbh"},
    {TestabilityMeasure::SignalToNoise, "signal to noise"}};
constexpr WordEntry<RuleKind> kRules[] = {{RuleKind::IndividualLength, "individual length"},
                                          {RuleKind::CumulativeLength, "cumulative length"},
                                          {RuleKind::TotalArea, "total area"},
                                          {RuleKind::IndividualArea, "individual area"},
                                          {RuleKind::AreaShare, "area share"},
                                          {RuleKind::Count, "count"},
                                          {RuleKind::CountAtMaximum, "count at the maximum"},
                                          {RuleKind::LineOfIndications, "line of indications"},
                                          {RuleKind::Spacing, "spacing"},
                                          {RuleKind::EquivalentReflector, "equivalent reflector"},
                                          {RuleKind::ThroughWallExtent, "through-wall extent"},
                                          {RuleKind::BackWallLoss, "back-wall loss"},
                                          {RuleKind::ForbiddenKind, "forbidden kind"},
                                          {RuleKind::Testability, "testability"}};
constexpr WordEntry<Comparison> kComparisons[] = {{Comparison::Less, "<"},
                                                  {Comparison::AtMost, "<="},
                                                  {Comparison::AtLeast, ">="},
                                                  {Comparison::More, ">"}};

}  // namespace

std::string_view word(Method method) {
    return wordIn(kMethods, method);
}
std::string_view word(Material material) {
    return wordIn(kMaterials, material);
}
std::string_view word(Grade grade) {
    return wordIn(kGrades, grade);
}
std::string_view word(Kind kind) {
    return wordIn(kKinds, kind);
}
std::string_view word(IndicationClass indicationClass) {
    return wordIn(kClasses, indicationClass);
}
std::string_view word(RuleKind rule) {
    return wordIn(kRules, rule);
}
std::string_view word(Comparison comparison) {
    return wordIn(kComparisons, comparison);
}
std::string_view word(ReflectorMeasure measure) {
    return wordIn(kReflectorMeasures, measure);
}
std::string_view word(TestabilityMeasure measure) {
    return wordIn(kTestabilityMeasures, measure);
}

std::optional<Method> methodFrom(std::string_view word) {
    return valueIn(kMethods, word);
}
std::optional<Material> materialFrom(std::string_view word) {
    return valueIn(kMaterials, word);
}
std::optional<Grade> gradeFrom(std::string_view word) {
    return valueIn(kGrades, word);
}
std::optional<Kind> kindFrom(std::string_view word) {
    return valueIn(kKinds, word);
}
std::optional<IndicationClass> classFrom(std::string_view word) {
    return valueIn(kClasses, word);
}
std::optional<RuleKind> ruleFrom(std::string_view word) {
    return valueIn(kRules, word);
}
std::optional<Comparison> comparisonFrom(std::string_view word) {
    return valueIn(kComparisons, word);
}
std::optional<ReflectorMeasure> reflectorMeasureFrom(std::string_view word) {
    return valueIn(kReflectorMeasures, word);
}
std::optional<TestabilityMeasure> testabilityMeasureFrom(std::string_view word) {
    return valueIn(kTestabilityMeasures, word);
}

}  // namespace model
