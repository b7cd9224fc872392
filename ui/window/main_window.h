// Why: one window: a page bar, the pages of the open fleet or the start page, a status line, menus. It opens
// and changes fleets, remembers the last place, and passes everything else on. Settings may be absent (for
// pictures and tests): then nothing is remembered. Thread: the window's. Errors: said in the window.
#pragma once

#include <QMainWindow>
#include <QPointer>
#include <map>
#include <memory>
#include <string>

#include "core/store/fleet_file.h"
#include "ui/model/preferences.h"
#include "ui/theme/theme.h"
#include "ui/window/page_place.h"
#include "ui/work/fleet_door.h"

class QActionGroup;
class QLabel;
class QSettings;
class QStackedWidget;

namespace fettle {

class AlertCount;
class GuideDialog;
class PageBar;
class StartPage;
class Workplace;

class MainWindow : public QMainWindow {
    Q_OBJECT
  public:
    MainWindow(Theme& theme, double scale, QSettings* settings, QWidget* parent = nullptr);
    ~MainWindow() override;

    void openFleet(const QString& path, const PagePlace& place = {});
    void newFleet(const QString& path, const SiteSettings& site);
    void showDialog(const QString& name);  // as PagePlace::dialog
    Workplace* workplace() const;          // null: no fleet is open

    bool settled() const;                         // what was asked for is shown, or was refused
    QString trouble() const { return trouble_; }  // the last thing that went wrong; empty: nothing
    double scale() const { return scale_; }

  protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

  private:
    QAction* action(const char* id, std::function<void()> done);
    void buildActions();
    void buildMenus();
    void buildViewMenu();
    void take(FleetDoor::Opened fleet, const QString& path, const PagePlace& place);
    PagePlace whereLast(const PagePlace& asked, const QString& path) const;
    void connectWorkplace();
    void showTitle();
    void showWaiting();
    void placeShown();
    void message(const QString& sentence);
    void askOpen();
    void askNew();
    void askBackup();
    void showHelp();
    Preferences preferences() const;
    void askPreferences();
    void use(const Preferences& preferences);
    void goTo(const QString& page);
    void setScale(double scale);
    void setTheme(ThemeChoice choice);
    void enableActions();
    QStringList recentFiles() const;
    void remember(const QString& path);
    void rememberPlace();
    void restore();

    Theme& theme_;
    double scale_;
    QSettings* settings_;
    Preferences unkept_;  // where there are no settings
    FleetDoor door_;
    std::map<std::string, QAction*> actions_;
    QActionGroup* themes_ = nullptr;
    PageBar* bar_ = nullptr;
    QStackedWidget* middle_ = nullptr;
    StartPage* start_ = nullptr;
    GuideDialog* guide_ = nullptr;
    QPointer<Workplace> workplace_;
    AlertCount* alerts_ = nullptr;
    QLabel *file_ = nullptr, *outcome_ = nullptr, *waiting_ = nullptr;
    QString trouble_, longWork_;
};

}  // namespace fettle
