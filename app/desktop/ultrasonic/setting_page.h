// SPDX-License-Identifier: Apache-2.0
// The settings of an ultrasonic examination: probe, material, part, reference, and what was
// measured on the casting. One is shown at a time.
#pragma once

#include <QWidget>
#include <vector>

#include "editing/casting_desk.h"
#include "ultrasonic_bench/setting_fields.h"

class QBoxLayout;
class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;

namespace app {

class SettingPage : public QWidget {
    Q_OBJECT

public:
    explicit SettingPage(QWidget* parent = nullptr);

    /// Shows an examination's settings; null: none.
    void show(CastingDesk* desk, int examination);
    void finishEditing();
    void focusFirst();
    /// The field of a contract name, and its form; none is there: {null, -1}.
    [[nodiscard]] std::pair<FieldForm*, int> find(const std::string& field) const;

    [[nodiscard]] QComboBox& chooser() { return *chooser_; }
    [[nodiscard]] QPushButton& addButton() { return *add_; }
    /// What was measured on the casting, in words.
    [[nodiscard]] QString measuredText() const;
    [[nodiscard]] QString warningText() const;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Part {
        FieldForm* form;
        std::vector<SettingField> fields;  ///< as in the form
    };
    void addGroup(Part& part, const SettingGroup& group);
    void connectForm(Part& part);
    [[nodiscard]] model::TypedSetting typedSetting() const;
    [[nodiscard]] const std::vector<model::TypedSetting>& settings() const;
    void commit(const QString& what);
    void add(bool copied);
    void remove();
    void useMeasured(std::string model::TypedSetting::*member, double value, int decimals);
    void refresh();
    void refreshComputed();
    void arrange();

    CastingDesk* desk_ = nullptr;
    int examination_ = -1;
    int shown_ = -1;  ///< index of the setting
    QComboBox* chooser_;
    QPushButton* add_;
    QPushButton* copy_;
    QPushButton* remove_;
    QLabel* empty_;
    QScrollArea* scroll_;
    QWidget* body_;
    QBoxLayout* columns_;
    Part left_;
    Part right_;
    QLabel* beam_;
    QLabel* measured_;
    QLabel* warning_;
    QPushButton* useVelocity_;
    QPushButton* useAttenuation_;
    QLabel* help_;
};

}  // namespace app
