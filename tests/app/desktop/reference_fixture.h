// SPDX-License-Identifier: Apache-2.0
// The reference workplace on the archive of people_fixture.h: people, order O-1, part P-1 with one
// zone, casting C-1.
#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabBar>
#include <QTableView>
#include <QTableWidget>
#include <QTest>

#include "archive/registers.h"
#include "fields/entry_table.h"
#include "fields/field_form.h"
#include "looks/notice_bar.h"
#include "people_fixture.h"
#include "reference/reference_page.h"
#include "reference/register_page.h"
#include "reference/rows_editor.h"

namespace app {

class ReferenceTest : public PeopleTest {
protected:
    [[nodiscard]] model::Archive archive() const {
        auto archive = model::Archive::open(archivePath().toStdString());
        EXPECT_TRUE(archive) << archive.error().message();
        return std::move(*archive);
    }

    /// Shows a register and lets its list come.
    RegisterPage& open(const std::string& name) {
        window_->goTo(MainWindow::Reference);
        window_->reference().goTo(name);
        RegisterPage* page = window_->reference().page(name);
        EXPECT_NE(page, nullptr);
        QSignalSpy listed(page, &RegisterPage::listed);
        page->reload();
        EXPECT_TRUE(eventually([&] { return !listed.isEmpty(); }));
        return *page;
    }
    /// Lets the entry of this key be shown.
    static void show(RegisterPage& page, const std::string& key) {
        QSignalSpy shown(&page, &RegisterPage::shown);
        page.choose(key);
        EXPECT_TRUE(eventually([&] { return !shown.isEmpty() && page.form().text(0) == key; }))
            << key;
    }

    /// Types into a line, or a word of a choice, as somebody does who has the field in focus.
    static void type(RegisterPage& page, const std::string& field, const QString& text) {
        FieldForm& form = page.form();
        const int at = form.find(field);
        ASSERT_GE(at, 0) << field;
        QWidget* editor = form.editor(at);
        editor->setFocus();
        if (auto* line = qobject_cast<QLineEdit*>(editor)) line->selectAll();
        QTest::keyClicks(editor, text);
        QTest::keyClick(editor, Qt::Key_Return);
    }
    /// Types into a cell of a table of the entry.
    static void typeCell(RowsEditor& rows, int row, const std::string& field, const QString& text) {
        const int column = rows.model().column(field);
        ASSERT_GE(column, 0) << field;
        const auto cell = [&] { return rows.model().index(row, column); };
        rows.table().setFocus();
        rows.table().setCurrentIndex(cell());
        QTest::keyClick(&rows.table(), Qt::Key_F2);
        QWidget* editor = QApplication::focusWidget();
        ASSERT_NE(editor, &rows.table());
        if (auto* combo = qobject_cast<QComboBox*>(editor)) {
            combo->setCurrentIndex(combo->findData(text));
        } else {
            qobject_cast<QLineEdit*>(editor)->selectAll();
            QTest::keyClicks(editor, text);
        }
        QTest::keyClick(editor, Qt::Key_Return);
        QCoreApplication::processEvents();  // a cell is entered by an event of its own
        EXPECT_EQ(cell().data(Qt::EditRole).toString(), text);
    }
    /// Saves by the key for it.
    static bool save(RegisterPage& page) {
        QSignalSpy saved(&page, &RegisterPage::saved);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_S, Qt::ControlModifier);
        const bool done = eventually([&] { return !saved.isEmpty(); });
        // The stored entry is shown before anything else is done.
        return done && eventually([&] { return page.stateText().startsWith("Saved"); });
    }
    static QString error(RegisterPage& page, const std::string& field) {
        return page.form().error(page.form().find(field));
    }
    /// Presses the button of a notice that says this.
    static void answer(NoticeBar& notice, const QString& text) {
        for (auto* button : notice.findChildren<QPushButton*>()) {
            if (button->text() == text) {
                button->click();
                return;
            }
        }
        ADD_FAILURE() << "no such answer: " << text.toStdString();
    }
};

}  // namespace app
