// SPDX-License-Identifier: Apache-2.0
#include "bench/verdict_panel.h"

#include <QEvent>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "bench/check_list.h"
#include "looks/heading.h"
#include "looks/mark_label.h"
#include "looks/text.h"

namespace app {
namespace {

QLabel* textLabel(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setTextFormat(Qt::PlainText);
    return label;
}

}  // namespace

VerdictPanel::VerdictPanel(QWidget* parent)
    : QWidget(parent),
      mark_(new MarkLabel(this)),
      word_(new Heading(1.7, this)),
      under_(textLabel(this)),
      table_(textLabel(this)),
      attested_(textLabel(this)),
      checks_(new CheckList(this)),
      detail_(textLabel(this)),
      rest_(textLabel(this)),
      below_(new QScrollArea(this)) {
    detail_->setObjectName("checkDetail");
    detail_->setForegroundRole(QPalette::PlaceholderText);
    connect(checks_, &CheckList::checkSelected, this, &VerdictPanel::showDetail);
    word_->setObjectName("verdictWord");
    word_->setAccessibleName(tr("Verdict"));
    attested_->setObjectName("attestation");
    rest_->setObjectName("verdictRest");
    under_->setObjectName("verdictUnder");
    mark_->setSide(44);

    auto* words = new QVBoxLayout;
    words->setSpacing(1);
    words->addWidget(word_);
    words->addWidget(under_);
    auto* head = new QHBoxLayout;
    head->setSpacing(12);
    head->addWidget(mark_, 0, Qt::AlignTop);
    head->addLayout(words, 1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 12, 10, 8);
    layout->setSpacing(6);
    layout->addLayout(head);
    layout->addSpacing(4);
    layout->addWidget(table_);
    layout->addWidget(attested_);
    layout->addWidget(checks_, 1);
    auto* below = new QWidget(this);
    auto* belowLayout = new QVBoxLayout(below);
    belowLayout->setContentsMargins(0, 0, 0, 0);
    belowLayout->addWidget(detail_);
    belowLayout->addWidget(rest_);
    below_->setWidget(below);
    below_->setWidgetResizable(true);
    below_->setFrameShape(QFrame::NoFrame);
    below_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    below_->setFocusPolicy(Qt::NoFocus);
    layout->addWidget(below_);
    layout->addStretch(0);

    show(nullptr, -1);
}

void VerdictPanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) showWord();
    if (event->type() == QEvent::FontChange) fitRest();
}

void VerdictPanel::show(CastingDesk* desk, int examination) {
    desk_ = desk;
    examination_ = examination;
    shown_.reset();
    checks_->setChecks({});
    checks_->setVisible(desk && examination >= 0);
    refresh();
}

void VerdictPanel::refresh() {
    if (!desk_ || examination_ < 0) {
        showWord();
        showTable(nullptr);
        showRest(nullptr);
        return;
    }
    if (desk_->live() && desk_->live() != shown_) {
        shown_ = desk_->live();
        const auto at = static_cast<std::size_t>(examination_);
        const model::ExaminationVerdict* verdict = nullptr;
        if (at < shown_->examinations.size() && shown_->examinations[at].verdict) {
            verdict = &*shown_->examinations[at].verdict;
        }
        checks_->setChecks(verdict ? verdict->checks : std::vector<model::Check>());
        showTable(verdict);
        showRest(verdict);
    }
    showWord();
}

QString VerdictPanel::word() const {
    return word_->text();
}

