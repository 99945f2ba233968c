// SPDX-License-Identifier: Apache-2.0
#include "repair/last_day.h"

#include <algorithm>

namespace model {
namespace {

template <class Entry>
void take(const std::vector<Entry>& entries, std::string& last) {
    for (const Entry& entry : entries)
        for (const Field<Entry>& field : Entry::fields()) {
            const bool isEnd = field.info.key == "until" || field.info.key == "welder_until";
            const std::string& text = entry.*field.text;
            if (field.info.kind == FieldKind::Date && !isEnd && isDate(text))
                last = std::max(last, text);
        }
}

}  // namespace

std::string lastDayOf(const CastingFile& file) {
    std::string last;
    for (const ExaminationDraft& draft : file.examinations)
        if (isDate(draft.examinedOn)) last = std::max(last, draft.examinedOn);
    const Dossier& dossier = file.dossier;
    take(dossier.nonconformances, last);
    take(dossier.dispositions, last);
    take(dossier.excavations, last);
    take(dossier.weldRepairs, last);
    take(dossier.heatTreatments, last);
    take(dossier.concessions, last);
    take(dossier.otherResults, last);
    return last;
}

}  // namespace model
