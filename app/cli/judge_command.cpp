// Why: verdicts beside what is known of open records: a folder with machine.json, labels.tsv (name, fault,
// at, .., rpm) and the recordings. Prints one row a record or piece and a closing count; the folder named by
// FETTLE_OPEN_RECORDS by default.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>
#include <map>

#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/diagnosis/examine.h"

namespace fettle {

namespace {

struct Label {
    std::string name, fault, at;
    bool sound() const { return fault == "none"; }
};

struct JudgeOptions {
    std::string folder;
    double seconds = 0;  // 0: whole records
    bool ignoreSpeed = false;
    int threads = 2;
    std::vector<std::string> only;
};

struct Row {
    std::string name;
    Label label;
    Examination examination;
};

std::vector<Label> readLabels(const std::string& text) {
    std::vector<Label> labels;
    for (const std::string_view line : split(text, '\n')) {
        const auto cells = split(line, '\t');
        if (cells.size() < 3 || cells[0] == "name") continue;
        labels.push_back({std::string(cells[0]), std::string(cells[1]), std::string(cells[2])});
    }
    return labels;
}

const Hypothesis* hypothesisOf(const Examination& e, const std::string& fault, const std::string& at) {
    for (const Hypothesis& h : e.considered)
        if (h.fault == fault && h.at == at) return &h;
    return nullptr;
}

const Hypothesis* topBearing(const Examination& e) {
    return !e.findings.empty() && e.findings[0].weightDban ? &e.findings[0] : nullptr;
}

std::string shortFault(const std::string& fault) {
    return fault.rfind("bearing_", 0) == 0 ? fault.substr(8) : fault;
}

std::string describe(const Hypothesis& h) {
    return fmt::format("{} @ {} {:.0f} ({:+.2f} %)", shortFault(h.fault), h.at, *h.weightDban,
                       h.best.cageShift * 100);
}

// The strongest weight of any hypothesis, for a sound record.
const Hypothesis* strongest(const Examination& e) {
    const Hypothesis* best = nullptr;
    for (const Hypothesis& h : e.considered)
        if (h.weightDban && (!best || *h.weightDban > *best->weightDban)) best = &h;
    return best;
}

class Tally {
  public:
    void add(const Row& row) {
        const Hypothesis* top = topBearing(row.examination);
        const Hypothesis* true_ = hypothesisOf(row.examination, row.label.fault, row.label.at);
        std::string others;
        for (const Hypothesis& h : row.examination.findings)
            if (h.weightDban && h.at != row.label.at) others += (others.empty() ? "" : "; ") + describe(h);
        if (row.label.sound()) {
            const Hypothesis* most = strongest(row.examination);
            print(fmt::format("{:<10} {:<16} {:>7} {:<10} strongest of all: {}\n", row.name, "sound", "", "",
                              most ? describe(*most) : "nothing weighed"));
            return;
        }
        const double weight = true_ && true_->weightDban ? *true_->weightDban : -99;
        const bool bearing = top && top->at == row.label.at,
                   element = bearing && top->fault == row.label.fault;
        ++count_;
        bearings_ += bearing;
        elements_ += element;
        elsewhere_ += !others.empty();
        if (row.label.fault != "bearing_rolling_element") {
            ++notBall_;
            notBallElements_ += element;
        }
        const auto& speed = row.examination.speed;
        print(fmt::format("{:<10} {:<16} {:>7.1f} {:<10} top: {}{}  [{:.1f} +- {:.1f} r/min]\n", row.name,
                          shortFault(row.label.fault), weight,
                          element   ? "hit"
                          : bearing ? "bearing"
                                    : "MISSED",
                          top ? describe(*top) : "none", others.empty() ? "" : " | elsewhere: " + others,
                          speed.rpm.value_or(0), speed.plusMinusRpm));
        if (element) hitWeights_.push_back(weight);
    }

    void close() {
        std::sort(hitWeights_.begin(), hitWeights_.end());
        print(fmt::format(
            "\nright bearing {} of {}, right element {} of {} ({} of the {} that are not ball faults); "
            "findings at another bearing in {}\n",
            bearings_, count_, elements_, count_, notBallElements_, notBall_, elsewhere_));
        if (!hitWeights_.empty())
            print(
                fmt::format("weights of the right ones, decibans: least {:.1f}, tenth {:.1f}, median {:.1f}, "
                            "most {:.1f}\n",
                            hitWeights_.front(), hitWeights_[hitWeights_.size() / 10],
                            hitWeights_[hitWeights_.size() / 2], hitWeights_.back()));
    }

  private:
    std::size_t count_ = 0, bearings_ = 0, elements_ = 0, notBall_ = 0, notBallElements_ = 0, elsewhere_ = 0;
    std::vector<double> hitWeights_;
};

int judge(const JudgeOptions& options) {
    const RealFileSystem files;
    const auto machine = loadMachine(files, options.folder + "/machine.json");
    const auto labels = files.read(options.folder + "/labels.tsv");
    if (!labels) tell(labels.error().sentence());
    if (!machine || !labels) return kCouldNotRun;
    int status = kDone;
    Tally tally;
    print("record     seeded            weight            verdict\n");
    for (const Label& label : readLabels(*labels)) {
        if (!options.only.empty() &&
            std::find(options.only.begin(), options.only.end(), label.name) == options.only.end())
            continue;
        const Loaded loaded = loadRecordings(files, {options.folder + "/" + label.name + ".wav"});
        if (loaded.refusedSome) {
            status = kRefusedSome;
            continue;
        }
        const auto parts = piecesOf(loaded.recordings[0], options.seconds);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            ExamineOptions how;
            how.ignoreSpeed = options.ignoreSpeed;
            const auto examination = examine(*machine, {parts[i]}, how);
            if (!examination) {
                tell(examination.error().sentence());
                return kCouldNotRun;
            }
            tally.add({parts.size() > 1 ? fmt::format("{}.{}", label.name, i + 1) : label.name, label,
                       *examination});
        }
    }
    tally.close();
    return status;
}

}  // namespace

void addJudgeCommand(CLI::App& app, int& status) {
    auto options = std::make_shared<JudgeOptions>();
    if (const char* folder = std::getenv("FETTLE_OPEN_RECORDS")) options->folder = folder;
    CLI::App* command = app.add_subcommand("judge", "Verdicts beside the labels of a folder of open records");
    auto* folder = command->add_option(
        "FOLDER", options->folder,
        "folder with machine.json, labels.tsv and recordings (default: FETTLE_OPEN_RECORDS)");
    if (options->folder.empty()) folder->required();
    command->add_option("--seconds", options->seconds, "cut records into pieces of this length")
        ->check(CLI::PositiveNumber);
    command->add_flag("--ignore-speed", options->ignoreSpeed,
                      "look for the speed instead of using the given one");
    command->add_option("--only", options->only, "these records only");
    command->callback([options, &status] { status = judge(*options); });
}

}  // namespace fettle
