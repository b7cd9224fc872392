// Why: the machine page alone, over the small site whose truth is known, in a window of its own. What is
// awaited is a state, never a time.
#pragma once

#include <QTest>
#include <memory>

#include "tests/fleet/small_site.h"
#include "tests/ui/plot_support.h"
#include "ui/pages/machine_page.h"

namespace fettle::desk_test {

class PageOnSite : public fleet_test::SmallSite {
  protected:
    void openPage(const QString& tag, QSize size = {1280, 760}) {
        work_ = std::make_unique<FleetWork>(path_);
        ASSERT_FALSE(work_->trouble());
        page_ = std::make_unique<MachinePage>(*work_, selection_, theme_);
        page_->resize(size);
        page_->show();
        page_->activateWindow();
        selection_.setMachine(tag);
        settle();
    }
    void TearDown() override { page_.reset(); }
    // Answers ask further: quiet twice in a row.
    void settle() {
        for (int quiet = 0; quiet < 2;) {
            ASSERT_TRUE(QTest::qWaitFor([this] { return work_->waiting() == 0; }, 60000));
            test::settle();
            quiet = work_->waiting() == 0 ? quiet + 1 : 0;
        }
    }
    template <class T>
    T& part(const char* name) {
        T* found = page_->findChild<T*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }

    Theme theme_{ThemeChoice::Light};
    Selection selection_;
    std::unique_ptr<FleetWork> work_;
    std::unique_ptr<MachinePage> page_;
};

}  // namespace fettle::desk_test
