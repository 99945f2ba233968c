// SPDX-License-Identifier: Apache-2.0
// Asks what belongs on the paper and where it is to be written. The works' name and address are
// remembered.
#pragma once

#include <QDialog>

class QLineEdit;
class QPlainTextEdit;

namespace app {

class CertificateDialog : public QDialog {
    Q_OBJECT

public:
    /// `incomplete`: something cannot be read or judged yet, which is said beforehand.
    CertificateDialog(const QString& serial, bool demonstration, bool incomplete,
                      QWidget* parent = nullptr);

    [[nodiscard]] QString worksName() const;
    [[nodiscard]] QString worksAddress() const;
    [[nodiscard]] QString path() const;

    /// Asks first where a file of that name is there and was not chosen to be replaced.
    void accept() override;

private:
    void choosePath();

    QLineEdit* name_;
    QPlainTextEdit* address_;
    QLineEdit* path_;
    QString mayReplace_;  ///< a path that was chosen with that question answered
};

}  // namespace app
