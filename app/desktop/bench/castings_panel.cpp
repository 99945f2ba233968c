// SPDX-License-Identifier: Apache-2.0
#include "bench/castings_panel.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QListView>
#include <QSortFilterProxyModel>
#include <QStandardItemModel>
#include <QVBoxLayout>

#include "looks/text.h"

namespace app {
namespace {

constexpr int kSerialRole = Qt::UserRole;
constexpr int kSearchRole = Qt::UserRole + 1;

}  // namespace

CastingsPanel::CastingsPanel(QWidget* parent)
    : QWidget(parent),
      search_(new QLineEdit(this)),
      list_(new QListView(this)),
      model_(new QStandardItemModel(this)),
      filter_(new QSortFilterProxyModel(this)) {
    search_->setPlaceholderText(tr("Find serial, heat or part"));
    search_->setClearButtonEnabled(true);
    search_->setAccessibleName(tr("Find a casting by serial, heat or part"));
    search_->installEventFilter(this);
    list_->setAccessibleName(tr("Castings"));
    list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    list_->setUniformItemSizes(true);
    list_->setTextElideMode(Qt::ElideRight);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setFrameShape(QFrame::NoFrame);
    filter_->setSourceModel(model_);
    filter_->setFilterRole(kSearchRole);
    filter_->setFilterCaseSensitivity(Qt::CaseInsensitive);
    list_->setModel(filter_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 10, 6, 4);
    layout->setSpacing(6);
    layout->addWidget(search_);
    layout->addWidget(list_);
    connect(search_, &QLineEdit::textChanged, this, [this](const QString& text) {
        filter_->setFilterFixedString(text.trimmed());
        if (!list_->currentIndex().isValid()) list_->setCurrentIndex(filter_->index(0, 0));
    });
    connect(list_, &QListView::activated, this, &CastingsPanel::choose);
    connect(list_, &QListView::clicked, this, &CastingsPanel::choose);
    connect(search_, &QLineEdit::returnPressed, this, [this] {
        const QModelIndex current = list_->currentIndex();
        choose(current.isValid() ? current : filter_->index(0, 0));
    });
}

bool CastingsPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == search_ && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up) {
            const int step = key->key() == Qt::Key_Down ? 1 : -1;
            const int row =
                list_->currentIndex().isValid() ? list_->currentIndex().row() + step : 0;
            if (row >= 0 && row < filter_->rowCount()) {
                list_->setCurrentIndex(filter_->index(row, 0));
            }
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void CastingsPanel::setCastings(const std::vector<model::Casting>& castings) {
    const QString current = list_->currentIndex().data(kSerialRole).toString();
    model_->clear();
    for (const auto& casting : castings) {
        const QString serial = qt(casting.serial);
        const QString text = tr("%1   %2").arg(serial, qt(casting.part));
        auto* item = new QStandardItem(text);
        item->setData(serial, kSerialRole);
        item->setData(QStringList{serial, qt(casting.heat), qt(casting.part)}.join(' '),
                      kSearchRole);
        item->setToolTip(tr("Casting %1, part %2, heat %3, order %4")
                             .arg(serial, qt(casting.part), qt(casting.heat), qt(casting.order)));
        item->setAccessibleText(item->toolTip());
        model_->appendRow(item);
    }
    if (!current.isEmpty()) setCurrent(current);
}

void CastingsPanel::setCurrent(const QString& serial) {
    for (int row = 0; row < filter_->rowCount(); ++row) {
        const QModelIndex index = filter_->index(row, 0);
        if (index.data(kSerialRole).toString() == serial) list_->setCurrentIndex(index);
    }
}

void CastingsPanel::choose(const QModelIndex& index) {
    const QString serial = index.data(kSerialRole).toString();
    if (!serial.isEmpty()) emit castingChosen(serial);
}

}  // namespace app
