// SPDX-License-Identifier: Apache-2.0
// What is to be said of the conditions of a test: every finding with mark and word, what was
// measured, the limit and where it comes from, and the place for the reason that some need.
#pragma once

#include <QWidget>
#include <vector>

#include "conditions/validity.h"
#include "looks/mark.h"
#include "looks/marked_lines.h"

class QLabel;
class QLineEdit;

namespace app {

Mark markOf(const model::ConditionFinding& finding);
QString findingWord(const model::ConditionFinding& finding);  ///< "needs a reason"
/// What the list shows of it.
MarkedEntry entryOf(const model::ConditionFinding& finding);
/// Measured and limit, the source with its grade, and the reason given: a line each.
QStringList findingDetails(const model::ConditionFinding& finding);

class FindingsView : public QWidget {
    Q_OBJECT

public:
    explicit FindingsView(QWidget* parent = nullptr);
    /// Keeps the chosen finding where it is still there.
    void show(std::vector<model::ConditionFinding> findings, bool readOnly);
    [[nodiscard]] const std::vector<model::ConditionFinding>& findings() const { return findings_; }
    void choose(const std::string& id);
    void finishEditing();
    [[nodiscard]] MarkedList& list() { return *list_; }
    [[nodiscard]] QLineEdit& reason() { return *reason_; }

signals:
    /// Somebody typed why the test goes on although this finding calls for attention.
    void acknowledged(const std::string& finding, const std::string& reason);

private:
    [[nodiscard]] const model::ConditionFinding* current() const;
    void showCurrent();
    void take();

    std::vector<model::ConditionFinding> findings_;
    bool readOnly_ = false;
    QLabel* summary_;
    MarkedList* list_;
    QLabel* text_;
    QLabel* reasonLabel_;
    QLineEdit* reason_;
};

}  // namespace app
