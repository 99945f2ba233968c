// SPDX-License-Identifier: Apache-2.0
#include "registers_fixture.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTest>

namespace app {
namespace {

template <class T, class Who>
void keep(model::Archive& archive, const T& entry, const Who& who) {
    const auto kept = model::saveEntry(archive, entry, 0, who);
    EXPECT_TRUE(kept) << T::kRegister << ": " << kept.error().message();
}

model::Procedure procedure(const std::string& revision, const std::string& state) {
    model::Procedure made;
    made.number = "MT-01";
    made.revision = revision;
    made.kind = "procedure";
    made.title = "Magnetic particle testing of castings";
    made.method = "MT";
    made.standards = "ISO 9934-1:2016";
    made.conditionSets = "ISO 3059:2012";
    made.approvedBy = foundry::kLevel3;
    made.approvedOn = inDays(-30);
    made.state = state;
    if (state == "obsolete") made.obsoleteFrom = inDays(-5);
    return made;
}

model::Equipment meter(const std::string& id, const std::string& kind, const std::string& due) {
    model::Equipment made;
    made.id = id;
    made.kind = kind;
    made.calibrationDue = due;
    made.state = "in use";
    return made;
}

}  // namespace

void RegistersTest::fillRegisters() {
    auto archive = openAgain();
    const auto level3 = foundry::signedIn(archive, foundry::kLevel3);
    const auto manager = foundry::signedIn(archive, foundry::kQaManager);
    const model::Actor office{"Office"};
    keep(archive, procedure("2", "obsolete"), level3);
    keep(archive, procedure("3", "current"), level3);
    keep(archive, meter("UV-1", "UV-A meter", inDays(90)), office);
    keep(archive, meter("LX-1", "light meter", inDays(-2)), office);
    model::Consumable ink;
    ink.id = "B-7";
    ink.kind = "magnetic ink";
    ink.product = "Invented ink";
    ink.maker = "Invented maker";
    ink.batch = "7";
    ink.expiresOn = inDays(-1);
    ink.state = "in use";
    keep(archive, ink, office);
    model::Qualification held;
    held.person = foundry::kInspector;
    held.method = "MT";
    held.certificate = "K-11";
    held.scheme = "ISO 9712:2021";
    held.level = "2";
    held.sector = "castings";
    held.issuedOn = inDays(-400);
    held.expiresOn = inDays(400);
    held.state = "valid";
    keep(archive, held, manager);
    model::EyeTest sight;
    sight.person = foundry::kInspector;
    sight.kind = "near vision";
    sight.testedOn = inDays(-40);
    sight.result = "passed";
    keep(archive, sight, manager);
    sight.kind = "colour perception";
    keep(archive, sight, manager);
    model::Authorisation given;
    given.person = foundry::kInspector;
    given.method = "MT";
    given.grantedOn = inDays(-40);
    given.by = "Quentin Marsh";
    given.state = "valid";
    keep(archive, given, manager);
}

void RegistersTest::enter(FieldForm& form, const std::string& key, const QString& text) {
    const int field = form.find(key);
    ASSERT_GE(field, 0) << key;
    auto* editor = form.editor(field);
    editor->setFocus();
    if (auto* combo = qobject_cast<QComboBox*>(editor)) {
        const int index = combo->findData(text);
        ASSERT_GE(index, 0) << key << ": " << text.toStdString() << " is not offered";
        combo->setCurrentIndex(index);
        emit combo->activated(index);
    } else if (auto* paragraph = qobject_cast<QPlainTextEdit*>(editor)) {
        paragraph->selectAll();
        QTest::keyClicks(paragraph, text);
    } else {
        auto* line = qobject_cast<QLineEdit*>(editor);
        line->selectAll();
        QTest::keyClicks(line, text);
    }
    form.finishEditing();
}

void RegistersTest::enter(EntryTable& table, int row, const std::string& key, const QString& text) {
    const auto* rows = static_cast<const EntryRows*>(table.model());
    const QModelIndex cell = rows->index(row, rows->column(key));
    ASSERT_TRUE(cell.isValid()) << key;
    table.setFocus();
    table.setCurrentIndex(cell);
    table.edit(cell);
    QWidget* editor = table.indexWidget(cell);
    if (!editor) editor = QApplication::focusWidget();
    ASSERT_NE(editor, nullptr);
    if (auto* combo = qobject_cast<QComboBox*>(editor)) {
        const int index = combo->findData(text);
        ASSERT_GE(index, 0) << key << ": " << text.toStdString() << " is not offered";
        combo->setCurrentIndex(index);
        emit combo->activated(index);
    } else {
        auto* line = qobject_cast<QLineEdit*>(editor);
        ASSERT_NE(line, nullptr);
        line->selectAll();
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
    }
    QCoreApplication::processEvents();
}

}  // namespace app
