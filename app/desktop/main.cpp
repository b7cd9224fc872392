// fettle: the desktop. Reads the command line, builds the objects in order, hands them down, runs.
// 0 done, 2 wrong usage, 3 could not run (a sentence on stderr).
#include <QApplication>
#include <QFontDatabase>
#include <QFontMetrics>
#include <QIcon>
#include <QSettings>
#include <cstdio>
#include <exception>
#include <memory>

#include "app/desktop/capture.h"
#include "app/desktop/options.h"
#include "app/desktop/quiet_messages.h"
#include "app/desktop/sheet.h"
#include "ui/model/language.h"
#include "ui/window/main_window.h"

namespace fettle {
namespace {

constexpr const char* kPlatform = "QT_QPA_PLATFORM";

bool noDisplay() {
#ifdef Q_OS_LINUX
    return qEnvironmentVariableIsEmpty("DISPLAY") && qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY");
#else
    return false;
#endif
}

// What Qt reads from its environment before the first object. False: there is nothing to show a window on.
bool prepare(const DesktopOptions& options) {
    const bool windowless = options.makesFile();
    if (!options.capture.empty() && options.scale)
        qputenv("QT_SCALE_FACTOR", QByteArray::number(*options.scale));
    if (!noDisplay() || !qEnvironmentVariableIsEmpty(kPlatform)) return true;
    if (windowless) qputenv(kPlatform, "offscreen");
    return windowless;
}

// Without a font every letter is an empty box, and nothing says so.
bool hasFont() {
    return !QFontDatabase::families().isEmpty() && QFontMetrics(QApplication::font()).inFont(u'A');
}

ThemeChoice themeOf(const DesktopOptions& options, const QSettings* settings) {
    if (options.theme == "light") return ThemeChoice::Light;
    if (options.theme == "dark") return ThemeChoice::Dark;
    const int kept = settings ? settings->value(QStringLiteral("view/theme"), 0).toInt() : 0;
    return kept == int(ThemeChoice::Light) || kept == int(ThemeChoice::Dark) ? ThemeChoice(kept)
                                                                             : ThemeChoice::System;
}

double scaleOf(const DesktopOptions& options, const QSettings* settings) {
    if (!options.capture.empty()) return 1;  // there the scale is the picture's
    if (options.scale) return *options.scale;
    return settings ? settings->value(QStringLiteral("view/scale"), 1.0).toDouble() : 1;
}

// Pictures and sheets are the same on every machine unless another language is asked for.
QString languageOf(const DesktopOptions& options) {
    if (!options.language.empty()) return QString::fromStdString(options.language);
    if (options.makesFile()) return QStringLiteral("en");
    return QSettings().value(QStringLiteral("view/language")).toString();
}

PagePlace placeOf(const DesktopOptions& options) {
    const auto text = [](const std::string& s) { return QString::fromStdString(s); };
    return {text(options.page),  text(options.machine), text(options.at),
            text(options.fault), options.time,          text(options.dialog)};
}

int runWindow(QApplication& application, const DesktopOptions& options) {
    const bool picture = !options.capture.empty();
    const auto settings = picture ? nullptr : std::make_unique<QSettings>();
    Theme theme(themeOf(options, settings.get()));
    const double scale = scaleOf(options, settings.get());
    theme.applyTo(application, scale);
    MainWindow window(theme, scale, settings.get());
    if (options.width > 0) window.resize(options.width, options.height);
    window.show();
    if (!options.fleet.empty())
        window.openFleet(QString::fromStdString(options.fleet), placeOf(options));
    else if (!options.dialog.empty())
        window.showDialog(QString::fromStdString(options.dialog));
    Capture capture(window, QString::fromStdString(options.capture));
    if (picture) capture.start();
    return QApplication::exec();
}

int run(int argc, char** argv) {
    int status = 0;
    const auto options = readOptions(argc, argv, status);
    if (!options) return status;
    if (!prepare(*options)) {
        std::fprintf(stderr, "fettle: there is no display to open a window on\n");
        return 3;
    }
    quietStandIn();
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("fettle"));
    QApplication::setOrganizationName(QStringLiteral("fettle"));
    QApplication::setApplicationDisplayName(QString());
    QApplication::setDesktopFileName(QStringLiteral("fettle"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/fettle.svg")));
    speak(languageOf(*options));
    if (!hasFont()) {
        std::fprintf(stderr, "fettle: no font is installed, every letter would be an empty box\n");
        return 3;
    }
    if (!options->report.empty()) return makeReport(*options);
    return options->sheet.empty() ? runWindow(application, *options) : makeSheet(*options);
}

}  // namespace
}  // namespace fettle

int main(int argc, char** argv) {
    try {
        return fettle::run(argc, argv);
    } catch (const std::exception& problem) {
        std::fprintf(stderr, "fettle: could not run: %s\n", problem.what());
        return 3;
    }
}
