#include "app/cli/sample_writer.h"

#include <fmt/format.h>

#include <atomic>
#include <mutex>

#include "app/cli/load.h"
#include "core/signal/sound_file.h"
#include "core/simulate/truth.h"

namespace fettle {

namespace {

std::string asText(const Json& json) {
    return json.dump(2) + "\n";
}

SoundFormat formatOf(int bits, bool wav) {
    if (wav) return bits == 24 ? SoundFormat::WavPcm24 : SoundFormat::WavPcm16;
    return bits == 24 ? SoundFormat::Flac24 : SoundFormat::Flac16;
}

Result<std::string> soundBytes(const sim::SimulatedRecording& recording, const std::string& file) {
    const double steps = double(std::int64_t(1) << (recording.bits - 1));
    std::vector<std::vector<double>> channels;
    for (const sim::SimulatedChannel& channel : recording.channels) {
        std::vector<double> values;
        values.reserve(channel.samples.size());
        for (const std::int32_t sample : channel.samples)
            values.push_back(sample / steps);
        channels.push_back(std::move(values));
    }
    return writeSoundFile(channels, recording.rateHz, formatOf(recording.bits, extensionOf(file) == "wav"),
                          file);
}

class SampleWriter {
  public:
    SampleWriter(FileSystem& files, const sim::Scenario& scenario, const SampleOrder& order)
        : files_(files),
          scenario_(scenario),
          order_(order),
          plan_(sim::planRecordings(scenario, order.options)) {}

    Result<std::size_t> writeAll() {
        if (auto done = writeMachines(); !done) return fail(done.error());
        if (auto done = writeRecordings(); !done) return fail(done.error());
        const std::string events = asText(sim::eventsOf(scenario_, order_.options));
        if (auto done = files_.writeSafely(order_.folder + "/events.json", events); !done)
            return fail(done.error());
        const std::string truth = asText(sim::truthOf(scenario_, order_.options));
        if (auto done = files_.writeSafely(order_.folder + "/truth.json", truth); !done)
            return fail(done.error());
        return plan_.size();
    }

  private:
    const std::string& tagOf(const sim::PlannedRecording& planned) const {
        return scenario_.machines[planned.machine].machine.tag;
    }

    Status writeMachines() {
        if (auto made = files_.makeFolders(order_.folder + "/machines"); !made) return made;
        for (const sim::FleetMachine& fleet : scenario_.machines) {
            const std::string& tag = fleet.machine.tag;
            if (!order_.options.machine.empty() && order_.options.machine != tag) continue;
            const std::string path = order_.folder + "/machines/" + tag + ".json";
            if (auto done = files_.writeSafely(path, asText(fleet.description)); !done) return done;
            if (auto made = files_.makeFolders(order_.folder + "/recordings/" + tag); !made) return made;
        }
        return {};
    }

    // Stops at the first failure; the threads finish what they have in hand.
    Status writeRecordings() {
        std::atomic<std::size_t> next{0};
        std::atomic<bool> failed{false};
        std::mutex telling;
        Status outcome;
        const auto work = [&] {
            for (std::size_t i = next++; i < plan_.size() && !failed; i = next++) {
                if (i == 0 || plan_[i].machine != plan_[i - 1].machine) {
                    const std::lock_guard hold(telling);
                    tell(fmt::format("{}: recording {} of {}", tagOf(plan_[i]), i + 1, plan_.size()));
                }
                const Status done = writeRecording(plan_[i]);
                if (done) continue;
                const std::lock_guard hold(telling);
                if (!failed.exchange(true)) outcome = done;
            }
        };
        std::vector<std::jthread> helpers;
        for (int t = 1; t < order_.threads; ++t)
            helpers.emplace_back(work);
        work();
        helpers.clear();  // joins
        return outcome;
    }

    bool isCutOff(const sim::PlannedRecording& planned) const {
        return planned.trouble && scenario_.intake[*planned.trouble].kind == sim::kCutOff;
    }

    // The sidecar first: a recording without one would be of nobody.
    Status writeRecording(const sim::PlannedRecording& planned) {
        const std::string stem = order_.folder + "/recordings/" + tagOf(planned) + "/" + planned.name;
        const std::string file = stem + "." + order_.options.extension;
        const auto recording = sim::simulate(sim::setupOf(scenario_, planned, order_.options.key));
        if (!recording) return fail(recording.error());
        auto bytes = soundBytes(*recording, file);
        if (!bytes) return fail(bytes.error());
        if (isCutOff(planned)) bytes->resize(bytes->size() / 2);
        const Json sidecar = sim::sidecarOf(scenario_, planned, *recording);
        if (auto done = files_.writeSafely(stem + ".json", asText(sidecar)); !done) return done;
        return files_.writeSafely(file, *bytes);
    }

    FileSystem& files_;
    const sim::Scenario& scenario_;
    const SampleOrder& order_;
    std::vector<sim::PlannedRecording> plan_;
};

}  // namespace

Result<std::size_t> writeSample(FileSystem& files, const sim::Scenario& scenario, const SampleOrder& order) {
    return SampleWriter(files, scenario, order).writeAll();
}

}  // namespace fettle
