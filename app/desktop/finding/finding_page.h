// SPDX-License-Identifier: Apache-2.0
// The archive workplace: certificates found as one types, the document in view, what became of it,
// and what proves that nothing was altered.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>

#include "archive/lifecycle.h"
#include "archive/search.h"
#include "editing/long_task.h"
#include "editing/session.h"
#include "looks/mark.h"

class QLabel;
class QPushButton;

namespace app {

class MarkedList;
class MarkLabel;
class NoticeBar;
class PaperView;
class ReportDialog;
class SearchPanel;
class TaskDialog;

class FindingPage : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the page.
    FindingPage(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);
    ~FindingPage() override;

    void setArchive(const ArchiveThread::Opened& opened);
    /// Searches again: something was released.
    void reload();

    [[nodiscard]] SearchPanel& search() { return *search_; }
    [[nodiscard]] MarkedList& results() { return *results_; }
    [[nodiscard]] PaperView& paper() { return *paper_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }
    /// Of the certificate in view: "released", "superseded by 12" ...
    [[nodiscard]] QString stateText() const;
    [[nodiscard]] QString factsText() const;

public slots:
    void verifyThis();
    void verifyAll();
    void showHistory();
    void savePdf();
    /// Writes the document shown to a file that is not there or was chosen to be replaced.
    void savePdfTo(const QString& path);
    /// PDF, record and tables in a new folder.
    void exportIt();
    void exportTo(const QString& folder);
    void withdraw();
    /// How long the order of the certificate in view is kept, and disposal.
    void showKeeping();

signals:
    void found();
    void shown();
    void reportShown(app::ReportDialog* dialog);
    void taskShown(app::TaskDialog* dialog);
    void changed();
    void exported(const QString& folder);

private:
    /// What is asked about one certificate at once.
    struct Looked {
        model::Certificate certificate;
        std::optional<model::Presented> presented;  ///< none: issued before there was a release
        model::Result<std::string> pdf;
    };
    void makeLayout();
    QWidget* makeSide();
    void ask(bool more);
    void showCurrent();
    void show(Looked looked);
    void showNothing(const QString& why);
    void refreshButtons();
    void open(ReportDialog* dialog);
    void tell(const model::Error& error);
    void setMark(std::optional<Mark> mark, const QString& word);
    [[nodiscard]] std::int64_t number() const;  ///< of the certificate in view; 0: none

    ArchiveThread& archive_;
    Session& session_;
    LongTask long_;
    std::string path_;
    quint64 ticket_ = 0;  ///< of the last search asked for
    bool asking_ = false;
    std::optional<std::int64_t> next_;
    std::unique_ptr<Looked> looked_;

    NoticeBar* notice_ = nullptr;
    SearchPanel* search_ = nullptr;
    MarkedList* results_ = nullptr;
    PaperView* paper_ = nullptr;
    MarkLabel* mark_ = nullptr;
    QLabel* word_ = nullptr;
    QLabel* state_ = nullptr;
    QLabel* facts_ = nullptr;
    QPushButton* save_ = nullptr;
    QPushButton* export_ = nullptr;
    QPushButton* verify_ = nullptr;
    QPushButton* history_ = nullptr;
    QPushButton* withdraw_ = nullptr;
    QPushButton* keeping_ = nullptr;
    QPushButton* verifyAll_ = nullptr;
};

}  // namespace app
