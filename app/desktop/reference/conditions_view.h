// SPDX-License-Identifier: Apache-2.0
// What standards ask of the conditions of a test, rule by rule with its source and how sure it is.
// A QA manager attests a set once every rule of it has been in view; from then on rules that were
// only partly read, or are from memory, can keep a record from being signed.
#pragma once

#include <QWidget>
#include <map>
#include <set>

#include "archive/registers.h"
#include "conditions/condition_set.h"
#include "editing/session.h"
#include "registers/condition_attestation.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace app {

class MarkedList;
class TaskDialog;

class ConditionsView : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the view.
    ConditionsView(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);
    void reload();

    [[nodiscard]] MarkedList& list() { return *list_; }
    [[nodiscard]] QTableWidget& rules() { return *rules_; }
    [[nodiscard]] QPushButton& attestButton() { return *attest_; }
    [[nodiscard]] QPushButton& withdrawButton() { return *withdraw_; }
    /// Whether the set is attested, or what keeps it from being attested here and now.
    [[nodiscard]] QString stateText() const;

public slots:
    void attest();
    void withdraw();

signals:
    void shown();
    void taskShown(app::TaskDialog* dialog);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    using Stored = model::Stored<model::ConditionSetAttestation>;
    void makeLayout();
    void fillList();
    void showSet();
    void fit();
    void fitList();
    void noteSeen();
    void refreshState();
    [[nodiscard]] const model::ConditionSet* current() const;
    /// Of the set as it is; null: nobody ever attested it.
    [[nodiscard]] const Stored* storedOf(const model::ConditionSet& set) const;
    [[nodiscard]] bool isAttested(const model::ConditionSet& set) const;
    void sign(const model::ConditionSetAttestation& attestation, std::int64_t version,
              TaskDialog* dialog, const std::function<void(model::Result<void>)>& then);

    ArchiveThread& archive_;
    Session& session_;
    std::vector<Stored> attestations_;
    QString trouble_;  ///< why they are not known; empty: they are
    bool known_ = false;
    std::map<std::string, std::set<int>> seen_;  ///< by digest: rules that were in view
    MarkedList* list_;
    QLabel* title_;
    QLabel* about_;
    QTableWidget* rules_;
    QLabel* state_;
    QPushButton* attest_;
    QPushButton* withdraw_;
};

}  // namespace app
