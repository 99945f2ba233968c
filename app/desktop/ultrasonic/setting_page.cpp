// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/setting_page.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalBlocker>
#include <cmath>

#include "looks/text.h"
#include "ultrasonic_bench/measured.h"

namespace app {
namespace {

QString lengthUnit(model::LengthUnit unit) {
    return QString::fromUtf8(model::symbol(unit).data());
}

}  // namespace

const std::vector<model::TypedSetting>& SettingPage::settings() const {
    static const std::vector<model::TypedSetting> kNone;
    return desk_ && examination_ >= 0 ? desk_->editor().draft(examination_).settings : kNone;
}

void SettingPage::show(CastingDesk* desk, int examination) {
    if (desk_ && desk_ != desk) desk_->editor().disconnect(this);
    if (desk && desk_ != desk) {
        connect(&desk->editor(), &CastingEditor::settingsChanged, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(&desk->editor(), &CastingEditor::locksChanged, this, &SettingPage::refresh);
        connect(desk, &QObject::destroyed, this, [this] {
            desk_ = nullptr;
            examination_ = -1;
        });
    }
    const bool other = desk_ != desk || examination_ != examination;
    desk_ = desk;
    examination_ = examination;
    if (other) shown_ = settings().empty() ? -1 : 0;
    refresh();
}

void SettingPage::focusFirst() {
    if (shown_ < 0) {
        add_->setFocus();
    } else {
        left_.form->editor(0)->setFocus(Qt::TabFocusReason);
    }
}

std::pair<FieldForm*, int> SettingPage::find(const std::string& field) const {
    for (const auto* part : {&left_, &right_}) {
        if (const int at = part->form->find(field); at >= 0) return {part->form, at};
    }
    return {nullptr, -1};
}

QString SettingPage::measuredText() const {
    return measured_->text();
}

QString SettingPage::warningText() const {
    return warning_->text();
}

/// What stands in the fields now, entered or not.
model::TypedSetting SettingPage::typedSetting() const {
    auto setting = settings()[static_cast<std::size_t>(shown_)];
    for (const auto* part : {&left_, &right_}) {
        for (std::size_t i = 0; i < part->fields.size(); ++i) {
            setting.*part->fields[i].text = part->form->text(static_cast<int>(i));
        }
    }
    return setting;
}

void SettingPage::commit(const QString& what) {
    if (shown_ < 0 || shown_ >= static_cast<int>(settings().size())) return;
    auto all = settings();
    all[static_cast<std::size_t>(shown_)] = typedSetting();
    desk_->editor().setSettings(examination_, std::move(all), what);
}

void SettingPage::add(bool copied) {
    if (!desk_ || examination_ < 0) return;
    finishEditing();
    auto all = settings();
    model::TypedSetting fresh;
    if (copied && shown_ >= 0) {
        fresh = all[static_cast<std::size_t>(shown_)];
    } else {
        fresh.kind = "straight";
        fresh.element = "round";
        fresh.surface = "flat";
        fresh.reference = "back wall";
        fresh.referenceOn = "casting";
        const auto& thickness = desk_->editor().draft(examination_).header.thickness;
        fresh.thickness = model::formatLength(thickness, fresh.unit);
    }
    const auto taken = [&](const std::string& name) {
        return std::ranges::any_of(all, [&](const auto& other) { return other.name == name; });
    };
    int number = static_cast<int>(all.size()) + 1;
    while (taken(std::to_string(number))) ++number;
    fresh.name = std::to_string(number);
    shown_ = static_cast<int>(all.size());
    all.push_back(std::move(fresh));
    desk_->editor().setSettings(examination_, std::move(all), tr("setting added"));
    refresh();
    if (const auto [form, field] = find("probe"); form)
        form->editor(field)->setFocus(Qt::TabFocusReason);
}

void SettingPage::remove() {
    if (shown_ < 0) return;
    auto all = settings();
    all.erase(all.begin() + shown_);
    shown_ = std::min(shown_, static_cast<int>(all.size()) - 1);
    desk_->editor().setSettings(examination_, std::move(all), tr("setting deleted"));
    refresh();
}

void SettingPage::useMeasured(std::string model::TypedSetting::*member, double value,
                              int decimals) {
    if (shown_ < 0) return;
    auto all = settings();
    auto setting = typedSetting();
    setting.*member = QString::number(value, 'f', decimals).toStdString();
    all[static_cast<std::size_t>(shown_)] = std::move(setting);
    desk_->editor().setSettings(examination_, std::move(all), tr("measured value taken over"));
}

void SettingPage::finishEditing() {
    left_.form->finishEditing();
    right_.form->finishEditing();
}

void SettingPage::refresh() {
    const auto& all = settings();
    shown_ = std::min(shown_, static_cast<int>(all.size()) - 1);
    if (shown_ < 0 && !all.empty()) shown_ = 0;
    const bool locked = !desk_ || examination_ < 0 || desk_->editor().locked(examination_);
    {
        const QSignalBlocker quiet(chooser_);
        chooser_->clear();
        for (const auto& setting : all) {
            QStringList about{qt(setting.name)};
            if (!setting.probe.empty()) about << qt(setting.probe);
            chooser_->addItem(about.join(" · "));
        }
        chooser_->setCurrentIndex(shown_);
    }
    chooser_->setEnabled(!all.empty());
    add_->setEnabled(!locked);
    copy_->setEnabled(!locked && shown_ >= 0);
    remove_->setEnabled(!locked && shown_ >= 0);
    empty_->setVisible(shown_ < 0);
    scroll_->setVisible(shown_ >= 0);
    beam_->setVisible(shown_ >= 0);
    if (shown_ < 0) {
        warning_->hide();
        return;
    }
    const auto& setting = all[static_cast<std::size_t>(shown_)];
    for (const auto* part : {&left_, &right_}) {
        for (std::size_t i = 0; i < part->fields.size(); ++i) {
            const int field = static_cast<int>(i);
            part->form->setText(field, setting.*part->fields[i].text);
            if (part->fields[i].length) part->form->setUnit(field, lengthUnit(setting.unit));
        }
        part->form->setReadOnly(locked);
    }
    useVelocity_->setEnabled(!locked);
    useAttenuation_->setEnabled(!locked);
    refreshComputed();
}

/// What follows from the fields as they stand: which are needed, what is wrong, what was measured.
void SettingPage::refreshComputed() {
    if (shown_ < 0) return;
    const auto setting = typedSetting();
    for (const auto* part : {&left_, &right_}) {
        part->form->clearErrors();
        for (std::size_t i = 0; i < part->fields.size(); ++i) {
            part->form->setShown(static_cast<int>(i),
                                 isNeeded(setting, part->fields[i].facts.field));
        }
    }
    for (const auto& error : model::readingOf(model::TypedReflector(), setting).errors) {
        const auto [form, field] = find(error.field);
        // What is still empty says so by being empty; only what was typed wrong is pointed out.
        if (form && !form->text(field).empty()) form->setError(field, reasonText(error.error));
    }
    for (const auto& other : settings()) {
        const auto index = &other - settings().data();
        if (index == shown_ || other.name != setting.name) continue;
        const auto [form, field] = find("name");
        form->setError(field, tr("another setting has this name already"));
    }
    beam_->setText(beamText(setting));
    beam_->setVisible(!beam_->text().isEmpty());
    const auto measured = measuredOn(setting, desk_->editor().file().part.material);
    QStringList said;
    for (const auto& text : {measured.velocityText, measured.attenuationText}) {
        if (!text.isEmpty()) said << text;
    }
    measured_->setText(said.join('\n'));
    measured_->setVisible(!said.isEmpty());
    warning_->setText(measured.nodularity.isEmpty() ? QString()
                                                    : tr("⚠  %1").arg(measured.nodularity));
    warning_->setVisible(!measured.nodularity.isEmpty());
    useVelocity_->setVisible(measured.velocityMPerS.has_value());
    useAttenuation_->setVisible(measured.attenuationDbPerM.has_value());
}

}  // namespace app
