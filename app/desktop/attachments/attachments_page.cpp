// SPDX-License-Identifier: Apache-2.0
#include "attachments/attachments_page.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPointer>
#include <QPushButton>
#include <QSaveFile>
#include <QSplitter>
#include <QThreadPool>
#include <QVBoxLayout>
#include <algorithm>

#include "attachments/picture.h"
#include "editing/entry_keeping.h"
#include "fields/entry_dialog.h"
#include "fields/field_words.h"
#include "looks/heading.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr QSize kThumbnail(112, 84);
constexpr QSize kLarge(1600, 1200);
constexpr QSize kChecked(64, 64);

QString placeText(const model::Attachment& file) {
    QStringList parts;
    if (!file.zone.empty()) parts << AttachmentsPage::tr("zone %1").arg(qt(file.zone));
    if (!file.indication.empty())
        parts << AttachmentsPage::tr("indication %1").arg(qt(file.indication));
    return parts.join(", ");
}

QString linesOf(const model::Attachment& file) {
    QStringList lines{qt(file.title)};
    QStringList about{choiceText(file.kind)};
    if (const QString place = placeText(file); !place.isEmpty()) about << place;
    lines << about.join(QStringLiteral(" · "));
    QStringList shows;
    if (!file.scale.empty()) shows << AttachmentsPage::tr("scale: %1").arg(qt(file.scale));
    if (!file.datum.empty()) shows << AttachmentsPage::tr("datum: %1").arg(qt(file.datum));
    if (!shows.isEmpty()) lines << shows.join(QStringLiteral(" · "));
    return lines.join('\n');
}

QString factsOf(const model::Attachment& file) {
    QStringList lines{
        linesOf(file),
        AttachmentsPage::tr("Number %1%2 · file %3, %4 bytes")
            .arg(qt(file.number),
                 file.revision.empty() ? QString()
                                       : AttachmentsPage::tr(" revision %1").arg(qt(file.revision)),
                 qt(file.fileName), qt(file.bytes)),
        AttachmentsPage::tr("SHA-256 %1…").arg(qt(file.fileSha256.substr(0, 16))),
        file.printed == "yes" ? AttachmentsPage::tr("Printed on the certificate.")
                              : AttachmentsPage::tr("Named on the certificate, not printed.")};
    if (!file.remarks.empty()) lines << qt(file.remarks);
    return lines.join('\n');
}

std::vector<model::FieldError> wrongPhoto(const EntryTexts& texts) {
    std::vector<model::FieldError> errors;
    const auto kind = texts.find("kind");
    if (kind == texts.end() || kind->second != "photo") return errors;
    if (!texts.contains("scale")) {
        errors.push_back({"scale", model::inputError("", "a photo has to show its scale")});
    }
    if (!texts.contains("datum")) {
        errors.push_back(
            {"datum", model::inputError("", "a photo has to say where it is on the casting")});
    }
    return errors;
}

}  // namespace

