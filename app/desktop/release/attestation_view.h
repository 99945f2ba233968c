// SPDX-License-Identifier: Apache-2.0
// The limit tables, each with every cell, its place in the standard and how sure it is. A QA
// manager attests one once every line of it has been in view.
#pragma once

#include <QWidget>
#include <map>
#include <memory>
#include <set>
#include <vector>

#include "archive/attestation.h"
#include "editing/session.h"
#include "limits/cell_lines.h"
#include "limits/table_set.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace app {

class MarkedList;
class TaskDialog;

class AttestationView : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the view.
    AttestationView(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);
    void reload();

    [[nodiscard]] MarkedList& list() { return *list_; }
    [[nodiscard]] QTableWidget& cells() { return *cells_; }
    [[nodiscard]] QPushButton& attestButton() { return *attest_; }
    /// What keeps the shown table from being attested here and now, or that it is attested.
    [[nodiscard]] QString stateText() const;

public slots:
    void attest();

signals:
    void attested();
    void shown();
    void taskShown(app::TaskDialog* dialog);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Known;
    void makeLayout();
    void fillList();
    void showTable();
    void fitColumns();
    void noteSeen();
    void refreshState();
    [[nodiscard]] const model::LimitTable* current() const;
    [[nodiscard]] const model::Attestation* attestationOf(const std::string& digest) const;

    ArchiveThread& archive_;
    Session& session_;
    std::shared_ptr<const model::TableSet> tables_;
    std::vector<model::Attestation> attestations_;
    std::vector<model::CellLine> lines_;
    std::map<std::string, std::set<int>> seen_;  ///< by table digest: lines that were in view
    MarkedList* list_;
    QLabel* title_;
    QLabel* about_;
    QTableWidget* cells_;
    QLabel* state_;
    QPushButton* attest_;
};

}  // namespace app
