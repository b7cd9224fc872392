// Why: the small site with alerts: whose delivery is allowed is kept in a folder of the test's own, not in
// the user's. Thread: one.
#pragma once

#include <cstdlib>

#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {

class AlertSite : public SmallSite {
  protected:
    void SetUp() override {
        SmallSite::SetUp();
        ::setenv("XDG_CONFIG_HOME", (folder_ / "config").c_str(), 1);
    }
    void TearDown() override { ::unsetenv("XDG_CONFIG_HOME"); }
};

}  // namespace fettle::fleet_test
