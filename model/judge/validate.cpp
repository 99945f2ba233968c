// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <set>
#include <string>
#include <tuple>

#include "judge/bundle.h"
#include "judge/judge.h"
#include "judge/level_orders.h"
#include "judge/validate_reflectors.h"
#include "judge/zone_places.h"
#include "limits/words.h"

namespace model {
namespace {

std::string pathOf(std::size_t examination) {
    return "examinations[" + std::to_string(examination) + "]";
}

Result<void> validateIndication(const Examination& examination, const LimitTable& table,
                                const Indication& indication, const std::string& path) {
    const Length zero;
    if (indication.id.empty()) return inputError(path + ".id", "is empty");
    if (indication.length <= zero) return inputError(path + ".length_mm", "must be above 0");
    if (indication.width) {
        if (*indication.width <= zero)
            return inputError(path + ".width_mm",
                              "must be above 0; leave it out for a hairline that is stated linear");
        if (*indication.width > indication.length)
            return inputError(path + ".width_mm", "is above the length");
    } else if (indication.stated != StatedClass::Linear) {
        return inputError(path,
                          "has no width_mm; a hairline without one must be stated \"class\": "
                          "\"linear\"");
    }
    if (indication.area && *indication.area <= Area{})
        return inputError(path + ".area_mm2", "must be above 0");
    if (indication.removed && *indication.removed <= zero)
        return inputError(path + ".removed_mm", "must be above 0");
    if (indication.relevance != Relevance::Relevant && indication.reason.empty())
        return inputError(path + ".reason", "is needed for what is not relevant");
    if (indication.stated == StatedClass::NonLinear && linearByRatio(table, indication) == true)
        return inputError(path + ".class", "is non-linear against the ratio of length to width");
    if (examination.surface) {
        const SurfacePlace& place = *examination.surface;
        if (indication.x < zero || indication.x > place.width || indication.y < zero ||
            indication.y > place.height)
            return inputError(path, "is centred outside zone %1", {examination.zone});
    }
    return {};
}

Result<void> validateExamination(const Examination& e, const TableSet& tables,
                                 const std::string& path) {
    if (e.zone.empty()) return inputError(path + ".zone", "is empty");
    if (e.thickness <= Length{}) return inputError(path + ".thickness_mm", "must be above 0");
    if (e.repairCycle < 0) return inputError(path + ".repair_cycle", "must not be below 0");
    if (e.repeat < 0) return inputError(path + ".repeat", "must not be below 0");
    if (e.surface) {
        if (e.surface->id.empty()) return inputError(path + ".surface.id", "is empty");
        if (e.surface->width <= Length{})
            return inputError(path + ".surface.width_mm", "must be above 0");
        if (e.surface->height <= Length{})
            return inputError(path + ".surface.height_mm", "must be above 0");
        if (e.surface->period && *e.surface->period <= Length{})
            return inputError(path + ".surface.period_x_mm", "must be above 0");
    }
    const LimitTable* table = tables.find(e.table);
    if (table == nullptr)
        return inputError(path + ".table", "there is no limit table \"%1\"", {e.table});
    if (table->method != e.method)
        return inputError(path + ".table", "%1 is a table for %2, not for %3",
                          {e.table, std::string(word(table->method)), std::string(word(e.method))});
    const auto levelPath = [&](const std::string& name) { return path + ".levels." + name; };
    for (const auto& [name, level] : e.levels) {
        const LevelKey* key = orderedKey(*table, name);
        if (key == nullptr)
            return inputError(path + ".levels", "%1 has no level key \"%2\"", {e.table, name});
        if (std::find(key->levels.begin(), key->levels.end(), level) == key->levels.end())
            return inputError(levelPath(name), "%1 has no level \"%2\"", {e.table, level});
        if (key->name != name && e.levels.contains(key->name))
            return inputError(levelPath(name),
                              "stands beside \"%1\", which orders it already; give one of them",
                              {key->name});
    }
    if (e.noIndications && !(e.indications.empty() && e.reflectors.empty()))
        return inputError(path + ".no_indications", "is stated, but indications are listed");
    for (std::size_t i = 0; i < e.notExamined.size(); ++i) {
        const std::string place = path + ".not_examined[" + std::to_string(i) + "]";
        if (e.notExamined[i].area <= Area{})
            return inputError(place + ".area_mm2", "must be above 0");
        if (e.notExamined[i].reason.empty()) return inputError(place + ".reason", "is empty");
    }
    std::set<std::string_view> ids;
    for (std::size_t i = 0; i < e.indications.size(); ++i) {
        const std::string place = path + ".indications[" + std::to_string(i) + "]";
        if (auto valid = validateIndication(e, *table, e.indications[i], place); !valid)
            return valid;
        if (!ids.insert(e.indications[i].id).second)
            return inputError(place + ".id", "\"%1\" is used twice in this examination",
                              {e.indications[i].id});
    }
    return validateUltrasonic(e, path);
}

}  // namespace

Result<void> validate(const Sheet& sheet, const TableSet& tables) {
    std::set<std::tuple<std::string, Method, Stage, int, int>> seen;
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i) {
        const Examination& e = sheet.examinations[i];
        if (auto valid = validateExamination(e, tables, pathOf(i)); !valid) return valid;
        if (!seen.emplace(e.zone, e.method, e.stage, e.repairCycle, e.repeat).second)
            return inputError(pathOf(i),
                              "zone %1 has this method, stage, repair cycle and repeat twice",
                              {e.zone});
    }
    return validatePlaces(sheet);
}

}  // namespace model
