// SPDX-License-Identifier: Apache-2.0
// Takes a CSV file into a register. The file is tried out first: every problem is listed by its
// row, and nothing is stored while there is one.
#pragma once

#include <QDialog>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "editing/archive_thread.h"
#include "importing/import_register.h"
#include "looks/mark.h"
#include "reference/register.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableWidget;

namespace app {

class MarkLabel;

class ImportDialog : public QDialog {
    Q_OBJECT

public:
    /// Names of registers and what is shown for them; the first is chosen.
    using Kinds = std::vector<std::pair<std::string, QString>>;

    /// `archive` outlives the dialog.
    ImportDialog(const Kinds& kinds, ArchiveThread& archive, Keeper keeper,
                 QWidget* parent = nullptr);

    /// Tries out this file.
    void setFile(const QString& path);
    [[nodiscard]] QTableWidget& problems() { return *problems_; }
    [[nodiscard]] QPushButton& takeButton() { return *take_; }
    [[nodiscard]] QCheckBox& changeBox() { return *change_; }
    [[nodiscard]] QComboBox& kindBox() { return *kind_; }
    [[nodiscard]] QString summary() const;

public slots:
    /// Stores what was tried out.
    void take();

signals:
    void triedOut();
    void taken();

private:
    void makeLayout(const Kinds& kinds);
    void chooseFile();
    void tryOut();
    void run(bool dryRun);
    void show(const model::Result<ImportReport>& report, bool dryRun);
    void say(std::optional<Mark> mark, const QString& text);

    ArchiveThread& archive_;
    Keeper keeper_;
    quint64 ticket_ = 0;  ///< of the last try
    QComboBox* kind_;
    QLineEdit* path_;
    QCheckBox* change_;
    MarkLabel* mark_;
    QLabel* summary_;
    QTableWidget* problems_;
    QPushButton* take_;
    QPushButton* close_;
};

}  // namespace app
