// SPDX-License-Identifier: Apache-2.0
#include "finding/keeping_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "finding/keeping_tasks.h"
#include "looks/heading.h"
#include "looks/notice_bar.h"
#include "looks/task_dialog.h"
#include "looks/text.h"

namespace app {
namespace {

QLabel* plainLabel(QWidget* parent, const char* name) {
    auto* label = new QLabel(parent);
    label->setObjectName(name);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

}  // namespace

KeepingDialog::KeepingDialog(ArchiveThread& archive, Session& session, std::string order,
                             QWidget* parent)
    : QDialog(parent),
      archive_(archive),
      session_(session),
      order_(std::move(order)),
      notice_(new NoticeBar(this)),
      stated_(plainLabel(this, "stated")),
      certificates_(new QTableWidget(0, 4, this)),
      leaving_(plainLabel(this, "leaving")),
      hint_(plainLabel(this, "hint")) {
    setWindowTitle(tr("Keeping and disposal: order %1").arg(qt(order_)));
    setAttribute(Qt::WA_DeleteOnClose);
    resize(760, 560);
    makeLayout();
    connect(certificates_, &QTableWidget::currentCellChanged, this, &KeepingDialog::showChosen);
    connect(&session_, &Session::changed, this, &KeepingDialog::refreshButtons);
    refreshButtons();
    reload();
}

void KeepingDialog::makeLayout() {
    certificates_->setHorizontalHeaderLabels(
        {tr("Certificate"), tr("Casting"), tr("Released or returned"), tr("Disposal")});
    certificates_->verticalHeader()->hide();
    certificates_->horizontalHeader()->setStretchLastSection(true);
    certificates_->horizontalHeader()->setHighlightSections(false);
    certificates_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    certificates_->setSelectionBehavior(QAbstractItemView::SelectRows);
    certificates_->setSelectionMode(QAbstractItemView::SingleSelection);
    certificates_->setTabKeyNavigation(false);
    certificates_->setAccessibleName(tr("Certificates of the order"));
    hint_->setForegroundRole(QPalette::PlaceholderText);
    const auto button = [this](const QString& text, const QString& name, auto act) {
        auto* made = new QPushButton(text, this);
        made->setObjectName(name);
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, act);
        return made;
    };
    day_ = button(tr("&State the last day…"), "lastDay", &KeepingDialog::changeDay);
    hold_ = button(tr("Put on legal &hold…"), "hold", &KeepingDialog::changeHold);
    dispose_ = button(tr("&Dispose of it…"), "dispose", &KeepingDialog::dispose);
    auto* stating = new QHBoxLayout;
    stating->addWidget(day_);
    stating->addWidget(hold_);
    stating->addStretch(1);
    auto* leaving = new QHBoxLayout;
    leaving->addWidget(leaving_, 1);
    leaving->addWidget(dispose_, 0, Qt::AlignTop);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->button(QDialogButtonBox::Close)->setText(tr("&Close"));
    buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(10);
    layout->addWidget(notice_);
    layout->addWidget(new Heading(1.1, this, tr("How long its certificates are kept")));
    layout->addWidget(stated_);
    layout->addLayout(stating);
    layout->addSpacing(8);
    layout->addWidget(new Heading(1.1, this, tr("Its certificates")));
    layout->addWidget(certificates_, 1);
    layout->addLayout(leaving);
    layout->addWidget(hint_);
    layout->addWidget(buttons);
}

void KeepingDialog::reload() {
    archive_.ask(
        [order = order_](model::Archive& held) -> model::Result<Known> {
            auto stated = model::retention(held, order);
            if (!stated) return stated.error();
            auto certificates = model::disposables(held, order);
            if (!certificates) return certificates.error();
            return Known{std::move(*stated), std::move(*certificates)};
        },
        this,
        [this](model::Result<Known> known) {
            if (known) {
                show(std::move(*known));
            } else {
                notice_->say(Mark::Fails, sentence(known.error()), {{tr("Close"), {}}});
            }
        });
}

void KeepingDialog::show(Known known) {
    known_ = std::move(known);
    const auto& stated = known_.stated;
    QStringList lines{stated.keepUntil
                          ? tr("Until %1, that day included.").arg(qt(*stated.keepUntil))
                          : tr("For ever: no last day is stated.")};
    if (stated.hold) {
        lines << tr("⚠ On legal hold: %1. Nothing of this order is disposed of, whatever day it "
                    "is.")
                     .arg(qt(*stated.hold));
    }
    stated_->setText(lines.join('\n'));
    hold_->setText(stated.hold ? tr("End the legal &hold…") : tr("Put on legal &hold…"));
    const int before = std::max(0, certificates_->currentRow());
    {
        const QSignalBlocker quiet(certificates_);
        certificates_->setRowCount(static_cast<int>(known_.certificates.size()));
        for (int row = 0; row < certificates_->rowCount(); ++row) {
            const auto& one = known_.certificates[static_cast<std::size_t>(row)];
            const QString day = localTime(one.at).left(10);
            const QStringList texts{
                QString::number(one.number), qt(one.serial),
                one.returned ? tr("returned on %1").arg(day) : tr("released on %1").arg(day),
                one.stays ? tr("stays") : tr("can go")};
            for (int column = 0; column < texts.size(); ++column) {
                certificates_->setItem(row, column, new QTableWidgetItem(texts[column]));
            }
        }
        certificates_->resizeColumnsToContents();
        certificates_->setCurrentCell(std::min(before, certificates_->rowCount() - 1), 0);
    }
    showChosen();
    emit shown();
}

const model::Disposable* KeepingDialog::chosen() const {
    const int row = certificates_->currentRow();
    return row < 0 || row >= static_cast<int>(known_.certificates.size())
               ? nullptr
               : &known_.certificates[static_cast<std::size_t>(row)];
}

void KeepingDialog::showChosen() {
    const auto* one = chosen();
    leaving_->setText(
        !one ? tr("The archive has neither a certificate of this order nor a returned casting.")
        : one->stays ? sentence(*one->stays)
                     : whatGoes(*one));
    refreshButtons();
}

bool KeepingDialog::mayChange() const {
    return !session_.onlyForReading() &&
           (session_.has(model::Role::QaManager) || session_.has(model::Role::Administrator));
}

void KeepingDialog::refreshButtons() {
    const bool may = mayChange();
    const auto* one = chosen();
    day_->setEnabled(may);
    hold_->setEnabled(may);
    dispose_->setEnabled(may && one && !one->stays);
    hint_->setText(may ? QString()
                       : tr("Only to read: a QA manager or an administrator who has signed in "
                            "changes this."));
    hint_->setVisible(!may);
}

void KeepingDialog::changeDay() {
    auto* dialog = lastDayDialog(archive_, session_, known_.stated, this);
    connect(dialog, &TaskDialog::completed, this, &KeepingDialog::reload);
    dialog->open();
}

void KeepingDialog::changeHold() {
    auto* dialog = holdDialog(archive_, session_, known_.stated, this);
    connect(dialog, &TaskDialog::completed, this, &KeepingDialog::reload);
    dialog->open();
}

void KeepingDialog::dispose() {
    const auto* one = chosen();
    if (!one || !session_.person()) return;
    auto* dialog = disposeDialog(archive_, session_, *one, this);
    connect(dialog, &TaskDialog::completed, this, [this] {
        reload();
        emit disposed();
    });
    dialog->open();
}

QString KeepingDialog::statedText() const {
    return stated_->text();
}
QString KeepingDialog::leavingText() const {
    return leaving_->text();
}

}  // namespace app
