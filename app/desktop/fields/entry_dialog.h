// SPDX-License-Identifier: Apache-2.0
// Asks for one entry of a register: its fields, and the file that it names where it names one.
#pragma once

#include <functional>
#include <set>
#include <vector>

#include "fields/entry_texts.h"
#include "fields/field_form.h"
#include "looks/task_dialog.h"

class QPushButton;

namespace app {

class EntryDialog : public TaskDialog {
    Q_OBJECT

public:
    /// `hidden`: keys that nobody fills in here; their texts are kept as they are in `texts`. A
    /// field for a file's digest becomes a key that chooses the file.
    EntryDialog(const QString& title, const QString& intro, const QString& act,
                const std::vector<model::FieldInfo>& fields, const EntryTexts& texts,
                const std::set<std::string>& hidden = {}, QWidget* parent = nullptr);

    /// Stores the texts, and the file where `file` is not empty.
    using Store =
        std::function<void(const EntryTexts& texts, const QString& file, const Then& then)>;
    void setStore(Store store);
    /// What else is wrong with the texts; asked after the fields' own rules.
    void setCheck(std::function<std::vector<model::FieldError>(const EntryTexts&)> check) {
        check_ = std::move(check);
    }
    /// Keys that name what the entry belongs to: shown, not changed.
    void fix(const std::set<std::string>& keys);

    [[nodiscard]] FieldForm& fields() { return *fields_; }
    [[nodiscard]] EntryTexts texts() const;
    /// The file that goes with the entry; empty: none was chosen.
    [[nodiscard]] const QString& file() const { return file_; }
    void setFile(const QString& path);
    /// Kinds of file that can be chosen: "Pictures (*.png *.jpg)".
    void setFileFilter(const QString& filter) { filter_ = filter; }

signals:
    void fileChosen(const QString& path);

private:
    bool showErrors();

    std::vector<model::FieldInfo> infos_;
    EntryTexts kept_;
    FieldForm* fields_;
    QPushButton* choose_ = nullptr;
    QString file_;
    QString filter_;
    std::function<std::vector<model::FieldError>(const EntryTexts&)> check_;
};

}  // namespace app
