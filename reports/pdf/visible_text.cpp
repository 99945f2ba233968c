// SPDX-License-Identifier: Apache-2.0
#include "pdf/visible_text.h"

#include <QString>

namespace reports {

namespace {

/// Scripts that are read correctly when their characters stand one after the other from left to
/// right.
bool needsNoShaping(QChar::Script script) {
    switch (script) {
        case QChar::Script_Common:
        case QChar::Script_Inherited:
        case QChar::Script_Latin:
        case QChar::Script_Greek:
        case QChar::Script_Cyrillic:
        case QChar::Script_Armenian:
        case QChar::Script_Georgian:
        case QChar::Script_Han:
        case QChar::Script_Hiragana:
        case QChar::Script_Katakana:
        case QChar::Script_Hangul:
        case QChar::Script_Bopomofo:
            return true;
        default:
            return false;
    }
}

bool canBeShown(char32_t character) {
    if (character > 0xFFFF) return false;
    switch (QChar::category(character)) {
        case QChar::Other_Control:
        case QChar::Other_Format:
        case QChar::Other_Surrogate:
        case QChar::Other_PrivateUse:
        case QChar::Other_NotAssigned:
        case QChar::Separator_Line:
        case QChar::Separator_Paragraph:
            return false;
        default:
            break;
    }
    const QChar::Direction direction = QChar::direction(character);
    if (direction == QChar::DirR || direction == QChar::DirAL) return false;
    return needsNoShaping(QChar::script(character));
}

}  // namespace

std::u16string codePointText(char32_t character) {
    const QString digits =
        QString::number(static_cast<uint>(character), 16).toUpper().rightJustified(4, u'0');
    return QStringLiteral("[U+%1]").arg(digits).toStdU16String();
}

std::u16string visibleText(std::string_view utf8) {
    const QString text = QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()))
                             .normalized(QString::NormalizationForm_C)
                             .replace(QStringLiteral("\r\n"), QStringLiteral("\n"));
    std::u16string visible;
    for (const char32_t character : text.toStdU32String()) {
        if (character == U'\n')
            visible += u'\n';
        else if (character == U'\t')
            visible += u' ';
        else if (canBeShown(character))
            visible += static_cast<char16_t>(character);
        else
            visible += codePointText(character);
    }
    return visible;
}

std::string toUtf8(std::u16string_view text) {
    return QStringView(text.data(), static_cast<qsizetype>(text.size())).toUtf8().toStdString();
}

}  // namespace reports
