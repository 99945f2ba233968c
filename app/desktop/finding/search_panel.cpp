// SPDX-License-Identifier: Apache-2.0
#include "finding/search_panel.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>

#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr int kGatherMs = 120;

std::optional<std::string> given(const QLineEdit* line) {
    const QString text = line->text().trimmed();
    return text.isEmpty() ? std::nullopt : std::optional(text.toStdString());
}

}  // namespace

SearchPanel::SearchPanel(QWidget* parent)
    : QWidget(parent),
      words_(new QLineEdit(this)),
      filters_(new QToolButton(this)),
      exact_(new QWidget(this)),
      verdict_(new QComboBox(this)),
      said_(new QLabel(this)) {
    words_->setPlaceholderText(tr("Find certificates by words"));
    words_->setClearButtonEnabled(true);
    words_->setToolTip(tr("Words of serial number, heat, part, order, customer or type"));
    words_->setAccessibleName(tr("Find certificates by words"));
    words_->setObjectName("words");
    filters_->setText(tr("&Exactly…"));
    filters_->setToolTip(tr("What has to agree exactly"));
    filters_->setCheckable(true);
    said_->setWordWrap(true);
    said_->setTextFormat(Qt::PlainText);
    said_->setAccessibleName(tr("Found"));
    auto* grid = new QGridLayout(exact_);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(6);
    grid->setVerticalSpacing(4);
    serial_ = addField(tr("Serial"), "serial", 0, 0);
    heat_ = addField(tr("Heat"), "heat", 0, 2);
    part_ = addField(tr("Part"), "part", 1, 0);
    customer_ = addField(tr("Customer"), "customer", 1, 2);
    from_ = addField(tr("From"), "from", 2, 0);
    to_ = addField(tr("To"), "to", 2, 2);
    from_->setPlaceholderText(tr("year-month-day"));
    to_->setPlaceholderText(tr("year-month-day"));
    verdict_->addItem(tr("any verdict"));
    for (const auto word :
         {model::Word::Acceptable, model::Word::NotAcceptable, model::Word::NotJudged}) {
        verdict_->addItem(wordText(word), static_cast<int>(word));
    }
    verdict_->setObjectName("verdict");
    verdict_->setAccessibleName(tr("Verdict"));
    grid->addWidget(new QLabel(tr("Verdict"), exact_), 3, 0);
    grid->addWidget(verdict_, 3, 1, 1, 3);
    exact_->hide();
    auto* line = new QHBoxLayout;
    line->addWidget(words_, 1);
    line->addWidget(filters_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 10, 8, 4);
    layout->setSpacing(6);
    layout->addLayout(line);
    layout->addWidget(exact_);
    layout->addWidget(said_);
    gather_.setSingleShot(true);
    gather_.setInterval(kGatherMs);
    connect(&gather_, &QTimer::timeout, this, &SearchPanel::changed);
    connect(filters_, &QToolButton::toggled, this, [this](bool open) {
        exact_->setVisible(open);
        if (open) serial_->setFocus();
        emit changed();
    });
    connect(words_, &QLineEdit::textChanged, this, [this] { gather_.start(); });
    connect(verdict_, &QComboBox::currentIndexChanged, this, &SearchPanel::changed);
}

QLineEdit* SearchPanel::addField(const QString& label, const QString& name, int row, int column) {
    auto* line = new QLineEdit(exact_);
    line->setObjectName(name);
    line->setAccessibleName(label);
    auto* grid = static_cast<QGridLayout*>(exact_->layout());
    grid->addWidget(new QLabel(label, exact_), row, column);
    grid->addWidget(line, row, column + 1);
    connect(line, &QLineEdit::textChanged, this, [this] { gather_.start(); });
    return line;
}

model::CertificateSearch SearchPanel::search() const {
    model::CertificateSearch search;
    search.words = words_->text().toStdString();
    if (!filters_->isChecked()) return search;
    search.serial = given(serial_);
    search.heat = given(heat_);
    search.part = given(part_);
    search.customer = given(customer_);
    search.from = given(from_);
    search.to = given(to_);
    if (verdict_->currentIndex() > 0) {
        search.verdict = static_cast<model::Word>(verdict_->currentData().toInt());
    }
    return search;
}

void SearchPanel::setSaid(const QString& text, bool wrong) {
    QPalette colours = palette();
    const QColor ground = colours.color(QPalette::Window);
    colours.setColor(QPalette::WindowText, wrong ? colourOf(Mark::Fails, ground)
                                                 : colours.color(QPalette::PlaceholderText));
    said_->setPalette(colours);
    said_->setText(wrong ? "✗  " + text : text);
}

QString SearchPanel::said() const {
    return said_->text();
}

void SearchPanel::clear() {
    const QSignalBlocker quiet(this);
    for (auto* line : findChildren<QLineEdit*>()) line->clear();
    verdict_->setCurrentIndex(0);
    gather_.stop();
}

}  // namespace app
