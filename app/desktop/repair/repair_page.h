// SPDX-License-Identifier: Apache-2.0
// The nonconformances of the casting on the bench: where each stands, what is open, everything that
// answers it, and every link in both directions. What is entered here is kept in the registers; who
// may enter what is the archive's to say.
#pragma once

#include <QWidget>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "archive/registers.h"
#include "editing/casting_desk.h"
#include "editing/session.h"
#include "fields/entry_dialog.h"
#include "repair/repair_case.h"
#include "repair_bench/case_links.h"
#include "repair_bench/sheet_writing.h"

class QLabel;
class QListWidget;
class QPushButton;
class QTreeWidget;
class QTreeWidgetItem;

namespace app {

class Heading;
class MarkedList;

class RepairPage : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the page.
    RepairPage(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);

    void show(CastingDesk* desk);
    /// In whose name it is saved where nobody can sign in.
    void setPerson(const std::string& person) { person_ = person; }
    /// Of the open archive: a demonstration's sheets say so.
    void setKind(model::ArchiveKind kind) { kind_ = kind; }
    /// Asks for the nonconformance that follows from an examination.
    void openFrom(int examination, std::int64_t record);
    /// Chooses the case of this number.
    void choose(const std::string& number);

    // Asks for the next step of the chosen case.
    void decide();
    void excavate();
    void weld();
    void heatTreat();
    void concede();
    void addResult();
    void reexamine();
    /// Asks where to write a sheet, and writes it.
    void askForSheet(WorkshopSheet sheet);
    void writeSheetTo(WorkshopSheet sheet, const QString& path);
    /// Asks for the next version of the chosen entry.
    void change();

    [[nodiscard]] MarkedList& cases() { return *cases_; }
    [[nodiscard]] QTreeWidget& steps() { return *steps_; }
    [[nodiscard]] QListWidget& links() { return *links_; }
    [[nodiscard]] QString openText() const;
    [[nodiscard]] QString stateText() const;
    [[nodiscard]] QPushButton* button(const QString& name) const;

signals:
    void dialogShown(app::EntryDialog* dialog);
    /// The archive holds something new.
    void kept();
    void examinationWanted(int examination);
    /// Begin the re-examination after what this examination found; -1: none is known.
    void reexaminationWanted(int found, const std::string& nonconformance, qint64 record);
    void message(const QString& text);
    void sheetWritten(const QString& path);

protected:
    void showEvent(QShowEvent* event) override;

private:
    struct Act {
        QPushButton* button;
        std::string registerName;  ///< whose entry it makes; empty: an examination
    };
    void makeButtons();
    void refresh();
    void showCase();
    void showSteps(const model::RepairCase& of);
    void showLinks();
    void refreshButtons();
    void goTo(const CaseItem& item);
    QTreeWidgetItem* addStep(QTreeWidgetItem* parent, const QString& step, const QString& what,
                             const QString& when, const CaseItem& item);
    [[nodiscard]] const model::RepairCase* current() const;
    [[nodiscard]] CaseItem currentItem() const;
    [[nodiscard]] QString whyNot(const std::string& registerName) const;
    [[nodiscard]] const model::CastingFile& file() const { return *file_; }
    [[nodiscard]] std::string personName() const;
    void suggest(FieldForm& form, const std::string& registerName) const;
    template <class T>
    void ask(const T& entry, std::int64_t version, const QString& title, const QString& intro,
             const std::set<std::string>& fixed);
    template <class T>
    void askChange(const std::string& key);

    ArchiveThread& archive_;
    Session& session_;
    CastingDesk* desk_ = nullptr;
    std::string person_;
    model::ArchiveKind kind_ = model::ArchiveKind::Working;
    /// What is shown, and what the cases point into: the bench's own changes under them.
    std::unique_ptr<const model::CastingFile> file_;
    std::vector<model::RepairCase> all_;

    Heading* heading_;
    QLabel* loose_;
    MarkedList* cases_;
    Heading* title_;
    QLabel* state_;
    QLabel* open_;
    QTreeWidget* steps_;
    QLabel* linksTitle_;
    QListWidget* links_;
    std::vector<Act> acts_;
    QPushButton* change_ = nullptr;
    QPushButton* markingOut_ = nullptr;
    QPushButton* weldMap_ = nullptr;
};

}  // namespace app
