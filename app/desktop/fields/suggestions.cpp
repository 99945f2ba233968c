// SPDX-License-Identifier: Apache-2.0
#include "fields/suggestions.h"

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QCompleter>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStandardItemModel>
#include <QStyle>

#include "looks/text.h"

namespace app {
namespace {

constexpr int kWordRole = Qt::UserRole + 1;
constexpr auto kArrowName = "suggestionsArrow";

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
        const QString word = index.data(kWordRole).toString();
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
    auto* arrow = line.addAction(line.style()->standardIcon(QStyle::SP_ArrowDown),
                                 QLineEdit::TrailingPosition);
    arrow->setObjectName(kArrowName);
    arrow->setToolTip(FieldForm::tr("What can be chosen (down key)"));
    QObject::connect(arrow, &QAction::triggered, suggestions, [&line, suggestions] {
        if (line.isReadOnly()) return;
        line.setFocus();
        suggestions->showAll();
    });
}

}  // namespace app
