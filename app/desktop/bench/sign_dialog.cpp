// SPDX-License-Identifier: Apache-2.0
#include "bench/sign_dialog.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <algorithm>

#include "archive/signed_record.h"
#include "conditions/validity.h"
#include "conditions_bench/findings_view.h"
#include "looks/heading.h"
#include "looks/mark_label.h"
#include "looks/marked_lines.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr int kLevelToReject = 2;

/// "9 checks: 7 pass, 1 fails, 1 could not be made".
QString checksText(const model::ExaminationVerdict& verdict) {
    int pass = 0;
    int fail = 0;
    for (const auto& check : verdict.checks) {
        if (check.passes) ++(*check.passes ? pass : fail);
    }
    const int all = static_cast<int>(verdict.checks.size());
    return SignDialog::tr("Checks made: %1; passed: %2, failed: %3, could not be made: %4")
        .arg(all)
        .arg(pass)
        .arg(fail)
        .arg(all - pass - fail);
}

}  // namespace

SignDialog::SignDialog(CastingDesk& desk, int examination, Session& session, ArchiveThread& archive,
                       QWidget* parent)
    : TaskDialog(tr("Sign this examination"), {}, tr("&Sign it"), parent),
      desk_(desk),
      examination_(examination),
      session_(session),
      archive_(archive) {
    setObjectName("signDialog");
    const auto& live = *desk_.live();
    for (const auto& problem : live.examinationProblems) {
        if (problem.examination == examination_) unreadable_ = sentence(problem.error);
    }
    const bool unread = std::ranges::any_of(
        live.rowProblems, [&](const auto& problem) { return problem.examination == examination_; });
    if (unread) {
        unreadable_ = tr("Some rows cannot be read yet. F8 goes to them; put them right first.");
    }
    addVerdict();
    addFacts();
    addValidity();
    addRejection();
    addStatement();
    if (!missing().isEmpty()) setTrouble(missing());
    setMissing([this] { return missing(); });
    setWork([this](const Then& then) { sign(then); });
}

void SignDialog::addVerdict() {
    const auto& live = desk_.live()->examinations[static_cast<std::size_t>(examination_)];
    auto* row = new QWidget(this);
    auto* mark = new MarkLabel(row);
    mark->setSide(40);
    mark->setMark(markOf(live.word));
    auto* word = new Heading(1.6, row, wordText(live.word));
    word->setObjectName("signedWord");
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText,
                     colourOf(markOf(live.word), colours.color(QPalette::Window)));
    word->setPalette(colours);
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(12);
    layout->addWidget(mark);
    layout->addWidget(word, 1);
    form().addRow(row);
}

void SignDialog::addFacts() {
    const auto& draft = desk_.editor().draft(examination_);
    const auto& live = desk_.live()->examinations[static_cast<std::size_t>(examination_)];
    QStringList lines;
    lines << tr("Casting %1, zone %2: %3, %4")
                 .arg(qt(draft.casting), qt(draft.header.zone), methodName(draft.header.method),
                      stageText(draft.header.stage));
    lines << tr("%1, %2").arg(qt(draft.header.table), levelsText(draft.header.levels));
    const auto entered = [](const auto& row) { return !model::isBlank(row); };
    const auto found = std::ranges::count_if(draft.rows, entered) +
                       std::ranges::count_if(draft.reflectors, entered);
    lines << (draft.header.noIndications ? tr("Stated: no indications found")
                                         : tr("Indications entered: %1").arg(found));
    if (live.verdict) lines << checksText(*live.verdict);
    const auto given = [](const std::string& text) {
        return text.empty() ? tr("not given") : qt(text);
    };
    lines << tr("Examined by %1 on %2; procedure: %3")
                 .arg(given(draft.examinedBy), given(draft.examinedOn), given(draft.procedure));
    auto* text = new QLabel(lines.join('\n'), this);
    text->setObjectName("signedFacts");
    text->setTextFormat(Qt::PlainText);
    text->setWordWrap(true);
    form().addRow(text);
    if (live.verdict) {
        QStringList reasons;
        for (const auto& reason : live.verdict->reasons) reasons << "• " + qt(reason);
        if (!reasons.isEmpty()) addNote(reasons.join('\n'));
    }
}