AttachmentsPage::AttachmentsPage(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent),
      archive_(archive),
      session_(session),
      list_(new QListWidget(this)),
      view_(new QLabel(this)),
      facts_(new QLabel(this)),
      add_(new QPushButton(tr("&Add a photo or file…"), this)),
      change_(new QPushButton(tr("Cha&nge what is said of it…"), this)),
      copy_(new QPushButton(tr("Save a &copy…"), this)) {
    list_->setObjectName("attachments");
    list_->setAccessibleName(tr("Photos and other files"));
    list_->setIconSize(kThumbnail);
    list_->setWordWrap(true);
    list_->setSpacing(2);
    list_->setMinimumWidth(fontMetrics().averageCharWidth() * 34);
    view_->setObjectName("attachmentPicture");
    view_->setAlignment(Qt::AlignCenter);
    view_->setMinimumSize(160, 120);
    view_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
    facts_->setObjectName("attachmentFacts");
    facts_->setWordWrap(true);
    facts_->setTextFormat(Qt::PlainText);
    facts_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    add_->setObjectName("addAttachment");
    auto* bar = new QHBoxLayout;
    for (QPushButton* button : {add_, change_, copy_}) {
        button->setAutoDefault(false);
        bar->addWidget(button);
    }
    bar->addStretch(1);
    auto* right = new QWidget(this);
    auto* rightLayout = new QVBoxLayout(right);
    rightLayout->setContentsMargins(10, 0, 0, 0);
    rightLayout->addWidget(view_, 1);
    rightLayout->addWidget(facts_);
    auto* split = new QSplitter(this);
    split->addWidget(list_);
    split->addWidget(right);
    split->setStretchFactor(0, 2);
    split->setStretchFactor(1, 3);
    split->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(new Heading(1.25, this, tr("Photos and files of the casting")));
    layout->addWidget(split, 1);
    layout->addLayout(bar);
    connect(list_, &QListWidget::currentItemChanged, this, &AttachmentsPage::showCurrent);
    connect(list_, &QListWidget::itemActivated, this, &AttachmentsPage::change);
    connect(add_, &QPushButton::clicked, this, &AttachmentsPage::add);
    connect(change_, &QPushButton::clicked, this, &AttachmentsPage::change);
    connect(copy_, &QPushButton::clicked, this, &AttachmentsPage::saveCopy);
    connect(&session_, &Session::changed, this, &AttachmentsPage::refreshButtons);
    refresh();
}

void AttachmentsPage::show(CastingDesk* desk) {
    if (desk_ && desk_ != desk) desk_->editor().disconnect(this);
    if (desk && desk_ != desk) {
        connect(&desk->editor(), &CastingEditor::registersChanged, this, &AttachmentsPage::refresh);
        connect(desk, &QObject::destroyed, this, [this] { desk_ = nullptr; });
    }
    desk_ = desk;
    setPlace({}, {});
    refresh();
}

void AttachmentsPage::setPlace(const std::string& zone, const std::string& indication) {
    zone_ = zone;
    indication_ = indication;
}

void AttachmentsPage::refresh() {
    const QString chosen =
        list_->currentItem() ? list_->currentItem()->data(Qt::UserRole).toString() : QString();
    const QSignalBlocker quiet(list_);
    list_->clear();
    if (desk_) {
        for (const auto& file : desk_->editor().file().dossier.attachments) {
            auto* item = new QListWidgetItem(linesOf(file), list_);
            item->setData(Qt::UserRole, qt(file.number));
            const QString digest = qt(file.fileSha256);
            item->setData(Qt::UserRole + 1, digest);
            if (!thumbnails_.contains(digest)) {
                thumbnails_.insert(digest, QPixmap());
                if (qt(file.mediaType).startsWith("image/")) loadThumbnail(file.fileSha256);
            }
            item->setIcon(QIcon(thumbnails_.value(digest)));
            if (qt(file.number) == chosen) list_->setCurrentItem(item);
        }
        if (!list_->currentItem() && list_->count() > 0) list_->setCurrentRow(0);
    }
    showCurrent();
}

const model::Attachment* AttachmentsPage::current() const {
    if (!desk_ || !list_->currentItem()) return nullptr;
    const std::string number = list_->currentItem()->data(Qt::UserRole).toString().toStdString();
    const auto& all = desk_->editor().file().dossier.attachments;
    const auto found = std::ranges::find(all, number, &model::Attachment::number);
    return found == all.end() ? nullptr : &*found;
}

void AttachmentsPage::refreshButtons() {
    const bool may = desk_ && session_.mayEnter();
    add_->setEnabled(may);
    add_->setToolTip(may || !desk_ ? QString() : session_.whyNot());
    change_->setEnabled(may && current());
    copy_->setEnabled(current() != nullptr);
}

