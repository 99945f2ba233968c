// SPDX-License-Identifier: Apache-2.0
#include "fields/suggestions.h"

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QCompleter>
#include <QIconEngine>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QStandardItemModel>

#include "looks/text.h"

namespace app {
namespace {

constexpr int kWordRole = Qt::UserRole + 1;
constexpr auto kArrowName = "suggestionsArrow";

/// A triangle in the colour of the text, whatever the appearance is now.
class Arrow : public QIconEngine {
public:
    void paint(QPainter* painter, const QRect& rect, QIcon::Mode, QIcon::State) override {
        const QPointF middle = QRectF(rect).center();
        const double side = rect.width() / 4.0;
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setPen(Qt::NoPen);
        painter->setBrush(QApplication::palette().color(QPalette::Text));
        painter->drawPolygon(QPolygonF{middle + QPointF(-side, -side / 2),
                                       middle + QPointF(side, -side / 2),
                                       middle + QPointF(0, side / 2 + 1)});
        painter->restore();
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap drawn(size);
        drawn.fill(Qt::transparent);
        QPainter painter(&drawn);
        paint(&painter, QRect(QPoint(), size), mode, state);
        return drawn;
    }
    [[nodiscard]] QIconEngine* clone() const override { return new Arrow(*this); }
};

class Suggestions : public QCompleter {
public:
    Suggestions(QLineEdit& line, const Choices& choices, bool list)
        : QCompleter(&line), line_(line), list_(list) {
        for (const auto& [word, text] : choices) {
            auto* item = new QStandardItem(text);
            item->setData(qt(word), kWordRole);
            items_.appendRow(item);
        }
        setModel(&items_);
        setCaseSensitivity(Qt::CaseInsensitive);
        setFilterMode(Qt::MatchContains);
        setMaxVisibleItems(12);
    }

    [[nodiscard]] QStringList splitPath(const QString& path) const override {
        return {list_ ? path.section(',', -1).trimmed() : path};
    }
    [[nodiscard]] QString pathFromIndex(const QModelIndex& index) const override {
        QString word = index.data(kWordRole).toString();
        if (!list_) return word;
        const qsizetype last = line_.text().lastIndexOf(',');
        return last < 0 ? word : line_.text().left(last) + ", " + word;
    }
    void showAll() {
        setCompletionPrefix(QString());
        complete();
        popup()->setCurrentIndex(completionModel()->index(0, 0));
    }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (watched == &line_ && event->type() == QEvent::KeyPress && !line_.isReadOnly()) {
            const auto* keys = static_cast<QKeyEvent*>(event);
            if (keys->key() == Qt::Key_Down && !popup()->isVisible()) {
                showAll();
                return true;
            }
        }
        return QCompleter::eventFilter(watched, event);
    }

private:
    QLineEdit& line_;
    bool list_;
    QStandardItemModel items_;
};

}  // namespace

void suggest(QLineEdit& line, const Choices& choices, bool list, std::function<void()> chosen) {
    delete line.completer();
    delete line.findChild<QAction*>(kArrowName);
    if (choices.empty()) return;
    auto* suggestions = new Suggestions(line, choices, list);
    line.setCompleter(suggestions);
    QObject::connect(
        suggestions, qOverload<const QString&>(&QCompleter::activated), &line,
        [chosen = std::move(chosen)] { chosen(); }, Qt::QueuedConnection);
    line.installEventFilter(suggestions);
    auto* arrow = line.addAction(QIcon(new Arrow), QLineEdit::TrailingPosition);
    arrow->setObjectName(kArrowName);
    arrow->setToolTip(FieldForm::tr("What can be chosen (down key)"));
    QObject::connect(arrow, &QAction::triggered, suggestions, [&line, suggestions] {
        if (line.isReadOnly()) return;
        line.setFocus();
        suggestions->showAll();
    });
}

}  // namespace app
