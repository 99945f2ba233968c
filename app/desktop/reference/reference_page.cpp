// SPDX-License-Identifier: Apache-2.0
#include "reference/reference_page.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QListWidget>
#include <QStackedWidget>
#include <algorithm>

#include "looks/task_dialog.h"
#include "looks/text.h"
#include "reference/conditions_view.h"
#include "reference/record_registers.h"
#include "reference/register_page.h"
#include "reference/runs_out_view.h"
#include "reference/versions_dialog.h"
#include "reference/works_registers.h"
#include "release/attestation_view.h"

namespace app {
namespace {

constexpr auto kRunsOut = "runs out";
constexpr auto kLimitTables = "limit table";
constexpr auto kConditions = "condition set";

using MakeRegister = Register (*)();

const std::map<std::string, MakeRegister>& makers() {
    static const std::map<std::string, MakeRegister> kMakers{
        {"order", orderRegister},           {"part", partRegister},
        {"casting", castingRegister},       {"equipment", equipmentRegister},
        {"equipment check", checkRegister}, {"consumable", consumableRegister},
        {"procedure", procedureRegister},   {"qualification", qualificationRegister},
        {"eye test", eyeTestRegister},      {"authorisation", authorisationRegister}};
    return kMakers;
}

}  // namespace

ReferencePage::ReferencePage(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent),
      archive_(archive),
      session_(session),
      places_(new QListWidget(this)),
      pages_(new QStackedWidget(this)),
      runsOut_(new RunsOutView(archive, this)),
      limitTables_(new AttestationView(archive, session, this)),
      conditions_(new ConditionsView(archive, session, this)) {
    makeLayout();
    connect(places_, &QListWidget::currentItemChanged, this, &ReferencePage::onPlace);
    connect(runsOut_, &RunsOutView::counted, this, &ReferencePage::refreshRunsOut);
    connect(runsOut_, &RunsOutView::wanted, this,
            [this](const QString& registerName, const QString& key) {
                goTo(registerName.toStdString());
                if (auto* shown = page(registerName.toStdString())) {
                    shown->choose(key.toStdString());
                }
            });
    connect(limitTables_, &AttestationView::attested, this, &ReferencePage::tablesChanged);
    connect(limitTables_, &AttestationView::taskShown, this, &ReferencePage::taskShown);
    connect(conditions_, &ConditionsView::taskShown, this, &ReferencePage::taskShown);
}

ReferencePage::~ReferencePage() = default;

void ReferencePage::makeLayout() {
    places_->setObjectName("places");
    places_->setAccessibleName(tr("What is kept"));
    places_->setFrameShape(QFrame::NoFrame);
    places_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    places_->setSpacing(2);
    addPlace(kRunsOut, tr("What runs out"));
    addGroup(tr("Ordered and cast"));
    addPlace("order", tr("Orders"));
    addPlace("part", tr("Parts and zone plans"));
    addPlace("casting", tr("Castings"));
    addGroup(tr("Means of testing"));
    addPlace("equipment", tr("Equipment"));
    addPlace("equipment check", tr("Equipment checks"));
    addPlace("consumable", tr("Consumables"));
    addPlace("procedure", tr("Procedures"));
    addGroup(tr("Who may test"));
    addPlace("qualification", tr("Qualifications"));
    addPlace("eye test", tr("Eye tests"));
    addPlace("authorisation", tr("Authorisations"));
    addGroup(tr("Limits"));
    addPlace(kLimitTables, tr("Limit tables"));
    addPlace(kConditions, tr("Test conditions"));
    pages_->addWidget(runsOut_);
    pages_->addWidget(limitTables_);
    pages_->addWidget(conditions_);
    fitPlaces();
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(places_);
    layout->addWidget(pages_, 1);
    places_->setCurrentRow(0);
}

/// Wide enough for every name in any size of type, and for how much is overdue.
void ReferencePage::fitPlaces() {
    const int wide = fontMetrics().horizontalAdvance(tr("  What runs out (99 overdue)"));
    places_->setFixedWidth(std::max(wide, places_->sizeHintForColumn(0)) + 30);
}

void ReferencePage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fitPlaces();
}