void VerdictPanel::showWord() {
    const bool any = desk_ && examination_ >= 0;
    mark_->setVisible(any);
    if (!any) {
        word_->setText(QString());
        under_->setText(desk_ ? tr("This test is not begun: there is nothing to judge.")
                              : tr("Here stands the verdict on the zone, and why."));
        under_->show();
        return;
    }
    const auto at = static_cast<std::size_t>(examination_);
    if (desk_->overdue() || !shown_ || at >= shown_->examinations.size()) {
        mark_->setMark(Mark::NotBegun);
        word_->setText(tr("judging…"));
        QPalette plain = word_->palette();
        plain.setColor(QPalette::WindowText, palette().color(QPalette::WindowText));
        word_->setPalette(plain);
        return;
    }
    const auto& live = shown_->examinations[at];
    const Mark mark = markOf(live.word);
    mark_->setMark(mark);
    word_->setText(wordText(live.word));
    QPalette coloured = word_->palette();
    coloured.setColor(QPalette::WindowText, colourOf(mark, palette().color(QPalette::Window)));
    word_->setPalette(coloured);
    QStringList lines;
    if (live.partial) {
        lines << tr("Some rows of this surface cannot be read yet; what is shown is without them.");
    }
    if (live.verdict && live.verdict->superseded) {
        lines << tr("A later examination of this zone counts instead.");
    }
    under_->setText(lines.join('\n'));
    under_->setVisible(!lines.isEmpty());
}

/// Of the chosen check what its line has no room for.
void VerdictPanel::showDetail() {
    const auto* check = checks_->current();
    detail_->setVisible(check != nullptr);
    if (!check) return;
    QStringList lines;
    if (!check->reason.empty()) lines << tr("%1: %2").arg(checkTitle(*check), qt(check->reason));
    lines << tr("Limit from %1, %2").arg(qt(check->source.locator), gradeText(check->source.grade));
    if (!check->note.empty()) lines << qt(check->note);
    detail_->setText(lines.join('\n'));
    fitRest();
}

/// As high as it needs to be, but the checks keep most of the room.
void VerdictPanel::fitRest() {
    const QWidget* text = below_->widget();
    const int needed = text->heightForWidth(below_->viewport()->width());
    const int height = std::clamp(needed, 0, QWidget::height() * 2 / 5);
    below_->setFixedHeight(height);
}

void VerdictPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitRest();
}

void VerdictPanel::showTable(const model::ExaminationVerdict* verdict) {
    table_->setVisible(desk_ && examination_ >= 0);
    attested_->setVisible(verdict != nullptr);
    if (!desk_ || examination_ < 0) return;
    const auto& header = desk_->editor().draft(examination_).header;
    if (!verdict) {
        table_->setText(qt(header.table) + "\n" + levelsText(header.levels));
        return;
    }
    table_->setText(tr("%1, revision %2\n%3")
                        .arg(qt(verdict->tableId))
                        .arg(verdict->tableRevision)
                        .arg(levelsText(verdict->levels)));
    attested_->setText(verdict->attested
                           ? tr("✓ Table attested by a QA manager")
                           : tr("⚠ Table not attested: nobody has compared it with your copy of "
                                "the standard."));
    attested_->setToolTip(tr("SHA-256 of the table: %1").arg(qt(verdict->tableDigest)));
}

void VerdictPanel::showRest(const model::ExaminationVerdict* verdict) {
    QStringList lines;
    if (shown_ && examination_ >= 0) {
        for (const auto& problem : shown_->examinationProblems) {
            if (problem.examination == examination_) lines << "• " + reasonText(problem.error);
        }
    }
    if (verdict) {
        for (const auto& reason : verdict->reasons) lines << "• " + qt(reason);
        QStringList met;
        for (const auto& key : levelKeysInOrder(verdict->levels)) {
            const auto best = verdict->bestLevels.find(key);
            if (best == verdict->bestLevels.end()) continue;
            met << (best->second ? qt(*best->second) : tr("none for %1").arg(classText(key)));
        }
        if (!met.isEmpty()) lines << tr("Strictest levels met: %1").arg(met.join(" · "));
        if (!verdict->bestLevelsUnknown.empty()) {
            QStringList unknown;
            for (const auto& level : verdict->bestLevelsUnknown) unknown << qt(level);
            lines << tr("Limits not known for: %1").arg(unknown.join(", "));
        }
        for (const auto& note : verdict->notes) lines << tr("Note: %1").arg(qt(note));
    }
    rest_->setText(lines.join('\n'));
    rest_->setVisible(!lines.isEmpty());
    fitRest();
}

}  // namespace app
