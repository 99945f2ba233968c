// SPDX-License-Identifier: Apache-2.0
#include "window/start_page.h"

#include <QCoreApplication>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include "looks/heading.h"
#include "looks/mark.h"

namespace app {

QString programStatement() {
    return QCoreApplication::translate(
        "Statement",
        "Fettlemark assists people who are qualified to test castings; it does not replace them. "
        "It sizes, groups and compares what you enter with the limits of a table. Whether a table "
        "agrees with your copy of the standard is your company's to attest. Your order, your "
        "written procedure, local codes and licensed practice decide.\n\n"
        "What the program cannot judge it calls “not judged”, never acceptable.");
}

StartPage::StartPage(QWidget* parent)
    : QWidget(parent),
      open_(new QPushButton(tr("&Open an archive…"), this)),
      demonstration_(new QPushButton(tr("&Look around with the demonstration"), this)),
      trouble_(new QLabel(this)),
      busyText_(new QLabel(this)),
      busy_(new QProgressBar(this)) {
    auto* name = new Heading(2.4, this, tr("Fettlemark"));
    auto* purpose =
        new QLabel(tr("Records and judges the surface testing of iron and steel castings."), this);
    auto* statement = new QLabel(programStatement(), this);
    statement->setWordWrap(true);
    statement->setForegroundRole(QPalette::PlaceholderText);
    auto* about = new QLabel(tr("The demonstration shows an invented foundry. It opens as a file "
                                "of its own that you may change as you like."),
                             this);
    about->setWordWrap(true);
    about->setForegroundRole(QPalette::PlaceholderText);
    trouble_->setWordWrap(true);
    trouble_->setTextFormat(Qt::PlainText);
    trouble_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    busy_->setRange(0, 0);
    busy_->setTextVisible(false);
    open_->setMinimumHeight(open_->sizeHint().height() + 12);
    demonstration_->setMinimumHeight(open_->minimumHeight());

    auto* column = new QWidget(this);
    column->setMaximumWidth(560);
    auto* inside = new QVBoxLayout(column);
    inside->setSpacing(10);
    inside->addWidget(name);
    inside->addWidget(purpose);
    inside->addSpacing(18);
    inside->addWidget(open_);
    inside->addWidget(demonstration_);
    inside->addWidget(about);
    inside->addWidget(busyText_);
    inside->addWidget(busy_);
    inside->addWidget(trouble_);
    inside->addSpacing(24);
    inside->addWidget(statement);
    auto* layout = new QHBoxLayout(this);
    layout->addStretch(1);
    layout->addWidget(column, 3, Qt::AlignVCenter);
    layout->addStretch(1);
    connect(open_, &QPushButton::clicked, this, &StartPage::openRequested);
    connect(demonstration_, &QPushButton::clicked, this, &StartPage::demonstrationRequested);
    setBusy({});
    setTrouble({});
}

void StartPage::setBusy(const QString& what) {
    busy_->setVisible(!what.isEmpty());
    busyText_->setVisible(!what.isEmpty());
    busyText_->setText(what);
    open_->setEnabled(what.isEmpty());
    demonstration_->setEnabled(what.isEmpty());
}

void StartPage::setTrouble(const QString& text) {
    trouble_->setVisible(!text.isEmpty());
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(Mark::Fails, colours.color(QPalette::Window)));
    trouble_->setPalette(colours);
    trouble_->setText(text.isEmpty() ? text : "✗  " + text);
}

}  // namespace app
