// SPDX-License-Identifier: Apache-2.0
// The next step of a case, asked for and kept.
#include <QCoreApplication>
#include <QFileDialog>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "editing/entry_keeping.h"
#include "editing/works.h"
#include "fields/field_words.h"
#include "looks/text.h"
#include "registers/every_register.h"
#include "repair_bench/opening.h"
#include "repair_bench/repair_page.h"

namespace app {
namespace {

template <class T>
QStringList keysOf(const std::vector<T>& entries) {
    QStringList keys;
    for (const T& entry : entries) keys << qt(keyOf(entry));
    return keys;
}

QStringList equipmentOf(const model::Holdings& works, std::string_view kind) {
    QStringList ids;
    for (const auto& thing : works.equipment) {
        if (thing.state == "in use" && (kind.empty() || thing.kind == kind)) ids << qt(thing.id);
    }
    return ids;
}

}  // namespace

std::string RepairPage::personName() const {
    return session_.person() ? session_.person()->name : person_;
}

QString RepairPage::whyNot(const std::string& registerName) const {
    if (session_.onlyForReading()) return tr("The archive is open only for reading.");
    if (!session_.hasPeople()) {
        return model::signersOf(registerName).empty()
                   ? QString()
                   : tr("It is signed: people have to be set up in this archive first.");
    }
    if (!session_.person()) return tr("Sign in first.");
    const auto& roles = model::signersOf(registerName);
    const bool may = roles.empty() || std::ranges::any_of(roles, [this](model::Role role) {
                         return session_.has(role);
                     });
    if (may) return {};
    QStringList who;
    for (const auto role : roles) {
        who << choiceText(word(role));
    }
    return tr("It is signed by: %1. Sign in as one.").arg(who.join(tr(" or ")));
}

void RepairPage::refreshButtons() {
    const auto* one = current();
    for (const auto& act : acts_) {
        QString why = one ? QString() : tr("Choose a nonconformance first.");
        if (one && act.button == change_) {
            const CaseItem item = currentItem();
            why = item.registerName.empty() ? tr("An examination is changed at its zone.")
                                            : whyNot(item.registerName);
        } else if (one && act.registerName.empty()) {
            why = session_.mayEnter() ? QString() : session_.whyNot();
            if (why.isEmpty() && !one->found)
                why = tr("No examination here is known to have found it.");
        } else if (one) {
            why = whyNot(act.registerName);
            if (why.isEmpty() && act.registerName == model::WeldRepair::kRegister &&
                one->excavations.empty()) {
                why = tr("A weld repair fills an excavation: record that first.");
            }
        }
        act.button->setEnabled(why.isEmpty());
        act.button->setToolTip(why);
    }
    markingOut_->setEnabled(desk_ != nullptr);
    weldMap_->setEnabled(desk_ && !file().dossier.excavations.empty());
    weldMap_->setToolTip(weldMap_->isEnabled() ? QString() : tr("Nothing was taken out yet."));
}

void RepairPage::askForSheet(WorkshopSheet sheet) {
    if (!desk_) return;
    const QString name =
        (sheet == WorkshopSheet::MarkingOut ? tr("marking-out-%1.pdf") : tr("weld-map-%1.pdf"))
            .arg(qt(file().casting.serial).replace('/', '-'));
    const QString path =
        QFileDialog::getSaveFileName(this, tr("Write the sheet to"), name, tr("PDF files (*.pdf)"));
    if (!path.isEmpty()) writeSheetTo(sheet, path);
}

void RepairPage::writeSheetTo(WorkshopSheet sheet, const QString& path) {
    if (!desk_ || !desk_->live() || !desk_->live()->complete) {
        emit message(tr("Some rows cannot be read yet; put them right first."));
        return;
    }
    auto order = std::make_shared<SheetOrder>();
    order->sheet = sheet;
    order->file = desk_->editor().file();
    order->verdict = *desk_->live()->complete;
    order->works = worksOf(kind_).name;
    order->version = QCoreApplication::applicationVersion().toStdString();
    order->demonstration = kind_ == model::ArchiveKind::Demonstration;
    order->path = path.toStdString();
    writeSheet(order, this, [this, path](const model::Result<void>& result) {
        if (!result) {
            emit message(tr("No sheet was written. %1").arg(sentence(result.error())));
            return;
        }
        emit message(tr("Sheet written to %1").arg(path));
        emit sheetWritten(path);
    });
}

/// What the file already has for fields that name something else.
void RepairPage::suggest(FieldForm& form, const std::string& registerName) const {
    const auto& dossier = file().dossier;
    const auto& works = file().used;
    form.setSuggestions("nonconformance", keysOf(dossier.nonconformances));
    form.setSuggestions("excavation", keysOf(dossier.excavations));
    form.setSuggestions("weld_repairs", keysOf(dossier.weldRepairs));
    form.setSuggestions("cavity_record", keysOf(dossier.otherResults));
    form.setSuggestions("wall_measured_with", equipmentOf(works, {}));
    form.setSuggestions("furnace", equipmentOf(works, "furnace"));
    form.setSuggestions("thermocouples", equipmentOf(works, "thermocouple"));
    QStringList zones;
    for (const auto& zone : file().plan.zones) zones << qt(zone.name);
    form.setSuggestions("zone", zones);
    QStringList names;
    for (const auto& person : session_.people()) names << qt(person.value.name);
    for (const char* key : {"done_by", "opened_by", "performed_by"}) {
        form.setSuggestions(key, names);
    }
    if (registerName == model::Concession::kRegister && current()) {
        QStringList indications;
        for (const auto& id : model::itemsOf(current()->opened->indications)) indications << qt(id);
        form.setSuggestions("indications", indications);
    }
}

template <class T>
void RepairPage::ask(const T& entry, std::int64_t version, const QString& title,
                     const QString& intro, const std::set<std::string>& fixed) {
    QString about = intro;
    if (!model::signersOf(T::kRegister).empty()) {
        about += ' ' + tr("You sign it, as %1.").arg(qt(personName()));
    }
    auto* dialog =
        new EntryDialog(title, about.trimmed(), version == 0 ? tr("&Record it") : tr("&Change it"),
                        fieldInfos<T>(), textsOf(entry), {}, this);
    dialog->setObjectName("caseDialog");
    suggest(dialog->fields(), std::string(T::kRegister));
    std::set<std::string> unchanged = fixed;
    if (version > 0) {  // what names the entry stays
        for (const auto& field : T::fields()) {
            if (field.info.need == model::FieldInfo::Need::Key) {
                unchanged.insert(std::string(field.info.key));
            }
        }
    }
    unchanged.insert("casting");
    dialog->fix(unchanged);
    dialog->setStore([this, dialog, version](const EntryTexts& texts, const QString& path,
                                             const TaskDialog::Then& then) {
        archive_.ask(
            [texts, path, version, signer = session_.signer(),
             person = personName()](model::Archive& held) -> model::Result<void> {
                EntryTexts complete = texts;
                if (!path.isEmpty()) {
                    const auto bytes = bytesOf(path);
                    if (!bytes) return bytes.error();
                    const auto digest = model::keepFile(held, *bytes);
                    if (!digest) return digest.error();
                    complete["file_sha256"] = *digest;
                }
                return keepEntry(held, entryFrom<T>(complete), version, signer, person);
            },
            dialog,
            [this, then](const model::Result<void>& result) {
                then(result);
                if (result) emit kept();
            });
    });
    dialog->open();
    emit dialogShown(dialog);
}

template <class T>
void RepairPage::askChange(const std::string& key) {
    archive_.ask([key](model::Archive& held) { return model::entry<T>(held, key); }, this,
                 [this, key](model::Result<model::Stored<T>> stored) {
                     if (!desk_) return;
                     if (!stored) {
                         emit message(sentence(stored.error()));
                         return;
                     }
                     ask(stored->value, stored->version,
                         tr("Change %1 %2").arg(choiceText(T::kRegister), qt(key)),
                         tr("The entry as it is now stays in the archive; what you change is its "
                            "next version."),
                         {});
                 });
}

void RepairPage::change() {
    const CaseItem item = currentItem();
    if (item.registerName.empty() || !whyNot(item.registerName).isEmpty()) return;
    model::withRegister(item.registerName, [&]<class T>() { askChange<T>(item.key); });
}

void RepairPage::openFrom(int examination, std::int64_t record) {
    if (!desk_ || !desk_->live()) return;
    if (const QString why = whyNot(std::string(model::Nonconformance::kRegister)); !why.isEmpty()) {
        emit message(why);
        return;
    }
    refresh();
    const auto& live = desk_->live()->examinations;
    const auto at = static_cast<std::size_t>(examination);
    if (at >= live.size() || !live[at].verdict) return;
    auto opened = nonconformanceFrom(file().examinations[at], *live[at].verdict, record);
    opened.number = nextNumber(file().dossier.nonconformances, opened.casting, 'N');
    opened.openedBy = personName();
    ask(opened, 0, tr("Open a nonconformance"),
        record > 0 ? tr("The casting is held until a QA manager has decided. Indications, finding "
                        "and rule are taken from the verdict.")
                   : tr("The casting is held until a QA manager has decided. The examination is "
                        "not signed yet: the number of its record can be added once it is."),
        {"zone", "method", "stage"});
}

void RepairPage::decide() {
    const auto* one = current();
    if (!one) return;
    model::Disposition decision;
    decision.nonconformance = one->opened->number;
    decision.casting = one->opened->casting;
    int sequence = 1;
    for (const auto* before : one->decisions) {
        sequence = std::max(sequence, qt(before->sequence).toInt() + 1);
    }
    decision.sequence = std::to_string(sequence);
    decision.authority = personName();
    decision.decidedOn = dateToday();
    ask(decision, 0, tr("Decide about %1").arg(qt(one->opened->number)),
        tr("The last decision stands; those before it stay."), {"nonconformance", "sequence"});
}

void RepairPage::excavate() {
    const auto* one = current();
    if (!one) return;
    model::Excavation cavity;
    cavity.number = nextNumber(file().dossier.excavations, one->opened->casting, 'E');
    cavity.nonconformance = one->opened->number;
    cavity.casting = one->opened->casting;
    cavity.zone = one->opened->zone;
    cavity.doneOn = dateToday();
    ask(cavity, 0, tr("Excavation for %1").arg(qt(one->opened->number)),
        tr("What was taken out, from the zone's datum. The cavity test is added once it is made."),
        {"nonconformance"});
}

void RepairPage::weld() {
    const auto* one = current();
    if (!one || one->excavations.empty()) return;
    model::WeldRepair weld;
    weld.number = nextNumber(file().dossier.weldRepairs, one->opened->casting, 'W');
    weld.casting = one->opened->casting;
    weld.doneOn = dateToday();
    for (const auto* cavity : one->excavations) {  // the first that is not filled yet
        const bool filled = std::ranges::any_of(one->weldRepairs, [&](const auto* other) {
            return other->excavation == cavity->number;
        });
        if (!filled && weld.excavation.empty()) weld.excavation = cavity->number;
    }
    if (weld.excavation.empty()) weld.excavation = one->excavations.back()->number;
    ask(weld, 0, tr("Weld repair for %1").arg(qt(one->opened->number)), {}, {});
}

void RepairPage::heatTreat() {
    const auto* one = current();
    if (!one) return;
    model::HeatTreatment heat;
    heat.number = nextNumber(file().dossier.heatTreatments, one->opened->casting, 'H');
    heat.casting = one->opened->casting;
    heat.doneOn = dateToday();
    std::vector<std::string> welds;
    for (const auto* weld : one->weldRepairs) welds.push_back(weld->number);
    heat.weldRepairs = model::listOf(welds);
    ask(heat, 0, tr("Heat treatment after %1").arg(qt(one->opened->number)), {}, {});
}

void RepairPage::concede() {
    const auto* one = current();
    if (!one) return;
    model::Concession given;
    given.number = nextNumber(file().dossier.concessions, one->opened->casting, 'C');
    given.nonconformance = one->opened->number;
    given.casting = one->opened->casting;
    given.indications = one->opened->indications;
    given.grantedOn = dateToday();
    ask(given, 0, tr("Concession for %1").arg(qt(one->opened->number)),
        tr("The purchaser's written acceptance of exactly these indications. The word stays \"not "
           "acceptable\"; the certificate says that the casting is under concession."),
        {"nonconformance"});
}

void RepairPage::addResult() {
    if (!desk_) return;
    model::OtherResult result;
    const std::string serial = file().casting.serial;
    result.number = nextNumber(file().dossier.otherResults, serial, 'R');
    result.casting = serial;
    result.performedOn = dateToday();
    if (const auto* one = current()) result.zone = one->opened->zone;
    ask(result, 0, tr("Result of another test"),
        tr("Of a cavity test, of visual, radiographic, dimensional or other testing, here or by "
           "an outside laboratory: its verdict, who made it, and its report as a file."),
        {});
}

void RepairPage::reexamine() {
    const auto* one = current();
    if (!one || !one->found) return;
    const int found = static_cast<int>(one->found - file().examinations.data());
    emit reexaminationWanted(found, one->opened->number, qt(one->opened->record).toLongLong());
}

}  // namespace app
