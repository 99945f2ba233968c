// SPDX-License-Identifier: Apache-2.0
// Photos and other files of the casting on the bench, with what shows their scale and where they
// are on it.
#pragma once

#include <QHash>
#include <QPixmap>
#include <QWidget>
#include <functional>

#include "archive/archive.h"
#include "editing/casting_desk.h"
#include "editing/session.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace app {

class EntryDialog;

class AttachmentsPage : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the page.
    AttachmentsPage(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);

    void show(CastingDesk* desk);
    /// The zone and the indication that a new photo belongs to unless somebody says otherwise.
    void setPlace(const std::string& zone, const std::string& indication);
    /// In whose name it is saved where nobody can sign in.
    void setPerson(const std::string& person) { person_ = person; }
    void add();
    void change();
    void saveCopy();

    [[nodiscard]] QListWidget& list() { return *list_; }
    [[nodiscard]] QPushButton& addButton() { return *add_; }
    [[nodiscard]] QPushButton& changeButton() { return *change_; }
    /// The chosen picture as shown; null: none, or not decoded yet.
    [[nodiscard]] QPixmap shownPicture() const;

signals:
    void dialogShown(app::EntryDialog* dialog);
    /// The archive holds something new.
    void kept();
    void message(const QString& text);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void showCurrent();
    void showPicture();
    void refreshButtons();
    [[nodiscard]] const model::Attachment* current() const;
    void loadPicture(const std::string& digest, QSize within,
                     std::function<void(const QImage&, const QString& trouble)> then);
    void loadThumbnail(const std::string& digest);
    EntryDialog* ask(const QString& title, const QString& act, const model::Attachment& entry,
                     std::int64_t version);

    ArchiveThread& archive_;
    Session& session_;
    CastingDesk* desk_ = nullptr;
    std::string person_;
    std::string zone_;
    std::string indication_;
    QHash<QString, QPixmap> thumbnails_;  ///< by digest; null: on its way, or no picture
    QString large_;                       ///< digest of the picture that is shown
    QPixmap picture_;

    QListWidget* list_;
    QLabel* view_;
    QLabel* facts_;
    QPushButton* add_;
    QPushButton* change_;
    QPushButton* copy_;
};

}  // namespace app
