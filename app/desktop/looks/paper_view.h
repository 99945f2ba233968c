// SPDX-License-Identifier: Apache-2.0
// A PDF to read: all its pages one under the other, as wide as there is room or larger.
#pragma once

#include <QBuffer>
#include <QPdfDocument>
#include <QWidget>
#include <memory>
#include <string>

class QLabel;
class QPdfView;
class QPushButton;
class QStackedWidget;
class QToolButton;

namespace app {

class PaperView : public QWidget {
    Q_OBJECT

public:
    explicit PaperView(QWidget* parent = nullptr);
    ~PaperView() override;

    /// Shows a PDF's bytes. What cannot be shown is said in its place.
    void show(const std::string& pdf);
    /// Nothing to show, and why: "Choose a certificate at the left."
    void showNothing(const QString& why);

    [[nodiscard]] int pages() const;
    /// What stands in the place of the pages; empty while pages are shown.
    [[nodiscard]] QString nothingText() const;
    [[nodiscard]] QPdfView& view() { return *view_; }
    /// The text of all pages.
    [[nodiscard]] QString text();

private:
    void zoomBy(double factor);
    void goBy(int pages);
    void refresh();

    QBuffer bytes_;
    QPdfDocument document_;
    QStackedWidget* stack_;
    QLabel* nothing_;
    QPdfView* view_;
    QLabel* place_;
    QList<QWidget*> tools_;
};

}  // namespace app
