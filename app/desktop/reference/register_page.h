// SPDX-License-Identifier: Apache-2.0
// One register of the reference workplace: a list with a field to find in it, and beside it the
// entry that is chosen as a form. Nothing typed is lost by choosing another entry.
#pragma once

#include <QStringList>
#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "editing/session.h"
#include "reference/register.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;
class QTabBar;
class QTableView;

namespace app {

class EntryFilter;
class EntryModel;
class FieldForm;
class Heading;
class ImportDialog;
class NoticeBar;
class RowsEditor;
class TaskDialog;
class VersionsDialog;

class RegisterPage : public QWidget {
    Q_OBJECT

public:
    /// `archive` and `session` outlive the page.
    RegisterPage(Register of, ArchiveThread& archive, Session& session, QWidget* parent = nullptr);
    ~RegisterPage() override;

    /// The name typed at the start, under which things are kept while the archive has no people.
    void setPerson(const QString& name);
    /// Another archive: what is typed is dropped.
    void clear();
    /// Asks for all entries again; what is typed stays.
    void reload();
    /// Shows the entry of this key, once the list has come.
    void choose(const std::string& key);

    [[nodiscard]] const Register& of() const { return of_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }
    [[nodiscard]] QLineEdit& find() { return *find_; }
    [[nodiscard]] QTableView& list() { return *list_; }
    [[nodiscard]] FieldForm& form() { return *form_; }
    [[nodiscard]] QTabBar& tabs() { return *tabs_; }
    /// Null: it has no such table.
    [[nodiscard]] RowsEditor* rows(const std::string& key);
    [[nodiscard]] QPushButton& newButton() { return *new_; }
    [[nodiscard]] QPushButton& saveButton() { return *save_; }
    [[nodiscard]] QPushButton& dropButton() { return *drop_; }
    [[nodiscard]] QPushButton& importButton() { return *import_; }
    [[nodiscard]] QPushButton& versionsButton() { return *versions_; }
    /// "Saved as version 2", "Not saved yet", why nothing can be changed.
    [[nodiscard]] QString stateText() const;
    /// Something is typed that is not kept yet.
    [[nodiscard]] bool isChanged() const { return changed_; }
    /// Does `go` now, or once somebody has said what becomes of what is typed.
    void leave(const std::function<void()>& go);

public slots:
    void makeNew();
    /// A new entry with the texts of the one in view, without what names it.
    void makeLike();
    void save();
    /// What is typed is dropped; what is stored is shown again.
    void drop();
    void showVersions();
    /// Takes a file over; only where somebody may.
    void importFile();

signals:
    void listed();  ///< the list has come
    void shown();   ///< an entry, or a new one, is in the form
    void saved(const QString& key);
    void taskShown(app::TaskDialog* dialog);
    void versionsShown(app::VersionsDialog* dialog);
    void importShown(app::ImportDialog* dialog);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Listed;
    void makeLayout();
    QWidget* makeListSide();
    QWidget* makeFormSide();
    QWidget* makeForm();
    void connectParts();
    void fitColumns();
    void onChosen();
    void load(const std::string& key);
    void show(Entry entry);
    void showNothing();
    void chooseNoLine();
    void setCurrentLine(const std::string& key);
    [[nodiscard]] std::string currentKey() const;
    [[nodiscard]] Entry typed() const;
    void onTyped();
    void showWrong(const std::vector<model::FieldError>& errors);
    [[nodiscard]] bool showPlace(const model::Error& error);
    void askWhatIsTouched(const Entry& entry, const Keeper& keeper);
    void keep(const Entry& entry, const Keeper& keeper,
              std::function<void(model::Result<void>)> then = {});
    void onKept(const model::Result<std::string>& kept);
    void onConflict(const model::Error& error);
    void refresh();
    void refreshFile();
    void chooseFile();
    /// Why the person here changes nothing; empty: they may.
    [[nodiscard]] QString whyNot() const;
    [[nodiscard]] std::optional<Keeper> keeper() const;

    const Register of_;
    ArchiveThread& archive_;
    Session& session_;
    QString person_;
    std::optional<Entry> stored_;  ///< what the form was filled with; none: nothing is in view
    bool changed_ = false;
    bool saving_ = false;
    bool filling_ = false;
    bool quiet_ = false;  ///< the line changes without anybody choosing it
    std::string wanted_;  ///< to be shown once the list has come
    std::string file_;    ///< chosen to be kept with the entry
    quint64 ticket_ = 0;  ///< of the last list asked for
    QString savedAs_;
    std::function<void()> after_;  ///< once saved

    EntryModel* model_;
    EntryFilter* filter_;
    NoticeBar* notice_ = nullptr;
    QLineEdit* find_ = nullptr;
    QTableView* list_ = nullptr;
    QLabel* count_ = nullptr;
    QPushButton* new_ = nullptr;
    QPushButton* like_ = nullptr;
    QPushButton* import_ = nullptr;
    QPushButton* versions_ = nullptr;
    Heading* heading_ = nullptr;
    QTabBar* tabs_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    QWidget* side_ = nullptr;
    FieldForm* form_ = nullptr;
    QLabel* help_ = nullptr;
    QPushButton* fileButton_ = nullptr;
    QLabel* fileText_ = nullptr;
    std::vector<RowsEditor*> rows_;
    QLabel* state_ = nullptr;
    QPushButton* save_ = nullptr;
    QPushButton* drop_ = nullptr;
};

}  // namespace app
