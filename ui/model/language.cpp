#include "ui/model/language.h"

#include <QCoreApplication>
#include <QDir>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

namespace fettle {

namespace {
const QString kFolder = QStringLiteral(":/i18n");
constexpr const char* kProperty = "fettle_language";

void install(const QString& name, const QString& folder) {
    auto* words = new QTranslator(QCoreApplication::instance());
    words->setObjectName(QString::fromLatin1(kProperty));
    if (words->load(name, folder))
        QCoreApplication::installTranslator(words);
    else
        delete words;
}

bool carried(const QString& code) {
    for (const Language& language : languages())
        if (language.code == code) return true;
    return false;
}

QString systemCode() {
    const QString code = QLocale::system().name().section(QChar('_'), 0, 0);
    return carried(code) ? code : QStringLiteral("en");
}
}  // namespace

std::vector<Language> languages() {
    std::vector<Language> all{{QStringLiteral("en"), QStringLiteral("English")}};
    for (const QString& file : QDir(kFolder).entryList({QStringLiteral("fettle_*.qm")})) {
        const QString code = file.section(QChar('_'), 1).section(QChar('.'), 0, 0);
        all.push_back({code, QLocale(code).nativeLanguageName()});
    }
    return all;
}

void speak(const QString& code) {
    const QString chosen = carried(code) ? code : systemCode();
    QLocale locale = chosen == QStringLiteral("en") ? QLocale::c() : QLocale(chosen);
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    QLocale::setDefault(locale);
    QCoreApplication::instance()->setProperty(kProperty, chosen);
    qDeleteAll(QCoreApplication::instance()->findChildren<QTranslator*>(
        QString::fromLatin1(kProperty), Qt::FindDirectChildrenOnly));  // of the language before
    if (chosen == QStringLiteral("en")) return;
    install(QStringLiteral("qtbase_") + chosen, QLibraryInfo::path(QLibraryInfo::TranslationsPath));
    install(QStringLiteral("fettle_") + chosen, kFolder);
}

QString spoken() {
    const QVariant kept = QCoreApplication::instance()->property(kProperty);
    return kept.isValid() ? kept.toString() : QStringLiteral("en");
}

}  // namespace fettle
