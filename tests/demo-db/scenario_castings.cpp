// SPDX-License-Identifier: Apache-2.0
#include "scenario_castings.h"

#include <gtest/gtest.h>
#include <utility>

#include "demo_db/scenario.h"

namespace {

template <class T>
void add(const demo::RegisterEntry& entry, std::vector<T>& entries) {
    if (entry.registerName != T::kRegister) return;
    const auto read = model::fromCanonicalFields<T>(entry.fields);
    ASSERT_TRUE(read) << entry.registerName;
    entries.push_back(*read);
}

}  // namespace

std::vector<model::CastingFile> scenarioCastings() {
    const auto commissions = demo::readScenario();
    if (!commissions) {
        ADD_FAILURE() << commissions.error().message();
        return {};
    }
    std::vector<model::CastingFile> files;
    for (const demo::Commission& commission : *commissions)
        for (const demo::ScenarioCasting& casting : commission.castings) {
            model::CastingFile file{
                casting.casting, commission.part, commission.order, commission.plan, {}};
            for (const demo::SituatedExamination& examination : casting.examinations)
                file.examinations.push_back(examination.draft);
            for (const demo::RegisterEntry& entry : casting.dossier) {
                add(entry, file.dossier.otherResults);
                add(entry, file.dossier.excavations);
            }
            files.push_back(std::move(file));
        }
    return files;
}

model::CastingFile scenarioCasting(const std::string& serial) {
    for (model::CastingFile& file : scenarioCastings())
        if (file.casting.serial == serial) return std::move(file);
    ADD_FAILURE() << "no casting " << serial;
    return {};
}

model::Sheet scenarioSheet(const std::string& serial) {
    auto sheet = model::sheetOf(scenarioCasting(serial));
    if (sheet) return std::move(*sheet);
    ADD_FAILURE() << sheet.error().message();
    return {};
}
