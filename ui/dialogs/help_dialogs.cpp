#include "ui/dialogs/help_dialogs.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/diagnosis/settings.h"
#include "ui/model/shortcuts.h"
#include "ui/plot/gestures.h"

#ifndef FETTLE_LIBRARY_VERSIONS
#define FETTLE_LIBRARY_VERSIONS ""
#endif

namespace fettle {

namespace {

void fill(QDialog& dialog, QWidget* content, bool scrolls) {
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* all = new QVBoxLayout(&dialog);
    if (scrolls) {
        auto* scroll = new QScrollArea(&dialog);
        scroll->setWidget(content);
        scroll->setWidgetResizable(true);
        scroll->setFrameShape(QFrame::NoFrame);
        all->addWidget(scroll, 1);
    } else {
        all->addWidget(content, 1);
    }
    all->addWidget(buttons);
}

QString keysText(const Shortcut& shortcut) {
    QStringList keys;
    for (const QKeySequence& key : shortcut.keys)
        keys << key.toString(QKeySequence::NativeText).toHtmlEscaped();
    return keys.join(QStringLiteral(", "));
}

QString plain(QString text) {
    text.remove(u'&');
    if (text.endsWith(u'…')) text.chop(1);
    return text.toHtmlEscaped();
}

QString groupRow(const QString& name) {
    return QStringLiteral("<tr><td colspan='2'><b>%1</b></td></tr>").arg(name.toHtmlEscaped());
}

QString keyRow(const QString& keys, const QString& text) {
    return QStringLiteral("<tr><td>%1&nbsp;&nbsp;&nbsp;</td><td>%2</td></tr>").arg(keys, text);
}

// Keys of actions, then what plots do by mouse and keyboard.
QString keysTable() {
    QString html = QStringLiteral("<table cellpadding='3'>"), group;
    for (const Shortcut& shortcut : shortcuts()) {
        if (shortcut.keys.isEmpty()) continue;
        if (groupText(shortcut) != group) html += groupRow(group = groupText(shortcut));
        html += keyRow(keysText(shortcut), plain(actionText(shortcut)));
    }
    html += groupRow(ShortcutsDialog::tr("In a plot"));
    for (const auto& [keys, text] : Gestures::table())
        html += keyRow(keys.toHtmlEscaped(), text.toHtmlEscaped());
    return html + QStringLiteral("</table>");
}

struct Library {
    const char *name, *what, *licence;
};
constexpr Library kLibraries[] = {
    {"Qt", QT_TRANSLATE_NOOP("Libraries", "window, print"), QT_TRANSLATE_NOOP("Libraries", "LGPL 3")},
    {"Qwt", QT_TRANSLATE_NOOP("Libraries", "plots"),
     QT_TRANSLATE_NOOP("Libraries", "Qwt licence 1.0 (LGPL 2.1 with exceptions)")},
    {"SQLite", QT_TRANSLATE_NOOP("Libraries", "the fleet file"),
     QT_TRANSLATE_NOOP("Libraries", "public domain")},
    {"FFTW", QT_TRANSLATE_NOOP("Libraries", "Fourier transforms"),
     QT_TRANSLATE_NOOP("Libraries", "GPL 2 or later")},
    {"libsndfile", QT_TRANSLATE_NOOP("Libraries", "WAV and FLAC"),
     QT_TRANSLATE_NOOP("Libraries", "LGPL 2.1 or later")},
    {"matio", QT_TRANSLATE_NOOP("Libraries", "MAT files"), QT_TRANSLATE_NOOP("Libraries", "BSD")},
    {"HDF5", QT_TRANSLATE_NOOP("Libraries", "HDF5 files"), QT_TRANSLATE_NOOP("Libraries", "BSD")},
    {"zstd", QT_TRANSLATE_NOOP("Libraries", "compression of waveforms"),
     QT_TRANSLATE_NOOP("Libraries", "BSD")},
    {"xxHash", QT_TRANSLATE_NOOP("Libraries", "checksums"), QT_TRANSLATE_NOOP("Libraries", "BSD")},
    {"nlohmann-json", QT_TRANSLATE_NOOP("Libraries", "JSON"), QT_TRANSLATE_NOOP("Libraries", "MIT")},
    {"simdjson", QT_TRANSLATE_NOOP("Libraries", "JSON of a whole week"),
     QT_TRANSLATE_NOOP("Libraries", "Apache 2.0")},
    {"fmt", QT_TRANSLATE_NOOP("Libraries", "text"), QT_TRANSLATE_NOOP("Libraries", "MIT")},
    {"tl-expected", QT_TRANSLATE_NOOP("Libraries", "errors as values"),
     QT_TRANSLATE_NOOP("Libraries", "CC0")},
    {"CLI11", QT_TRANSLATE_NOOP("Libraries", "command line"), QT_TRANSLATE_NOOP("Libraries", "BSD")},
    {"date", QT_TRANSLATE_NOOP("Libraries", "time zones"), QT_TRANSLATE_NOOP("Libraries", "MIT")},
    {"libcurl", QT_TRANSLATE_NOOP("Libraries", "mail"),
     QT_TRANSLATE_NOOP("Libraries", "curl licence (MIT-like)")},
};

// "Qwt=6.3.0|SQLite=3.40.1" as the build says.
QString versionOf(const QString& library) {
    if (library == QStringLiteral("Qt")) return QString::fromLatin1(qVersion());
    for (const QString& entry : QString::fromLatin1(FETTLE_LIBRARY_VERSIONS).split(u'|'))
        if (entry.section(u'=', 0, 0) == library) return entry.section(u'=', 1);
    return {};
}

QString aboutText() {
    QString html =
        AboutDialog::tr(
            "<h3>Fettle</h3><p>Engine %1</p>"
            "<p>For the engineer who answers for a fleet of electric motors and the machines they "
            "drive. A verdict is advice: site rules, local codes and licensed electrical and mechanical "
            "practice come first.</p>"
            "<p>Free software under the GNU General Public License, version 3, without any warranty. It "
            "stands "
            "on:</p>")
            .arg(QString::fromStdString(WeighingSettings().engine()).toHtmlEscaped());
    html += QStringLiteral("<table cellpadding='3'>");
    for (const Library& library : kLibraries) {
        const QString name = QString::fromLatin1(library.name);
        html += QStringLiteral(
                    "<tr><td style='white-space:pre'>%1 %2&nbsp;&nbsp;</td><td "
                    "style='white-space:pre'>%3&nbsp;&nbsp;</td><td>%4</td></tr>")
                    .arg(name, versionOf(name), QCoreApplication::translate("Libraries", library.what),
                         QCoreApplication::translate("Libraries", library.licence));
    }
    return html + QStringLiteral("</table>");
}

QLabel* page(const QString& html, const char* name) {
    auto* label = new QLabel(html);
    label->setObjectName(QString::fromLatin1(name));
    label->setTextFormat(Qt::RichText);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    label->setMargin(8);
    return label;
}

}  // namespace

ShortcutsDialog::ShortcutsDialog(const Theme&, QWidget* parent) : QDialog(parent) {
    setObjectName(QStringLiteral("shortcutsDialog"));
    setWindowTitle(tr("Keys"));
    setAttribute(Qt::WA_DeleteOnClose);
    fill(*this, page(keysTable(), "keys"), true);
    resize(fontMetrics().averageCharWidth() * 70, fontMetrics().height() * 34);
}

AboutDialog::AboutDialog(const Theme&, QWidget* parent) : QDialog(parent) {
    setObjectName(QStringLiteral("aboutDialog"));
    setWindowTitle(tr("About Fettle"));
    setAttribute(Qt::WA_DeleteOnClose);
    fill(*this, page(aboutText(), "about"), true);
    resize(fontMetrics().averageCharWidth() * 80, fontMetrics().height() * 30);
}

}  // namespace fettle