/// What is to be said of the conditions of the test. What stands in the way is refused here, before
/// anybody is asked for more; the archive refuses it as well.
void SignDialog::addValidity() {
    const auto& editor = desk_.editor();
    const auto& draft = editor.draft(examination_);
    const auto findings = model::validityOf(
        editor.file(), draft,
        {session_.person() ? session_.person()->id : std::string(), draft.conditions.evaluatedBy},
        editor.attestedSets());
    if (findings.empty()) {
        addNote(tr("Nothing stands against the validity of the test."));
        return;
    }
    std::vector<MarkedEntry> entries;
    int blocks = 0;
    int reasons = 0;
    for (const auto& finding : findings) {
        entries.push_back(entryOf(finding));
        if (finding.stands()) ++(finding.reaction == model::Reaction::Block ? blocks : reasons);
    }
    constexpr int kShown = 3;
    auto* list = new MarkedList(3, this);
    list->setObjectName("signedFindings");
    list->setAccessibleName(tr("Validity of the test"));
    list->setEntries(entries);
    list->setMinimumHeight(
        list->sizeHintForRow(0) * std::min(kShown, static_cast<int>(entries.size())) + 4);
    form().addRow(new QLabel(tr("Validity of the test:"), this));
    form().addRow(list);
    if (blocks + reasons > 0) {
        invalid_ = tr("The conditions of the test stand in the way: not to be signed: %1, reasons "
                      "needed: %2. They are put right, and reasons typed, on the page "
                      "\"Conditions\".")
                       .arg(blocks)
                       .arg(reasons);
    }
}

void SignDialog::addStatement() {
    const QString name = session_.person() ? qt(session_.person()->name) : QString();
    const QString by = qt(desk_.editor().draft(examination_).examinedBy);
    if (by != name) {
        addNote(tr("⚠ You sign as %1, but the examination names %2 as who examined.")
                    .arg(name, by.isEmpty() ? tr("nobody") : by))
            ->setForegroundRole(QPalette::WindowText);
    }
    addNote(tr("With your signature, as %1, you state that this examination was carried out as "
               "recorded here and that nothing that was found is left out. It can then no longer "
               "be changed; what proves wrong later is put right in a next revision, and this one "
               "stays.")
                .arg(name))
        ->setForegroundRole(QPalette::WindowText);
}

void SignDialog::addRejection() {
    const auto& live = desk_.live()->examinations[static_cast<std::size_t>(examination_)];
    const auto method = desk_.editor().draft(examination_).header.method;
    const auto* person = session_.person();
    if (live.word != model::Word::Acceptable || !person) return;
    const auto level = person->levels.find(method);
    if (level == person->levels.end() || level->second < kLevelToReject) return;
    reject_ = new QCheckBox(tr("&Reject it although it is acceptable"), this);
    reject_->setObjectName("reject");
    reject_->setToolTip(
        tr("Level 2 and 3 of the method may reject what the limits accept, with a reason."));
    form().addRow(reject_);
    reason_ = addText(tr("R&eason"), "rejectReason");
    reason_->setEnabled(false);
    connect(reject_, &QCheckBox::toggled, this, [this](bool on) {
        reason_->setEnabled(on);
        if (on) reason_->setFocus();
        refresh();
    });
}

QString SignDialog::missing() const {
    if (!unreadable_.isEmpty()) return unreadable_;
    if (!invalid_.isEmpty()) return invalid_;
    if (reject_ && reject_->isChecked() && reason_->toPlainText().trimmed().isEmpty()) {
        return tr("State why you reject it.");
    }
    return {};
}

void SignDialog::sign(const Then& then) {
    const Signer signer = session_.signer();
    if (!signer) {
        then(model::inputError("", "nobody is signed in any more; sign in again"));
        return;
    }
    std::optional<model::Rejection> rejection;
    if (reject_ && reject_->isChecked()) {
        rejection = model::Rejection{reason_->toPlainText().trimmed().toStdString()};
    }
    const auto& draft = desk_.editor().draft(examination_);
    archive_.ask(
        [signer, rejection, id = draft.id,
         version = draft.version](model::Archive& held) -> model::Result<void> {
            auto record = model::signRecord(held, id, version, rejection, *signer);
            if (!record) return record.error();
            return {};
        },
        this, then);
}

}  // namespace app
