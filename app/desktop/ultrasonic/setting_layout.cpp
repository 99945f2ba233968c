// SPDX-License-Identifier: Apache-2.0
// How the page of settings is put together.
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>

#include "ultrasonic_bench/measured.h"
#include "ultrasonic_bench/setting_page.h"

namespace app {

SettingPage::SettingPage(QWidget* parent)
    : QWidget(parent),
      chooser_(new QComboBox(this)),
      add_(new QPushButton(tr("New"), this)),
      copy_(new QPushButton(tr("Copy"), this)),
      remove_(new QPushButton(tr("Delete"), this)),
      empty_(new QLabel(this)),
      scroll_(new QScrollArea(this)),
      body_(new QWidget(this)),
      columns_(new QBoxLayout(QBoxLayout::LeftToRight)),
      left_{new FieldForm(body_), {}},
      right_{new FieldForm(body_), {}},
      beam_(new QLabel(this)),
      measured_(new QLabel(body_)),
      warning_(new QLabel(this)),
      useVelocity_(new QPushButton(tr("Use this velocity"), body_)),
      useAttenuation_(new QPushButton(tr("Use this attenuation"), body_)),
      help_(new QLabel(this)) {
    chooser_->setAccessibleName(tr("Setting shown"));
    add_->setObjectName("addSetting");
    useVelocity_->setObjectName("useVelocity");
    useAttenuation_->setObjectName("useAttenuation");
    add_->setToolTip(tr("A setting for a straight-beam probe on the wall of this zone."));
    copy_->setToolTip(tr("A new setting with the same values."));
    for (QPushButton* button : {add_, copy_, remove_, useVelocity_, useAttenuation_}) {
        button->setAutoDefault(false);
    }
    empty_->setText(
        tr("No setting yet. A setting says with which probe, on which material and "
           "against which reference readings are taken. \"New\" makes one."));
    empty_->setWordWrap(true);
    empty_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    for (QLabel* text : {beam_, measured_, warning_, help_}) {
        text->setWordWrap(true);
        text->setTextFormat(Qt::PlainText);
    }
    beam_->setObjectName("beamFacts");
    measured_->setObjectName("measuredFacts");
    warning_->setObjectName("nodularityWarning");
    warning_->setMargin(8);
    warning_->setBackgroundRole(QPalette::ToolTipBase);
    warning_->setForegroundRole(QPalette::ToolTipText);
    warning_->setAutoFillBackground(true);
    help_->setObjectName("settingHelp");
    help_->setAccessibleName(tr("About the field"));
    help_->setForegroundRole(QPalette::PlaceholderText);
    help_->setMinimumHeight(2 * help_->fontMetrics().height());
    help_->setAlignment(Qt::AlignTop | Qt::AlignLeft);

    addGroup(left_, probeGroup());
    addGroup(left_, materialGroup());
    addGroup(right_, referenceGroup());
    addGroup(right_, measuredGroup());
    connectForm(left_);
    connectForm(right_);
    connect(left_.form, &FieldForm::ended, this,
            [this] { right_.form->editor(0)->setFocus(Qt::TabFocusReason); });
    connect(right_.form, &FieldForm::ended, this, [this] {
        for (QPushButton* button : {useVelocity_, useAttenuation_}) {
            if (!button->isVisible()) continue;
            scroll_->ensureWidgetVisible(button);
            button->setFocus();
            return;
        }
        chooser_->setFocus();
    });
    setTabOrder(right_.form->editor(right_.form->count() - 1), useVelocity_);
    setTabOrder(useVelocity_, useAttenuation_);

    auto* bar = new QHBoxLayout;
    auto* label = new QLabel(tr("Setting"), this);
    label->setBuddy(chooser_);
    bar->addWidget(label);
    bar->addWidget(chooser_, 1);
    bar->addWidget(add_);
    bar->addWidget(copy_);
    bar->addWidget(remove_);

    columns_->setSpacing(24);
    columns_->addWidget(left_.form, 1, Qt::AlignTop);
    columns_->addWidget(right_.form, 1, Qt::AlignTop);
    auto* inside = new QVBoxLayout(body_);
    inside->setContentsMargins(0, 0, 8, 0);
    inside->addLayout(columns_);
    auto* use = new QHBoxLayout;
    use->addWidget(useVelocity_);
    use->addWidget(useAttenuation_);
    use->addStretch(1);
    inside->addWidget(measured_);
    inside->addLayout(use);
    inside->addStretch(1);
    scroll_->setWidget(body_);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setFocusPolicy(Qt::NoFocus);

    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 6, 0, 0);
    layout->setSpacing(6);
    layout->addLayout(bar);
    layout->addWidget(beam_);
    layout->addWidget(warning_);  // never scrolled out of sight
    layout->addWidget(empty_, 1);
    layout->addWidget(scroll_, 1);
    layout->addWidget(help_);

    connect(chooser_, &QComboBox::activated, this, [this](int index) {
        finishEditing();
        shown_ = index;
        refresh();
    });
    connect(add_, &QPushButton::clicked, this, [this] { add(false); });
    connect(copy_, &QPushButton::clicked, this, [this] { add(true); });
    connect(remove_, &QPushButton::clicked, this, &SettingPage::remove);
    const auto measuredNow = [this] {
        return measuredOn(typedSetting(), desk_->editor().file().part.material);
    };
    connect(useVelocity_, &QPushButton::clicked, this, [this, measuredNow] {
        if (const auto value = measuredNow().velocityMPerS) {
            useMeasured(&model::TypedSetting::velocity, *value, 0);
        }
    });
    connect(useAttenuation_, &QPushButton::clicked, this, [this, measuredNow] {
        if (const auto value = measuredNow().attenuationDbPerM) {
            useMeasured(&model::TypedSetting::attenuation, *value, 1);
        }
    });
    refresh();
}

void SettingPage::addGroup(Part& part, const SettingGroup& group) {
    part.form->addHeading(group.heading);
    for (const auto& field : group.fields) {
        part.form->add(field.facts);
        part.fields.push_back(field);
    }
}

void SettingPage::connectForm(Part& part) {
    FieldForm* form = part.form;
    connect(form, &FieldForm::typed, this, [this] { refreshComputed(); });
    connect(form, &FieldForm::entered, this, [this, &part](int field) {
        commit(tr("setting, %1").arg(part.fields[static_cast<std::size_t>(field)].facts.label));
    });
    connect(form, &FieldForm::helpChanged, help_, &QLabel::setText);
}

void SettingPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

/// Two columns where there is room for them.
void SettingPage::arrange() {
    const bool wide = width() > fontMetrics().averageCharWidth() * 84;
    columns_->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

}  // namespace app
