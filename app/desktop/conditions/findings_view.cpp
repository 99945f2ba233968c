// SPDX-License-Identifier: Apache-2.0
#include "conditions_bench/findings_view.h"

#include <QCoreApplication>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <algorithm>

#include "looks/heading.h"
#include "looks/marked_lines.h"
#include "looks/text.h"

namespace app {

namespace {

constexpr int kDetails = 3;

/// A value with its unit and sign as they are printed.
QString printed(const std::string& value) {
    QString text = qt(value);
    for (const auto& [typed, shown] :
         std::initializer_list<std::pair<const char*, const char*>>{{">=", "≥"},
                                                                    {"<=", "≤"},
                                                                    {"/m2", "/m²"},
                                                                    {"/cm2", "/cm²"},
                                                                    {"uW", "µW"},
                                                                    {" um", " µm"},
                                                                    {"deg C", "°C"},
                                                                    {"deg F", "°F"}}) {
        text.replace(QString::fromUtf8(typed), QString::fromUtf8(shown));
    }
    return text;
}

}  // namespace

Mark markOf(const model::ConditionFinding& finding) {
    if (finding.stands()) {
        return finding.reaction == model::Reaction::Block ? Mark::Fails : Mark::Open;
    }
    return finding.reaction == model::Reaction::Log ? Mark::NotBegun
           : finding.onlySaid                       ? Mark::Open
                                                    : Mark::Passes;
}

QString findingWord(const model::ConditionFinding& finding) {
    if (finding.onlySaid) return FindingsView::tr("is printed");
    if (finding.reaction == model::Reaction::Warn && !finding.stands()) {
        return FindingsView::tr("reason given");
    }
    return QCoreApplication::translate("Words", std::string(model::word(finding.reaction)).c_str());
}

MarkedEntry entryOf(const model::ConditionFinding& finding) {
    QString title = qt(finding.reason.place);
    QStringList details = findingDetails(finding);
    if (title.isEmpty()) {
        title = sentence(finding.reason);
    } else {
        title[0] = title[0].toUpper();
        details.prepend(reasonText(finding.reason));
    }
    return {markOf(finding),          title, findingWord(finding),
            details.mid(0, kDetails), false, qt(finding.id)};
}

QStringList findingDetails(const model::ConditionFinding& finding) {
    QStringList lines;
    if (!finding.measured.empty() || !finding.limit.empty()) {
        const QString measured =
            finding.measured.empty() ? FindingsView::tr("not measured") : printed(finding.measured);
        lines << (finding.limit.empty() ? FindingsView::tr("Measured: %1").arg(measured)
                                        : FindingsView::tr("Measured: %1 · limit: %2")
                                              .arg(measured, printed(finding.limit)));
    }
    if (!finding.source.locator.empty()) {
        lines << FindingsView::tr("%1 · %2").arg(qt(finding.source.locator),
                                                 gradeText(finding.source.grade));
    }
    if (!finding.acknowledged.empty()) {
        lines << FindingsView::tr("Reason: %1 (%2)")
                     .arg(qt(finding.acknowledged), qt(finding.acknowledgedBy));
    }
    return lines;
}

FindingsView::FindingsView(QWidget* parent)
    : QWidget(parent),
      summary_(new QLabel(this)),
      list_(new MarkedList(kDetails, this)),
      text_(new QLabel(this)),
      reasonLabel_(new QLabel(tr("Reason to &go on, printed"), this)),
      reason_(new QLineEdit(this)) {
    auto* heading = new Heading(1.05, this, tr("Validity of the test"));
    summary_->setObjectName("findingsSummary");
    text_->setObjectName("findingText");
    list_->setObjectName("findingsList");
    list_->setAccessibleName(tr("What is to be said of the conditions"));
    reason_->setObjectName("findingReason");
    reason_->setAccessibleName(tr("Reason to go on, printed"));
    reasonLabel_->setBuddy(reason_);
    for (QLabel* label : {summary_, text_}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(5);
    layout->addWidget(heading);
    layout->addWidget(summary_);
    layout->addWidget(list_, 1);
    layout->addWidget(text_);
    layout->addWidget(reasonLabel_);
    layout->addWidget(reason_);
    connect(list_, &MarkedList::keyChosen, this, &FindingsView::showCurrent);
    connect(list_, &QListView::activated, this, [this] {
        if (reason_->isVisible()) reason_->setFocus(Qt::TabFocusReason);
    });
    connect(reason_, &QLineEdit::editingFinished, this, &FindingsView::take);
    show({}, true);
}

void FindingsView::show(std::vector<model::ConditionFinding> findings, bool readOnly) {
    findings_ = std::move(findings);
    readOnly_ = readOnly;
    std::vector<MarkedEntry> entries;
    for (const auto& finding : findings_) {
        entries.push_back(entryOf(finding));
    }
    list_->setEntries(entries);
    if (!list_->currentIndex().isValid() && list_->count() > 0) {
        list_->setCurrentIndex(list_->model()->index(0, 0));
    }
    const auto blocks = std::ranges::count_if(findings_, [](const auto& finding) {
        return finding.stands() && finding.reaction == model::Reaction::Block;
    });
    const auto reasons =
        std::ranges::count_if(findings_, &model::ConditionFinding::stands) - blocks;
    if (blocks + reasons == 0) {
        summary_->setText(findings_.empty() ? tr("Nothing stands against it.")
                                            : tr("Nothing stands in the way of signing."));
    } else {
        QStringList parts;
        if (blocks > 0) parts << tr("not to be signed: %1").arg(blocks);
        if (reasons > 0) parts << tr("reasons needed: %1").arg(reasons);
        summary_->setText(tr("Before signing: %1").arg(parts.join(", ")));
    }
    showCurrent();
}

void FindingsView::choose(const std::string& id) {
    list_->choose(qt(id));
}

const model::ConditionFinding* FindingsView::current() const {
    const std::string id = list_->currentKey().toString().toStdString();
    const auto found = std::ranges::find(findings_, id, &model::ConditionFinding::id);
    return found == findings_.end() ? nullptr : &*found;
}

void FindingsView::showCurrent() {
    const auto* finding = current();
    const bool takesReason =
        finding && finding->reaction == model::Reaction::Warn && !finding->onlySaid;
    text_->setVisible(finding != nullptr);
    reasonLabel_->setVisible(takesReason);
    reason_->setVisible(takesReason);
    reason_->setReadOnly(readOnly_);
    if (!finding) return;
    text_->setText((QStringList(sentence(finding->reason)) + findingDetails(*finding)).join('\n'));
    const QString given = qt(finding->acknowledged);
    if (!reason_->hasFocus() || reason_->property("finding") != qt(finding->id)) {
        reason_->setText(given);
    }
    reason_->setProperty("finding", qt(finding->id));
}

void FindingsView::take() {
    const std::string id = reason_->property("finding").toString().toStdString();
    const auto found = std::ranges::find(findings_, id, &model::ConditionFinding::id);
    const std::string reason = reason_->text().trimmed().toStdString();
    if (readOnly_ || found == findings_.end() || found->acknowledged == reason) return;
    emit acknowledged(id, reason);
}

void FindingsView::finishEditing() {
    if (reason_->hasFocus()) take();
}

}  // namespace app