void AttachmentsPage::showCurrent() {
    refreshButtons();
    const auto* file = current();
    picture_ = QPixmap();
    large_.clear();
    view_->setPixmap({});
    facts_->setVisible(file != nullptr);
    if (!file) {
        view_->setText(
            tr("No photo and no file yet. A photo shows its scale, and says where on "
               "the casting it is."));
        view_->setWordWrap(true);
        return;
    }
    facts_->setText(factsOf(*file));
    facts_->setToolTip(tr("SHA-256 of the file: %1").arg(qt(file->fileSha256)));
    if (!qt(file->mediaType).startsWith("image/")) {
        view_->setText(tr("%1: not shown here").arg(qt(file->fileName)));
        return;
    }
    view_->setText(tr("The picture is being read…"));
    large_ = qt(file->fileSha256);
    loadPicture(file->fileSha256, kLarge,
                [this, digest = large_](const QImage& image, const QString& trouble) {
                    if (digest != large_) return;
                    if (image.isNull()) {
                        view_->setText(tr("✗  %1").arg(trouble));
                        return;
                    }
                    picture_ = QPixmap::fromImage(image);
                    showPicture();
                });
}

void AttachmentsPage::showPicture() {
    if (picture_.isNull()) return;
    const QSize room = view_->size() * view_->devicePixelRatio();
    QPixmap shown = picture_.width() > room.width() || picture_.height() > room.height()
                        ? picture_.scaled(room, Qt::KeepAspectRatio, Qt::SmoothTransformation)
                        : picture_;
    shown.setDevicePixelRatio(view_->devicePixelRatio());
    view_->setPixmap(shown);
    view_->setAccessibleName(tr("Photo: %1").arg(facts_->text()));
}

QPixmap AttachmentsPage::shownPicture() const {
    return view_->pixmap();
}

void AttachmentsPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    showPicture();
}

/// Read on the archive's thread, decoded on one of the pool's: neither saving nor the window waits.
void AttachmentsPage::loadPicture(const std::string& digest, QSize within,
                                  std::function<void(const QImage&, const QString& trouble)> then) {
    archive_.ask(
        [digest](model::Archive& held) { return model::entryFile(held, digest); }, this,
        [this, within, then = std::move(then)](model::Result<std::string> bytes) {
            if (!bytes) {
                then({}, sentence(bytes.error()));
                return;
            }
            QThreadPool::globalInstance()->start([guard = QPointer<AttachmentsPage>(this), within,
                                                  then, bytes = QByteArray::fromStdString(*bytes)] {
                const auto image = readPicture(bytes, within);
                QMetaObject::invokeMethod(
                    QCoreApplication::instance(),
                    [guard, then, image = image ? *image : QImage(),
                     trouble = image ? QString() : sentence(image.error())] {
                        if (guard) then(image, trouble);
                    },
                    Qt::QueuedConnection);
            });
        });
}

void AttachmentsPage::loadThumbnail(const std::string& digest) {
    loadPicture(digest, kThumbnail, [this, digest](const QImage& image, const QString&) {
        if (image.isNull()) return;
        const QPixmap small = QPixmap::fromImage(image);
        thumbnails_.insert(qt(digest), small);
        for (int i = 0; i < list_->count(); ++i) {
            if (list_->item(i)->data(Qt::UserRole + 1).toString() == qt(digest)) {
                list_->item(i)->setIcon(QIcon(small));
            }
        }
    });
}

