// SPDX-License-Identifier: Apache-2.0
#include "repair_bench/case_links.h"

#include <QCoreApplication>
#include <algorithm>

#include "fields/field_words.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("CaseLinks", text);
}

bool holds(const std::string& list, const std::string& key) {
    return std::ranges::count(model::itemsOf(list), key) > 0;
}

template <class T>
CaseItem itemOf(const T& entry) {
    return {std::string(T::kRegister), keyOf(entry), -1};
}

CaseItem itemOf(int examination) {
    return {{}, {}, examination};
}

/// One item names another.
struct Naming {
    CaseItem from;
    CaseItem to;
};

CaseItem nonconformanceNamed(const std::string& number) {
    return {std::string(model::Nonconformance::kRegister), number, -1};
}

int foundIn(const model::CastingFile& file, const model::Nonconformance& opened) {
    int found = -1;
    for (std::size_t i = 0; i < file.examinations.size(); ++i) {
        const auto& draft = file.examinations[i];
        if (draft.header.zone != opened.zone || word(draft.header.method) != opened.method ||
            (!opened.stage.empty() && word(draft.header.stage) != opened.stage) ||
            holds(draft.conditions.nonconformance, opened.number)) {
            continue;
        }
        // The first that it may be: a re-examination names its own nonconformance.
        if (found < 0) found = static_cast<int>(i);
    }
    return found;
}

std::vector<Naming> namings(const model::CastingFile& file) {
    std::vector<Naming> all;
    const auto& dossier = file.dossier;
    for (const auto& opened : dossier.nonconformances) {
        if (const int found = foundIn(file, opened); found >= 0) {
            all.push_back({itemOf(opened), itemOf(found)});
        }
    }
    for (const auto& decision : dossier.dispositions) {
        all.push_back({itemOf(decision), nonconformanceNamed(decision.nonconformance)});
    }
    for (const auto& cavity : dossier.excavations) {
        all.push_back({itemOf(cavity), nonconformanceNamed(cavity.nonconformance)});
        if (cavity.cavityRecord.empty()) continue;
        all.push_back({itemOf(cavity),
                       {std::string(model::OtherResult::kRegister), cavity.cavityRecord, -1}});
    }
    for (const auto& weld : dossier.weldRepairs) {
        all.push_back(
            {itemOf(weld), {std::string(model::Excavation::kRegister), weld.excavation, -1}});
    }
    for (const auto& heat : dossier.heatTreatments) {
        for (const auto& weld : model::itemsOf(heat.weldRepairs)) {
            all.push_back({itemOf(heat), {std::string(model::WeldRepair::kRegister), weld, -1}});
        }
    }
    for (const auto& given : dossier.concessions) {
        all.push_back({itemOf(given), nonconformanceNamed(given.nonconformance)});
    }
    for (std::size_t i = 0; i < file.examinations.size(); ++i) {
        const int examination = static_cast<int>(i);
        for (const auto& number : model::itemsOf(file.examinations[i].conditions.nonconformance)) {
            all.push_back({itemOf(examination), nonconformanceNamed(number)});
        }
    }
    return all;
}

}  // namespace

QString examinationName(const model::ExaminationDraft& draft) {
    const auto& header = draft.header;
    QStringList parts{tr("%1 %2").arg(qt(header.zone), methodText(header.method)),
                      stageText(header.stage)};
    if (header.repairCycle > 0) parts << tr("repair cycle %1").arg(header.repairCycle);
    if (header.repeat > 0) parts << tr("repeat %1").arg(header.repeat);
    return parts.join(", ");
}

QString nameOf(const model::CastingFile& file, const CaseItem& item) {
    if (item.registerName.empty()) {
        const auto at = static_cast<std::size_t>(item.examination);
        return at < file.examinations.size()
                   ? tr("examination %1").arg(examinationName(file.examinations[at]))
                   : tr("examination");
    }
    return tr("%1 %2").arg(choiceText(item.registerName), qt(item.key));
}

std::vector<CaseLink> linksOf(const model::CastingFile& file, const CaseItem& item) {
    std::vector<CaseLink> links;
    const auto all = namings(file);
    for (const auto& naming : all) {
        if (naming.from == item) links.push_back({false, naming.to});
    }
    for (const auto& naming : all) {
        if (naming.to == item) links.push_back({true, naming.from});
    }
    return links;
}

}  // namespace app