void ReferencePage::addGroup(const QString& title) {
    auto* item = new QListWidgetItem(title, places_);
    item->setFlags(Qt::NoItemFlags);  // keys pass over it
}

void ReferencePage::addPlace(const std::string& name, const QString& title) {
    auto* item = new QListWidgetItem("  " + title, places_);
    item->setData(Qt::UserRole, qt(name));
    item->setData(Qt::UserRole + 1, title);
    item->setData(Qt::AccessibleTextRole, title);
}

void ReferencePage::refreshRunsOut() {
    auto* item = places_->item(0);
    const int overdue = runsOut_->overdue();
    const QString title = item->data(Qt::UserRole + 1).toString();
    item->setText("  " + (overdue > 0 ? tr("%1 (%2 overdue)").arg(title).arg(overdue) : title));
    item->setData(Qt::AccessibleTextRole, item->text().trimmed());
}

void ReferencePage::setArchive(const ArchiveThread::Opened&) {
    open_ = true;
    for (const auto& [name, shown] : registers_) shown->clear();
    runsOut_->clear();
    limitTables_->reload();
    reload();
}

void ReferencePage::reload() {
    if (!open_) return;
    runsOut_->reload();
    if (auto* shown = page(current())) shown->reload();
    if (current() == kConditions) conditions_->reload();
}

void ReferencePage::setPerson(const QString& name) {
    person_ = name;
    for (const auto& [register_, shown] : registers_) shown->setPerson(name);
}

std::string ReferencePage::current() const {
    const auto* item = places_->currentItem();
    return item ? item->data(Qt::UserRole).toString().toStdString() : std::string();
}

RegisterPage* ReferencePage::page(const std::string& name) const {
    const auto found = registers_.find(name);
    return found == registers_.end() ? nullptr : found->second;
}

RegisterPage* ReferencePage::pageFor(const std::string& name) {
    if (auto* made = page(name)) return made;
    const auto maker = makers().find(name);
    if (maker == makers().end()) return nullptr;
    auto* made = new RegisterPage(maker->second(), archive_, session_, pages_);
    registers_[name] = made;
    pages_->addWidget(made);
    made->setPerson(person_);
    connect(made, &RegisterPage::taskShown, this, &ReferencePage::taskShown);
    connect(made, &RegisterPage::versionsShown, this, &ReferencePage::versionsShown);
    const bool isRecord = name == "order" || name == "part" || name == "casting";
    connect(made, &RegisterPage::saved, this, [this, isRecord] {
        if (isRecord) emit recordsChanged();
        runsOut_->reload();
    });
    return made;
}

void ReferencePage::goTo(const std::string& name) {
    for (int row = 0; row < places_->count(); ++row) {
        if (places_->item(row)->data(Qt::UserRole).toString() == qt(name)) {
            places_->setCurrentRow(row);
        }
    }
}

void ReferencePage::onPlace() {
    const std::string name = current();
    if (name == kRunsOut) {
        pages_->setCurrentWidget(runsOut_);
    } else if (name == kLimitTables) {
        pages_->setCurrentWidget(limitTables_);
    } else if (name == kConditions) {
        pages_->setCurrentWidget(conditions_);
    } else if (auto* shown = pageFor(name)) {
        pages_->setCurrentWidget(shown);
    }
    reload();
}

bool ReferencePage::isChanged() const {
    for (const auto& [name, shown] : registers_) {
        if (shown->isChanged()) return true;
    }
    return false;
}

void ReferencePage::leave(const std::function<void()>& go) {
    for (const auto& [name, shown] : registers_) {
        if (!shown->isChanged()) continue;
        goTo(name);
        shown->leave([this, go] { leave(go); });  // another one may be changed, too
        return;
    }
    go();
}

}  // namespace app
