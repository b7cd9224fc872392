// Why: the desktop is tested in a real window over the small site whose truth is known, driven by object
// names as a user drives it. What is awaited is a state, never a time. Dialogs are found and answered.
#pragma once

#include <QAbstractButton>
#include <QDialog>
#include <QTest>
#include <functional>

#include "tests/fleet/small_site.h"
#include "ui/pages/round_page.h"
#include "ui/window/main_window.h"
#include "ui/window/workplace.h"

namespace fettle::desk_test {

inline constexpr int kPatienceMs = 60000;

inline bool waitFor(const std::function<bool()>& state) {
    return QTest::qWaitFor(state, kPatienceMs);
}

class Desk : public fleet_test::SmallSite {
  protected:
    // A window without settings over the fleet file, everything read.
    void openWindow(const PagePlace& place = {}) {
        window_ = std::make_unique<MainWindow>(theme_, 1.0, nullptr);
        window_->show();
        window_->openFleet(QString::fromStdString(path_), place);
        ASSERT_TRUE(waitFor([this] { return window_->workplace() && window_->settled(); }));
        ASSERT_EQ(window_->trouble().toStdString(), "");
    }
    void TearDown() override { window_.reset(); }

    void settle() {
        QTest::qWait(0);
        ASSERT_TRUE(waitFor([this] { return window_->settled(); }));
    }
    template <class T>
    T* part(const char* name) {
        for (T* found : window_->findChildren<T*>(QString::fromLatin1(name)))
            if (found->isVisible() || !found->isWidgetType()) return found;
        return window_->findChild<T*>(QString::fromLatin1(name));
    }
    template <class T>
    T* dialog(const char* name) {
        T* found = nullptr;
        EXPECT_TRUE(waitFor([&] {
            for (T* one : window_->findChildren<T*>(QString::fromLatin1(name)))
                if (one->isVisible()) found = one;
            return found != nullptr;
        })) << name;
        return found;
    }
    // Every dialog there is, shown one after the other and closed again.
    void eachDialog(const std::function<void(QDialog& dialog, const std::string& name)>& look) {
        for (const QString& name : dialogNames()) {
            window_->showDialog(name);
            QDialog* dialog = nullptr;
            ASSERT_TRUE(waitFor([&] {
                for (QDialog* one : window_->findChildren<QDialog*>())
                    if (one->isVisible()) dialog = one;
                return dialog != nullptr;
            })) << name.toStdString();
            settle();
            QTest::qWait(20);
            look(*dialog, name.toStdString());
            dialog->close();
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            settle();
        }
    }
    void press(const char* button) {
        auto* found = part<QAbstractButton>(button);
        ASSERT_NE(found, nullptr) << button;
        ASSERT_TRUE(found->isEnabled()) << button;
        found->click();
    }
    RoundPage& roundPage() { return window_->workplace()->roundPage(); }

    Theme theme_{ThemeChoice::Light};
    std::unique_ptr<MainWindow> window_;
};

}  // namespace fettle::desk_test