EntryDialog* AttachmentsPage::ask(const QString& title, const QString& act,
                                  const model::Attachment& entry, std::int64_t version) {
    auto* dialog = new EntryDialog(
        title,
        tr("A photo shows something of known size beside the finding, and says where on the "
           "casting it is and which way is up. PNG and JPEG pictures are taken as photos."),
        act, fieldInfos<model::Attachment>(), textsOf(entry),
        {"number", "casting", "record", "file_name", "media_type", "bytes"}, this);
    dialog->setObjectName("attachmentDialog");
    QStringList zones;
    for (const auto& zone : desk_->editor().file().plan.zones) zones << qt(zone.name);
    dialog->fields().setSuggestions("zone", zones);
    dialog->setCheck([dialog, fresh = version == 0](const EntryTexts& texts) {
        auto errors = wrongPhoto(texts);
        if (fresh && dialog->file().isEmpty()) {
            errors.push_back({"title", model::inputError("", "choose the file first")});
        }
        return errors;
    });
    connect(dialog, &EntryDialog::fileChosen, dialog, [dialog](const QString& path) {
        const QString suffix = QFileInfo(path).suffix().toLower();
        const bool photo = suffix == "png" || suffix == "jpg" || suffix == "jpeg";
        auto& form = dialog->fields();
        const int kind = form.find("kind");
        if (photo && form.text(kind).empty()) form.setText(kind, "photo");
    });
    dialog->setStore([this, dialog, version](const EntryTexts& texts, const QString& file,
                                             const TaskDialog::Then& then) {
        archive_.ask(
            [texts, file, version, signer = session_.signer(),
             person = person_](model::Archive& held) -> model::Result<void> {
                auto kept = entryFrom<model::Attachment>(texts);
                if (!file.isEmpty()) {
                    const auto bytes = bytesOf(file);
                    if (!bytes) return bytes.error();
                    const QByteArray content = QByteArray::fromStdString(*bytes);
                    if (kept.kind == "photo") {
                        const auto picture = readPicture(content, kChecked);
                        if (!picture) {
                            model::Error error = picture.error();
                            error.place = "kind";
                            return error;
                        }
                    }
                    const auto digest = model::keepFile(held, *bytes);
                    if (!digest) return digest.error();
                    kept.fileSha256 = *digest;
                    kept.fileName = QFileInfo(file).fileName().toStdString();
                    kept.mediaType = mediaTypeOf(content, file).toStdString();
                    kept.bytes = std::to_string(bytes->size());
                }
                if (kept.number.empty()) {
                    const auto number = freeNumber<model::Attachment>(held, kept.casting + "/A");
                    if (!number) return number.error();
                    kept.number = *number;
                }
                return keepEntry(held, kept, version, signer, person);
            },
            dialog,
            [this, then](const model::Result<void>& result) {
                then(result);
                if (result) emit kept();
            });
    });
    dialog->open();
    emit dialogShown(dialog);
    return dialog;
}

void AttachmentsPage::add() {
    if (!desk_ || !session_.mayEnter()) return;
    model::Attachment entry;
    entry.casting = desk_->editor().file().casting.serial;
    entry.zone = zone_;
    entry.indication = indication_;
    ask(tr("Add a photo or file"), tr("&Add it"), entry, 0);
}

void AttachmentsPage::change() {
    const auto* file = current();
    if (!file || !session_.mayEnter()) return;
    archive_.ask([key = keyOf(*file)](
                     model::Archive& held) { return model::entry<model::Attachment>(held, key); },
                 this,
                 [this](model::Result<model::Stored<model::Attachment>> stored) {
                     if (!desk_) return;
                     if (!stored) {
                         emit message(sentence(stored.error()));
                         return;
                     }
                     ask(tr("Change what is said of %1").arg(qt(stored->value.number)),
                         tr("&Change it"), stored->value, stored->version);
                 });
}

void AttachmentsPage::saveCopy() {
    const auto* file = current();
    if (!file) return;
    const QString path = QFileDialog::getSaveFileName(this, tr("Save a copy"), qt(file->fileName));
    if (path.isEmpty()) return;
    archive_.ask([digest = file->fileSha256](
                     model::Archive& held) { return model::entryFile(held, digest); },
                 this,
                 [this, path](const model::Result<std::string>& bytes) {
                     if (!bytes) {
                         emit message(sentence(bytes.error()));
                         return;
                     }
                     QSaveFile out(path);
                     const auto size = static_cast<qint64>(bytes->size());
                     const bool written = out.open(QIODevice::WriteOnly) &&
                                          out.write(bytes->data(), size) == size && out.commit();
                     emit message(written ? tr("Copy saved to %1").arg(path)
                                          : tr("No copy was saved: %1").arg(out.errorString()));
                 });
}

}  // namespace app
