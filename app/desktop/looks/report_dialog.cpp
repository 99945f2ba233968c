// SPDX-License-Identifier: Apache-2.0
#include "looks/report_dialog.h"

#include <QClipboard>
#include <QDialogButtonBox>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>

#include "looks/heading.h"
#include "looks/mark_label.h"

namespace app {

ReportDialog::ReportDialog(const QString& title, std::optional<Mark> mark, const QString& headline,
                           const QString& text, const QStringList& lines, QWidget* parent)
    : QDialog(parent), headline_(headline), lines_(lines) {
    setWindowTitle(title);
    setAttribute(Qt::WA_DeleteOnClose);
    setObjectName("report");
    resize(760, lines.isEmpty() ? 200 : 480);
    auto* head = new QHBoxLayout;
    head->setSpacing(12);
    auto* said = new Heading(1.3, this, headline);
    said->setWordWrap(true);
    if (mark) {
        auto* sign = new MarkLabel(this);
        sign->setSide(36);
        sign->setMark(*mark);
        head->addWidget(sign, 0, Qt::AlignTop);
        QPalette colours = palette();
        colours.setColor(QPalette::WindowText, colourOf(*mark, colours.color(QPalette::Window)));
        said->setPalette(colours);
    }
    head->addWidget(said, 1);
    auto* under = new QLabel(text, this);
    under->setWordWrap(true);
    under->setTextFormat(Qt::PlainText);
    under->setTextInteractionFlags(Qt::TextSelectableByMouse);
    under->setVisible(!text.isEmpty());
    auto* all = new QPlainTextEdit(lines.join('\n'), this);
    all->setReadOnly(true);
    all->setTabChangesFocus(true);
    all->setAccessibleName(title);
    all->setVisible(!lines.isEmpty());
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->button(QDialogButtonBox::Close)->setText(tr("&Close"));
    auto* copy = buttons->addButton(tr("Copy the &text"), QDialogButtonBox::ActionRole);
    copy->setAutoDefault(false);
    connect(copy, &QPushButton::clicked, this, [this, text] {
        QGuiApplication::clipboard()->setText(
            (QStringList{windowTitle(), headline_, text} + lines_).join('\n'));
    });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(18, 16, 18, 12);
    layout->setSpacing(12);
    layout->addLayout(head);
    layout->addWidget(under);
    layout->addWidget(all, 1);
    layout->addWidget(buttons);
}

}  // namespace app
