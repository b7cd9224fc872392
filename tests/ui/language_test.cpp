// The second language is whole: every word that the sources hand to tr() has its translation, with the same
// places
// (%1) and a letter to press where the original has one; and what is shown follows the language while what is
// written stays free of it. Source of the words: the sources themselves, read by Qt's lupdate.
#include <QCoreApplication>
#include <QDirIterator>
#include <QLocale>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTranslator>
#include <QXmlStreamReader>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/guide_topics.h"
#include "ui/dialogs/help_dialogs.h"
#include "ui/model/language.h"
#include "ui/model/words.h"
#include "ui/plot/readout.h"

namespace fettle {
namespace {

struct Said {
    QString context, source, comment;
};

std::vector<Said> wordsOfTheSources() {
    QTemporaryDir folder;
    const QString table = folder.filePath(QStringLiteral("words.ts"));
    QProcess reader;
    reader.setWorkingDirectory(QStringLiteral(FETTLE_SOURCE_DIR));
    reader.start(QStringLiteral(FETTLE_LUPDATE),
                 {QStringLiteral("-silent"), QStringLiteral("-locations"), QStringLiteral("none"),
                  QStringLiteral("-I"), QStringLiteral("."), QStringLiteral("ui"),
                  QStringLiteral("app/desktop"), QStringLiteral("-ts"), table});
    EXPECT_TRUE(reader.waitForFinished(120000));
    QFile file(table);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader xml(&file);
    std::vector<Said> all;
    QString context;
    while (!xml.atEnd()) {
        xml.readNext();
        if (!xml.isStartElement()) continue;
        if (xml.name() == QStringLiteral("name")) context = xml.readElementText();
        if (xml.name() == QStringLiteral("source")) all.push_back({context, xml.readElementText(), {}});
        if (xml.name() == QStringLiteral("comment") && !all.empty())
            all.back().comment = xml.readElementText();
    }
    return all;
}

QStringList placesOf(const QString& text) {
    static const QRegularExpression place(QStringLiteral("%L?[0-9n]+|\\{[a-z.]+\\}"));
    QStringList places;
    for (auto found = place.globalMatch(text); found.hasNext();)
        places << found.next().captured();
    places.sort();
    return places;
}

// A letter to press: one & that is not doubled, before a letter.
bool hasLetter(const QString& text) {
    static const QRegularExpression letter(QStringLiteral("(^|[^&])&[^& ]"));
    return letter.match(text).hasMatch();
}

class SecondLanguage : public testing::Test {
  protected:
    void TearDown() override { QLocale::setDefault(QLocale::c()); }
};

TEST_F(SecondLanguage, TheSecondOneIsWhole) {
    QTranslator german;
    ASSERT_TRUE(german.load(QStringLiteral("fettle_de"), QStringLiteral(":/i18n")));
    const std::vector<Said> words = wordsOfTheSources();
    EXPECT_GT(words.size(), 700u);
    QStringList troubles;
    for (const Said& one : words) {
        const QString there =
            german.translate(one.context.toUtf8().constData(), one.source.toUtf8().constData(),
                             one.comment.isEmpty() ? nullptr : one.comment.toUtf8().constData());
        const QString name = QStringLiteral("%1: \"%2\"").arg(one.context, one.source);
        if (there.isEmpty())
            troubles << name + QStringLiteral(" has no translation (resources/setup/update_words)");
        else if (placesOf(there) != placesOf(one.source))
            troubles << name + QStringLiteral(" has other places in \"%1\"").arg(there);
        else if (hasLetter(there) != hasLetter(one.source) && !one.source.contains(QStringLiteral("<")))
            troubles << name + QStringLiteral(" has lost or won its letter in \"%1\"").arg(there);
    }
    EXPECT_EQ(troubles.join(QChar('\n')).toStdString(), "");
}

// A class that is no QObject looks its words up where lupdate filed them only if it says so.
TEST_F(SecondLanguage, EveryClassLooksWhereItsWordsAre) {
    QStringList contexts;
    for (const Said& one : wordsOfTheSources()) {
        // A constant of "std::size_t" before a function misleads lupdate.
        EXPECT_NE(one.context.toStdString(), "std") << one.source.toStdString();
        if (one.context.startsWith(QStringLiteral("fettle::")) && !contexts.contains(one.context))
            contexts << one.context;
    }
    EXPECT_GT(contexts.size(), 50);
    QString sources;
    QDirIterator files(QStringLiteral(FETTLE_SOURCE_DIR "/ui"),
                       {QStringLiteral("*.h"), QStringLiteral("*.cpp")}, QDir::Files,
                       QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        sources += QString::fromUtf8(file.readAll());
    }
    for (const QString& context : contexts) {
        const QString name = context.section(QStringLiteral("::"), -1);
        const QRegularExpression declared(
            QStringLiteral("(class|struct) %1\\b[^;{]*\\{\\s*(Q_OBJECT|Q_DECLARE_TR_FUNCTIONS)").arg(name));
        EXPECT_TRUE(declared.match(sources).hasMatch()) << context.toStdString();
    }
}

TEST_F(SecondLanguage, AWindowIsReadInIt) {
    QTranslator german;
    ASSERT_TRUE(german.load(QStringLiteral("fettle_de"), QStringLiteral(":/i18n")));
    QCoreApplication::installTranslator(&german);
    EXPECT_EQ(AboutDialog::tr("About Fettle").toStdString(), "Über Fettle");
    EXPECT_EQ(urgencyWord("plan").toStdString(), "einplanen");
    EXPECT_NE(guideTopics().front().title.toStdString(), "The round");
    QCoreApplication::removeTranslator(&german);
}

TEST_F(SecondLanguage, NumbersAndDatesShownFollowIt) {
    QTranslator german;
    ASSERT_TRUE(german.load(QStringLiteral("fettle_de"), QStringLiteral(":/i18n")));
    QCoreApplication::installTranslator(&german);
    QLocale::setDefault(QLocale(QStringLiteral("de")));
    EXPECT_EQ(significant(4.18).toStdString(), "4,18");
    EXPECT_EQ(weightText(31.24).toStdString(), "31,2");
    EXPECT_EQ(dateText(QDate(2026, 5, 10)).toStdString(), "10. Mai 2026");
    QCoreApplication::removeTranslator(&german);
    QLocale::setDefault(QLocale::c());
    EXPECT_EQ(significant(4.18).toStdString(), "4.18");
    EXPECT_EQ(dateText(QDate(2026, 5, 10)).toStdString(), "10 May 2026");
}

// A field that spells its own date would say "26 November" to who reads "26. November".
TEST_F(SecondLanguage, NoFieldSpellsADateOfItsOwn) {
    QDirIterator files(QStringLiteral(FETTLE_SOURCE_DIR "/ui"), {QStringLiteral("*.cpp")}, QDir::Files,
                       QDirIterator::Subdirectories);
    int read = 0;
    while (files.hasNext()) {
        QFile file(files.next());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_FALSE(file.readAll().contains("QStringLiteral(\"d MMM")) << file.fileName().toStdString();
        ++read;
    }
    EXPECT_GT(read, 100);
}

TEST_F(SecondLanguage, ThereIsMoreThanOne) {
    const auto all = languages();
    ASSERT_GE(all.size(), 2u);
    EXPECT_EQ(all[0].code.toStdString(), "en");
    EXPECT_EQ(all[1].name.toStdString(), "Deutsch");
}

}  // namespace
}  // namespace fettle
