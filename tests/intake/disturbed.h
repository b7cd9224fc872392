// Why: an import that was ended without warning, by a kill or a full disk, is judged alike: the fleet file is
// clean, every acknowledged recording is in it once, nothing stands twice, and carried on it ends where an
// undisturbed import ends. Thread: one.
#pragma once

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"
#include "tests/base/scratch_folder.h"

namespace fettle::intake_test {

// A few dozen small recordings of two machines, some spoiled ones among them, and what an undisturbed import
// makes of them.
class Disturbed {
  public:
    static constexpr int kRecordings = 48;

    Disturbed();
    const std::string& in() const { return in_; }
    // An empty fleet file with the machines, for one run.
    std::string newFleetFile(const std::string& folder, int run) const;
    // After an import of `in` into it came to grief. `acknowledged`: paths it had told of.
    void expectWholeAndCarriedOn(const std::string& fleetPath,
                                 const std::vector<std::string>& acknowledged) const;
    std::size_t stored() const { return expected_.size(); }

  private:
    ScratchFolder folder_;
    std::string in_;
    std::vector<std::string> expected_;  // contentOf
    std::size_t refused_ = 0;
};

// The same recordings, weighed by an engine of long ago, and what weighing them again makes of them.
class WeighedLongAgo {
  public:
    WeighedLongAgo();
    std::size_t recordings() const { return expected_.size(); }
    std::string newFleetFile(const std::string& folder, int run) const;
    // After a re-examination came to grief. `acknowledged`: "TAG TIME" of those it had told of.
    void expectWholeAndCarriedOn(const std::string& fleetPath,
                                 const std::vector<std::string>& acknowledged) const;

  private:
    ScratchFolder folder_;
    std::string path_ = folder_ / "old.fettle";
    std::vector<std::string> expected_;  // contentOf
};

// A number from the environment, how often to try; else the small one that every run of the tests does.
int timesFrom(const char* variable, int usual);

}  // namespace fettle::intake_test
