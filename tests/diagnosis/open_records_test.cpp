// The arithmetic on real measurements: the folder named by FETTLE_OPEN_RECORDS, skipped without it. Whether
// the verdicts are right is measured by `fettle-cli judge`, not here.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "core/diagnosis/examine.h"
#include "core/signal/reader.h"

namespace fettle {
namespace {

namespace fs = std::filesystem;

// Folders with a machine description and recordings, at or below the one named.
std::vector<fs::path> recordFolders() {
    std::vector<fs::path> folders;
    const char* root = std::getenv("FETTLE_OPEN_RECORDS");
    if (!root || !fs::is_directory(root)) return folders;
    for (const auto& entry : fs::recursive_directory_iterator(root))
        if (entry.path().filename() == "machine.json") folders.push_back(entry.path().parent_path());
    std::sort(folders.begin(), folders.end());
    return folders;
}

std::vector<RecordingPtr> recordingsIn(const fs::path& folder) {
    std::vector<RecordingPtr> all;
    const RealFileSystem files;
    for (const auto& entry : fs::directory_iterator(folder)) {
        if (entry.path().extension() != ".wav") continue;
        const auto recording = readRecording(files, entry.path().string());
        EXPECT_TRUE(recording) << (recording ? "" : recording.error().sentence());
        if (recording) all.push_back(*recording);
    }
    return all;
}

void expectSums(const Examination& e, const std::string& file) {
    for (const Hypothesis& h : e.considered) {
        if (!h.weightDban) continue;
        double sum = h.best.searchDban + h.meanDban;
        for (const LineRow& row : h.best.rows)
            sum += row.weightDban;
        EXPECT_NEAR(sum, *h.weightDban, 1e-9) << file << " " << h.fault << " at " << h.at;
        EXPECT_LE(*h.weightDban, *h.beforeClaimsDban + 1e-9) << file << " " << h.fault << " at " << h.at;
        EXPECT_TRUE(std::isfinite(*h.weightDban));
    }
}

TEST(OpenRecords, RowsAndSearchAddUpOnEveryOne) {
    const auto folders = recordFolders();
    if (folders.empty())
        GTEST_SKIP() << "FETTLE_OPEN_RECORDS names no folder with a machine.json: not run on real records";
    for (const fs::path& folder : folders) {
        const auto text = RealFileSystem().read((folder / "machine.json").string());
        ASSERT_TRUE(text);
        const auto machine = parseMachine(*text, "machine.json");
        ASSERT_TRUE(machine) << machine.error().sentence();
        for (const RecordingPtr& recording : recordingsIn(folder)) {
            const auto e = examine(machine->machine, {recording});
            ASSERT_TRUE(e) << recording->file;
            expectSums(*e, recording->file);
        }
    }
}

}  // namespace
}  // namespace fettle
