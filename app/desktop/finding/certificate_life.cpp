// SPDX-License-Identifier: Apache-2.0
#include "finding/certificate_life.h"

#include <QCoreApplication>
#include <map>

#include "looks/text.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("CertificateLife", text);
}

QString byOn(const QString& what, const model::SignedAct& act) {
    return tr("%1 by %2 on %3").arg(what, qt(act.name), localTime(act.time));
}

/// Lines by the sequence of their rows in the history.
class Timeline {
public:
    void add(const model::SignedAct& act, const QString& what) {
        QString line = tr("%1  %2: %3").arg(localTime(act.time), qt(act.name), what);
        if (!act.reason.empty()) line += '\n' + tr("        because: %1").arg(qt(act.reason));
        lines_.emplace(act.sequence, line);
    }
    void add(const std::optional<model::SignedAct>& act, const QString& what) {
        if (act) add(*act, what);
    }
    [[nodiscard]] QStringList lines() const {
        QStringList all;
        for (const auto& [sequence, line] : lines_) all << line;
        return all;
    }

private:
    std::multimap<std::int64_t, QString> lines_;
};

}  // namespace

QString certificateState(const model::Certificate& certificate,
                         const std::optional<model::Presented>& presented) {
    if (!presented || !presented->released) {
        return tr("Issued by %1 on %2, without a signed release.")
            .arg(qt(certificate.issuedBy), localTime(certificate.issuedAt));
    }
    QStringList lines{byOn(tr("Released"), *presented->released) + '.'};
    if (presented->withdrawn) {
        lines << tr("⚠ %1: %2")
                     .arg(byOn(tr("WITHDRAWN"), *presented->withdrawn),
                          qt(presented->withdrawn->reason));
    }
    if (presented->supersededBy) {
        lines << tr("⚠ SUPERSEDED by certificate %1.").arg(*presented->supersededBy);
    }
    return lines.join('\n');
}

QStringList certificateFacts(const model::Certificate& certificate) {
    const auto& facts = certificate.facts;
    QStringList lines;
    lines << tr("Certificate %1, type %2").arg(certificate.number).arg(qt(facts.type));
    lines << tr("Casting %1, heat %2").arg(qt(facts.serial), qt(facts.heat));
    lines << tr("Part %1").arg(qt(facts.part));
    lines << tr("%1, order %2").arg(qt(facts.customer), qt(facts.order));
    if (!facts.customerOrder.empty()) {
        lines << tr("Customer's order %1").arg(qt(facts.customerOrder));
    }
    if (facts.supersedes) lines << tr("Replaces certificate %1").arg(*facts.supersedes);
    return lines;
}

model::Result<QStringList> castingHistory(const model::Archive& archive,
                                          const std::string& serial) {
    const auto states = model::examinationStates(archive, serial);
    if (!states) return states.error();
    const auto certificates = model::presentedOf(archive, serial);
    if (!certificates) return certificates.error();
    const auto file = archive.casting(serial);
    if (!file) return file.error();
    std::map<std::int64_t, QString> names;
    for (const auto& draft : file->examinations) {
        QString name =
            tr("zone %1, %2").arg(qt(draft.header.zone), methodText(draft.header.method));
        if (draft.header.repairCycle > 0) name += tr(", repair %1").arg(draft.header.repairCycle);
        if (draft.header.repeat > 0) name += tr(", repeat %1").arg(draft.header.repeat);
        names[draft.id] = name;
    }
    Timeline timeline;
    for (const auto& state : *states) {
        for (const auto& record : state.records) {
            const QString what = names[record.examination];
            timeline.add(record.recorded,
                         (record.recorded.reason.empty() ? tr("signed %1, revision %2: %3")
                                                         : tr("signed %1, revision %2, and "
                                                              "rejected it: %3"))
                             .arg(what)
                             .arg(record.revision)
                             .arg(wordText(record.word)));
            timeline.add(record.invalid, tr("declared the examination of %1 invalid").arg(what));
            timeline.add(record.givenBack, tr("gave %1 back").arg(what));
        }
    }
    for (const auto& one : *certificates) {
        const QString number = tr("certificate %1").arg(one.number);
        timeline.add(
            one.presented,
            tr("presented it for release as %1: %2").arg(number, wordText(one.facts.verdict)));
        timeline.add(one.endorsed, tr("signed %1 as third party").arg(number));
        timeline.add(one.returned, tr("returned %1").arg(number));
        timeline.add(one.released, tr("released %1").arg(number));
        timeline.add(one.withdrawn, tr("withdrew %1").arg(number));
    }
    return timeline.lines();
}

}  // namespace app
