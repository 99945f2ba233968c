// SPDX-License-Identifier: Apache-2.0
// The reference workplace: at the left what is kept, at the right the chosen register; and what
// runs out in the next weeks.
#pragma once

#include <QWidget>
#include <functional>
#include <map>

#include "editing/session.h"

class QListWidget;
class QStackedWidget;

namespace app {

class AttestationView;
class ConditionsView;
class NoticeBar;
class RegisterPage;
class RunsOutView;
class TaskDialog;
class VersionsDialog;

class ReferencePage : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the page.
    ReferencePage(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);
    ~ReferencePage() override;

    void setArchive(const ArchiveThread::Opened& opened);
    /// Asks again what others may have changed; what is typed stays.
    void reload();
    /// The name typed at the start; see RegisterPage.
    void setPerson(const QString& name);

    /// Shows what is listed under this name: a register's ("eye test", "order", "part",
    /// "casting"), "runs out", "limit table", "condition set".
    void goTo(const std::string& name);
    [[nodiscard]] std::string current() const;
    /// Of a register's name; null before it was first shown, and for the others.
    [[nodiscard]] RegisterPage* page(const std::string& name) const;
    [[nodiscard]] RunsOutView& runsOut() { return *runsOut_; }
    [[nodiscard]] AttestationView& limitTables() { return *limitTables_; }
    [[nodiscard]] ConditionsView& conditions() { return *conditions_; }
    [[nodiscard]] QListWidget& places() { return *places_; }

    /// Does `go` now, or once somebody has said what becomes of what is typed.
    void leave(const std::function<void()>& go);
    /// Something is typed that is not kept yet.
    [[nodiscard]] bool isChanged() const;

signals:
    void tablesChanged();
    /// Orders, parts or castings were changed: the bench lists them.
    void recordsChanged();
    void taskShown(app::TaskDialog* dialog);
    void versionsShown(app::VersionsDialog* dialog);

protected:
    void changeEvent(QEvent* event) override;

private:
    void makeLayout();
    void fitPlaces();
    void addGroup(const QString& title);
    void addPlace(const std::string& name, const QString& title);
    void onPlace();
    RegisterPage* pageFor(const std::string& name);
    void refreshRunsOut();

    ArchiveThread& archive_;
    Session& session_;
    QString person_;
    bool open_ = false;
    std::map<std::string, RegisterPage*> registers_;
    QListWidget* places_;
    QStackedWidget* pages_;
    RunsOutView* runsOut_;
    AttestationView* limitTables_;
    ConditionsView* conditions_;
};

}  // namespace app
