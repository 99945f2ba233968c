// SPDX-License-Identifier: Apache-2.0
#include "looks/paper_view.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPdfPageNavigator>
#include <QPdfSelection>
#include <QPdfView>
#include <QShortcut>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

namespace app {
namespace {

constexpr double kStep = 1.25;
constexpr double kSmallest = 0.25;
constexpr double kLargest = 6.0;

}  // namespace

PaperView::PaperView(QWidget* parent)
    : QWidget(parent),
      stack_(new QStackedWidget(this)),
      nothing_(new QLabel(this)),
      view_(new QPdfView(this)),
      place_(new QLabel(this)) {
    nothing_->setAlignment(Qt::AlignCenter);
    nothing_->setWordWrap(true);
    nothing_->setMargin(30);
    nothing_->setTextFormat(Qt::PlainText);
    nothing_->setForegroundRole(QPalette::PlaceholderText);
    view_->setDocument(&document_);
    view_->setPageMode(QPdfView::PageMode::MultiPage);
    view_->setZoomMode(QPdfView::ZoomMode::FitToWidth);
    view_->setFocusPolicy(Qt::StrongFocus);
    view_->setAccessibleName(tr("The document's pages"));
    place_->setAccessibleName(tr("Page"));

    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(6, 4, 6, 4);
    bar->setSpacing(4);
    const auto add = [&](const QString& text, const QString& name, const QString& tip, auto act) {
        auto* button = new QToolButton(this);
        button->setText(text);
        button->setAccessibleName(name);
        button->setToolTip(tip);
        button->setFocusPolicy(Qt::TabFocus);
        connect(button, &QToolButton::clicked, this, act);
        bar->addWidget(button);
        tools_ << button;
    };
    const auto key = [&](const QString& keys, auto act) {
        auto* shortcut = new QShortcut(QKeySequence(keys), this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, act);
    };
    const auto larger = [this] { zoomBy(kStep); };
    const auto smaller = [this] { zoomBy(1 / kStep); };
    const auto wide = [this] { view_->setZoomMode(QPdfView::ZoomMode::FitToWidth); };
    add(tr("▲"), tr("Page before"), tr("Page before"), [this] { goBy(-1); });
    bar->addWidget(place_);
    add(tr("▼"), tr("Next page"), tr("Next page"), [this] { goBy(1); });
    bar->addStretch(1);
    add(tr("−"), tr("Smaller"), tr("Smaller (−)"), smaller);
    add(tr("+"), tr("Larger"), tr("Larger (+)"), larger);
    add(tr("As wide as the room"), tr("As wide as the room"), tr("As wide as the room (0)"), wide);
    add(tr("Copy the text"), tr("Copy the text"), tr("The text of all pages goes to the clipboard"),
        [this] { QGuiApplication::clipboard()->setText(this->text()); });
    key("+", larger);
    key("=", larger);
    key("-", smaller);
    key("0", wide);

    stack_->addWidget(nothing_);
    stack_->addWidget(view_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addLayout(bar);
    layout->addWidget(stack_, 1);
    setFocusProxy(view_);
    connect(view_->pageNavigator(), &QPdfPageNavigator::currentPageChanged, this,
            [this] { refresh(); });
    showNothing({});
}

PaperView::~PaperView() {
    // The view draws from the document in other threads until it is gone.
    delete view_;
    document_.close();
}

void PaperView::show(const std::string& pdf) {
    document_.close();
    bytes_.close();
    bytes_.setData(pdf.data(), static_cast<int>(pdf.size()));
    bytes_.open(QIODevice::ReadOnly);
    document_.load(&bytes_);
    if (document_.status() != QPdfDocument::Status::Ready || document_.pageCount() == 0) {
        showNothing(tr("This document cannot be shown: it is no PDF that can be read. Verify it."));
        return;
    }
    view_->setZoomMode(QPdfView::ZoomMode::FitToWidth);
    view_->pageNavigator()->jump(0, {}, 0);
    stack_->setCurrentWidget(view_);
    refresh();
}

void PaperView::showNothing(const QString& why) {
    document_.close();
    nothing_->setText(why);
    stack_->setCurrentWidget(nothing_);
    refresh();
}

int PaperView::pages() const {
    return stack_->currentWidget() == view_ ? document_.pageCount() : 0;
}

QString PaperView::nothingText() const {
    return stack_->currentWidget() == nothing_ ? nothing_->text() : QString();
}

QString PaperView::text() {
    QStringList all;
    for (int page = 0; page < pages(); ++page) all << document_.getAllText(page).text();
    return all.join('\n');
}

void PaperView::zoomBy(double factor) {
    if (pages() == 0) return;
    double now = view_->zoomFactor();
    if (view_->zoomMode() == QPdfView::ZoomMode::FitToWidth) {
        // In this mode the view keeps its factor to itself: reckon it from the widest page.
        double widest = 1;
        for (int page = 0; page < pages(); ++page) {
            widest = std::max(widest, document_.pagePointSize(page).width());
        }
        const QMargins margins = view_->documentMargins();
        now = (view_->viewport()->width() - margins.left() - margins.right()) /
              (widest * view_->logicalDpiX() / 72.0);
    }
    view_->setZoomMode(QPdfView::ZoomMode::Custom);
    view_->setZoomFactor(std::clamp(now * factor, kSmallest, kLargest));
}

void PaperView::goBy(int by) {
    const int page = view_->pageNavigator()->currentPage() + by;
    if (page >= 0 && page < pages()) view_->pageNavigator()->jump(page, {}, 0);
}

void PaperView::refresh() {
    const int all = pages();
    place_->setText(
        all == 0 ? QString()
                 : tr("Page %1 of %2").arg(view_->pageNavigator()->currentPage() + 1).arg(all));
    for (auto* tool : tools_) tool->setEnabled(all > 0);
}

}  // namespace app
