// SPDX-License-Identifier: Apache-2.0
#include "bench/check_list.h"

#include <algorithm>

#include "bench/check_delegate.h"
#include "limits/words.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

/// What an inspector looks at first comes first.
bool before(const model::Check& a, const model::Check& b) {
    const auto rank = [](const model::Check& check) {
        if (!check.passes) return 1;
        return *check.passes ? 2 : 0;
    };
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return shareUsed(a).value_or(-1) > shareUsed(b).value_or(-1);
}

}  // namespace

QString checkTitle(const model::Check& check) {
    const QString rule = ruleText(check.rule);
    return check.classText.empty() ? rule : rule + " · " + classText(check.classText);
}

QString membersText(const model::Check& check) {
    constexpr qsizetype kMost = 40;
    if (check.members.empty()) return {};
    QStringList members;
    for (const auto& member : check.members) members << qt(member);
    if (members.size() > kMost) members = members.mid(0, kMost) << QStringLiteral("…");
    return CheckModel::tr("counted: %1").arg(members.join(", "));
}

void CheckModel::setChecks(std::vector<model::Check> checks) {
    beginResetModel();
    checks_ = std::move(checks);
    std::stable_sort(checks_.begin(), checks_.end(), before);
    endResetModel();
}

const model::Check* CheckModel::check(const QModelIndex& index) const {
    if (!index.isValid() || index.row() >= rowCount()) return nullptr;
    return &checks_[static_cast<std::size_t>(index.row())];
}

int CheckModel::indexLike(const model::Check& other) const {
    const auto found = std::find_if(checks_.begin(), checks_.end(), [&](const auto& check) {
        return check.rule == other.rule && check.key == other.key &&
               check.classText == other.classText;
    });
    return found == checks_.end() ? 0 : static_cast<int>(found - checks_.begin());
}

int CheckModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(checks_.size());
}

QVariant CheckModel::data(const QModelIndex& index, int role) const {
    const auto* shown = check(index);
    if (!shown) return {};
    if (role == Qt::DisplayRole) return checkTitle(*shown);
    const auto share = shareUsed(*shown);
    const QString used = share ? tr("%1 of the limit used").arg(shareText(*shown))
                               : tr("share of the limit not known");
    const QString word = !shown->passes   ? tr("could not be made")
                         : *shown->passes ? tr("passes")
                                          : tr("fails");
    if (role == Qt::AccessibleTextRole) {
        return QStringList{
            checkTitle(*shown),
            word,
            measuredText(*shown),
            limitText(*shown),
            used,
            tr("grade %1").arg(QString::fromUtf8(model::word(shown->source.grade).data()))}
            .join(", ");
    }
    if (role == Qt::ToolTipRole) {
        QStringList lines{checkTitle(*shown) + ": " + word};
        lines << tr("measured %1, limit %2").arg(measuredText(*shown), limitText(*shown)) << used;
        if (!shown->reason.empty()) lines << qt(shown->reason);
        lines << tr("limit from %1, grade %2: %3")
                     .arg(qt(shown->source.locator),
                          QString::fromUtf8(model::word(shown->source.grade).data()),
                          gradeText(shown->source.grade));
        if (!shown->note.empty()) lines << qt(shown->note);
        if (!shown->members.empty()) lines << membersText(*shown);
        return lines.join('\n');
    }
    return {};
}

CheckList::CheckList(QWidget* parent) : QListView(parent) {
    setModel(&model_);
    setItemDelegate(new CheckDelegate(this));
    setAccessibleName(tr("Checks"));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(ScrollPerPixel);
    setResizeMode(Adjust);
    setFrameShape(NoFrame);
    setUniformItemSizes(true);
}

const model::Check* CheckList::current() const {
    return model_.check(currentIndex());
}

void CheckList::setChecks(std::vector<model::Check> checks) {
    std::optional<model::Check> kept;
    if (chosen_ && current()) kept = *current();
    filling_ = true;
    model_.setChecks(std::move(checks));
    if (model_.rowCount() == 0) chosen_ = false;
    setCurrentIndex(model_.index(kept ? model_.indexLike(*kept) : 0));
    filling_ = false;
    emit checkSelected();
}

void CheckList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (!filling_) emit checkSelected();
}

void CheckList::mousePressEvent(QMouseEvent* event) {
    chosen_ = true;
    QListView::mousePressEvent(event);
}

void CheckList::keyPressEvent(QKeyEvent* event) {
    chosen_ = true;
    QListView::keyPressEvent(event);
}

}  // namespace app
